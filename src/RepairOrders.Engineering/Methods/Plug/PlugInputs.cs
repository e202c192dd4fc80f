namespace RepairOrders.Engineering.Methods.Plug;

/// <summary>What a plug must be told to be sized.</summary>
internal static class PlugInputs
{
    public static readonly IReadOnlyList<Input> All =
    [
        CommonInputs.Pressure(100),
        CommonInputs.TestPressure(100),
        new(
            "soundEdgeMm",
            "e",
            "Metal to drill away round the hole until the edge is sound",
            "mm",
            0,
            20,
            1,
            Clause.Default("a ragged edge")
        ),
        new(
            "leastThreads",
            "nt",
            "Threads that must bear",
            "-",
            2,
            20,
            3,
            Clause.Default("fewer strip when the plug is turned home")
        ),
        CommonInputs.Growth,
        CommonInputs.DesignLifeDays(
            30,
            365,
            new Clause("a month: it only reduces the hole before a patch", "", Provenance.OwnRule)
        ),
    ];
}
