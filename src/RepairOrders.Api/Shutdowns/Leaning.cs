using System.Text.Json;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Shutdowns;

/// <summary>The orders that lean on a shutdown, and who loses out if it moves.</summary>
internal static class Leaning
{
    /// <summary>
    /// Open orders whose design was made for this shutdown, or whose end date moved in with it when it came before theirs. What is
    /// off the pipe waits for none.
    /// </summary>
    public static IQueryable<RepairOrder> On(RepairStore store, Shutdown shutdown)
    {
        var named = JsonSerializer.Serialize(new { shutdown = shutdown.Name });
        return Dated(store, shutdown)
            .Where(o =>
                o.Columns.Shutdown == shutdown.Name
                || store
                    .Set<EndMovedIn>()
                    .Any(m =>
                        m.OrderId == o.Id
                        && m.Round == o.Round
                        && m.SetAsideAt == null
                        && EF.Functions.JsonContains(m.Body, named)
                    )
            );
    }

    /// <summary>
    /// Open orders whose end date lies past this shutdown: those designed for it, and every repair in service in its area, for
    /// which it is now the next chance.
    /// </summary>
    public static IQueryable<RepairOrder> Past(RepairStore store, Shutdown shutdown) =>
        Dated(store, shutdown)
            .Where(o =>
                o.Columns.EndDate > shutdown.Start
                && (
                    o.Columns.Shutdown == shutdown.Name
                    || (
                        o.Columns.InServiceSince != null
                        && o.LineId != null
                        && (shutdown.Area == null || o.Line!.Area == shutdown.Area)
                    )
                )
            );

    private static IQueryable<RepairOrder> Dated(RepairStore store, Shutdown shutdown) =>
        store.Orders.Where(o =>
            o.SiteId == shutdown.SiteId
            && o.Columns.Open
            && o.Columns.EndDate != null
            && o.Columns.Stage != Stage.Removed
            && o.Columns.Stage != Stage.Fixed
        );

    public static async Task<IReadOnlyList<LeaningOrder>> Views(
        RepairStore store,
        Shutdown shutdown,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var orders = await On(store, shutdown)
            .AsNoTracking()
            .Select(o => new
            {
                o.Number,
                Line = o.Line!.Number,
                o.Columns,
            })
            .ToListAsync(stop);
        return
        [
            .. orders
                .Select(o => View(o.Number, o.Line, o.Columns, shutdown.Start, at))
                .OrderByDescending(o => o.LosesOut)
                .ThenBy(o => o.ClassToday ?? RiskClass.A)
                .ThenBy(o => o.EndDate)
                .ThenBy(o => o.Number, StringComparer.Ordinal),
        ];
    }

    /// <summary>Moves end dates in with a shutdown that was brought forward. A design that awaits signatures is sized again.</summary>
    public static void MoveIn(
        IEnumerable<RepairOrder> orders,
        Shutdown shutdown,
        People.Person by,
        DateTimeOffset at,
        string why
    )
    {
        foreach (var order in orders)
            if (EndInForce.Of(order)?.On is { } end && end > shutdown.Start)
                order.Sign(new EndMovedIn(new(shutdown.Name, shutdown.Start, end, shutdown.Start)), by, at, why);
    }

    private static LeaningOrder View(string number, string? line, OrderColumns c, DateOnly start, DateTimeOffset at)
    {
        var shortBy = start.DayNumber - c.EndDate!.Value.DayNumber;
        return new(
            number,
            line,
            OrderToday.ClassOf(c, at),
            c.Stage,
            c.EndDate,
            shortBy > 0,
            shortBy > 0 ? shortBy : null,
            c.Owner,
            c.PermanentFix
        );
    }
}
