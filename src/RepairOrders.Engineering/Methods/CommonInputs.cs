namespace RepairOrders.Engineering.Methods;

/// <summary>Inputs that several methods ask for in the same words.</summary>
internal static class CommonInputs
{
    /// <summary>The pressure to size for; the design pressure where nothing is given.</summary>
    public static Input Pressure(double maximumBar) =>
        new(
            "pressureBar",
            "P",
            "Greatest pressure at the repair: operating, surge, static head; 0 takes the design pressure",
            "bar",
            0,
            maximumBar,
            0,
            Sources.Chosen
        );

    public static Input TestPressure(double maximumBar) =>
        new(
            "testPressureBar",
            "Pt",
            "Test pressure; 0 tests at the pressure above",
            "bar",
            0,
            maximumBar,
            0,
            Sources.Chosen
        );

    public static Input DesignLifeDays(double days, double maximum, Clause source) =>
        new("designLifeDays", "life", "Design life", "d", 1, maximum, days, source);

    /// <summary>Growth of the damage under a repair, for the wall at the end of its life.</summary>
    public static Input Growth { get; } =
        new(
            "growthMmPerYear",
            "CR",
            "Growth of the damage under the repair",
            "mm/year",
            0,
            20,
            0,
            Clause.Default("the cause is stopped")
        );

    public static Input Steel(string code, string symbol, string words, double allowableMpa) =>
        new(code, symbol, words, "MPa", 10, 500, allowableMpa, CarbonSteelAllowable);

    /// <summary>Efficiency of a weld that was looked at and not radiographed.</summary>
    public static Input SeamEfficiency { get; } =
        new(
            "seamEfficiency",
            "E",
            "Efficiency of the long seam",
            "-",
            0.5,
            1,
            0.8,
            new Clause("ASME B31.3 302.3.4, seam without full radiography", "", Provenance.FromMemory)
        );

    public static Input InService { get; } =
        new(
            "inService",
            "-",
            "Welded while the line is in service",
            "-",
            0,
            1,
            0,
            Sources.Chosen,
            ["no, isolated and drained", "yes"]
        );

    private static Clause CarbonSteelAllowable => new("ASME B31.3 Table A-1, A106 B to 38 °C", "20 ksi");
}
