using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>A method that may be used at night on two spoken consents, for the pipes and fluids named.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Name">What the shift calls it.</param>
/// <param name="Method">The method's code.</param>
/// <param name="SmallestDiameter">Smallest outside diameter.</param>
/// <param name="GreatestDiameter">Greatest outside diameter.</param>
/// <param name="GreatestPressure">Greatest gauge pressure.</param>
/// <param name="GreatestTemperature">Greatest temperature.</param>
/// <param name="Fluids">Fluids it is for, in the words of the line list.</param>
/// <param name="Materials">Bill of material.</param>
/// <param name="HoldPoints">Hold points in the order of the work.</param>
/// <param name="Cautions">What can hurt somebody at this work.</param>
/// <param name="SetForLoadHours">Hours at the reference temperature until it may be tested.</param>
/// <param name="FullHardnessHours">Hours at the reference temperature until fully hard.</param>
/// <param name="CureReference">The temperature both times are stated at.</param>
/// <param name="CalculationReference">On what the limits rest.</param>
public sealed record ListEmergencyMethod(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(100, MinimumLength = 3)] string Name,
    [property: Required, StringLength(60)] string Method,
    [property: Required, MeasuredIn("mm", Least = 5, Greatest = 3000)] Measure SmallestDiameter,
    [property: Required, MeasuredIn("mm", Least = 5, Greatest = 3000)] Measure GreatestDiameter,
    [property: Required, MeasuredIn("bar", Least = 0.1, Greatest = 1000)] Measure GreatestPressure,
    [property: Required, MeasuredIn("°C", Least = -200, Greatest = 900)] Measure GreatestTemperature,
    [property: Required, Length(1, 50)] IReadOnlyList<string> Fluids,
    [property: Required, MaxLength(60)] IReadOnlyList<MaterialNeedView> Materials,
    [property: Required, Length(1, 40)] IReadOnlyList<HoldPointView> HoldPoints,
    [property: Required, Length(1, 40)] IReadOnlyList<string> Cautions,
    [property: Range(0, 1000)] double SetForLoadHours,
    [property: Range(0, 1000)] double FullHardnessHours,
    [property: Required, MeasuredIn("°C", Least = -50, Greatest = 200)] Measure CureReference,
    [property: Required, StringLength(200, MinimumLength = 3)] string CalculationReference
);

/// <summary>A signature under an entry of the emergency list.</summary>
/// <param name="By">Who, as printed.</param>
/// <param name="At">When.</param>
public sealed record ListSignature(string By, DateTimeOffset At);

/// <summary>An entry of the emergency list. A change is a new entry; an old one is withdrawn, never erased.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Entry">What it says.</param>
/// <param name="Signatures">Who signed it; two make it good.</param>
/// <param name="GoodUntil">Last day it is good for: a year from the second signature; nothing before.</param>
/// <param name="WithdrawnWhy">Why it is withdrawn; nothing while it stands.</param>
/// <param name="Objection">Why it cannot be used today; nothing when it can.</param>
public sealed record EmergencyMethodView(
    Guid Id,
    ListEmergencyMethod Entry,
    IReadOnlyList<ListSignature> Signatures,
    DateOnly? GoodUntil,
    string? WithdrawnWhy,
    ObjectionView? Objection
);

/// <summary>Who gives a consent.</summary>
public enum ConsentCapacity
{
    /// <summary>The engineer on call.</summary>
    EngineerOnCall,

    /// <summary>Operations in charge.</summary>
    OperationsInCharge,
}

/// <summary>Writes down a spoken consent. Two are needed: of the engineer on call and of operations in charge.</summary>
/// <param name="Method">The entry of the emergency list.</param>
/// <param name="GivenBy">Who gave it.</param>
/// <param name="As">In which capacity.</param>
/// <param name="GivenAt">When he said it.</param>
/// <param name="Said">What he said, in his words.</param>
/// <param name="CrackLike">What is seen is crack-like, or may be.</param>
/// <param name="CauseKnown">The cause of the damage is known.</param>
/// <param name="FailedBefore">This spot has failed before.</param>
/// <param name="Consequences">What a leak would do here; the class until assessed is reckoned from it.</param>
/// <param name="Line">Facts of a line that is not in the line list; nothing for a listed one.</param>
public sealed record RecordConsent(
    Guid Method,
    Guid GivenBy,
    ConsentCapacity As,
    DateTimeOffset GivenAt,
    [property: Required, StringLength(1000, MinimumLength = 5)] string Said,
    bool CrackLike,
    bool CauseKnown,
    bool FailedBefore,
    [property: Required] LeakConsequences Consequences,
    LineFactsGiven? Line = null
);

