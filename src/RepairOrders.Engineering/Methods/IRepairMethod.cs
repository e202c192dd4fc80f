using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>A kind of repair that can be asked what it claims and, where it can be sized, how big it must be.</summary>
public interface IRepairMethod
{
    /// <summary>The code on the wire: <c>banded-patch</c>.</summary>
    string Code { get; }

    /// <summary>The name on screen and paper: <c>Banded patch</c>.</summary>
    string Name { get; }

    /// <summary>The method is welded to the pipe.</summary>
    bool Welded { get; }

    /// <summary>What it must be told to size.</summary>
    IReadOnlyList<Input> Inputs { get; }

    /// <summary>The hold points of its fitting, in order.</summary>
    IReadOnlyList<HoldPoint> HoldPoints { get; }

    /// <summary>Says whether this pipe, defect and service are inside the method's limits, and why.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="defect">The defect.</param>
    /// <param name="service">The service.</param>
    /// <returns>The claim, with every limit tested as a finding.</returns>
    Claim Claims(Pipe pipe, Defect defect, Service service);

    /// <summary>Sizes the repair.</summary>
    /// <param name="readings">Pipe, defect, service and values for <see cref="Inputs"/>.</param>
    /// <returns>The design; one that does not hold says so in its findings.</returns>
    /// <exception cref="ImpossibleInputException">A value is missing, not finite, or outside the input's range.</exception>
    MethodDesign Size(Readings readings);
}
