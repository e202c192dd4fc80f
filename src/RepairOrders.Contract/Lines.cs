using System.ComponentModel.DataAnnotations;
using System.Net.Http.Headers;
using System.Text;

namespace RepairOrders.Contract;

/// <summary>State of the fluid in the pipe.</summary>
public enum FluidState
{
    /// <summary>Liquid below its boiling point at atmospheric pressure.</summary>
    Liquid,

    /// <summary>Liquid above its boiling point at atmospheric pressure: it flashes when it leaks.</summary>
    FlashingLiquid,

    /// <summary>Gas.</summary>
    Gas,

    /// <summary>Steam.</summary>
    Steam,
}

/// <summary>Fluid service category of ASME B31.3, 300.2.</summary>
public enum ServiceCategory
{
    /// <summary>Category D: not flammable, not toxic, not harmful; up to 1035 kPa and −29 to 186 °C.</summary>
    D,

    /// <summary>Normal.</summary>
    Normal,

    /// <summary>Category M: one exposure to a very small amount can do serious lasting harm.</summary>
    M,

    /// <summary>High pressure.</summary>
    HighPressure,
}

/// <summary>What is kept of a line.</summary>
/// <param name="Area">The area, one of its site's.</param>
/// <param name="Section">The section, one of its area's.</param>
/// <param name="Nps">Nominal pipe size as printed, such as <c>6</c> or <c>2-1/2</c>; nothing for pipe that is not listed.</param>
/// <param name="Dn">Nominal diameter DN.</param>
/// <param name="OutsideDiameter">Outside diameter.</param>
/// <param name="NominalWall">Wall as ordered.</param>
/// <param name="Grade">Specification and grade, such as <c>ASTM A106 B</c>; nothing when nobody knows.</param>
/// <param name="Fluid">What flows.</param>
/// <param name="FluidState">Its state in the pipe.</param>
/// <param name="FluidGroup">Group 1 (hazardous) or 2 of Directive 2014/68/EU, Art. 13.</param>
/// <param name="ServiceCategory">Fluid service category.</param>
/// <param name="InspectionClass">API 570 class, 1 to 4.</param>
/// <param name="Flammable">It burns.</param>
/// <param name="Toxic">It poisons.</param>
/// <param name="AutoIgnition">Auto-ignition temperature of a flammable fluid.</param>
/// <param name="DesignPressure">Gauge pressure of design.</param>
/// <param name="DesignTemperature">Temperature of design.</param>
/// <param name="OperatingPressure">Gauge pressure in operation.</param>
/// <param name="OperatingTemperature">Temperature in operation.</param>
/// <param name="Lagged">It is lagged.</param>
/// <param name="Potable">Drinking water.</param>
/// <param name="SafetyCritical">Its duty protects people: fire water, emergency cooling.</param>
/// <param name="YearInstalled">Year it was installed.</param>
public sealed record LineDetails(
    [property: Required, StringLength(60)] string Area,
    [property: Required, StringLength(60)] string Section,
    [property: Display(Name = "NPS"), StringLength(10)] string? Nps,
    [property: Display(Name = "DN"), Range(6, 3000)] int? Dn,
    [property: Required, MeasuredIn("mm", Least = 5, Greatest = 3000)] Measure OutsideDiameter,
    [property: Required, MeasuredIn("mm", Least = 0.5, Greatest = 150)] Measure NominalWall,
    [property: StringLength(60)] string? Grade,
    [property: Required, StringLength(100)] string Fluid,
    FluidState FluidState,
    [property: Range(1, 2)] int FluidGroup,
    ServiceCategory ServiceCategory,
    [property: Range(1, 4)] int InspectionClass,
    bool Flammable,
    bool Toxic,
    [property: Display(Name = "Auto-ignition"), MeasuredIn("°C", Least = 0, Greatest = 1000)] Measure? AutoIgnition,
    [property: Required, MeasuredIn("bar", Least = -1, Greatest = 1000)] Measure DesignPressure,
    [property: Required, MeasuredIn("°C", Least = -200, Greatest = 900)] Measure DesignTemperature,
    [property: Required, MeasuredIn("bar", Least = -1, Greatest = 1000)] Measure OperatingPressure,
    [property: Required, MeasuredIn("°C", Least = -200, Greatest = 900)] Measure OperatingTemperature,
    bool Lagged,
    [property: Display(Name = "Drinking water")] bool Potable,
    [property: Display(Name = "Safety-critical")] bool SafetyCritical,
    [property: Range(1850, 2150)] int? YearInstalled
);

