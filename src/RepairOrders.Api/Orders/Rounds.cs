using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>What earlier rounds of an order say about the one at work.</summary>
internal static class Rounds
{
    /// <summary>The stages the order went through, with the moment each began.</summary>
    public static IEnumerable<(Stage Stage, int Round, DateTimeOffset At)> History(RepairOrder order)
    {
        var stage = Stage.Requested;
        foreach (var record in order.Records.Where(r => r.Stands).OrderBy(r => r.At).ThenBy(r => r.Id))
        {
            var after = record is IMovesStage moves ? moves.After(stage, order) : stage;
            if (after != stage)
                yield return (after, record.Round, record.At);
            stage = after;
        }
    }

    /// <summary>Work has begun on the pipe and nothing has been taken off since.</summary>
    public static bool SomethingOnThePipe(RepairOrder order) =>
        History(order).Select(h => h.Stage).LastOrDefault(s => s is Stage.Fitting or Stage.Removed) == Stage.Fitting;

    /// <summary>When the order first came into service, in any round.</summary>
    public static DateTimeOffset? FirstInService(RepairOrder order) => Began(order, null);

    /// <summary>When this round came into service.</summary>
    public static DateTimeOffset? InServiceSince(RepairOrder order) => Began(order, order.Round);

    /// <summary>How many earlier rounds were fitted with this method and did not last.</summary>
    public static int FailedWith(RepairOrder order, string method)
    {
        var fitted = History(order)
            .Where(h => h.Stage is Stage.Fitted or Stage.InService)
            .Select(h => h.Round)
            .ToHashSet();
        return Enumerable
            .Range(1, order.Round - 1)
            .Count(round => fitted.Contains(round) && MethodOf(order, round) == method);
    }

    /// <summary>The gravest class the order was ever assessed or signed under.</summary>
    public static RiskClass GravestClass(RepairOrder order) =>
        order
            .All<Assessment>()
            .Select(a => a.Asked.Judgement.Risk.Class)
            .Concat(order.All<Design>().Select(d => d.Asked.Risk.Class))
            .DefaultIfEmpty(RiskClass.A)
            .Min();

    private static string? MethodOf(RepairOrder order, int round) =>
        order.All<Choice>().LastOrDefault(c => c.Round == round)?.Asked.Ask.Method;

    private static DateTimeOffset? Began(RepairOrder order, int? round) =>
        History(order)
            .Where(h => h.Stage == Stage.InService && (round is null || h.Round == round))
            .Select(h => (DateTimeOffset?)h.At)
            .FirstOrDefault();
}
