using System.Globalization;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Revisiting;

/// <summary>A look, and a thickness visit where walls were read.</summary>
internal sealed class Visit : SignedRecord<SignedVisit>
{
    private static readonly Stage[] Open =
    [
        Stage.Requested,
        Stage.Assessed,
        Stage.Chosen,
        Stage.Sized,
        Stage.Approved,
        Stage.Consented,
        Stage.Issued,
        Stage.Ready,
        Stage.InService,
        Stage.MadeSafe,
        Stage.LineOutOfService,
    ];

    private Visit() { }

    public Visit(SignedVisit body)
        : base(body) { }

    public override string Kind => "visit";

    public override string Summary =>
        string.Join(
            "; ",
            new[]
            {
                $"{Words.Of(Asked.Ask.State)}, {Words.Of(Asked.Ask.Result)}",
                Asked.Walls.Count > 0
                    ? string.Create(CultureInfo.InvariantCulture, $"least wall {Asked.Walls.Min(w => w.WallMm):0.0} mm")
                    : null,
                Asked.Walls.Any(w => w.Below) ? "below forecast" : null,
                Asked.EndDateIn is { } end ? $"end date moved in to {end:yyyy-MM-dd}" : null,
                Asked.Ask.Excursions is { Length: > 0 } excursions ? $"excursion: {excursions}" : null,
            }.OfType<string>()
        );

    public override Tone Tone =>
        Asked.Ask.Result switch
        {
            VisitResult.Failed => Tone.Stop,
            VisitResult.FitToStay when Asked.EndDateIn is null => Tone.Go,
            _ => Tone.Watch,
        };

    /// <summary>Walls were read.</summary>
    public bool IsThickness => Asked.Ask.Readings is { Count: > 0 };

    /// <summary>The papers no longer fit the pipe after this visit, and why; nothing while they do.</summary>
    public string? Unsettles =>
        Asked.Walls.Any(w => w.Below) ? "a reading below forecast"
        : !string.IsNullOrWhiteSpace(Asked.Ask.Excursions) ? "an excursion"
        : Asked.Ask.Result == VisitResult.ReAssess ? "the visit asked for it"
        : null;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A visit", Open) ?? Authority.Objection(by, order, at);

    public static Objection? Objection(RepairOrder order, RecordVisit ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at) ?? OfTag(order, ask) ?? OfPhoto(order, ask) ?? OfResult(order, ask);

    private static Objection? OfTag(RepairOrder order, RecordVisit ask)
    {
        // A bare defect carries no tag yet.
        if (order.Stage is not (Stage.InService or Stage.LineOutOfService))
            return null;
        if (string.IsNullOrWhiteSpace(ask.TagScan) && Photo.Of(order, PhotoOf.Tag).All(p => p.Id != ask.TagPhoto))
            return new Objection(
                "tag-not-seen",
                "Scan the tag or photograph it: it shows that you stood at this repair.",
                "whoever makes the visit"
            );
        return ask.TagScan is { Length: > 0 } scan && !Names(scan, order.Number)
            ? new Objection(
                "tag-of-another",
                $"The tag reads \"{scan}\", this order is {order.Number}. You stand at another repair, or the tag is wrong.",
                "whoever makes the visit, or a supervisor where the tag is wrong"
            )
            : null;
    }

    // The code on a tag is an address that ends in the order's number.
    private static bool Names(string scan, string number) =>
        scan.Trim().Split('/', '?', '#', ' ').Contains(number, StringComparer.OrdinalIgnoreCase);

    private static Objection? OfPhoto(RepairOrder order, RecordVisit ask)
    {
        if (ask.Photo is not { } photo || Photo.Of(order, PhotoOf.Visit).All(p => p.Id != photo))
            return new Objection(
                "visit-photo-missing",
                "Take a photograph from the same viewpoint as before: it is what the next one compares with.",
                "whoever makes the visit"
            );
        return order.All<Visit>().LastOrDefault(v => v.Asked.Ask.Photo == photo) is { } earlier
            ? new Objection(
                "visit-photo-used",
                $"That photograph belongs to the visit of {earlier.Asked.DoneAt:yyyy-MM-dd}. Take one now.",
                "whoever makes the visit"
            )
            : null;
    }

    private static Objection? OfResult(RepairOrder order, RecordVisit ask)
    {
        if (
            order.Stage is Stage.InService or Stage.LineOutOfService
            && ask.State >= LeakState.Weep
            && ask.Result != VisitResult.Failed
        )
            return new Objection(
                "weep-is-failure",
                $"A {Words.Of(ask.State)} at a repair in service is a failure: the only result is failed. Keep away from it and call operations.",
                "whoever makes the visit, by reporting it failed"
            );
        return ask.Result == VisitResult.StayWithAction && string.IsNullOrWhiteSpace(ask.Action)
            ? new Objection("action-missing", "It stays with an action: say which.", "whoever makes the visit")
            : null;
    }
}