/// <summary>The consenter says in his own session whether he gave it.</summary>
/// <param name="Consent">The consent.</param>
/// <param name="Given">He gave it, as written down.</param>
/// <param name="Remark">What he adds; asked for where he did not give it.</param>
public sealed record ConfirmConsent(Guid Consent, bool Given, [property: StringLength(1000)] string? Remark = null);

/// <summary>The manager grants one more period for the papers that are owed.</summary>
/// <param name="Why">Why they are not there yet.</param>
public sealed record GrantPeriod([property: Required, StringLength(1000, MinimumLength = 10)] string Why);

/// <summary>The body of a consent.</summary>
/// <param name="Ask">What was written down.</param>
/// <param name="GivenByName">Who gave it, as printed.</param>
/// <param name="Entry">The entry of the emergency list as it was.</param>
/// <param name="Risk">Class until assessed: that of the consequence with likelihood 5.</param>
/// <param name="FiguresVersion">Version of the site's figures it was given under.</param>
public sealed record SignedConsent(
    RecordConsent Ask,
    string GivenByName,
    ListEmergencyMethod Entry,
    RiskView Risk,
    int FiguresVersion = 1
);

/// <summary>The body of a confirmation.</summary>
/// <param name="Ask">What was said.</param>
/// <param name="Late">It came after the debt clock had run out.</param>
public sealed record SignedConfirmation(ConfirmConsent Ask, bool Late);

/// <summary>What is still owed of an emergency repair.</summary>
/// <param name="Owed">The papers that are missing, in words.</param>
/// <param name="DueAt">When they are due; until then this is the end date too.</param>
/// <param name="Unpaid">The clock has run out: removal is owed.</param>
/// <param name="Granted">The manager has granted one more period.</param>
public sealed record DebtView(IReadOnlyList<string> Owed, DateTimeOffset DueAt, bool Unpaid, bool Granted);

public sealed partial class RepairOrdersClient
{
    /// <summary>The emergency list of the sites the caller may see.</summary>
    /// <param name="site">Only this site's.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The entries, withdrawn ones last.</returns>
    public Task<IReadOnlyList<EmergencyMethodView>> EmergencyMethods(
        string? site = null,
        CancellationToken stop = default
    ) =>
        Get<IReadOnlyList<EmergencyMethodView>>(
            site is null ? "emergency-methods" : $"emergency-methods?site={Uri.EscapeDataString(site)}",
            stop
        );

    /// <summary>Puts a method on the emergency list and signs it; a second signature makes it good for a year.</summary>
    /// <param name="ask">The entry.</param>
    /// <returns>The entry with the first signature.</returns>
    /// <exception cref="Refused">400 with fields.</exception>
    public Task<EmergencyMethodView> ListEmergencyMethod(ListEmergencyMethod ask) =>
        Post<EmergencyMethodView>("emergency-methods", ask);

    /// <summary>Signs an entry as second: another engineer, or the manager.</summary>
    /// <param name="id">The entry.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<EmergencyMethodView> SignEmergencyMethod(Guid id) =>
        Post<EmergencyMethodView>($"emergency-methods/{id}/signatures", null);

    /// <summary>Takes an entry off the list.</summary>
    /// <param name="id">The entry.</param>
    /// <param name="why">The reason.</param>
    /// <returns>The entry.</returns>
    public Task<EmergencyMethodView> WithdrawEmergencyMethod(Guid id, string why) =>
        Post<EmergencyMethodView>($"emergency-methods/{id}/withdrawals", new WithdrawEmergencyMethod(why));

    /// <summary>Writes down a spoken consent.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Who said what when.</param>
    /// <returns>The consent; its body is a <see cref="SignedConsent"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> Consent(string number, RecordConsent ask) =>
        Post<RecordView>($"orders/{number}/consents", ask);

    /// <summary>Confirms, in one's own session, a consent that somebody wrote down.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The consent, and whether it was given.</param>
    /// <returns>The confirmation; its body is a <see cref="SignedConfirmation"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ConfirmConsent(string number, ConfirmConsent ask) =>
        Post<RecordView>($"orders/{number}/consent-confirmations", ask);

    /// <summary>Grants one more period for what is owed.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Why.</param>
    /// <returns>The grant.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> GrantPeriod(string number, GrantPeriod ask) =>
        Post<RecordView>($"orders/{number}/debt-periods", ask);
}

/// <summary>Takes an entry off the emergency list.</summary>
/// <param name="Why">The reason.</param>
public sealed record WithdrawEmergencyMethod([property: Required, StringLength(500, MinimumLength = 5)] string Why);
