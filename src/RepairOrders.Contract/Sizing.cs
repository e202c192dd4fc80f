using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RepairOrders.Contract;

/// <summary>A value for a method's input as it was typed: a number in the input's own unit, or text with a unit.</summary>
/// <param name="Text">What was typed.</param>
[JsonConverter(typeof(InputValueConverter))]
public sealed record InputValue(string Text)
{
    /// <summary>A number in the input's own unit.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator InputValue(double value) => FromDouble(value);

    /// <summary>Text with a unit.</summary>
    /// <param name="text">The text.</param>
    public static implicit operator InputValue(string text) => new(text);

    /// <summary>A number in the input's own unit.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The value.</returns>
    public static InputValue FromDouble(double value) => new(value.ToString("R", CultureInfo.InvariantCulture));
}

/// <summary>Reads a number or text, writes text.</summary>
public sealed class InputValueConverter : JsonConverter<InputValue>
{
    /// <inheritdoc/>
    public override InputValue? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType switch
        {
            JsonTokenType.Number => InputValue.FromDouble(reader.GetDouble()),
            JsonTokenType.String => new(reader.GetString()!),
            _ => throw new JsonException("allowed is a number, or text with a unit."),
        };

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, InputValue value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(value);
        writer.WriteStringValue(value.Text);
    }
}

/// <summary>One thing a method must be told to size. The sizing form is drawn from it.</summary>
/// <param name="Code">The name on the wire.</param>
/// <param name="Symbol">The symbol in the working.</param>
/// <param name="Words">The label.</param>
/// <param name="Unit">The unit; <c>-</c> for none.</param>
/// <param name="Minimum">Least value.</param>
/// <param name="Maximum">Greatest value.</param>
/// <param name="Default">Taken when none is given; nothing where one must be.</param>
/// <param name="Source">Where range and default come from.</param>
/// <param name="Choices">For a choice: the words, whose index is the value.</param>
public sealed record InputView(
    string Code,
    string Symbol,
    string Words,
    string Unit,
    double Minimum,
    double Maximum,
    double? Default,
    string Source,
    IReadOnlyList<string>? Choices
);

/// <summary>A named size of a design.</summary>
/// <param name="Code">The name on the wire, the unit at its end.</param>
/// <param name="Words">What it is.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit.</param>
public sealed record DimensionView(
    [property: Required, StringLength(60)] string Code,
    [property: Required, StringLength(200)] string Words,
    double Value,
    [property: Required, StringLength(20)] string Unit
);

/// <summary>One line of a bill of material.</summary>
/// <param name="Code">The kind of thing: <c>band</c>, <c>putty</c>.</param>
/// <param name="Words">What it is, with its size, as the storekeeper reads it.</param>
/// <param name="Quantity">How much, waste included.</param>
/// <param name="Unit">The unit of the quantity.</param>
/// <param name="Part">The part of the drawing it belongs to.</param>
public sealed record MaterialNeedView(
    [property: Required, StringLength(60)] string Code,
    [property: Required, StringLength(300)] string Words,
    [property: Range(0, 1e9)] double Quantity,
    [property: Required, StringLength(20)] string Unit,
    [property: Required(AllowEmptyStrings = true), StringLength(60)] string Part
);

/// <summary>Whether work may go on without the signature.</summary>
public enum HoldKind
{
    /// <summary>Work may not pass until it is signed.</summary>
    Hold,

    /// <summary>A named person is called; work may go on when he does not come and that is recorded.</summary>
    Witness,
}

/// <summary>What must be there before a hold point can be signed.</summary>
public enum Evidence
{
    /// <summary>The signer's statement.</summary>
    Statement,

    /// <summary>Wall readings.</summary>
    ThicknessReadings,

    /// <summary>Girth or diameter readings.</summary>
    DiameterReadings,

    /// <summary>Surface grade and profile.</summary>
    SurfaceGrade,

    /// <summary>A climate reading that says go.</summary>
    ClimateReading,

    /// <summary>A mix with ratio, batch and start.</summary>
    Mix,

    /// <summary>Torque readings.</summary>
    TorqueReadings,

    /// <summary>A hardness reading.</summary>
    HardnessReading,

