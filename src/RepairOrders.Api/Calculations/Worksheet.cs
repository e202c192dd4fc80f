using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Calculations;

/// <summary>Gathers working, findings and cautions of the parts of an answer.</summary>
internal sealed class Worksheet
{
    private readonly List<WorkingStep> working = [];
    private readonly List<Finding> findings = [];
    private readonly List<string> cautions = [];

    public T Take<T>(Calculated<T> part)
    {
        Take(part.Working, part.Findings, part.Cautions);
        return part.Result;
    }

    public void Take(IEnumerable<WorkingStep> steps, IEnumerable<Finding> found, IEnumerable<string> warned)
    {
        working.AddRange(steps);
        findings.AddRange(found);
        cautions.AddRange(warned);
    }

    public CalculationAnswer<T> Answer<T>(T result) =>
        new(
            result,
            [.. working.Select(Finite).Select(s => s.View())],
            [.. findings.Select(f => f.View())],
            [.. cautions.Distinct()]
        );

    // The view has no word for infinity and would write 0.
    private static WorkingStep Finite(WorkingStep step) =>
        double.IsFinite(step.Value) ? step : throw new Unreckonable(step.Symbol);
}
