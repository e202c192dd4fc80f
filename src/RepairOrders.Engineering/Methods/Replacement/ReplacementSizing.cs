using RepairOrders.Engineering.Strength;
using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.Replacement;

/// <summary>Sizes the new pipe: its wall by ASME B31.3, and its length into sound wall on both sides.</summary>
internal sealed class ReplacementSizing(Sheet s)
{
    private static readonly Clause Wall = new("ASME B31.3", "304.1.2, eq. (3a)");

    private static readonly string[] OwnCautions =
    [
        "Never cut before the line is proved dead at the cut. A line holds more than its gauge shows.",
        "A spool without calculation, drawing and supports has killed: nothing is fitted by eye.",
    ];

    public MethodDesign Design()
    {
        var D = s.Given("D", "outside diameter", s.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        var P = s.GreatestPressure();
        var temporary = s.Count("kind") == 1;
        var (S, ca, mill) = (s["spoolAllowableMpa"], s["spoolAllowanceMm"], s["millTolerancePercent"]);
        var Y = s.Given("Y", "wall coefficient", Coefficient, "-", new Clause("ASME B31.3", "Table 304.1.1"));
        var t = s.Optional("spoolWallMm") ?? s.Pipe.NominalWall.Millimeters;
        if (t >= D / 2)
            throw new ImpossibleInputException("spoolWallMm", Text($"{t:G6}"), Text($"less than half of {D:G6} mm"));
        var counts = s.Step(
            "tc",
            "wall that counts",
            "tn (1 − mt) − ca",
            $"{t} × (1 − {mill}/100) − {ca}",
            t * (1 - mill / 100) - ca,
            "mm",
            Wall
        );
        var need = s.Step(
            "t req",
            "wall required for pressure",
            "P D/(2 (S E W + P Y))",
            $"{P} × {D}/(2 × ({S} × {s.Pipe.QualityFactor} × 1 + {P} × {Y}))",
            RequiredWall.B313(Mpa(P), Mm(D), Mpa(S), s.Pipe.QualityFactor, 1, Y).Millimeters,
            "mm",
            Wall
        );
        s.Add(
            Finding.AtLeast(
                "spool-wall",
                "Wall of the new pipe that counts",
                counts,
                need,
                "mm",
                Wall,
                LimitKind.Absolute
            )
        );
        if (counts <= 0)
            s.Add(Finding.Refuse("spool-wall-none", "Tolerance and allowance leave no wall that counts.", Wall));
        s.Add(
            Finding.Watch(
                "structural-minimum",
                "Below about 20 bar the structural minimum of the piping class governs, not pressure.",
                new("API 574", "default minimum structural thickness", Provenance.FromMemory)
            )
        );
        return Spool(D, t, counts, S, Y, temporary);
    }

    private double Coefficient => RequiredWall.WallCoefficient(s.Pipe.Metal, s.Service.DesignTemperature);

    private MethodDesign Spool(double D, double t, double counts, double S, double Y, bool temporary)
    {
        var (damage, cut) = (s.Defect.AxialLength.Millimeters, s["cutBackMm"]);
        var length = s.Step(
            "L",
            "new pipe along the line",
            "max(D, d + 2 c)",
            $"max({D}, {damage} + 2 × {cut})",
            Math.Ceiling(Math.Max(D, damage + 2 * cut)),
            "mm",
            Sources.Geometry
        );
        return s.Design(
            [K.SpoolLength.Of(length), K.SpoolWall.Of(t)],
            counts > 0 ? Mawp.B313(Mm(D), Mm(counts), Mpa(S), s.Pipe.QualityFactor, 1, Y).Bars : 0,
            [
                new(
                    "pipe",
                    Text(
                        $"pipe {D:0.#} × {t:0.##} mm, {(temporary ? "temporary spool" : "grade as the line")}, {length:0} mm"
                    ),
                    length,
                    "mm",
                    "spool"
                ),
                new("weld", "butt welds, or couplings where the line is not welded", 2, "pcs", "weld"),
            ],
            [.. Cautions.Welding, .. OwnCautions],
            CureTimes.None,
            temporary ? s["designLifeDays"] : null,
            leastWallMm: 0,
            carriesAxialLoad: true
        );
    }
}
