using System.Globalization;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Contract;
using RepairOrders.Engineering;
using RepairOrders.Engineering.Curing;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Api.Fitting;

/// <summary>One mix: its clock starts when it is signed and cannot be edited; it can be voided with a reason.</summary>
internal sealed class Mix : SignedRecord<SignedMix>, IMovesStage
{
    private Mix() { }

    public Mix(SignedMix body)
        : base(body) { }

    public override string Kind => "mix";

    public override string Summary =>
        $"{Asked.Words}, batch {Asked.Number}{(Asked.HardenerNumber is { } h ? $" with hardener {h}" : "")}, usable until {Asked.UsableUntil:HH:mm} UTC";

    public Stage After(Stage before, RepairOrder order) => before == Stage.Ready ? Stage.Fitting : before;

    /// <summary>When a mix was put on the pipe; nothing while it was not.</summary>
    public static DateTimeOffset? UsedAt(RepairOrder order, Guid mix) =>
        order.All<MixUse>().FirstOrDefault(u => u.Asked.Mix == mix)?.At;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        AtWork.Objection(order, "A mix", by, at) ?? AtWork.NotAFitter(order, by);

    /// <summary>What stands against this mix.</summary>
    public static Objection? Objection(
        RepairOrder order,
        StartMix ask,
        Batch material,
        Batch? hardener,
        DateTimeOffset at
    )
    {
        var plan = WorkPlan.Of(order)!;
        var today = order.Site.Today(at);
        return NotIssued(order, plan, material)
            ?? MaterialIssue.Barred(material, today)
            ?? (hardener is null ? null : NotIssued(order, plan, hardener) ?? MaterialIssue.Barred(hardener, today))
            ?? LimitsMissing(material)
            ?? Hardener(material, hardener)
            ?? Ratio(material.Item.Limits!, ask)
            ?? ClimateReading.Objection(order, material.Item, at)
            ?? TooHot(order, material.Item.Limits!, ask, at);
    }

    /// <summary>Pot life and open time by the warmer of mix and steel, counted from now.</summary>
    public static Calculated<WorkingTime> Clock(
        MaterialLimits limits,
        StartMix ask,
        double steelC,
        DateTimeOffset at
    ) =>
        PotLife.At(
            new(
                Temperature.FromDegreesCelsius(limits.PotLifeAt!.Value),
                Duration.FromMinutes(limits.PotLife!.Value),
                limits.OpenTime is { } open ? Duration.FromMinutes(open.Value) : null
            ),
            Temperature.FromDegreesCelsius(Math.Max(ask.MixTemperature.Value, steelC)),
            at
        );

    private static Objection? NotIssued(RepairOrder order, WorkPlan plan, Batch batch) =>
        plan.Emergency || order.InRound<MaterialIssue>().Any(i => i.Asked.Lines.Any(l => l.Batch == batch.Id))
            ? null
            : new Objection(
                "batch-not-issued",
                $"Batch {batch.Number} of {batch.Item.Words} was not issued for this order. Use what was, or have it issued.",
                "storekeeper"
            );

    private static Objection? LimitsMissing(Batch material) =>
        material.Item.Limits is { PotLife: not null }
            ? null
            : new Objection(
                "limits-missing",
                $"Nobody has entered what the maker states of {material.Item.Words}: temperature range and pot life. It cannot be judged, so it is not mixed.",
                "storekeeper or integrity engineer, from the data sheet"
            );

    private static Objection? Hardener(Batch material, Batch? hardener)
    {
        var wanted = material.Item.Limits!.Hardener;
        if (wanted == hardener?.Item.Code)
            return null;
        return new Objection(
            "wrong-hardener",
            wanted is null
                ? $"{material.Item.Words} holds both its parts; nothing else is mixed into it."
                : $"{material.Item.Words} is mixed with {wanted} and nothing else; mixed brands can react violently.",
            "technician, with the right parts"
        );
    }

    private static Objection? Ratio(MaterialLimits limits, StartMix ask)
    {
        if (limits.MixRatio is not { } ratio)
            return null;
        var mixed = ask.Mass is { } mass && ask.HardenerMass is { } part ? mass.Value / part.Value : (double?)null;
        if (mixed is { } got && Math.Abs(got / ratio - 1) * 100 <= limits.MixTolerancePercent + 1e-9)
            return null;
        return new Objection(
            "mix-ratio",
            mixed is { } is_
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"The ratio is {is_:0.##} to 1; it must be {ratio:0.##} to 1 within {limits.MixTolerancePercent:0.#} %. Scrap it, weigh again."
                )
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"Weigh both parts: {ratio:0.##} parts by mass to 1 of hardener, within {limits.MixTolerancePercent:0.#} %."
                ),
            "technician, by weighing again"
        );
    }

    private static Objection? TooHot(RepairOrder order, MaterialLimits limits, StartMix ask, DateTimeOffset at)
    {
        var steel = ClimateReading.Fresh(order, at)!.Asked.Ask.Steel.Value;
        var failed = Clock(limits, ask, steel, at).Findings.FirstOrDefault(f => f.Severity == Severity.Fail);
        return failed is null
            ? null
            : new Objection("pot-life-unknown", failed.Words, "technician, with a cooler mix or pipe");
    }
}

/// <summary>A mix put on the pipe within its pot life.</summary>
internal sealed class MixUse : SignedRecord<SignedMixUse>
{
    private MixUse() { }

    public MixUse(SignedMixUse body)
        : base(body) { }

    public override string Kind => "mix-use";

    public override string Summary =>
        $"{Asked.Item}, batch {Asked.Number} on the pipe{(Asked.Remark is { } remark ? $": {remark}" : "")}";

    public static Objection? Objection(RepairOrder order, Mix mix, Person by, DateTimeOffset at) =>
        AtWork.Objection(order, "A use of a mix", by, at)
        ?? AtWork.NotAFitter(order, by)
        ?? (
            Mix.UsedAt(order, mix.Id) is null
                ? null
                : new Objection("mix-used", "This mix is on the pipe already.", "nobody needs to")
        )
        ?? Over(mix, at);

    /// <summary>The pot life of a mix that is not on the pipe yet.</summary>
    public static Objection? Over(Mix mix, DateTimeOffset at) =>
        at <= mix.Asked.UsableUntil
            ? null
            : new Objection(
                "pot-life-over",
                $"The pot life of this mix of {mix.Asked.Words}, batch {mix.Asked.Number}, is over since {Math.Ceiling((at - mix.Asked.UsableUntil).TotalMinutes):0} min. Scrap it and void it; mix anew.",
                "technician, with a new mix"
            );

    /// <summary>What stands against voiding a mix.</summary>
    public static Objection? Voiding(RepairOrder order, Mix mix) =>
        order.All<HoldPointRelease>().FirstOrDefault(r => r.Asked.Mix == mix.Id) is { } release
            ? new Objection(
                "mix-leaned-on",
                $"The release \"{release.Asked.Title}\" rests on this mix. Strike that through first.",
                "technician or supervisor"
            )
            : null;
}
