using BenchmarkDotNet.Attributes;
using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Risk;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;

namespace RepairOrders.Benchmarks;

/// <summary>
/// All engineering of one order, every figure with working and findings: the pipe is assessed, all methods claim, and each of
/// the seven is sized. At most 1 ms.
/// </summary>
[MemoryDiagnoser]
public class WholeOrder : BesideC
{
    private static readonly Pipe Pipe = new(
        Mm(168.3),
        Mm(7.11),
        MetalFamily.CarbonSteel,
        Pressure.FromMegapascals(240),
        Pressure.FromMegapascals(415),
        Pressure.FromMegapascals(138),
        1
    );

    private static readonly Defect Defect = new(
        DefectKind.Pitting,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        ThroughWall: false,
        Mm(60),
        Mm(30),
        Mm(2.2),
        Length.Zero,
        Mm(5.5),
        ClockHours: 6,
        Growing: false
    );

    private static readonly Service Service = new(
        "Cooling water",
        FluidState.Liquid,
        ServiceCategory.Normal,
        FluidGroup: 2,
        InspectionClass: 3,
        Flammable: false,
        Toxic: false,
        AboveAutoIgnition: false,
        Pressure.FromBars(8),
        Pressure.FromBars(10),
        Temperature.FromDegreesCelsius(25),
        Temperature.FromDegreesCelsius(40),
        SafetyCritical: false,
        Potable: false,
        Cyclic: false
    );

    private static readonly WallDuty Duty = new(WallCode.B313, Service.DesignPressure, Service.DesignTemperature);

    private static readonly WallHistory History = new(
        [
            new(new(2015, 6, 1), Mm(6.6), "6 o'clock", "ultrasonic"),
            new(new(2025, 6, 1), Mm(5.5), "6 o'clock", "ultrasonic"),
        ],
        Mm(7.11),
        new(2008, 1, 1),
        Pitting: true,
        ThroughWall: false
    );

    private readonly Dictionary<string, double> defaults = [];
    private static readonly Dictionary<string, double> Resin = new() { ["softeningC"] = 100, ["lapShearMpa"] = 5 };

    [Benchmark(Description = "assess, choose and size one order")]
    public int AssessChooseSize()
    {
        var needed = RequiredWall.Assess(Pipe, Duty);
        var held = Mawp.Assess(Pipe, Duty, new(Mm(2.2), Mm(0.2), Length.Zero));
        var strength = RemainingStrength.Compare(
            new(
                Pipe,
                MetalLoss.Of(Defect, Defect.SoundWallBeside),
                Service.DesignPressure,
                Service.OperatingTemperature,
                1.39,
                0.72,
                new(Mm(0.2), Mm(500), Cyclic: false, WeldFactor: 1)
            )
        );
        var axial = AxialLoad.Check(
            new(
                Pipe,
                Defect,
                Service.DesignPressure,
                Pressure.Zero,
                Pipe.OutsideDiameter,
                Force.Zero,
                Torque.Zero,
                Unrestrained: false,
                ConditionUnknown: false,
                RepairCarriesAxialLoad: false
            )
        );
        var critical = CriticalLength.Check(
            new(
                Pipe,
                Defect.SoundWallBeside,
                Defect.AxialLength,
                Length.Zero,
                Service.OperatingPressure,
                Pressure.FromMegapascals(309)
            )
        );
        var decision = TemporaryRepairDecision.Decide(new(Pipe, Defect, Service, Mm(2.8)));
        var rates = CorrosionRate.Assess(History);
        var life = RemainingLife.Forecast(rates.Result, Mm(2.8), InspectionInterval.For(3));
        var risk = RiskRanking.ToSign(
            new(
                Service,
                150,
                PeopleNearby.Walkway,
                ListedContents: false,
                LiquefiedFlammableGas: false,
                StrongAcidOrAlkali: false,
                ShipClassOne: false,
                IsolableWithinTenMinutes: true,
                Mass.FromKilograms(200),
                DrainsToWater: false
            ),
            new(
                Defect,
                Mm(2.8),
                WallMeasured: true,
                RepairStrength.SealOnly,
                Cyclic: false,
                EarlierLeaks: 0,
                Reinjections: 0
            ),
            new Standing()
        );
        var claims = MethodCatalogue.Claims(Pipe, Defect, Service);
        var sized = MethodCatalogue.All.Sum(m =>
            m.Size(new(Pipe, Defect, Service, m.Code == "laminate-wrap" ? Resin : defaults)).Working.Count
        );
        return needed.Working.Count
            + held.Working.Count
            + strength.Working.Count
            + axial.Working.Count
            + critical.Working.Count
            + decision.Findings.Count
            + life.Working.Count
            + risk.Working.Count
            + claims.Count
            + sized;
    }

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
