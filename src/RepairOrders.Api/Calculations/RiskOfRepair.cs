using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Risk;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;
using PeopleNearby = RepairOrders.Engineering.Risk.PeopleNearby;
using RepairStrength = RepairOrders.Engineering.Risk.RepairStrength;
using RiskClass = RepairOrders.Engineering.Risk.RiskClass;

namespace RepairOrders.Api.Calculations;

internal static class RiskOfRepair
{
    private static readonly Clause Weights = new("weights A 27, B 9, C 3, D 1", "", Provenance.OwnRule);

    private static readonly string[] Cautions =
    [
        "The class decides who signs and how often somebody looks; it is no measure of how safe it is to stand there.",
    ];

    public static CalculationAnswer<RiskClassResult> Calculate(CalculateRiskClass ask)
    {
        var standing = new Engineering.Risk.Standing(ask.LiveRepairsOnSection, ask.NoPermanentFixReference);
        var signed = RiskRanking.ToSign(Consequences(ask), Likelihoods(ask), standing);
        var today = ask.Ageing is { } ageing ? RiskRanking.Today(signed, Age(ageing), standing) : null;
        var sum = ask.SectionClasses is { } classes
            ? CarriedRisk.Sum(classes.Select(c => c.As<RiskClass>()))
            : (int?)null;
        var sheet = new Worksheet();
        sheet.Take((today ?? signed).Working, [], Cautions);
        if (sum is { } carried)
            sheet.Take(Carried(ask.SectionClasses!, carried), [], []);
        return sheet.Answer(new RiskClassResult(signed.View(), today?.View(), sum));
    }

    private static Working Carried(IReadOnlyList<Contract.RiskClass> classes, int sum)
    {
        var working = new Working();
        var weights = string.Join(" + ", classes.Select(c => CarriedRisk.Weight(c.As<RiskClass>())));
        working.Step("Σw", "carried risk of the section", "Σ w(class)", $"{weights}", sum, "-", Weights);
        return working;
    }

    private static ConsequenceFacts Consequences(CalculateRiskClass ask) =>
        new(
            ask.Service.Service(),
            ask.NominalSizeDn,
            ask.People.As<PeopleNearby>(),
            ask.ListedContents,
            ask.LiquefiedFlammableGas,
            ask.StrongAcidOrAlkali,
            ask.ShipClassOne,
            ask.IsolableWithinTenMinutes,
            Mass.FromKilograms(ask.EscapableInventoryKg),
            ask.DrainsToWater
        );

    private static LikelihoodFacts Likelihoods(CalculateRiskClass ask) =>
        new(
            ask.Defect.Defect(),
            Mm(ask.RequiredWallMm),
            ask.WallMeasured,
            ask.Repair.As<RepairStrength>(),
            ask.Service.Cyclic,
            ask.EarlierLeaks,
            ask.Reinjections,
            ask.RecordScorePercent
        );

    private static Ageing Age(AgeingToReckon age) =>
        new(
            age.MissedLooks,
            age.LifeUsed,
            age.PastEndDate,
            age.RecordScorePercent,
            age.ReinjectionsSince,
            age.EarlierLeaksSince
        );
}
