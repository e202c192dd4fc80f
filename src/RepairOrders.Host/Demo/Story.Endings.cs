using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// Ways out, and the way to the closed order.
internal sealed partial class Story
{
    /// <summary>Taken off, put right for good and closed, a few days apart.</summary>
    public Story Finish(double day, string condition, string causeFound, DefectCause cause, string? lessons = null) =>
        Remove(day, condition)
            .Inspect("wall as assessed, no surprise under the repair", cause)
            .MendForGood()
            .Close(cause, causeFound, lessons);

    /// <summary>Removal is ordered, readied on a dead line, and the bare pipe photographed.</summary>
    public Story Remove(double day, string condition, string why = "the permanent fix is ready", bool tagBack = true) =>
        OrderRemoval(day - 2, why)
            .On(day, 6.5)
            .Then(async () =>
            {
                await (await As(InCharge)).ReadyOrder(Number, await Readiness(ReadinessFor.Removal, 24));
                await Minutes(110);
                var photo = await Photograph(Fitters[0], PhotoOf.Removal, "the bare pipe", covered: false);
                await (await As(Fitters[0])).RecordRemoval(Number, new(photo, condition, tagBack), await Version());
            });

    /// <summary>The supervisor orders it off.</summary>
    public Story OrderRemoval(double day, string why, int within = 14) =>
        On(day, 8)
            .Then(async () =>
                await (await As("mara")).OrderRemoval(
                    Number,
                    new(why, walk.Today.AddDays(within), "new section welded in, line off meanwhile"),
                    await Version()
                )
            );

    /// <summary>The inspector's entry on the bare pipe.</summary>
    public Story Inspect(string found, DefectCause cause) =>
        Then(async () =>
        {
            await Minutes(60);
            await (await As("pavel")).InspectRemoval(Number, new(found, cause), await Version());
        });

    /// <summary>The new section, its certificates, welds and test.</summary>
    public Story MendForGood(PermanentFixKind kind = PermanentFixKind.Replacement) =>
        Then(async () =>
        {
            await Minutes(60 * 30);
            await Photograph("mara", PhotoOf.PermanentFix, "the new section", covered: false);
            await (await As("mara")).RecordPermanentFix(
                Number,
                new(
                    kind,
                    "job 4411",
                    walk.Today,
                    "3.1 no. 88213, pipe and two elbows",
                    "two butt welds, magnetic and radiographic, no finding",
                    Measured(Bar * 1.5),
                    "isometric redlined, revision on order"
                ),
                await Version()
            );
        });

    /// <summary>The order is closed; an engineer countersigns where the class asks.</summary>
    public Story Close(DefectCause cause, string found, string? lessons = null) =>
        Then(async () =>
        {
            await Minutes(60 * 50);
            var closed = await (await As("mara")).CloseOrder(
                Number,
                new(
                    cause,
                    found,
                    $"MOC-{Number[(Mill.Site.Length + 1)..]} closed",
                    TagBack: true,
                    lessons ?? "Put the neighbours of the same age on the next survey."
                ),
                await Version()
            );
            if ((await Sheet()).Title.Stage == Stage.Closed)
                return;
            await Minutes(60);
            await (await As("pavel")).CountersignCloseOut(Number, new(closed.Id));
        });

    /// <summary>Sent back with what is missing.</summary>
    public Story Return(string why, params string[] missing) =>
        Then(async () =>
        {
            await Minutes(95);
            await (await As(Engineer)).Exit(
                Number,
                new(ExitKind.Returned, ExitCapacity.Engineer, why, Missing: missing)
            );
        });

    /// <summary>No temporary repair here; operations acknowledge.</summary>
    public Story Refuse(string why) =>
        Then(async () =>
        {
            await Minutes(30);
            var exit = await (await As(Engineer)).Exit(Number, new(ExitKind.Refused, ExitCapacity.Engineer, why));
            await Minutes(20);
            await (await As(InCharge)).SignExit(Number, new(exit.Id, ExitCapacity.OperationsInCharge));
        });

    /// <summary>Withdrawn by who raised it.</summary>
    public Story Withdraw(string why, string? leakStopped = null) =>
        Then(async () =>
        {
            await Minutes(200);
            await (await As(requester)).Exit(
                Number,
                new(ExitKind.Withdrawn, ExitCapacity.Requester, why, LeakStopped: leakStopped)
            );
        });

    /// <summary>A newer order stands on the spot.</summary>
    public Story Supersede(double day, Story newer, string why) =>
        On(day, 15)
            .Then(async () =>
                await (await As(Engineer)).Exit(
                    Number,
                    new(ExitKind.Superseded, ExitCapacity.Engineer, why, OtherOrder: newer.Number)
                )
            );

    private static string Measured(double bar) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"water, {bar:0.#} bar for 30 min, tight");
}
