using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Engineering.Tests.Strength.ACase;

namespace RepairOrders.Engineering.Tests.Strength;

// ASME B31G-2012, 1.7 (from memory; the list of options was seen on a public sheet).
public sealed class FlowStresses
{
    [Theory]
    [InlineData(FlowStressOption.A, 360, 460, 396)]
    [InlineData(FlowStressOption.B, 360, 460, 429)]
    [InlineData(FlowStressOption.C, 360, 460, 410)]
    [InlineData(FlowStressOption.B, 480, 530, 530)]
    [InlineData(FlowStressOption.B, 485, 570, 554)]
    public void Each_option_gives_its_stress_and_never_more_than_the_tensile_strength(
        FlowStressOption option,
        double yield,
        double tensile,
        double flow
    ) => Assess(option, yield, tensile).Result!.Value.Megapascals.ShouldBe(flow, 1e-9);

    [Theory]
    [InlineData(FlowStressOption.B, 555, 625)]
    [InlineData(FlowStressOption.C, 690, 760)]
    public void A_grade_above_the_option_is_refused_not_clamped(FlowStressOption option, double yield, double tensile)
    {
        var flow = Assess(option, yield, tensile);
        flow.Result.ShouldBeNull();
        flow.Findings.ShouldHaveSingleItem().Code.ShouldBe("flow-stress-grade");
    }

    [Fact]
    public void At_120_degrees_it_is_refused()
    {
        FlowStress.Assess(FlowStressOption.A, X65(), Temperature.FromDegreesCelsius(119.9)).Result.ShouldNotBeNull();
        FlowStress
            .Assess(FlowStressOption.A, X65(), Temperature.FromDegreesCelsius(120))
            .Findings[0]
            .Code.ShouldBe("flow-stress-temperature");
    }

    [Fact]
    public void Without_both_strengths_on_record_it_is_refused() =>
        FlowStress
            .Assess(FlowStressOption.B, X65() with { TensileStrength = null }, Temperature.FromDegreesCelsius(20))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("flow-stress-strength-missing");

    [Theory]
    [InlineData(MetalFamily.GrayIron, FlowStressOption.B)]
    [InlineData(MetalFamily.DuctileIron, FlowStressOption.B)]
    [InlineData(MetalFamily.AusteniticStainless, FlowStressOption.C)]
    [InlineData(MetalFamily.LowAlloySteel, FlowStressOption.A)]
    public void A_metal_the_method_is_not_for_is_refused(MetalFamily metal, FlowStressOption option) =>
        FlowStress
            .Assess(option, X65() with { Metal = metal }, Temperature.FromDegreesCelsius(20))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("flow-stress-metal");

    [Fact]
    public void Yield_above_tensile_strength_cannot_be() =>
        Should
            .Throw<ImpossibleInputException>(() => FlowStress.Of(FlowStressOption.B, Mpa(460), Mpa(360)))
            .Field.ShouldBe("tensileStrengthMpa");

    private static Calculated<Pressure?> Assess(FlowStressOption option, double yield, double tensile) =>
        FlowStress.Assess(
            option,
            X65() with
            {
                YieldStrength = Mpa(yield),
                TensileStrength = Mpa(tensile),
            },
            Temperature.FromDegreesCelsius(20)
        );
}
