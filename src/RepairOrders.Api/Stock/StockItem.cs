using RepairOrders.Api.Orders;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

/// <summary>A kind of material the stores keep, with what its maker states.</summary>
internal sealed class StockItem : IKept
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid SiteId { get; init; }
    public string Code { get; init; } = "";
    public string Words { get; set; } = "";

    /// <summary>The kind of bill line it serves.</summary>
    public string Need { get; set; } = "";
    public string Unit { get; set; } = "";
    public bool Expires { get; set; }
    public bool NeedsCertificate { get; set; }
    public MaterialLimits? Limits { get; set; }
    public uint Version { get; private set; }
    public string Kind => "stock item";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";

    public void Describe(DescribeStockItem said)
    {
        Words = said.Words;
        Need = said.Need;
        Unit = said.Unit;
        Expires = said.Expires;
        NeedsCertificate = said.NeedsCertificate;
        Limits = said.Limits;
    }

    public DescribeStockItem Said(string site) => new(site, Code, Words, Need, Unit, Expires, NeedsCertificate, Limits);

    /// <summary>What of the description contradicts itself, by field.</summary>
    public static IReadOnlyDictionary<string, string[]> Contradictions(DescribeStockItem said)
    {
        var wrong = new Dictionary<string, string[]>();
        if (said.Limits is not { } limits)
            return wrong;
        Check(
            limits.GreatestTemperature.Value >= limits.LeastTemperature.Value,
            "limits.greatestTemperature",
            $"limits.greatestTemperature is {limits.GreatestTemperature.Entered}; allowed is {limits.LeastTemperature.Entered} or more."
        );
        Together("potLife", limits.PotLife, "potLifeAt", limits.PotLifeAt);
        Check(
            limits.OpenTime is null || limits.PotLife is not null,
            "limits.openTime",
            "limits.openTime is given without limits.potLife; give both or neither."
        );
        Together("setForLoad", limits.SetForLoad, "cureAt", limits.CureAt);
        Together("setForLoad", limits.SetForLoad, "fullHardness", limits.FullHardness);
        Together("setForLoad", limits.SetForLoad, "leastCure", limits.LeastCure);
        Together("q10Below", limits.Q10Below, "q10Above", limits.Q10Above);
        Check(
            limits.SetForLoad is null
                || limits.FullHardness is null
                || limits.FullHardness.Value >= limits.SetForLoad.Value,
            "limits.fullHardness",
            $"limits.fullHardness is {limits.FullHardness?.Entered}; allowed is {limits.SetForLoad?.Entered} or more."
        );
        Check(
            limits.MixRatio is null || (limits.Hardener is not null && limits.MixTolerancePercent is not null),
            "limits.mixRatio",
            "limits.mixRatio is given without limits.hardener and limits.mixTolerancePercent; give all three, or none for a pack that holds both parts."
        );
        return wrong;

        void Check(bool right, string field, string sentence)
        {
            if (!right)
                wrong[field] = [sentence];
        }

        void Together(string one, object? first, string other, object? second) =>
            Check(
                first is null == second is null,
                $"limits.{(first is null ? one : other)}",
                $"limits.{one} and limits.{other} belong together; give both or neither."
            );
    }

    public static Objection? Objection(DescribeStockItem said, bool taken) =>
        taken
            ? new Objection(
                "item-code-taken",
                $"Item {said.Code} is in the stores' list already. Choose another number, or change that item.",
                "storekeeper"
            )
            : null;
}
