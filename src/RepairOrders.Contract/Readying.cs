using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What a readiness is for.</summary>
public enum ReadinessFor
{
    /// <summary>Fitting the repair.</summary>
    Fit,

    /// <summary>Taking it off.</summary>
    Removal,
}

/// <summary>What the permit allows.</summary>
public enum PermitKind
{
    /// <summary>Cold work.</summary>
    Cold,

    /// <summary>Hot work.</summary>
    Hot,

    /// <summary>Work in a confined space.</summary>
    ConfinedSpace,

    /// <summary>Opening the line.</summary>
    BreakingContainment,
}

/// <summary>The line isolated and proved dead at the pipe.</summary>
/// <param name="Certificate">Number of the isolation certificate.</param>
/// <param name="Points">Points isolated, with the numbers of their locks.</param>
/// <param name="ProvedDeadHow">How it was proved dead: a gauge that reads zero may not be connected.</param>
/// <param name="ProvedDeadBy">Who of operations proved it.</param>
/// <param name="ProvedDeadWith">The technician who saw it.</param>
/// <param name="Reading">Gauge pressure read at the pipe.</param>
public sealed record Isolation(
    [property: Required, StringLength(60, MinimumLength = 1)] string Certificate,
    [property: Required, StringLength(1000, MinimumLength = 2)] string Points,
    [property: Required, StringLength(500, MinimumLength = 3)] string ProvedDeadHow,
    [property: Required, StringLength(100, MinimumLength = 2)] string ProvedDeadBy,
    [property: Required, StringLength(100, MinimumLength = 2)] string ProvedDeadWith,
    [property: Required, MeasuredIn("bar", Least = -1, Greatest = 1000)] Measure Reading
);

/// <summary>A gas test at the place of work.</summary>
/// <param name="At">When; at most four hours before.</param>
/// <param name="By">The authorised tester.</param>
/// <param name="LowerExplosivePercent">Percent of the lower explosive limit.</param>
/// <param name="OxygenPercent">Oxygen, percent.</param>
/// <param name="HydrogenSulphidePpm">Hydrogen sulphide, parts per million.</param>
/// <param name="WithinPermit">All values are inside what the permit states.</param>
public sealed record GasTest(
    DateTimeOffset At,
    [property: Required, StringLength(100, MinimumLength = 2)] string By,
    [property: Range(0.0, 100.0)] double LowerExplosivePercent,
    [property: Range(0.0, 100.0)] double OxygenPercent,
    [property: Range(0.0, 100000.0)] double? HydrogenSulphidePpm,
    bool WithinPermit
);

/// <summary>Readies the job for one permit window. A new window is a new readiness.</summary>
/// <param name="For">Fit or removal.</param>
/// <param name="Permit">The permit's number.</param>
/// <param name="PermitKind">What it allows.</param>
/// <param name="PermitFrom">From when.</param>
/// <param name="PermitUntil">Until when.</param>
/// <param name="Isolation">The isolation; nothing for a fit on the live line, which takes the consents of its class.</param>
/// <param name="LivePressure">For a live fit: gauge pressure in the line now.</param>
/// <param name="GasTest">The gas test.</param>
/// <param name="Fitters">The technicians who do the work, by name.</param>
/// <param name="TalkSignedBy">Who signed the safety talk.</param>
/// <param name="Standby">Who stands by for rescue; asked for in a confined space.</param>
/// <param name="Remark">What the supervisor wants on record.</param>
public sealed record ReadyOrder(
    ReadinessFor For,
    [property: Required, StringLength(60, MinimumLength = 1)] string Permit,
    PermitKind PermitKind,
    DateTimeOffset PermitFrom,
    DateTimeOffset PermitUntil,
    Isolation? Isolation,
    [property: MeasuredIn("bar", Least = 0, Greatest = 1000)] Measure? LivePressure,
    [property: Required] GasTest GasTest,
    [property: Required, MinLength(1), MaxLength(12)] IReadOnlyList<Guid> Fitters,
    [property: Required, MaxLength(30)] IReadOnlyList<Guid> TalkSignedBy,
    [property: StringLength(200)] string? Standby = null,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>A person as a record names him.</summary>
/// <param name="Id">The person.</param>
/// <param name="Name">Name as it is printed.</param>
public sealed record NamedPerson(Guid Id, string Name);

/// <summary>The body of a readiness.</summary>
/// <param name="Ask">What was asked.</param>
/// <param name="Fitters">The fitters by name.</param>
/// <param name="Live">The line is live.</param>
public sealed record SignedReadiness(ReadyOrder Ask, IReadOnlyList<NamedPerson> Fitters, bool Live);

/// <summary>In which capacity somebody consents to a fit on the live line.</summary>
public enum LiveFitCapacity
{
    /// <summary>As supervisor.</summary>
    Supervisor,

    /// <summary>As integrity engineer.</summary>
    Engineer,

    /// <summary>As operations in charge.</summary>
    OperationsInCharge,

    /// <summary>As manager.</summary>
    Manager,
}

/// <summary>Consents to a fit on the live line.</summary>
/// <param name="As">The capacity signed in.</param>
/// <param name="Conditions">Under which conditions: pressure held, who stays away, when it is off.</param>
public sealed record ConsentToLiveFit(
    LiveFitCapacity As,
    [property: Required, StringLength(1000, MinimumLength = 3)] string Conditions
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Readies the job for one permit window.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Permit, isolation, gas test, fitters and talk.</param>
    /// <returns>The readiness; its body is a <see cref="SignedReadiness"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ReadyOrder(string number, ReadyOrder ask) =>
        Post<RecordView>($"orders/{number}/readiness", ask);

    /// <summary>Consents to a fit on the live line.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Capacity and conditions.</param>
    /// <returns>The consent.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ConsentToLiveFit(string number, ConsentToLiveFit ask) =>
        Post<RecordView>($"orders/{number}/live-fit-consents", ask);
}
