namespace RepairOrders.Engineering.Methods.WeldedPatch;

/// <summary>What a welded patch must be told to be sized.</summary>
internal static class WeldedPatchInputs
{
    public static readonly IReadOnlyList<Input> All =
    [
        CommonInputs.Pressure(400),
        CommonInputs.TestPressure(400),
        CommonInputs.InService,
        CommonInputs.Steel("patchAllowableMpa", "Sp", "Allowable stress of the patch", 137.9),
        new("patchThicknessMm", "tp", "Patch thickness; 0 lets the sizing set it", "mm", 0, 60, 0, Sources.Chosen),
        new(
            "patchEdgeMm",
            "c",
            "Sound metal under the patch beyond the damage",
            "mm",
            10,
            500,
            20,
            Clause.Default("room for the fillet")
        ),
        new("cornerRadiusMm", "rc", "Radius of the corners", "mm", 3, 200, 15, Sources.Chosen),
        new(
            "filletEfficiency",
            "E",
            "Efficiency of the fillet weld",
            "-",
            0.3,
            1,
            0.55,
            new Clause("ASME PCC-2 Art. 212", "", Provenance.FromMemory)
        ),
        CommonInputs.Growth,
        CommonInputs.DesignLifeDays(365, 7300, Clause.Default("a year, then a survey")),
    ];
}
