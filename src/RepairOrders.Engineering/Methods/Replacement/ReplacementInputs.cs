namespace RepairOrders.Engineering.Methods.Replacement;

/// <summary>What a section replacement must be told to be sized.</summary>
internal static class ReplacementInputs
{
    public static readonly string[] Kinds = ["like for like", "temporary spool"];

    public static readonly IReadOnlyList<Input> All =
    [
        CommonInputs.Pressure(1000),
        CommonInputs.TestPressure(1500),
        new("kind", "-", "New pipe", "-", 0, 1, 0, Sources.Chosen, Kinds),
        new("spoolWallMm", "tn", "Wall of the new pipe; 0 takes the nominal wall", "mm", 0, 200, 0, Sources.Chosen),
        CommonInputs.Steel("spoolAllowableMpa", "S", "Allowable stress of the new pipe", 137.9),
        new(
            "spoolAllowanceMm",
            "ca",
            "Corrosion allowance of the new pipe",
            "mm",
            0,
            20,
            1.5,
            Clause.Default("ask the piping class")
        ),
        new(
            "millTolerancePercent",
            "mt",
            "Mill tolerance of the new pipe",
            "%",
            0,
            20,
            12.5,
            new Clause("ASTM A106 and API 5L seamless", "", Provenance.FromMemory)
        ),
        new(
            "cutBackMm",
            "c",
            "Cut beyond the damage on each side, into sound wall",
            "mm",
            0,
            5000,
            100,
            Clause.Default("room for the weld and its heat")
        ),
        CommonInputs.DesignLifeDays(365, 3650, new Clause("of a temporary spool: a year", "", Provenance.OwnRule)),
    ];
}
