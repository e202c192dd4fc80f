using RepairOrders.Contract;

namespace RepairOrders.Ui.AtThePipe;

/// <summary>What of a step is to be done now: one thing at a time, the first that is missing.</summary>
internal enum PipePart
{
    Climate,
    Mix,
    Cure,
    Sign,
}

internal static class PipeParts
{
    public static PipePart Now(PipeView view, PipeStep step)
    {
        bool Wants(Evidence evidence) => step.Evidence.Contains(evidence);
        var mixed = view.Work.Mixes is [.., var last] ? last : null;
        var usable = mixed is not null && (mixed.UsedAt is not null || mixed.UsableUntil >= view.ReadAt);
        if (Wants(Evidence.Mix) && usable)
            return PipePart.Sign;
        // A mix is begun on a climate that is a go for what is mixed; the service asks the same.
        if (
            (Wants(Evidence.ClimateReading) || Wants(Evidence.Mix))
            && (view.ClimateUntil is null || view.Work.Climate!.Verdicts.Any(v => !v.Go))
        )
            return PipePart.Climate;
        if (Wants(Evidence.Mix))
            return PipePart.Mix;
        if (Wants(Evidence.CureLog) && (view.Work.Cures.Count == 0 || view.Work.Cures.Any(c => !c.SetForLoad)))
            return PipePart.Cure;
        return PipePart.Sign;
    }
}