/// <summary>Adds a line to a site's line list.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Number">The line's number, one of its kind at the site; never changed.</param>
/// <param name="Details">What is kept of it.</param>
public sealed record AddLine(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(60, MinimumLength = 1)] string Number,
    [property: Display(Name = "Data of the line"), Required] LineDetails Details
);

/// <summary>A line of the line list.</summary>
/// <param name="Id">The line.</param>
/// <param name="Site">The site's short name.</param>
/// <param name="Number">The line's number.</param>
/// <param name="Details">What is kept of it.</param>
/// <param name="Retired">It is out of the list: no new order can name it.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
public sealed record LineView(Guid Id, string Site, string Number, LineDetails Details, bool Retired, string Version);

/// <summary>A page of the line list.</summary>
/// <param name="Rows">The lines, by number.</param>
/// <param name="Next">The key to ask for what follows; nothing at the end.</param>
public sealed record LinesView(IReadOnlyList<LineView> Rows, string? Next);

/// <summary>One thing that is wrong in a file of lines.</summary>
/// <param name="Row">The row of the file, the heading being row 1.</param>
/// <param name="Column">The column's heading; nothing where the whole row is meant.</param>
/// <param name="Sentence">What is wrong and what is allowed.</param>
public sealed record ImportProblem(int Row, string? Column, string Sentence);

/// <summary>The outcome of reading a file of lines.</summary>
/// <param name="Rows">Rows read.</param>
/// <param name="Added">Lines added; none in a dry run.</param>
/// <param name="NewSections">Areas and sections the file names that the site has not, as <c>area / section</c>.</param>
/// <param name="Problems">Everything that is wrong, by row and column.</param>
public sealed record LineImportView(
    int Rows,
    int Added,
    IReadOnlyList<string> NewSections,
    IReadOnlyList<ImportProblem> Problems
);

/// <summary>A wall a size is made in.</summary>
/// <param name="Schedule">Schedule or weight, as printed.</param>
/// <param name="Wall">Nominal wall, mm.</param>
public sealed record PipeWallView(string Schedule, double Wall);

/// <summary>A pipe size.</summary>
/// <param name="Nps">Nominal pipe size.</param>
/// <param name="Dn">Nominal diameter DN.</param>
/// <param name="OutsideDiameter">Outside diameter of ASME B36.10M, mm.</param>
/// <param name="EnOutsideDiameter">Outside diameter of EN 10220, mm; nothing where it is not listed.</param>
/// <param name="Walls">The walls it is made in.</param>
public sealed record PipeSizeView(
    string Nps,
    int Dn,
    double OutsideDiameter,
    double? EnOutsideDiameter,
    IReadOnlyList<PipeWallView> Walls
);

/// <summary>A grade of pipe.</summary>
/// <param name="Name">Specification and grade: <c>ASTM A106 B</c>.</param>
/// <param name="Family">The metal's family, in words.</param>
/// <param name="YieldStrength">Specified minimum yield strength, MPa; nothing for gray iron.</param>
/// <param name="TensileStrength">Specified minimum tensile strength, MPa.</param>
/// <param name="HottestListed">The hottest temperature an allowable stress is listed for, °C; nothing where none is.</param>
/// <param name="Brittle">The metal breaks without warning.</param>
/// <param name="Source">Where the strengths come from.</param>
public sealed record PipeGradeView(
    string Name,
    string Family,
    double? YieldStrength,
    double? TensileStrength,
    double? HottestListed,
    bool Brittle,
    string Source
);