    /// <summary>A temperature log for the cure.</summary>
    CureLog,

    /// <summary>A photograph.</summary>
    Photo,
}

/// <summary>A point in the fitting that work may not pass unsigned.</summary>
/// <param name="Code">Lower-case words joined by hyphens.</param>
/// <param name="Title">What is true when it is signed.</param>
/// <param name="Kind">Hold or witness.</param>
/// <param name="ReleasedBy">Who signs: <c>technician</c>, <c>inspector</c>, <c>supervisor</c>.</param>
/// <param name="Evidence">What must be on record before.</param>
/// <param name="After">Codes of those that come first.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record HoldPointView(
    [property: Required, StringLength(60)] string Code,
    [property: Required, StringLength(200)] string Title,
    HoldKind Kind,
    [property: Required, StringLength(40)] string ReleasedBy,
    [property: Required] IReadOnlyList<Evidence> Evidence,
    [property: Required] IReadOnlyList<string> After,
    [property: Required(AllowEmptyStrings = true), StringLength(300)] string Source
);

/// <summary>A point of a curve.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Up.</param>
public sealed record PointView(double X, double Y);

/// <summary>A curve of a design's chart.</summary>
/// <param name="Code">Lower-case words joined by hyphens.</param>
/// <param name="Words">What it shows.</param>
/// <param name="Across">What runs across, with its unit.</param>
/// <param name="Up">What runs up, with its unit.</param>
/// <param name="Points">The points, in order.</param>
public sealed record SeriesView(string Code, string Words, string Across, string Up, IReadOnlyList<PointView> Points);

/// <summary>What a method sizes, or what an engineer entered for a method that is not sized here.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Entered">Entered by an engineer, not reckoned here.</param>
/// <param name="CalculationReference">Where the calculation of an entered design is kept.</param>
/// <param name="Dimensions">Named sizes.</param>
/// <param name="PressureHeldBar">Gauge pressure it is sized to hold; nothing where it seals only.</param>
/// <param name="Materials">Bill of material.</param>
/// <param name="HoldPoints">Hold points in the order of the work.</param>
/// <param name="Cautions">What can hurt somebody at this work.</param>
/// <param name="Working">The hand calculation.</param>
/// <param name="Findings">Limits met and not met.</param>
/// <param name="SetForLoadHours">Hours at the reference temperature until it may be tested.</param>
/// <param name="FullHardnessHours">Hours at the reference temperature until fully hard.</param>
/// <param name="CureReferenceC">The temperature both times are stated at.</param>
/// <param name="DesignLifeDays">Days the design is good for.</param>
/// <param name="LeastWallMm">The least wall the design relies on.</param>
/// <param name="CarriesAxialLoad">The repair itself holds the pipe together.</param>
/// <param name="Series">Curves of its charts.</param>
public sealed record MethodDesignView(
    string Method,
    string Name,
    bool Entered,
    string? CalculationReference,
    IReadOnlyList<DimensionView> Dimensions,
    double? PressureHeldBar,
    IReadOnlyList<MaterialNeedView> Materials,
    IReadOnlyList<HoldPointView> HoldPoints,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<WorkingStepView> Working,
    IReadOnlyList<FindingView> Findings,
    double SetForLoadHours,
    double FullHardnessHours,
    double CureReferenceC,
    double? DesignLifeDays,
    double LeastWallMm,
    bool CarriesAxialLoad,
    IReadOnlyList<SeriesView> Series
)
{
    /// <summary>Whether every limit holds.</summary>
    [JsonIgnore]
    public bool Holds => Findings.All(f => f.Severity != FindingSeverity.Fail);

    /// <summary>A dimension by its code; nothing where there is none.</summary>
    /// <param name="code">The code.</param>
    /// <returns>The value.</returns>
    public double? this[string code] => Dimensions.FirstOrDefault(d => d.Code == code)?.Value;
}

