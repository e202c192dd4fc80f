using RepairOrders.Api.Assessing;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;

namespace RepairOrders.Api.Consenting;

internal static class ConsentingEndpoints
{
    public static void MapConsenting(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/consents", Record)
            .Needs(Permission.RecordConsent)
            .WithSummary("Write down a spoken consent");
        orders
            .MapPost("/{number}/consent-confirmations", Confirm)
            .Needs(Permission.ConfirmConsent)
            .WithSummary("Say in one's own session whether one gave it");
        orders
            .MapPost("/{number}/debt-periods", Grant)
            .Needs(Permission.GrantPeriod)
            .WithSummary("Grant one more period for what is owed");
    }

    private static async Task<RecordView> Record(
        string number,
        RecordConsent ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        if (ask.GivenAt > at || ask.GivenAt < order.Request.At)
            throw new MalformedAsk(
                "givenAt",
                $"givenAt is {ask.GivenAt:u}; allowed is a time since the request, {order.Request.At:u}, and not after now."
            );
        var method = await store.EmergencyMethod(ask.Method, by);
        var giver = await store.Users.SingleOrDefaultAsync(
            p => p.Id == ask.GivenBy && p.Sites.Contains(order.Site.ShortName),
            CancellationToken.None
        );
        RepairOrder.Refuse(Consent.Objection(order, ask, method, giver, await FailedHere(store, order), by, at));
        var lapsed = order.InRound<Consent>().Except(Consents.Standing(order, at)).ToList();
        foreach (var old in lapsed)
            order.SetAside(old, by, at, "lapsed without a start");
        var facts = LineFacts.Of(order, ask.Line, cyclic: false)!;
        var risk = RiskRanking.UntilAssessed(Judging.Consequences(facts, ask.Consequences));
        var consent = order.Sign(
            new Consent(new(ask, giver!.FullName, method.Entry, risk.View(), order.Site.FiguresVersionInForce)),
            by,
            at,
            ask.Said
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return consent.View();
    }

    // Whoever speaks at night may not know what earlier orders tell of the spot.
    private static async Task<bool> FailedHere(RepairStore store, RepairOrder order)
    {
        var failed = await store
            .Orders.Where(o => o.SiteId == order.SiteId && o.LineId == order.LineId && o.Id != order.Id)
            .Where(o => store.Set<Failure>().Any(f => f.OrderId == o.Id && f.SetAsideAt == null))
            .Select(o => o.Columns.Place)
            .ToListAsync(CancellationToken.None);
        return failed.Contains(order.Columns.Place, StringComparer.OrdinalIgnoreCase);
    }

    private static async Task<RecordView> Confirm(
        string number,
        ConfirmConsent ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        if (!ask.Given && string.IsNullOrWhiteSpace(ask.Remark))
            throw new MalformedAsk(
                "remark",
                "remark is missing; a consent that was not given needs a word of what was said."
            );
        var order = await store.Order(number, by);
        var at = clock.Now();
        var consent =
            order.InRound<Consent>().FirstOrDefault(c => c.Id == ask.Consent)
            ?? throw new NotHere("There is no such consent in this round.");
        RepairOrder.Refuse(Authority.Objection(by, order, at) ?? Confirmation.Objection(order, consent, by));
        var late = Debts.DueAt(order) is { } due && at > due;
        var confirmation = order.Sign(new Confirmation(new(ask, late)), by, at, ask.Remark);
        if (!ask.Given)
            order.SetAside(consent, by, at, $"not given: {ask.Remark}");
        await store.SaveChangesAsync(CancellationToken.None);
        return confirmation.View();
    }

    private static async Task<RecordView> Grant(
        string number,
        GrantPeriod ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(DebtPeriod.Objection(order, by, at));
        var period = order.Sign(new DebtPeriod(ask), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return period.View();
    }
}