public sealed partial class RepairOrdersClient
{
    /// <summary>The line list, by number.</summary>
    /// <param name="site">A site's short name; all the caller's sites where none is given.</param>
    /// <param name="search">Part of a number, fluid, area or section.</param>
    /// <param name="area">An area's name.</param>
    /// <param name="section">A section's name.</param>
    /// <param name="retired">Retired lines too.</param>
    /// <param name="after">The key of the page before.</param>
    /// <param name="limit">Rows wanted, at most 200.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The page.</returns>
    public Task<LinesView> Lines(
        string? site = null,
        string? search = null,
        string? area = null,
        string? section = null,
        bool retired = false,
        string? after = null,
        int limit = 50,
        CancellationToken stop = default
    ) =>
        Get<LinesView>(
            Asked(
                "lines",
                ("site", site),
                ("search", search),
                ("area", area),
                ("section", section),
                ("retired", retired ? "true" : null),
                ("after", after),
                ("limit", limit)
            ),
            stop
        );

    /// <summary>A line.</summary>
    /// <param name="id">The line.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The line.</returns>
    public Task<LineView> Line(Guid id, CancellationToken stop = default) => Get<LineView>($"lines/{id}", stop);

    /// <summary>Adds a line.</summary>
    /// <param name="ask">The line.</param>
    /// <returns>The line.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the number is taken.</exception>
    public Task<LineView> AddLine(AddLine ask) => Post<LineView>("lines", ask);

    /// <summary>Changes what is kept of a line; a retired one is back in the list.</summary>
    /// <param name="id">The line.</param>
    /// <param name="details">All of it.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The line.</returns>
    /// <exception cref="Refused">400 with fields, 412 when it changed since.</exception>
    public Task<LineView> ChangeLine(Guid id, LineDetails details, string version) =>
        Put<LineView>($"lines/{id}", details, version);

    /// <summary>Takes a line out of the list; its orders keep it.</summary>
    /// <param name="id">The line.</param>
    /// <param name="why">The reason.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>When it is done.</returns>
    public Task RetireLine(Guid id, string why, string version) => Delete<Nothing>($"lines/{id}", why, version);

    /// <summary>The changes of a line, oldest first.</summary>
    /// <param name="id">The line.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The changes.</returns>
    public Task<IReadOnlyList<ChangeView>> LineChanges(Guid id, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChangeView>>($"lines/{id}/changes", stop);

    /// <summary>Reads a CSV file of lines. All of it is taken or nothing.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="csv">The file, in UTF-8, with the headings of the template.</param>
    /// <param name="dryRun">Only say what is wrong.</param>
    /// <param name="newSections">Take areas and sections the site has not from the file.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The outcome.</returns>
    /// <exception cref="Refused">400 with every problem under its row and column, when it is no dry run.</exception>
    public async Task<LineImportView> ImportLines(
        string site,
        string csv,
        bool dryRun,
        bool newSections = false,
        string? key = null
    )
    {
        using var content = new ByteArrayContent(Encoding.UTF8.GetBytes(csv));
        content.Headers.ContentType = new MediaTypeHeaderValue("text/csv") { CharSet = "utf-8" };
        return await Post<LineImportView>(
                Asked(
                    "lines/import",
                    ("site", site),
                    ("dryRun", dryRun ? "true" : "false"),
                    ("newSections", newSections ? "true" : "false")
                ),
                content,
                key
            )
            .ConfigureAwait(false);
    }

    /// <summary>The empty file to fill with lines, with a commented example.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The file's text.</returns>
    public async Task<string> LineTemplate(CancellationToken stop = default)
    {
        using var response = await Send(HttpMethod.Get, "lines/template.csv", null, null, null, stop)
            .ConfigureAwait(false);
        return await response.Content.ReadAsStringAsync(stop).ConfigureAwait(false);
    }

    /// <summary>Every listed pipe size.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The sizes, smallest first.</returns>
    public Task<IReadOnlyList<PipeSizeView>> PipeSizes(CancellationToken stop = default) =>
        Get<IReadOnlyList<PipeSizeView>>("pipe-sizes", stop);

    /// <summary>Every listed grade of pipe.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The grades.</returns>
    public Task<IReadOnlyList<PipeGradeView>> PipeGrades(CancellationToken stop = default) =>
        Get<IReadOnlyList<PipeGradeView>>("pipe-grades", stop);
}
