using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What a site asks of one class. The worse class is never treated more gently than the better one.</summary>
/// <param name="Class">The class.</param>
/// <param name="FirstLookHours">Hours from the start in service to the first look.</param>
/// <param name="LookHours">Hours between looks.</param>
/// <param name="LookHoursOnceDry">Hours between looks once it has stayed dry for as long as the next figure says.</param>
/// <param name="DryForDays">Days it must have stayed dry for that.</param>
/// <param name="ThicknessDays">Days between thickness visits.</param>
/// <param name="GraceHours">Hours after a look is due, before it is overdue.</param>
/// <param name="CapDays">Days of the longest first approval.</param>
/// <param name="Extensions">How many extensions may be given.</param>
/// <param name="ExtensionDays">Days of the longest extension.</param>
/// <param name="EmergencyHours">Hours from the start in service until an emergency repair's papers are owed.</param>
public sealed record ClassFigures(
    [property: Required] RiskClass Class,
    [property: Range(1, 24 * 60)] int FirstLookHours,
    [property: Range(1, 24 * 180)] int LookHours,
    [property: Range(1, 24 * 180)] int LookHoursOnceDry,
    [property: Range(0, 90)] int DryForDays,
    [property: Range(1, 730)] int ThicknessDays,
    [property: Range(0, 24 * 30)] int GraceHours,
    [property: Range(1, 1095)] int CapDays,
    [property: Range(0, 4)] int Extensions,
    [property: Range(1, 730)] int ExtensionDays,
    [property: Range(1, 24 * 14)] int EmergencyHours
);

/// <summary>The figures of the procedure that are a site's own rule.</summary>
/// <param name="Classes">One row for each class.</param>
/// <param name="ApprovalStandsDays">Days an approval stands with nobody having looked at the pipe since.</param>
/// <param name="ConsentStandsHours">Hours a spoken consent stands without a start.</param>
/// <param name="EmergencyIssueHours">Hours from the start of an emergency fit within which its batches are written down.</param>
/// <param name="SurveyDays">Days a survey is good for when an extension is asked for.</param>
/// <param name="SurveyDaysAfterEnd">The same after the end date.</param>
/// <param name="AskAheadDays">Days before the end date from which an extension counts as asked late.</param>
/// <param name="AskAheadDaysOnA">The same on class A.</param>
public sealed record SiteFigures(
    [property: Required, Length(4, 4)] IReadOnlyList<ClassFigures> Classes,
    [property: Range(1, 90)] int ApprovalStandsDays,
    [property: Range(1, 24)] int ConsentStandsHours,
    [property: Range(1, 24)] int EmergencyIssueHours,
    [property: Range(1, 60)] int SurveyDays,
    [property: Range(1, 30)] int SurveyDaysAfterEnd,
    [property: Range(1, 120)] int AskAheadDays,
    [property: Range(1, 60)] int AskAheadDaysOnA
);

/// <summary>Proposes other figures for a site. They come into force with a second signature.</summary>
/// <param name="Figures">All of them.</param>
/// <param name="Why">Why they are changed.</param>
public sealed record ProposeFigures(
    [property: Display(Name = "The figures"), Required] SiteFigures Figures,
    [property: Display(Name = "Why they are changed"), Required, StringLength(1000, MinimumLength = 10)] string Why
);

/// <summary>One version of a site's figures. An order keeps the version it was decided under.</summary>
/// <param name="Version">Counts from 1, the figures the service comes with.</param>
/// <param name="Figures">The figures.</param>
/// <param name="Why">Why they were changed; nothing for the first version.</param>
/// <param name="Proposed">Who signed first; nothing for the first version.</param>
/// <param name="Confirmed">Who signed second; nothing for the first version, or while it waits.</param>
/// <param name="InForce">New decisions are taken under it.</param>
/// <param name="Objection">Why the caller cannot sign it as second; nothing when he can.</param>
public sealed record FiguresView(
    int Version,
    SiteFigures Figures,
    string? Why,
    ListSignature? Proposed,
    ListSignature? Confirmed,
    bool InForce,
    ObjectionView? Objection
);

public sealed partial class RepairOrdersClient
{
    /// <summary>All versions of a site's figures, oldest first; the last may wait for its second signature.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The versions.</returns>
    public Task<IReadOnlyList<FiguresView>> Figures(string site, CancellationToken stop = default) =>
        Get<IReadOnlyList<FiguresView>>($"sites/{Part(site)}/figures", stop);

    /// <summary>Proposes other figures, as first of two signatures.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="ask">The figures and why.</param>
    /// <param name="key">Makes a repeated call one call.</param>
    /// <returns>All versions.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection.</exception>
    public Task<IReadOnlyList<FiguresView>> ProposeFigures(string site, ProposeFigures ask, string? key = null) =>
        Post<IReadOnlyList<FiguresView>>($"sites/{Part(site)}/figures", ask, key);

    /// <summary>Signs proposed figures as second; they are in force from then on.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="version">The version proposed.</param>
    /// <param name="key">Makes a repeated call one call.</param>
    /// <returns>All versions.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<IReadOnlyList<FiguresView>> ConfirmFigures(string site, int version, string? key = null) =>
        Post<IReadOnlyList<FiguresView>>($"sites/{Part(site)}/figures/{version}/confirmations", null, key);

    /// <summary>Takes proposed figures back, with a reason, before they are in force.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="version">The version proposed.</param>
    /// <param name="ask">Why.</param>
    /// <param name="key">Makes a repeated call one call.</param>
    /// <returns>All versions.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<IReadOnlyList<FiguresView>> DropFigures(
        string site,
        int version,
        DropFigures ask,
        string? key = null
    ) => Post<IReadOnlyList<FiguresView>>($"sites/{Part(site)}/figures/{version}/withdrawals", ask, key);
}

/// <summary>Takes proposed figures back.</summary>
/// <param name="Why">Why.</param>
public sealed record DropFigures([property: Required, StringLength(1000, MinimumLength = 3)] string Why);
