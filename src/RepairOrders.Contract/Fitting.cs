using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Reads the climate at the pipe. Dew point, margin and go or no-go for each material issued are reckoned at once.</summary>
/// <param name="Air">Air temperature.</param>
/// <param name="HumidityPercent">Relative humidity, percent.</param>
/// <param name="Steel">Temperature of the prepared steel at its coldest point.</param>
/// <param name="Instrument">Serial number of what it was read with.</param>
public sealed record RecordClimate(
    [property: Required, MeasuredIn("°C", Least = -60, Greatest = 80)] Measure Air,
    [property: Range(1.0, 100.0)] double HumidityPercent,
    [property: Required, MeasuredIn("°C", Least = -60, Greatest = 300)] Measure Steel,
    [property: Required, StringLength(60, MinimumLength = 1)] string Instrument
);

/// <summary>What a climate says of one material.</summary>
/// <param name="Item">The item's code; empty where no material with limits is issued.</param>
/// <param name="Words">What it is.</param>
/// <param name="Go">It may be mixed and applied.</param>
/// <param name="Findings">Each limit and what the reading says of it.</param>
public sealed record ClimateVerdictView(string Item, string Words, bool Go, IReadOnlyList<FindingView> Findings);

/// <summary>The body of a climate reading.</summary>
/// <param name="Ask">What was read.</param>
/// <param name="DewPointC">Dew point, °C; the frost point below zero.</param>
/// <param name="MarginK">Steel less dew point, K.</param>
/// <param name="LeastSteelC">The least steel temperature for a material that needs dry steel, °C.</param>
/// <param name="Verdicts">Go or no-go for each material issued.</param>
public sealed record SignedClimate(
    RecordClimate Ask,
    double DewPointC,
    double MarginK,
    double LeastSteelC,
    IReadOnlyList<ClimateVerdictView> Verdicts
);

/// <summary>Starts a mix; its clock starts now, by the server's time.</summary>
/// <param name="Batch">The batch of the material.</param>
/// <param name="Mass">How much of it, by mass; asked for where a ratio is stated.</param>
/// <param name="HardenerBatch">The batch of the hardener; nothing for a pack that holds both parts.</param>
/// <param name="HardenerMass">How much hardener, by mass.</param>
/// <param name="MixTemperature">Temperature of the mix.</param>
public sealed record StartMix(
    Guid Batch,
    [property: MeasuredIn("g", Least = 0.1, Greatest = 1000000)] Measure? Mass,
    Guid? HardenerBatch,
    [property: MeasuredIn("g", Least = 0.1, Greatest = 1000000)] Measure? HardenerMass,
    [property: Required, MeasuredIn("°C", Least = -20, Greatest = 120)] Measure MixTemperature
);

/// <summary>The body of a mix.</summary>
/// <param name="Ask">What was mixed.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What it is.</param>
/// <param name="Number">The batch's number.</param>
/// <param name="HardenerNumber">The hardener's batch number.</param>
/// <param name="Climate">The climate reading it rests on.</param>
/// <param name="SteelC">Steel temperature by that reading, °C.</param>
/// <param name="UsableUntil">When its pot life ends.</param>
/// <param name="PlaceBy">When plate or layers must be in place; nothing where the maker states none.</param>
/// <param name="Limits">What the maker stated when it was mixed.</param>
public sealed record SignedMix(
    StartMix Ask,
    string Item,
    string Words,
    string Number,
    string? HardenerNumber,
    Guid Climate,
    double SteelC,
    DateTimeOffset UsableUntil,
    DateTimeOffset? PlaceBy,
    MaterialLimits Limits
);

/// <summary>Says that a mix is on the pipe.</summary>
/// <param name="Remark">Where it went.</param>
public sealed record UseMix([property: StringLength(500)] string? Remark = null);

/// <summary>The body of a use of a mix.</summary>
/// <param name="Mix">The mix.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Number">The batch's number.</param>
/// <param name="Remark">Where it went.</param>
public sealed record SignedMixUse(Guid Mix, string Item, string Number, string? Remark);

/// <summary>One temperature on the pipe.</summary>
/// <param name="At">When; nothing for now. A logger's readings may lie in the past.</param>
/// <param name="Pipe">What the sensor on the pipe showed.</param>
public sealed record CureTemperature(
    DateTimeOffset? At,
    [property: Required, MeasuredIn("°C", Least = -60, Greatest = 300)] Measure Pipe
);

