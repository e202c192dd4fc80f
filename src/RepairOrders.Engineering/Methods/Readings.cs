using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>All that a method is given to size with: the pipe, the defect, the service, and values for its inputs.</summary>
/// <param name="Pipe">The pipe as measured.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Service">Fluid, pressures and temperatures.</param>
/// <param name="Values">Input code to value, in the input's unit; a missing one takes the input's default.</param>
public sealed record Readings(Pipe Pipe, Defect Defect, Service Service, IReadOnlyDictionary<string, double> Values);
