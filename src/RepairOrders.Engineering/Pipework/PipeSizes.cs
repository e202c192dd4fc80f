using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>Sizes and walls of steel pipe, and the outside diameters of other families. What is not listed is not guessed.</summary>
public static class PipeSizes
{
    private const string AsmeFamily = "ASME B36.10M steel";

    private static readonly Clause Asme = new(
        "ASME B36.10M / B36.19M, from an open fluid-dynamics library's tables",
        ""
    );
    private static readonly Clause Tolerance = new("EN 10216-2", "outside diameter tolerance", Provenance.FromMemory);
    private static readonly Clause Geometry = new("geometry", "circle", Provenance.Derived);

    /// <summary>Every size of ASME B36.10M and B36.19M that is listed, NPS 1/2 to 48.</summary>
    public static IReadOnlyList<PipeSize> All { get; } = ReadSizes();

    /// <summary>Outside diameters of every family: steel (ASME, EN), ductile and cast iron, copper-nickel.</summary>
    public static IReadOnlyList<FamilyDiameter> Diameters { get; } = ReadDiameters();

    /// <summary>Finds a size by nominal pipe size.</summary>
    /// <param name="nps">Such as <c>6</c>, <c>2-1/2</c>, <c>2 1/2</c> or <c>2.5</c>.</param>
    /// <returns>The size; nothing where it is not listed.</returns>
    public static PipeSize? ByNps(string nps) =>
        Inches(nps) is { } wanted ? All.FirstOrDefault(s => Inches(s.Nps) == wanted) : null;

    /// <summary>Finds a size by nominal diameter.</summary>
    /// <param name="dn">DN, such as 150.</param>
    /// <returns>The size; nothing where it is not listed.</returns>
    public static PipeSize? ByDn(int dn) => All.FirstOrDefault(s => s.Dn == dn);

    /// <summary>Finds the smallest listed size whose outside diameter is that of the pipe, or the next one above it.</summary>
    /// <param name="outsideDiameter">Outside diameter.</param>
    /// <returns>The size; nothing above the largest.</returns>
    public static PipeSize? AtOrAbove(Length outsideDiameter) =>
        All.FirstOrDefault(s => s.OutsideDiameter.Millimeters * 1.005 >= outsideDiameter.Millimeters);

    /// <summary>Outside diameter from a girth measured with a tape, by geometry.</summary>
    /// <remarks>
    /// <para>Formula: D = g / π</para>
    /// <para>Symbols: D outside diameter, mm; g girth, mm.</para>
    /// <para>Validity: a round pipe, the tape on bare metal and square to the axis; over paint or scale the answer is too large.</para>
    /// <para>Reference: geometry of the circle.</para>
    /// </remarks>
    /// <param name="girth">Girth g.</param>
    /// <returns>Outside diameter D.</returns>
    /// <exception cref="ImpossibleInputException">The girth is not a finite number above 0.</exception>
    /// <example>g 528.7 mm: D = 168.29 mm, a DN 150 pipe.</example>
    public static Length OutsideDiameterFromGirth(Length girth) =>
        Length.FromMillimeters(Require.Positive("girthMm", girth.Millimeters) / Math.PI);

