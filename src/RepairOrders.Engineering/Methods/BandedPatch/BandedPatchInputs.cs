namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>What a banded patch must be told to be sized.</summary>
internal static class BandedPatchInputs
{
    public const double AnnealedYieldMpa = 205;

    public static readonly string[] PlateForms = ["as the size asks", "arc", "full circle"];

    public static readonly (string Name, double DiameterMm, double StressAreaMm2)[] Screws =
    [
        ("M5", 5, 14.2),
        ("M6", 6, 20.1),
        ("M8", 8, 36.6),
        ("M10", 10, 58.0),
        ("M12", 12, 84.3),
    ];

    public static readonly IReadOnlyList<Input> All = [.. Load, .. Putty, .. Plate, .. Band, .. Fastener, .. Time];

    private static Clause Judged(string why) => Clause.Default(why);

    private static Input[] Load =>
        [
            CommonInputs.Pressure(100),
            CommonInputs.TestPressure(100),
            new(
                "fitTemperatureC",
                "T1",
                "Steel temperature at fitting",
                "°C",
                -40,
                93,
                15,
                Judged("a shaded pipe out of doors")
            ),
        ];

    private static Input[] Putty =>
        [
            new(
                "puttyFactor",
                "m",
                "Putty factor: seal stress over pressure",
                "-",
                0.5,
                3,
                1,
                new Clause("ASME VIII-1 Appendix 2, gasket table: harder elastomer", "", Provenance.FromMemory)
            ),
            new("puttyThicknessMm", "tp", "Putty as applied", "mm", 1, 15, 3, Sources.Chosen),
            new("puttySqueezeMm", "q", "Putty squeezed out under the plate", "mm", 0, 10, 1, Judged("a third of 3 mm")),
            new(
                "puttyDensityGCm3",
                "ρ",
                "Putty density",
                "g/cm³",
                1,
                4,
                1.9,
                new Clause("usual filled epoxy, 1.6 to 2.2 g/cm³", "", Provenance.FromMemory)
            ),
            new("puttyWastePercent", "w", "Putty waste", "%", 0, 100, 15, Judged("hand mixing")),
            new("stickMassG", "ms", "Mass of a stick of putty", "g", 10, 5000, 114, Sources.Chosen),
        ];

    private static Input[] Plate =>
        [
            new("plateForm", "-", "Plate", "-", 0, 2, 0, Sources.Chosen, PlateForms),
            new(
                "plateThicknessMm",
                "t",
                "Plate thickness",
                "mm",
                0.2,
                10,
                0.4,
                Clause.CommonPractice with
                {
                    Paragraph = "0.3 to 0.4 mm stainless sheet",
                }
            ),
            new("plateYieldMpa", "Sp", "Yield of the plate", "MPa", 100, 700, 205, Annealed),
            new(
                "largestDiameterMm",
                "Dmax",
                "Largest diameter of an oval pipe; 0 takes the outside diameter",
                "mm",
                0,
                20_000,
                0,
                Judged("a round pipe")
            ),
        ];

    private static Input[] Band =>
        [
            new("bandWidthMm", "w", "Band width", "mm", 5, 150, 30, Sources.Chosen),
            new("bandThicknessMm", "tb", "Band thickness", "mm", 0.3, 5, 1.5, Sources.Chosen),
            new("bandGapMm", "g", "Least gap between bands", "mm", 1, 50, 2, Sources.Chosen),
            new(
                "bandYieldMpa",
                "Sy",
                "Yield of the band, by certificate where above 205",
                "MPa",
                100,
                700,
                205,
                Annealed
            ),
            new("bandModulusGpa", "Eb", "Modulus of the band", "GPa", 60, 220, 193, PipeFacts.MetalData),
            new("bandExpansion", "αb", "Expansion of the band", "10⁻⁶/K", 5, 25, 16.5, PipeFacts.MetalData),
            new("wraps", "N", "Turns of each band", "-", 1, 3, 1, Sources.Chosen),
            new(
                "innerTurnMeasured",
                "-",
                "Tension of the inner turns measured",
                "-",
                0,
                1,
                0,
                Sources.Chosen,
                ["no", "yes"]
            ),
            new(
                "preloadKept",
                "η",
                "Share of the tension left after putty creep and embedding",
                "-",
                0.3,
                1,
                0.7,
                Judged("no published value was found")
            ),
            new(
                "friction",
                "μ",
                "Friction of band on plate and pipe",
                "-",
                0.1,
                1,
                0.3,
                new Clause("steel on steel 0.15 to 0.3, the upper for capacity", "", Provenance.FromMemory)
            ),
            new("coilLengthMm", "l", "Length of the coil or remnant", "mm", 200, 200_000, 30_000, Sources.Chosen),
            new("spliceOverlapMm", "s", "Overlap of a splice", "mm", 10, 190, 80, Sources.Chosen),
            new("overlapMm", "Lo", "Overlap at a fastener", "mm", 0, 300, 60, Sources.Chosen),
            new("tailMm", "Lt", "Tail to pull on", "mm", 0, 300, 40, Sources.Chosen),
        ];