/// <summary>Adds temperatures to the cure log.</summary>
/// <param name="Readings">The readings, in order; one or a logger's many, at most two hours apart or the gap counts for nothing.</param>
/// <param name="Instrument">Serial number of what they were read with.</param>
/// <param name="HeatSource">What warms the pipe; nothing where nothing does.</param>
public sealed record RecordCure(
    [property: Required, MinLength(1), MaxLength(2000)] IReadOnlyList<CureTemperature> Readings,
    [property: Required, StringLength(60, MinimumLength = 1)] string Instrument,
    [property: StringLength(200)] string? HeatSource = null
);

/// <summary>A wall read at the repair.</summary>
/// <param name="Spot">Where: end of the plate, clock position.</param>
/// <param name="Wall">The wall.</param>
public sealed record WallRead(
    [property: Required, StringLength(60, MinimumLength = 1)] string Spot,
    [property: Required, MeasuredIn("mm", Least = 0, Greatest = 200)] Measure Wall
);

/// <summary>A diameter read at the repair.</summary>
/// <param name="Spot">Where and in which direction.</param>
/// <param name="Diameter">The diameter.</param>
public sealed record DiameterRead(
    [property: Required, StringLength(60, MinimumLength = 1)] string Spot,
    [property: Required, MeasuredIn("mm", Least = 5, Greatest = 5000)] Measure Diameter
);

/// <summary>Grades of prepared steel.</summary>
public enum SurfaceGrade
{
    /// <summary>St 2: hand tool.</summary>
    St2,

    /// <summary>St 3: power tool.</summary>
    St3,

    /// <summary>Power tool to bare metal, profile at least 25 µm.</summary>
    BareMetal,

    /// <summary>Sa 1: brush-off blast.</summary>
    Sa1,

    /// <summary>Sa 2: commercial blast.</summary>
    Sa2,

    /// <summary>Sa 2½: near-white blast.</summary>
    Sa2Half,

    /// <summary>Sa 3: white metal.</summary>
    Sa3,
}

/// <summary>The prepared surface.</summary>
/// <param name="Grade">The grade.</param>
/// <param name="ProfileUm">Readings of the profile, µm.</param>
/// <param name="SaltMgM2">Soluble salt, mg/m².</param>
public sealed record SurfaceRead(
    SurfaceGrade Grade,
    [property: Required, MaxLength(20)] IReadOnlyList<double> ProfileUm,
    [property: Range(0.0, 10000.0)] double? SaltMgM2 = null
);

/// <summary>One tightening of one fastener, by torque or by measured tension.</summary>
/// <param name="Fastener">The fastener's number, from 1.</param>
/// <param name="Pass">The pass, from 1.</param>
/// <param name="Torque">Torque reached.</param>
/// <param name="Tension">Tension measured.</param>
public sealed record Tightened(
    [property: Range(1, 500)] int Fastener,
    [property: Range(1, 20)] int Pass,
    [property: MeasuredIn("N m", Least = 0, Greatest = 20000)] Measure? Torque = null,
    [property: MeasuredIn("N", Least = 0, Greatest = 5000000)] Measure? Tension = null
);

/// <summary>A witness who was called to a point of the work.</summary>
/// <param name="Person">Who.</param>
/// <param name="CalledAt">When he was called.</param>
/// <param name="Came">He came.</param>
public sealed record WitnessCalled(Guid Person, DateTimeOffset CalledAt, bool Came);

