using RepairOrders.Api.Wire;
using RepairOrders.Engineering.Risk;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Standing;

/// <summary>The weight of live repairs on one section.</summary>
internal static class CarriedRisks
{
    public static int Weight(RiskClass riskClass) => CarriedRisk.Weight(riskClass.As<Engineering.Risk.RiskClass>());

    public static int Sum(IEnumerable<RiskClass> classes) => classes.Sum(Weight);
}