    private static Input[] Fastener =>
        [
            new("fastenersRound", "k", "Tightened fasteners round each band", "-", 1, 6, 2, Sources.Chosen),
            new(
                "fastenerAngleDeg",
                "θ",
                "Middle of the plate to the nearest tightened fastener",
                "°",
                0,
                180,
                180,
                Sources.Chosen
            ),
            new(
                "fastenerKind",
                "-",
                "Fastener",
                "-",
                0,
                2,
                0,
                Clause.CommonPractice with
                {
                    Paragraph = "straight screw, hexagon driver",
                },
                ["one straight screw", "two straight screws", "worm drive"]
            ),
            new("screw", "d", "Screw", "-", 0, 4, 2, Sources.Chosen, [.. Screws.Select(s => s.Name)]),
            new(
                "screwProofMpa",
                "Rp",
                "Proof stress of the screw",
                "MPa",
                200,
                1100,
                450,
                new Clause("ISO 3506, stainless class 70", "", Provenance.FromMemory)
            ),
            new(
                "jointEfficiency",
                "e",
                "Strength of the fastener's or splice's grip over that of the band",
                "-",
                0.3,
                1,
                0.8,
                Judged("ask the maker or test one")
            ),
            new(
                "tensionBasis",
                "-",
                "Band tension known by",
                "-",
                0,
                1,
                0,
                Sources.Chosen,
                ["torque and nut factor", "measured tension"]
            ),
            new("torqueNm", "M", "Torque on each screw; 0 lets the sizing set it", "N m", 0, 500, 0, Sources.Chosen),
            new("nutFactorLow", "K low", "Nut factor, least", "-", 0.05, 1, 0.3, StainlessDry),
            new("nutFactorHigh", "K high", "Nut factor, greatest", "-", 0.05, 1, 0.5, StainlessDry),
            new("tensionLowN", "T low", "Measured band tension, least", "N", 0, 500_000, 0, Judged("not measured")),
            new(
                "tensionHighN",
                "T high",
                "Measured band tension, greatest",
                "N",
                0,
                500_000,
                0,
                Judged("not measured")
            ),
        ];

    private static Input[] Time =>
        [
            new("setForLoadH", "h set", "Set for load", "h", 0.05, 240, 0.25, Tack),
            new("fullHardnessH", "h full", "Full hardness", "h", 0.1, 1000, 24, Clause.CommonPractice),
            new("cureReferenceC", "T ref", "Temperature both times are stated at", "°C", 5, 60, 30, Tack),
            CommonInputs.DesignLifeDays(90, 730, Expedient),
        ];

    private static Clause Annealed => new("ASTM A240, annealed 304 and 316", "minimum yield");

    private static Clause StainlessDry =>
        new("fastener supplier's note, 302 stainless on 302 stainless", "T = K D F ranges");

    private static Clause Tack =>
        Clause.CommonPractice with
        {
            Paragraph = "tack-free about 15 minutes at 30 °C; the material's own statement replaces it",
        };

    private static Clause Expedient =>
        new("an emergency expedient, replaced soon; a season at most", "", Provenance.OwnRule);
}
