using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Methods.Plug;
using RepairOrders.Engineering.Methods.Replacement;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

public class PlugAndReplacementTests
{
    private static readonly Plug Plug = new();
    private static readonly Replacement Replacement = new();

    private static Finding Of(MethodDesign design, string code) => design.Findings.Single(f => f.Code == code);

    [Fact]
    public void A_plug_reaches_sound_metal_and_engages_three_threads()
    {
        var design = Plug.Size(APipe.With());
        design["plugDiameterMm"].ShouldBe(6, "a hole of 4 mm drilled to 6");
        design.Holds.ShouldBeTrue();
        var thin = APipe.Pinhole with { SoundWallBeside = Length.FromMillimeters(2.5) };
        Of(Plug.Size(APipe.With() with { Defect = thin }), "threads").Severity.ShouldBe(Severity.Fail);
    }

    // By hand, no source: 4 × 0.6 × 137.9 × 0.5 × 5/6 = 137.9 MPa.
    [Fact]
    public void What_the_thread_holds_agrees_with_a_hand_calculation() =>
        Plug.Size(APipe.With()).Working.Single(w => w.Symbol == "P held").Value.ShouldBe(137.9, 0.01);

    [Fact]
    public void A_hole_beyond_the_largest_plug_is_refused()
    {
        var large = APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(40) };
        Of(Plug.Size(APipe.With() with { Defect = large }), "plug-covers").Blocks.ShouldBeTrue();
    }

    [Fact]
    public void There_must_be_a_hole_to_plug() =>
        Plug.Claims(APipe.Dn100, APipe.Thinning, APipe.CoolingWater).Barred.ShouldBeTrue();

    [Fact]
    public void New_pipe_carries_the_pressure_after_allowance_and_mill_tolerance()
    {
        var design = Replacement.Size(APipe.With() with { Service = APipe.At(16) });
        design.Holds.ShouldBeTrue();
        design.CarriesAxialLoad.ShouldBeTrue();
        design["spoolLengthMm"].ShouldBe(212, "12 mm of damage and 100 mm to each side");
        Of(Replacement.Size(APipe.With(("spoolWallMm", 2)) with { Service = APipe.At(60) }), "spool-wall")
            .Blocks.ShouldBeTrue();
    }

    [Fact]
    public void A_temporary_spool_ends_on_a_date_and_like_for_like_does_not()
    {
        Replacement.Size(APipe.With()).DesignLifeDays.ShouldBeNull();
        Replacement.Size(APipe.With(("kind", 1))).DesignLifeDays.ShouldBe(365);
    }

    [Fact]
    public void Replacement_takes_cracks_joints_and_walls_nobody_could_measure()
    {
        foreach (var kind in (DefectKind[])[DefectKind.CrackLike, DefectKind.Joint])
        {
            var defect = APipe.Pinhole with { Kind = kind, SoundWallBeside = Length.Zero };
            Replacement.Claims(APipe.Dn100, defect, APipe.CoolingWater).Inside.ShouldBeTrue();
            Replacement.Size(APipe.With() with { Defect = defect }).Holds.ShouldBeTrue();
        }
    }
}
