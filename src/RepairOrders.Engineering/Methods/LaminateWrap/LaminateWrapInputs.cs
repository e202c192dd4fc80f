namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>What a laminate wrap must be told to be sized. Strength of resin and bond come from the qualification; there is no default for them.</summary>
internal static class LaminateWrapInputs
{
    public static readonly IReadOnlyList<Input> All = [.. Load, .. Damage, .. Laminate, .. Bond, .. Work];

    private static Clause Judged(string why) => Clause.Default(why);

    private static Clause Qualified => new("qualification report of the resin and cloth", "", Provenance.Entered);

    private static Clause GlassCloth => new("usual glass cloth and epoxy", "", Provenance.FromMemory);

    private static Input[] Load =>
        [
            CommonInputs.Pressure(400),
            CommonInputs.TestPressure(400),
            new(
                "temperatureC",
                "Td",
                "Greatest temperature while it is live; 0 takes the design temperature",
                "°C",
                0,
                300,
                0,
                Sources.Chosen
            ),
            new("cureTemperatureC", "T1", "Steel temperature at cure", "°C", 0, 200, 20, Judged("room temperature")),
            new("axialLoadKn", "F", "Axial tension; 0 takes the pressure thrust", "kN", 0, 100_000, 0, Sources.Chosen),
            new("cycles", "Nc", "Pressure cycles in the design life", "-", 0, 1e8, 0, Judged("steady pressure")),
            new("pressureRatio", "Rc", "Least over greatest pressure of a cycle", "-", 0, 1, 0, Judged("full cycles")),
            new("designLifeYears", "y", "Design life", "years", 0.1, 20, 2, Judged("the shortest life printed")),
        ];

    private static Input[] Damage =>
        [
            CommonInputs.Growth,
            new(
                "holeAtEndMm",
                "d",
                "Hole at the end of life, where it is largest; 0 takes the hole and twice the growth",
                "mm",
                0,
                1000,
                0,
                Sources.Chosen
            ),
            new(
                "slotWidthMm",
                "W",
                "Least width of a long or irregular hole at the end of life; 0 for a round one",
                "mm",
                0,
                1000,
                0,
                Sources.Chosen
            ),
            new(
                "basis",
                "-",
                "Wall that is left",
                "-",
                0,
                1,
                0,
                Sources.Chosen,
                ["may yield, by strain", "stays elastic"]
            ),
        ];

    private static Input[] Laminate =>
        [
            new("hoopModulusGpa", "Ec", "Hoop modulus of the laminate", "GPa", 2, 300, 24, GlassCloth),
            new("axialModulusGpa", "Ea", "Axial modulus of the laminate", "GPa", 2, 300, 12, GlassCloth),
            new("shearModulusGpa", "G", "Shear modulus of the laminate", "GPa", 0.5, 50, 3, GlassCloth),
            new("poisson", "ν", "Poisson's ratio of the laminate", "-", 0, 0.5, 0.3, GlassCloth),
            new("laminateExpansion", "αc", "Expansion of the laminate", "10⁻⁶/K", 0, 60, 18, GlassCloth),
            new("plyThicknessMm", "tp", "Thickness of a ply", "mm", 0.1, 3, 0.6, GlassCloth),
            new(
                "strainPercent",
                "ε0",
                "Sustained strain of the qualification; 0 takes the class 3 value for the life",
                "%",
                0,
                1,
                0,
                Sources.Chosen
            ),
        ];

    private static Input[] Bond =>
        [
            new(
                "softeningC",
                "Tg",
                "Glass transition, or heat distortion, as cured on site",
                "°C",
                30,
                350,
                null,
                Qualified
            ),
            new(
                "softeningBasis",
                "-",
                "That temperature is the",
                "-",
                0,
                1,
                0,
                Sources.Chosen,
                ["glass transition", "heat distortion"]
            ),
            new("lapShearMpa", "τ", "Lap shear strength, hot and wet", "MPa", 0.5, 50, null, Qualified),
            new(
                "toughnessJm2",
                "γ",
                "Toughness of the bond, lower confidence value; needed over a hole",
                "J/m²",
                0,
                5000,
                0,
                Qualified
            ),
        ];

    private static Input[] Work =>
        [
            new("clothWastePercent", "w", "Cloth and resin waste", "%", 0, 100, 15, Judged("hand lay-up")),
            new(
                "resinGPerM2",
                "R",
                "Mixed resin for a square metre of ply",
                "g/m²",
                50,
                6000,
                3100,
                new Clause("US Army TM 55-1905-223-SDC", "8-18: 2 g for each square inch of cloth")
            ),
            new("setForLoadH", "h set", "Set for load", "h", 0.1, 240, 8, Judged("ask the maker")),
            new("fullHardnessH", "h full", "Full hardness", "h", 0.1, 1000, 24, Clause.CommonPractice),
            new(
                "cureReferenceC",
                "T ref",
                "Temperature both times are stated at",
                "°C",
                5,
                150,
                25,
                Judged("a laboratory")
            ),
        ];
}
