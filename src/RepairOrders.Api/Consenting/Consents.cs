using RepairOrders.Api.Figures;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Consenting;

/// <summary>Which consents stand, and whether work may rest on them.</summary>
internal static class Consents
{
    /// <summary>A consent lapses when work has not started by then.</summary>
    public static TimeSpan Life(RepairOrder order) =>
        TimeSpan.FromHours(DecidedUnder.Figures(order).ConsentStandsHours);

    public static readonly Stage[] OpenAt =
    [
        Stage.Requested,
        Stage.Assessed,
        Stage.Chosen,
        Stage.Sized,
        Stage.Consented,
    ];

    public static bool Opens(Stage stage) => OpenAt.Contains(stage);

    /// <summary>Both are on record in the round, by the time of a record where one is given.</summary>
    public static bool Both(RepairOrder order, int round, SignedRecord? by = null) =>
        order
            .All<Consent>()
            .Where(c => c.Round == round && (by is null || !c.IsAfter(by)))
            .Select(c => c.Asked.Ask.As)
            .Distinct()
            .Count() == 2;

    /// <summary>Consents of the round that have not lapsed: those of work that has started no longer do.</summary>
    public static IEnumerable<Consent> Standing(RepairOrder order, DateTimeOffset at) =>
        order.InRound<Consent>().Where(c => Started(order) || c.Asked.Ask.GivenAt + Life(order) >= at);

    /// <summary>Why work may not rest on the consents now; nothing where it rests on an approved design, or both stand.</summary>
    public static Objection? NotStanding(RepairOrder order, DateTimeOffset at) =>
        order.ApprovedDesign is not null || Standing(order, at).Select(c => c.Asked.Ask.As).Distinct().Count() == 2
            ? null
            : new Objection(
                "consents-not-standing",
                $"There is no approval, and the two consents do not stand: one is missing, was taken back, or lapsed {Life(order).TotalHours:0} hours after it was given without a start. Ask for them again.",
                "engineer on call and operations in charge"
            );

    /// <summary>The consenter has said in his own session that he gave it; who wrote his own down has.</summary>
    public static bool IsConfirmed(RepairOrder order, Consent consent) =>
        consent.ById == consent.GivenBy
        || order.All<Confirmation>().Any(c => c.Asked.Ask.Consent == consent.Id && c.Asked.Ask.Given);

    private static bool Started(RepairOrder order) =>
        Rounds.History(order).Any(h => h.Round == order.Round && h.Stage == Stage.Fitting);
}