    /// <summary>Reads a measured girth: the outside diameter, and the listed diameters it may be.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="OutsideDiameterFromGirth"/>; a listed diameter matches within the larger of 1 % and 0.5 mm.</para>
    /// <para>Symbols: those of <see cref="OutsideDiameterFromGirth"/>.</para>
    /// <para>Validity: as <see cref="OutsideDiameterFromGirth"/>. No match is chosen: a clamp for 73.0 mm does not seal on 76.1 mm.</para>
    /// <para>Reference: EN 10216-2, tolerance of the outside diameter (from memory).</para>
    /// </remarks>
    /// <param name="girth">Girth.</param>
    /// <returns>Listed diameters near the measured one, nearest first.</returns>
    /// <exception cref="ImpossibleInputException">The girth is not a finite number above 0.</exception>
    /// <example>g 239 mm: D = 76.08 mm; EN 10220 series 1, 76.1 mm (not the 73.0 mm of ASME NPS 2-1/2).</example>
    public static Calculated<IReadOnlyList<DiameterMatch>> FromGirth(Length girth)
    {
        var D = OutsideDiameterFromGirth(girth).Millimeters;
        var working = new Working();
        var g = working.Given("g", "girth, measured", girth.Millimeters, "mm", Geometry);
        working.Step("D", "outside diameter", "g / π", $"{g} / π", D, "mm", Geometry);
        var matches = Diameters
            .Select(d => new DiameterMatch(d, Length.FromMillimeters(D - d.OutsideDiameter.Millimeters)))
            .Where(m => Math.Abs(m.Difference.Millimeters) <= Math.Max(0.01 * D, 0.5))
            .OrderBy(m => Math.Abs(m.Difference.Millimeters))
            .ToList();
        return new(matches, working, [GirthFinding(D, matches)], []);
    }

    /// <summary>Looks up a wall by size and schedule, with the traps of the size named.</summary>
    /// <param name="size">The size.</param>
    /// <param name="schedule">Schedule or weight.</param>
    /// <returns>The findings: <c>schedule-not-listed</c> where there is no such wall, <c>schedule-trap</c> where a like-sounding one differs.</returns>
    public static IReadOnlyList<Finding> WallFindings(PipeSize size, string schedule)
    {
        ArgumentNullException.ThrowIfNull(size);
        if (size.Wall(schedule) is not { } wall)
        {
            var listed = string.Join(", ", size.Walls.Select(w => w.Schedule));
            return
            [
                new(
                    "schedule-not-listed",
                    Severity.Fail,
                    $"NPS {size.Nps} is not listed in schedule {schedule}; listed are {listed}. Measure the wall.",
                    null,
                    null,
                    null,
                    Asme,
                    LimitKind.Absolute
                ),
            ];
        }
        return
        [
            .. Twins(wall.Schedule)
                .Select(size.Wall)
                .OfType<ScheduleWall>()
                .Where(t => !t.Wall.Equals(wall.Wall, Length.FromMicrometers(1)))
                .Select(t => Trap(size, wall, t)),
        ];
    }

