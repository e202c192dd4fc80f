using RepairOrders.Engineering.Joints;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>What a bolted clamp must be told to be sized.</summary>
internal static class BoltedClampInputs
{
    /// <summary>Gasket factor and seating stress (MPa) of the seals to choose from.</summary>
    public static readonly (string Name, double Factor, double SeatingMpa)[] Seals =
    [
        ("elastomer below 75 Shore A", 0.5, 0),
        ("elastomer of 75 Shore A and more", 1.0, 1.4),
    ];

    public static readonly IReadOnlyList<Input> All = [.. Load, .. Seal, .. Bolt, .. Body];

    private static Clause Gaskets => new("ASME VIII-1 Appendix 2, gasket table", "", Provenance.FromMemory);

    private static Clause B7 => new("ASTM A193 B7", "", Provenance.FromMemory);

    private static Clause DrySteel => new("fastener supplier's note, dry steel on dry steel", "T = K D F ranges");

    private static Input[] Load =>
        [
            CommonInputs.Pressure(400),
            CommonInputs.TestPressure(400),
            new(
                "injectionPressureBar",
                "Pi",
                "Greatest pressure of injected sealant; 0 where none is injected",
                "bar",
                0,
                400,
                0,
                Sources.Chosen
            ),
            CommonInputs.Growth,
            CommonInputs.DesignLifeDays(
                180,
                3650,
                new Clause("until the next stop, half a year", "", Provenance.OwnRule)
            ),
        ];

    private static Input[] Seal =>
        [
            new("seal", "-", "Seal", "-", 0, 1, 1, Sources.Chosen, [.. Seals.Select(s => s.Name)]),
            new(
                "sealTemperatureC",
                "Ts",
                "Temperature the seal stands",
                "°C",
                20,
                400,
                90,
                Clause.Default("a nitrile seal")
            ),
            new("sealWidthMm", "N", "Width of the seal", "mm", 3, 100, 12, Sources.Chosen),
            new(
                "sealEffectiveWidthMm",
                "b",
                "Effective width of one seal line",
                "mm",
                1,
                50,
                6,
                new Clause("ASME VIII-1 Appendix 2: half the width where narrow", "", Provenance.FromMemory)
            ),
            new(
                "sealCoverMm",
                "c",
                "Sound pipe between the damage and the middle of an end seal",
                "mm",
                25,
                1000,
                50.8,
                Sources.PuttyCover
            ),
            new(
                "sealDiameterMm",
                "Ds",
                "Diameter the seals bear on; 0 takes the outside diameter",
                "mm",
                0,
                10_000,
                0,
                Sources.Chosen
            ),
        ];

    private static Input[] Bolt =>
        [
            new(
                "bolt",
                "-",
                "Bolt",
                "-",
                0,
                MetricBolt.All.Count,
                0,
                Sources.Chosen,
                ["as the load asks", .. MetricBolt.All.Select(b => b.Name)]
            ),
            new("boltAllowableMpa", "Sb", "Allowable stress of the bolts in service", "MPa", 30, 500, 172, B7),
            new("boltYieldMpa", "Sy", "Yield of the bolts", "MPa", 100, 1200, 720, B7),
            new("nutFactorLow", "K low", "Nut factor, least", "-", 0.05, 1, 0.18, DrySteel),
            new("nutFactorHigh", "K high", "Nut factor, greatest", "-", 0.05, 1, 0.27, DrySteel),
            new(
                "preloadKept",
                "η",
                "Share of the preload left after the seal has settled",
                "-",
                0.3,
                1,
                0.7,
                Clause.Default("no published value was found")
            ),
        ];

    private static Input[] Body =>
        [
            CommonInputs.Steel("shellAllowableMpa", "S", "Allowable stress of the shell", 137.9),
            new(
                "shellAllowanceMm",
                "ca",
                "Corrosion allowance of the shell",
                "mm",
                0,
                20,
                1.5,
                Clause.Default("one short life")
            ),
            new(
                "restraint",
                "-",
                "Restraint against parting",
                "-",
                0,
                1,
                0,
                Sources.Chosen,
                ["none", "tie rods or grips"]
            ),
            new("restraintKn", "Fr", "End load the restraint is made for", "kN", 0, 100_000, 0, Sources.Chosen),
        ];
}