/// <summary>Releases a hold point. What the point asks for must be there; what is on record already is not asked again.</summary>
/// <param name="HoldPoint">The point's code.</param>
/// <param name="Walls">Walls read.</param>
/// <param name="Diameters">Diameters read.</param>
/// <param name="Surface">The prepared surface.</param>
/// <param name="Tightening">Every fastener and pass.</param>
/// <param name="ShoreD">Hardness readings, Shore D.</param>
/// <param name="Instrument">Serial number of what was read with.</param>
/// <param name="Witness">For a witness point: who was called.</param>
/// <param name="Departure">Anything done otherwise than written; an engineer must accept it before service.</param>
/// <param name="Remark">What the signer wants on record.</param>
public sealed record ReleaseHoldPoint(
    [property: Required, StringLength(60, MinimumLength = 1)] string HoldPoint,
    [property: MaxLength(200)] IReadOnlyList<WallRead>? Walls = null,
    [property: MaxLength(200)] IReadOnlyList<DiameterRead>? Diameters = null,
    SurfaceRead? Surface = null,
    [property: MaxLength(1000)] IReadOnlyList<Tightened>? Tightening = null,
    [property: MaxLength(50)] IReadOnlyList<int>? ShoreD = null,
    [property: StringLength(60)] string? Instrument = null,
    WitnessCalled? Witness = null,
    [property: StringLength(2000)] string? Departure = null,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>The body of a release.</summary>
/// <param name="Ask">What was signed.</param>
/// <param name="Title">What is true now that it is signed.</param>
/// <param name="Step">Which point of how many: <c>3 of 9</c>.</param>
/// <param name="Of">How many points the plan has.</param>
/// <param name="Plan">The design or emergency entry it belongs to.</param>
/// <param name="Climate">The climate reading it rests on.</param>
/// <param name="Mix">The mix it rests on.</param>
/// <param name="Photos">The photographs it rests on.</param>
/// <param name="Witness">The witness's name.</param>
public sealed record SignedRelease(
    ReleaseHoldPoint Ask,
    string Title,
    string Step,
    int Of,
    Guid Plan,
    Guid? Climate,
    Guid? Mix,
    IReadOnlyList<Guid> Photos,
    string? Witness
);

/// <summary>Stops the job. Never refused.</summary>
/// <param name="Reason">Why.</param>
/// <param name="NotAsWritten">Pipe, defect, pressure or fluid is not as the order says: the order goes back to be assessed, in its next round.</param>
/// <param name="Found">What was found instead.</param>
public sealed record StopJob(
    [property: Required, StringLength(2000, MinimumLength = 1)] string Reason,
    bool NotAsWritten = false,
    [property: StringLength(2000)] string? Found = null
);

/// <summary>The body of a stop.</summary>
/// <param name="Ask">Why.</param>
/// <param name="EndsRound">The order goes back to be assessed.</param>
public sealed record SignedStop(StopJob Ask, bool EndsRound);

/// <summary>Lets a stopped job go on.</summary>
/// <param name="CauseCleared">What was done about the cause.</param>
public sealed record ResumeJob([property: Required, StringLength(2000, MinimumLength = 3)] string CauseCleared);

/// <summary>One hold point as it stands.</summary>
/// <param name="Point">The point.</param>
/// <param name="ReleasedBy">Who signed it; nothing while it is open.</param>
/// <param name="ReleasedAt">When.</param>
/// <param name="Objection">Why the caller may not sign it now; nothing when he may, or when it is signed.</param>
/// <param name="AsksWitness">A witness has to be called to it.</param>
public sealed record HoldPointState(
    HoldPointView Point,
    string? ReleasedBy,
    DateTimeOffset? ReleasedAt,
    ObjectionView? Objection,
    bool AsksWitness
);

/// <summary>What a mix is doing.</summary>
/// <param name="Mix">The mix.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What it is.</param>
/// <param name="Number">The batch's number.</param>
/// <param name="StartedAt">When its clock started.</param>
/// <param name="UsableUntil">When its pot life ends.</param>
/// <param name="PlaceBy">When plate or layers must be in place.</param>
/// <param name="UsedAt">When it was put on the pipe.</param>
/// <param name="MinutesLeft">Minutes of pot life left, negative when it is over; nothing once it is on the pipe.</param>
/// <param name="Tone">Watch at three quarters, stop when it is over.</param>
public sealed record MixClock(
    Guid Mix,
    string Item,
    string Words,
    string Number,
    DateTimeOffset StartedAt,
    DateTimeOffset UsableUntil,
    DateTimeOffset? PlaceBy,
    DateTimeOffset? UsedAt,
    double? MinutesLeft,
    Tone Tone
);

/// <summary>How far the cure has come by the temperatures on the pipe.</summary>
/// <param name="Words">What cures.</param>
/// <param name="Since">From when it is counted.</param>
/// <param name="LastReadingAt">The last reading that counts; nothing where none was taken.</param>
/// <param name="LastReadingC">What it showed, °C.</param>
/// <param name="EquivalentHours">Hours at the stated temperature so far.</param>
/// <param name="SetForLoadHours">Hours needed until it may be loaded.</param>
/// <param name="FullHardnessHours">Hours needed until fully hard.</param>
/// <param name="SetForLoad">It may be loaded and tested.</param>
/// <param name="FullyHard">It is fully hard.</param>
/// <param name="SetForLoadAt">When it is set if the last temperature stays; nothing where it never is.</param>
/// <param name="FullyHardAt">When it is fully hard if the last temperature stays; nothing where it never is.</param>
/// <param name="Findings">Gaps, cold spells and defaults.</param>
public sealed record CureClockView(
    string Words,
    DateTimeOffset Since,
    DateTimeOffset? LastReadingAt,
    double? LastReadingC,
    double EquivalentHours,
    double SetForLoadHours,
    double FullHardnessHours,
    bool SetForLoad,
    bool FullyHard,
    DateTimeOffset? SetForLoadAt,
    DateTimeOffset? FullyHardAt,
    IReadOnlyList<FindingView> Findings
);

/// <summary>Where the work stands: the points in order, and every clock that runs.</summary>
/// <param name="Points">The hold points, in order.</param>
/// <param name="Stopped">Why the job is stopped; nothing while it is not.</param>
/// <param name="Permit">The permit's number.</param>
/// <param name="PermitUntil">When it ends.</param>
/// <param name="Fitters">Who fits.</param>
/// <param name="SurfaceAt">When the surface was released: bare steel is covered within hours or prepared again.</param>
/// <param name="Climate">The last climate reading.</param>
/// <param name="ClimateAt">When it was read.</param>
/// <param name="Mixes">Mixes that stand.</param>
/// <param name="Cures">What cures.</param>
/// <param name="ReadAt">When this was read.</param>
public sealed record FittingView(
    IReadOnlyList<HoldPointState> Points,
    string? Stopped,
    string? Permit,
    DateTimeOffset? PermitUntil,
    IReadOnlyList<NamedPerson> Fitters,
    DateTimeOffset? SurfaceAt,
    SignedClimate? Climate,
    DateTimeOffset? ClimateAt,
    IReadOnlyList<MixClock> Mixes,
    IReadOnlyList<CureClockView> Cures,
    DateTimeOffset ReadAt
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Where the work stands: points, permit and clocks.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The state of the fitting.</returns>
    public Task<FittingView> Fitting(string number, CancellationToken stop = default) =>
        Get<FittingView>($"orders/{number}/fitting", stop);

    /// <summary>Reads the climate at the pipe.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Air, humidity and steel.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The reading; its body is a <see cref="SignedClimate"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> RecordClimate(string number, RecordClimate ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/climate-readings", ask, key);

    /// <summary>Starts a mix.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Batches, masses and temperature.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The mix; its body is a <see cref="SignedMix"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> StartMix(string number, StartMix ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/mixes", ask, key);

    /// <summary>Says that a mix is on the pipe.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="mix">The mix.</param>
    /// <param name="ask">Where it went.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The use.</returns>
    /// <exception cref="Refused">409 with the objection, after its pot life for one.</exception>
    public Task<RecordView> UseMix(string number, Guid mix, UseMix ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/mixes/{mix}/uses", ask, key);

    /// <summary>Voids a mix: it is scrapped.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="mix">The mix.</param>
    /// <param name="why">The reason.</param>
    /// <param name="version">The version seen.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>When it is voided.</returns>
    /// <exception cref="Refused">409 with the objection, 412 when the order changed since.</exception>
    public Task VoidMix(string number, Guid mix, string why, string version, string? key = null) =>
        Delete<Nothing>($"orders/{number}/mixes/{mix}", why, version, key);

    /// <summary>Adds temperatures to the cure log.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The readings.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The readings as recorded.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> RecordCure(string number, RecordCure ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/cure-readings", ask, key);

    /// <summary>Releases a hold point.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The point and its evidence.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The release; its body is a <see cref="SignedRelease"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ReleaseHoldPoint(string number, ReleaseHoldPoint ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/hold-point-releases", ask, key);

    /// <summary>Strikes through a release that was wrong.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="release">The release.</param>
    /// <param name="why">The reason.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>When it is set aside.</returns>
    /// <exception cref="Refused">409 with the objection, 412 when the order changed since.</exception>
    public Task StrikeRelease(string number, Guid release, string why, string version) =>
        Delete<Nothing>($"orders/{number}/hold-point-releases/{release}", why, version);

    /// <summary>Stops the job.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Why.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The stop.</returns>
    public Task<RecordView> StopJob(string number, StopJob ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/stops", ask, key);

    /// <summary>Lets a stopped job go on.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What was done about the cause.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The resumption.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ResumeJob(string number, ResumeJob ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/resumptions", ask, key);
}
