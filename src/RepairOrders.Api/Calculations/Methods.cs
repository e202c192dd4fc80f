using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Calculations;

/// <summary>Every method of the catalogue is a subject of its own, so that a new one needs nothing here.</summary>
internal static class Methods
{
    public static CalculationAnswer<MethodResult> Calculate(IRepairMethod method, CalculateMethod ask)
    {
        var design = method.Size(
            new Readings(
                ask.Pipe.Pipe(),
                ask.Defect.Defect(),
                ask.Service.Service(),
                ask.Inputs ?? new Dictionary<string, double>()
            )
        );
        var view = design.View(method.Name);
        var sheet = new Worksheet();
        sheet.Take(design.Working, design.Findings, design.Cautions);
        return sheet.Answer(
            new MethodResult(
                view.Method,
                view.Name,
                design.Holds,
                view.PressureHeldBar,
                view.Dimensions,
                view.Materials,
                view.HoldPoints,
                view.SetForLoadHours,
                view.FullHardnessHours,
                view.CureReferenceC,
                view.DesignLifeDays,
                view.LeastWallMm,
                view.CarriesAxialLoad,
                view.Series
            )
        );
    }

    public static IReadOnlyList<InputView> Inputs(IRepairMethod method) => [.. method.Inputs.Select(i => i.View())];
}
