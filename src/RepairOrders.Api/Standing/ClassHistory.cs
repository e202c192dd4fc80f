using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Standing;

/// <summary>The classes of an order: signed, today, and the gravest it ever had.</summary>
internal static class ClassHistory
{
    /// <summary>The class decided on: that of the approved design, else of what was judged last; nothing before that.</summary>
    public static RiskClass? Signed(RepairOrder order) => Last(order)?.Class.As<RiskClass>();

    /// <summary>The class as it reads at a moment; nothing before the pipe was judged.</summary>
    public static RiskClass? At(RepairOrder order, DateTimeOffset at) => Rank(order, at)?.Class.As<RiskClass>();

    /// <summary>The class as it reads at a moment, with its reasons.</summary>
    public static RiskRank? Rank(RepairOrder order, DateTimeOffset at) => Courses.Of(order)?.At(at) ?? Last(order);

    /// <summary>The class that held last, with its reasons.</summary>
    public static RiskRank? Last(RepairOrder order) => Risks(order) is [.., var last] ? last.Value : null;

    /// <summary>
    /// Classes from when each held. Once a round's design is approved only another approved one replaces it; before that the
    /// last judgement counts.
    /// </summary>
    public static IReadOnlyList<Since<RiskRank>> Risks(RepairOrder order)
    {
        var approved = order
            .All<Approval>()
            .Where(a => Signatures.CompletesAt(a, order))
            .Select(a => (a.At, Design: DesignOf(order, a)))
            .Where(a => a.Design is not null)
            .ToList();
        var judged = order
            .All<Assessment>()
            .Where(a => !approved.Any(d => d.Design!.Round == a.Round && d.At < a.At))
            .Select(a => new Since<RiskRank>(a.At, Rank(a.Asked.Judgement.Risk)));
        // Until somebody assesses it, an emergency stands under the class its consents were given for.
        var consented = order.All<Consent>().Select(c => new Since<RiskRank>(c.At, Rank(c.Asked.Risk)));
        return
        [
            .. consented
                .Concat(judged)
                .Concat(approved.Select(a => new Since<RiskRank>(a.At, Rank(a.Design!.Asked.Risk))))
                .OrderBy(s => s.From),
        ];
    }

    private static Design? DesignOf(RepairOrder order, Approval approval) =>
        order
            .All<Design>()
            .LastOrDefault(d => d.Round == approval.Round && d.Asked.Fingerprint == approval.Asked.Fingerprint);

    private static RiskRank Rank(RiskView risk) =>
        new(risk.Class.As<Engineering.Risk.RiskClass>(), risk.Consequence, risk.Likelihood, risk.Reasons);
}
