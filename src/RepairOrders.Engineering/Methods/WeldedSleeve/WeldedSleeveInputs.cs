namespace RepairOrders.Engineering.Methods.WeldedSleeve;

/// <summary>What a welded sleeve must be told to be sized.</summary>
internal static class WeldedSleeveInputs
{
    public static readonly string[] Types = ["as the damage asks", "A, ends not welded", "B, ends welded"];

    public static readonly IReadOnlyList<Input> All =
    [
        CommonInputs.Pressure(400),
        CommonInputs.TestPressure(400),
        new("sleeveType", "-", "Type of sleeve", "-", 0, 2, 0, Sources.Chosen, Types),
        CommonInputs.InService,
        CommonInputs.Steel("sleeveAllowableMpa", "S", "Allowable stress of the sleeve", 137.9),
        CommonInputs.SeamEfficiency,
        new("sleeveThicknessMm", "ts", "Sleeve thickness; 0 lets the sizing set it", "mm", 0, 80, 0, Sources.Chosen),
        new(
            "sleeveAllowanceMm",
            "ca",
            "Corrosion allowance of the sleeve",
            "mm",
            0,
            20,
            1.5,
            Clause.Default("one short life")
        ),
        new("sleeveGapMm", "g", "Gap between pipe and sleeve", "mm", 0, 5, 1.5, Clause.Default("a good fit-up")),
        new(
            "sleeveCoverMm",
            "c",
            "Sleeve beyond the damage on each side",
            "mm",
            50,
            1000,
            50.8,
            new Clause("ASME PCC-2 Art. 206: two inches beyond, four inches long", "", Provenance.FromMemory)
        ),
        CommonInputs.Growth,
        CommonInputs.DesignLifeDays(730, 7300, Clause.Default("two years, then a survey")),
    ];
}
