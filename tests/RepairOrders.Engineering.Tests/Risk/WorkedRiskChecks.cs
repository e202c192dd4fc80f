using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Risk;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Risk;

/// <summary>
/// Eight worked classes. The scale is a rule of our own, built on ASME B31.3 300.2 (fluid category), API 570 6.3.4 (inspection
/// class) and Directive 2014/68/EU Art. 13 (fluid group); no outside source prints a class for these cases.
/// </summary>
public class WorkedRiskChecks
{
    private static readonly Service CoolingWater = new(
        "Cooling water",
        FluidState.Liquid,
        ServiceCategory.D,
        FluidGroup: 2,
        InspectionClass: 4,
        Flammable: false,
        Toxic: false,
        AboveAutoIgnition: false,
        Pressure.FromBars(6),
        Pressure.FromBars(6),
        Temperature.FromDegreesCelsius(30),
        Temperature.FromDegreesCelsius(30),
        SafetyCritical: false,
        Potable: false,
        Cyclic: false
    );

    private static readonly Defect Pinhole = new(
        DefectKind.Pinhole,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        ThroughWall: true,
        Length.FromMillimeters(4),
        Length.FromMillimeters(4),
        Length.Zero,
        Length.FromMillimeters(4),
        Length.FromMillimeters(5),
        ClockHours: 4,
        Growing: false
    );

    private static readonly Length Required = Length.FromMillimeters(3);

    private static ConsequenceFacts Leak(Service service, int dn = 100) =>
        new(
            service,
            dn,
            PeopleNearby.Rarely,
            ListedContents: false,
            LiquefiedFlammableGas: false,
            StrongAcidOrAlkali: false,
            ShipClassOne: false,
            IsolableWithinTenMinutes: true,
            Mass.FromKilograms(100),
            DrainsToWater: false
        );

    private static LikelihoodFacts Metal(Defect defect, RepairStrength repair, int reinjections = 0) =>
        new(defect, Required, WallMeasured: true, repair, Cyclic: false, EarlierLeaks: 0, reinjections);

    private static Defect Thinned(double ofRequired, DefectSide side, bool growing = false) =>
        Pinhole with
        {
            Kind = DefectKind.GeneralThinning,
            Side = side,
            ThroughWall = false,
            HoleDiameter = Length.Zero,
            RemainingWall = Required * ofRequired,
            Growing = growing,
        };

    private static void ShouldBe(RiskRank rank, int c, int l, RiskClass expected)
    {
        rank.Consequence.ShouldBe(c);
        rank.Likelihood.ShouldBe(l);
        rank.Class.ShouldBe(expected);
        rank.Reasons.ShouldAllBe(r => r.EndsWith('.'));
    }

    private static RiskRank WrappedCoolingWater =>
        RiskRanking.ToSign(Leak(CoolingWater), Metal(Pinhole, RepairStrength.Engineered), new Standing());

    [Fact]
    public void One_a_wrapped_pinhole_on_cooling_water_is_class_C()
    {
        ShouldBe(WrappedCoolingWater, 1, 4, RiskClass.C);
        ClassDuties.Of(RiskClass.C).LookInterval.ShouldBe(TimeSpan.FromDays(30));
        ClassDuties.Of(RiskClass.C).FirstLook.ShouldBe(TimeSpan.FromDays(7));
    }

    [Fact]
    public void Two_rubber_and_band_with_cause_unknown_caps_at_five_and_stays_class_C()
    {
        var unknown = Pinhole with { Cause = DefectCause.Unknown };
        var rank = RiskRanking.ToSign(Leak(CoolingWater), Metal(unknown, RepairStrength.SealOnly), new Standing());
        ShouldBe(rank, 1, 5, RiskClass.C);
    }

    [Fact]
    public void Three_a_clamp_on_hot_gas_oil_above_auto_ignition_is_class_A()
    {
        var gasOil = CoolingWater with
        {
            Fluid = "Gas oil",
            Category = ServiceCategory.Normal,
            FluidGroup = 1,
            InspectionClass = 2,
            Flammable = true,
            AboveAutoIgnition = true,
            OperatingTemperature = Temperature.FromDegreesCelsius(330),
        };
        var thin = Thinned(0.6, DefectSide.Internal, growing: true);
        var strength = Likelihood.StrengthOf("bolted-clamp", thin, gasOil, calculated: true);
        ShouldBe(RiskRanking.ToSign(Leak(gasOil), Metal(thin, strength), new Standing()), 5, 5, RiskClass.A);
    }

    [Fact]
    public void Four_a_checked_welded_sleeve_on_natural_gas_is_class_C()
    {
        var gas = CoolingWater with
        {
            Fluid = "Natural gas",
            State = FluidState.Gas,
            Category = ServiceCategory.Normal,
            FluidGroup = 1,
            InspectionClass = 2,
            Flammable = true,
            OperatingPressure = Pressure.FromBars(40),
            DesignPressure = Pressure.FromBars(40),
        };
        var pitted = Thinned(1.1, DefectSide.External) with { Kind = DefectKind.Pitting };
        var strength = Likelihood.StrengthOf("welded-sleeve", pitted, gas, calculated: true);
        ShouldBe(RiskRanking.ToSign(Leak(gas), Metal(pitted, strength), new Standing()), 4, 1, RiskClass.C);
    }

    [Fact]
    public void Five_a_wrapped_fire_main_is_class_C()
    {
        var fireMain = CoolingWater with
        {
            Fluid = "Sea water",
            OperatingPressure = Pressure.FromBars(10),
            DesignPressure = Pressure.FromBars(10),
            SafetyCritical = true,
        };
        var thin = Thinned(0.8, DefectSide.Internal);
        var rank = RiskRanking.ToSign(Leak(fireMain), Metal(thin, RepairStrength.Engineered), new Standing());
        ShouldBe(rank, 2, 3, RiskClass.C);
    }

    [Fact]
    public void Six_a_reinjected_box_on_sour_gas_is_class_A_and_fails_at_the_second_injection()
    {
        var sour = CoolingWater with
        {
            Fluid = "Sour gas",
            State = FluidState.Gas,
            FluidGroup = 1,
            InspectionClass = 2,
        };
        var leak = Leak(sour) with { ListedContents = true };
        var rank = RiskRanking.ToSign(leak, Metal(Pinhole, RepairStrength.Engineered, reinjections: 1), new Standing());
        ShouldBe(rank, 5, 5, RiskClass.A);
        Likelihood.TreatAsFailed(1).ShouldBeFalse();
        Likelihood.TreatAsFailed(2).ShouldBeTrue();
    }

    [Fact]
    public void Seven_two_missed_looks_lift_the_likelihood_to_five_and_leave_class_C()
    {
        var today = RiskRanking.Today(
            WrappedCoolingWater,
            new Ageing(MissedLooks: 2, LifeUsed: 0.2, PastEndDate: false),
            new Standing()
        );
        ShouldBe(today, 1, 5, RiskClass.C);
    }

    [Fact]
    public void Eight_any_class_B_repair_is_class_A_the_day_after_its_end_date()
    {
        var all =
            from c in Enumerable.Range(1, 5)
            from l in Enumerable.Range(1, 5)
            where RiskRanking.FromMatrix(c, l) == RiskClass.B
            select RiskRanking.Today(
                new RiskRank(RiskClass.B, c, l, []),
                new Ageing(MissedLooks: 0, LifeUsed: 1.01, PastEndDate: true),
                new Standing()
            );
        all.ShouldAllBe(r => r.Class == RiskClass.A);
    }
}