/// <summary>A design entered by the engineer, for a method that is not sized here.</summary>
/// <param name="CalculationReference">Where the calculation is kept.</param>
/// <param name="CheckedBy">Who checked it; not who made it.</param>
/// <param name="Dimensions">Named sizes.</param>
/// <param name="PressureHeld">Gauge pressure it holds; nothing where it seals only.</param>
/// <param name="Materials">Bill of material.</param>
/// <param name="HoldPoints">Hold points; empty takes those of the method.</param>
/// <param name="Cautions">What can hurt somebody at this work.</param>
/// <param name="SetForLoadHours">Hours until it may be tested.</param>
/// <param name="FullHardnessHours">Hours until fully hard.</param>
/// <param name="CureReference">The temperature both times are stated at.</param>
/// <param name="DesignLifeDays">Days the design is good for; without it the end date is open and the design is refused.</param>
/// <param name="LeastWall">The least wall it relies on.</param>
/// <param name="CarriesAxialLoad">The repair itself holds the pipe together.</param>
public sealed record EnteredDesign(
    [property: Required, StringLength(200, MinimumLength = 3)] string CalculationReference,
    [property: Required, StringLength(100, MinimumLength = 3)] string CheckedBy,
    [property: Required, MinLength(1), MaxLength(60)] IReadOnlyList<DimensionView> Dimensions,
    [property: MeasuredIn("bar", Least = 0, Greatest = 1000)] Measure? PressureHeld,
    [property: Required, MaxLength(60)] IReadOnlyList<MaterialNeedView> Materials,
    [property: Required, MaxLength(40)] IReadOnlyList<HoldPointView> HoldPoints,
    [property: Required, MaxLength(40)] IReadOnlyList<string> Cautions,
    [property: Range(0, 1000)] double SetForLoadHours,
    [property: Range(0, 1000)] double FullHardnessHours,
    [property: Required, MeasuredIn("°C", Least = -50, Greatest = 200)] Measure CureReference,
    [property: Range(1, 3650)] double? DesignLifeDays,
    [property: Required, MeasuredIn("mm", Least = 0, Greatest = 200)] Measure LeastWall,
    bool CarriesAxialLoad
);

/// <summary>What the line is held to while the repair is live.</summary>
/// <param name="Pressure">Greatest gauge pressure.</param>
/// <param name="Temperature">Greatest temperature.</param>
/// <param name="Words">Anything else: flow, no hammer, no steam-out.</param>
public sealed record InterimLimits(
    [property: MeasuredIn("bar", Least = 0, Greatest = 1000)] Measure? Pressure,
    [property: MeasuredIn("°C", Least = -200, Greatest = 900)] Measure? Temperature,
    [property: StringLength(500)] string? Words
);

/// <summary>The permanent fix that ends the repair.</summary>
/// <param name="Reference">Number of the job, design request or shutdown line.</param>
/// <param name="On">When it is planned for.</param>
public sealed record PermanentFixPlan(
    [property: Required, StringLength(100, MinimumLength = 2)] string Reference,
    DateOnly On
);

/// <summary>The change control the repair runs under.</summary>
/// <param name="Reference">Its number.</param>
/// <param name="EndsOn">Its last day.</param>
public sealed record ChangeControl(
    [property: Required, StringLength(100, MinimumLength = 2)] string Reference,
    DateOnly EndsOn
);

/// <summary>What holds the pipe together where its own strength along the axis is short.</summary>
/// <param name="Words">What it is: tie rods, anchors, clamp with grips.</param>
/// <param name="Holds">The load it is designed for.</param>
/// <param name="CalculationReference">Where its calculation is kept.</param>
public sealed record Restraint(
    [property: Required, StringLength(300, MinimumLength = 3)] string Words,
    [property: Required, MeasuredIn("kN", Least = 0.1, Greatest = 100000)] Measure Holds,
    [property: Required, StringLength(200, MinimumLength = 2)] string CalculationReference
);

