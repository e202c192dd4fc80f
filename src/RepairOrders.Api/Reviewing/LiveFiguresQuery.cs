using RepairOrders.Api.Choosing;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Register;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Reviewing;

/// <summary>One repair's time in service: its first start, and when it ceased to be live; nothing while it is.</summary>
internal sealed record InService(string? Method, DateTimeOffset Since, DateTimeOffset? Ended, int Extensions);

/// <summary>What a manager answers for, counted from the register and the records as they stand.</summary>
internal static class LiveFiguresQuery
{
    private const int Months = 12;
    private const string NoChoice = "emergency list";

    public static async Task<LiveFiguresView> Read(
        RepairStore store,
        Person by,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var orders = store.Orders.AsNoTracking().Asked(store, new RegisterFilter(), by, at);
        var ever = await orders
            .Where(o => o.Columns.InServiceSince != null)
            .Select(o => new InService(
                o.Columns.Method,
                o.Columns.InServiceSince!.Value,
                o.Columns.Live
                    ? null
                    : store
                        .Set<Removal>()
                        .Where(r => r.OrderId == o.Id && r.SetAsideAt == null)
                        .Max(r => (DateTimeOffset?)r.At)
                        ?? o.Records.Max(r => r.At),
                o.Columns.Extensions
            ))
            .ToListAsync(stop);
        Task<int> Flagged(string code) =>
            FlagRules.Find(code)!.Where(orders.Where(o => o.Columns.Open), store, at).CountAsync(stop);
        return new(
            Figures(
                [.. ever.Where(r => r.Ended is null)],
                await Flagged(Flags.PastLife),
                await Flagged(Flags.LookOverdue),
                await Flagged(Flags.ApprovalOwed),
                await Flagged(Flags.RepeatLeak),
                at
            ),
            Trend(ever, at),
            await Failures(store, orders, ever, at.AddMonths(-Months), stop),
            at
        );
    }

    public static IReadOnlyList<LiveFigure> Figures(
        IReadOnlyList<InService> live,
        int pastLife,
        int lookOverdue,
        int approvalOwed,
        int repeatLeak,
        DateTimeOffset at
    )
    {
        var ages = live.Select(r => (at - r.Since).TotalDays).ToList();
        var extended = live.Count(r => r.Extensions > 0);
        double? Share(int count) => live.Count == 0 ? null : 100.0 * count / live.Count;
        return
        [
            new(
                "live",
                "live repairs",
                "in service now, or failed and not yet off the pipe",
                live.Count,
                live.Count,
                "repairs"
            ),
            new("past-life", "past life", "live after the end date, of the live ones", pastLife, Share(pastLife), "%"),
            new(
                "look-overdue",
                "looks overdue",
                "a look is due and its grace is over, of the live ones",
                lookOverdue,
                Share(lookOverdue),
                "%"
            ),
            new(
                "age-mean",
                "mean age",
                "days since the first start in service, over the live ones",
                live.Count,
                ages.Count == 0 ? null : ages.Average(),
                "days"
            ),
            new(
                "age-oldest",
                "oldest",
                "the live repair that has been in service longest",
                live.Count,
                ages.Count == 0 ? null : ages.Max(),
                "days"
            ),
            new(
                "extended",
                "extended",
                "at least one extension granted, of the live ones",
                extended,
                Share(extended),
                "%"
            ),
            new(
                "approval-owed",
                "approval owed",
                "fitted on two consents, full approval not yet signed",
                approvalOwed,
                approvalOwed,
                "repairs"
            ),
            new(
                "repeat-leak",
                "repeat leaks",
                "open orders with an earlier leak on the line within 24 months",
                repeatLeak,
                repeatLeak,
                "repairs"
            ),
        ];
    }

    /// <summary>Month by month as it stood then, from the starts and ends of every repair there ever was.</summary>
    public static IReadOnlyList<LiveMonth> Trend(IReadOnlyList<InService> ever, DateTimeOffset at)
    {
        var months = new List<LiveMonth>();
        var first = new DateTimeOffset(at.Year, at.Month, 1, 0, 0, 0, TimeSpan.Zero).AddMonths(1 - Months);
        for (var from = first; from <= at; from = from.AddMonths(1))
        {
            var until = from.AddMonths(1);
            months.Add(
                new(
                    DateOnly.FromDateTime((until < at ? until.AddDays(-1) : at).UtcDateTime),
                    ever.Count(r => r.Since < until && !(r.Ended < until)),
                    ever.Count(r => r.Since >= from && r.Since < until),
                    ever.Count(r => r.Ended >= from && r.Ended < until)
                )
            );
        }
        return months;
    }

    private static string Chosen(string? method) =>
        method?.EndsWith(Summary.ByConsent, StringComparison.Ordinal) == false ? method : NoChoice;

    // By the method chosen in the round that failed: a later round may have another.
    private static async Task<IReadOnlyList<MethodFailures>> Failures(
        RepairStore store,
        IQueryable<RepairOrder> orders,
        IReadOnlyList<InService> ever,
        DateTimeOffset since,
        CancellationToken stop
    )
    {
        var failures = await store
            .Set<Failure>()
            .AsNoTracking()
            .Where(f => f.SetAsideAt == null && f.At >= since && orders.Any(o => o.Id == f.OrderId))
            .Select(f => new { f.OrderId, f.Round })
            .ToListAsync(stop);
        Guid[] failed = [.. failures.Select(f => f.OrderId).Distinct()];
        var choices = await store
            .Set<Choice>()
            .AsNoTracking()
            .Where(c => c.SetAsideAt == null && failed.Contains(c.OrderId))
            .ToListAsync(stop);
        return
        [
            .. failures
                .GroupBy(f =>
                    choices.LastOrDefault(c => c.OrderId == f.OrderId && c.Round == f.Round)?.Name ?? NoChoice
                )
                .Select(g => new MethodFailures(
                    g.Key,
                    g.Count(),
                    ever.Count(r => Chosen(r.Method) == g.Key && !(r.Ended < since))
                ))
                .OrderByDescending(m => m.Failures)
                .ThenBy(m => m.Method, StringComparer.Ordinal),
        ];
    }
}