    /// <summary>Mass of plain steel pipe by length, by EN 10220.</summary>
    /// <remarks>
    /// <para>Formula: m = 0.0246615 (D − t) t</para>
    /// <para>Symbols: m mass by length, kg/m; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: carbon steel of 7.85 kg/dm³; austenitic × 1.015, ferritic and martensitic stainless × 0.985.</para>
    /// <para>Reference: EN 10220, mass formula.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t, less than D/2.</param>
    /// <returns>Mass by length m.</returns>
    /// <exception cref="ImpossibleInputException">Diameter or wall is not above 0, or the wall is D/2 or more.</exception>
    /// <example>D 168.3 mm, t 7.11 mm: m = 28.26 kg/m.</example>
    public static LinearDensity MassByLength(Length outsideDiameter, Length wall)
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        return LinearDensity.FromKilogramsPerMeter(0.0246615 * (D - t) * t);
    }

    private static Finding GirthFinding(double D, List<DiameterMatch> matches) =>
        matches.Count switch
        {
            0 => new(
                "diameter-not-listed",
                Severity.Watch,
                $"No listed pipe is {Shown(D)} mm within 1 %: fit to the measured diameter, and measure again.",
                D,
                null,
                "mm",
                Tolerance
            ),
            _ when matches.Select(m => m.Listed.OutsideDiameter.Millimeters).Distinct().Count() > 1 => new(
                "diameter-ambiguous",
                Severity.Watch,
                $"{Shown(D)} mm may be {string.Join(" or ", matches.Select(m => $"{Shown(m.Listed.OutsideDiameter.Millimeters)} ({m.Listed.Family})"))}: fit to the measured diameter.",
                D,
                null,
                "mm",
                Tolerance
            ),
            _ => new(
                "diameter-listed",
                Severity.Pass,
                $"{Shown(D)} mm is the listed {Shown(matches[0].Listed.OutsideDiameter.Millimeters)} mm.",
                D,
                matches[0].Listed.OutsideDiameter.Millimeters,
                "mm",
                Tolerance
            ),
        };

    private static string Shown(double millimetres) => millimetres.ToString("0.0", CultureInfo.InvariantCulture);

    // Pairs that are taken for one another because they are equal in the small sizes.
    private static IEnumerable<string> Twins(string schedule) =>
        schedule switch
        {
            "STD" => ["40"],
            "40" => ["STD", "40S"],
            "40S" => ["40"],
            "XS" => ["80"],
            "80" => ["XS", "80S"],
            "80S" => ["80"],
            "XXS" => ["160"],
            "160" => ["XXS"],
            "10" => ["10S"],
            "10S" => ["10"],
            "5" => ["5S"],
            "5S" => ["5"],
            _ => [],
        };

    private static Finding Trap(PipeSize size, ScheduleWall wall, ScheduleWall twin) =>
        new(
            "schedule-trap",
            Severity.Watch,
            string.Create(
                CultureInfo.InvariantCulture,
                $"At NPS {size.Nps} schedule {wall.Schedule} is {wall.Wall.Millimeters:0.00} mm but {twin.Schedule} is {twin.Wall.Millimeters:0.00} mm: check which is meant."
            ),
            wall.Wall.Millimeters,
            twin.Wall.Millimeters,
            "mm",
            Asme
        );

    private static double? Inches(string? nps)
    {
        var parts = (nps ?? "").Trim().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries);
        var values = parts.Select(Fraction).ToList();
        return values.Count is 0 or > 2 || values.Contains(null) ? null : values.Sum();
    }

    private static double? Fraction(string text)
    {
        var numbers = text.Split('/')
            .Select(p =>
                double.TryParse(p, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var n)
                    ? n
                    : double.NaN
            )
            .ToArray();
        return numbers switch
        {
            [var whole] when double.IsFinite(whole) => whole,
            [var over, var under] when under > 0 => over / under,
            _ => null,
        };
    }

    private static List<PipeSize> ReadSizes()
    {
        var table = EmbeddedTable.Read("pipe-dimensions.csv");
        var schedules = table
            .Columns.Where(c => c.StartsWith("t_", StringComparison.Ordinal))
            .Select(c => c[2..^3])
            .ToList();
        return [.. table.Rows.Select(row => ReadSize(row, schedules))];
    }

    private static PipeSize ReadSize(EmbeddedTable.Row row, IEnumerable<string> schedules) =>
        new(
            row["nps"],
            (int)row.Number("dn")!.Value,
            Length.FromMillimeters(row.Number("od_mm")!.Value),
            Millimetres(row.Number("od_b3619m_mm")),
            Millimetres(row.Number("en10220_od_mm")),
            (int?)row.Number("en10220_series"),
            [
                .. schedules
                    .Where(s => row.Number($"t_{s}_mm") is not null)
                    .Select(s => new ScheduleWall(s, Length.FromMillimeters(row.Number($"t_{s}_mm")!.Value))),
            ]
        );

    private static Length? Millimetres(double? value) => value is { } v ? Length.FromMillimeters(v) : null;

    private static List<FamilyDiameter> ReadDiameters() =>
        [
            .. All.Select(s => new FamilyDiameter(AsmeFamily, $"NPS {s.Nps}", s.OutsideDiameter, Asme)),
            .. EmbeddedTable
                .Read("od-series.csv")
                .Rows.Select(r => new FamilyDiameter(
                    r["standard"],
                    r["size"],
                    Length.FromMillimeters(r.Number("od_mm")!.Value),
                    SourceOf(r)
                )),
        ];

    private static Clause SourceOf(EmbeddedTable.Row row) =>
        new(
            row["source"],
            row["standard"],
            row["provenance"] == "memory" ? Provenance.FromMemory : Provenance.Published
        );
}