/// <summary>Sizes the repair and sets its dates, owner, limits and references.</summary>
/// <param name="Values">Values for the method's inputs; one left out takes its default, and that is a finding.</param>
/// <param name="Entered">The design of a method that is not sized here.</param>
/// <param name="PlannedFitOn">The day it is to be fitted: every life is counted from it, and a later fit moves nothing out.</param>
/// <param name="Owner">Who goes back to look.</param>
/// <param name="PermanentFix">The job that ends it.</param>
/// <param name="ChangeControl">The change control; asked for on classes A and B and on safety-critical lines.</param>
/// <param name="Restraint">What holds the pipe together where its own strength is short.</param>
/// <param name="InterimLimits">What the line is held to meanwhile.</param>
/// <param name="MaterialStatementEnds">Last day of the maker's statement for the material.</param>
/// <param name="LeakResponse">Who does what where if it fails.</param>
/// <param name="Remark">What the approver should know.</param>
public sealed record SizeRepair(
    [property: Required, MaxLength(100)] IReadOnlyDictionary<string, InputValue> Values,
    EnteredDesign? Entered,
    DateOnly PlannedFitOn,
    Guid? Owner,
    PermanentFixPlan? PermanentFix,
    ChangeControl? ChangeControl = null,
    Restraint? Restraint = null,
    InterimLimits? InterimLimits = null,
    DateOnly? MaterialStatementEnds = null,
    [property: StringLength(1000)] string? LeakResponse = null,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>One day that bounds the life of a repair.</summary>
/// <param name="Code">Stable code: <c>class-cap</c>, <c>design-life</c> …</param>
/// <param name="Words">The term in words.</param>
/// <param name="On">The day.</param>
public sealed record EndTermView(string Code, string Words, DateOnly On);

/// <summary>The end date and what sets it.</summary>
/// <param name="On">Last day in service without a fresh decision.</param>
/// <param name="Governing">The term that sets it.</param>
/// <param name="Terms">All terms that apply, earliest first.</param>
public sealed record EndDateView(DateOnly On, EndTermView Governing, IReadOnlyList<EndTermView> Terms);

/// <summary>The body of a design: all that is signed by the approvers.</summary>
/// <param name="Ask">What was entered.</param>
/// <param name="Method">The method design.</param>
/// <param name="Facts">The facts of pipe and service it was sized for.</param>
/// <param name="Assessment">The assessment it rests on.</param>
/// <param name="Risk">The signed class with its reasons.</param>
/// <param name="EndDate">The end date with its terms.</param>
/// <param name="OwnerName">The owner as printed.</param>
/// <param name="ShutdownName">The next shutdown of the area, as printed.</param>
/// <param name="Findings">What the approver should look at beyond the method's own findings.</param>
/// <param name="Fingerprint">SHA-256 of all the rest, hex: this is what is signed.</param>
/// <param name="FiguresVersion">Version of the site's figures it was decided under.</param>
public sealed record SignedDesign(
    SizeRepair Ask,
    MethodDesignView Method,
    FactsView Facts,
    Guid Assessment,
    RiskView Risk,
    EndDateView EndDate,
    string OwnerName,
    string? ShutdownName,
    IReadOnlyList<FindingView> Findings,
    string Fingerprint,
    int FiguresVersion = 1
);

/// <summary>What a sizing would give, before it is signed.</summary>
/// <param name="Design">The design.</param>
/// <param name="Objection">Why it could not be signed; nothing when it can.</param>
public sealed record SizingPreview(SignedDesign Design, ObjectionView? Objection);

public sealed partial class RepairOrdersClient
{
    /// <summary>What the chosen method must be told to size.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The inputs; empty for a method that is not sized here.</returns>
    /// <exception cref="Refused">409 before a method is chosen.</exception>
    public Task<IReadOnlyList<InputView>> SizingInputs(string number, CancellationToken stop = default) =>
        Get<IReadOnlyList<InputView>>($"orders/{number}/sizing-inputs", stop);

    /// <summary>Sizes without signing: nothing is written.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The values.</param>
    /// <returns>The design, and the objection to signing it.</returns>
    /// <exception cref="Refused">400 with fields, 409 where nothing can be sized yet.</exception>
    public Task<SizingPreview> PreviewSizing(string number, SizeRepair ask) =>
        Post<SizingPreview>($"orders/{number}/sizing-previews", ask);

    /// <summary>Signs the design.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Values, dates, owner and references.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The design; its body is a <see cref="SignedDesign"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> Size(string number, SizeRepair ask, string version) =>
        Put<RecordView>($"orders/{number}/design", ask, version);
}
