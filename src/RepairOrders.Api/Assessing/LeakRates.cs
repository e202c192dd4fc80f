using RepairOrders.Engineering;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Api.Assessing;

/// <summary>What comes out of the hole, for exposure: never too small. Nothing for a fluid or a state the engine has no properties of.</summary>
internal static class LeakRates
{
    public static Calculated<LeakAnswer>? Of(Service service, Defect defect)
    {
        if (!defect.ThroughWall || defect.HoleDiameter.Millimeters <= 0 || service.OperatingPressure.Bars <= 0)
            return null;
        var hole = new LeakConditions(Hole.Round(defect.HoleDiameter), service.OperatingPressure, LeakPurpose.Exposure);
        var temperature = service.OperatingTemperature.DegreesCelsius;
        return service.State switch
        {
            FluidState.Steam when service.OperatingPressure.Bars <= 200 => Leak.OfSteam(hole),
            FluidState.Liquid when temperature is >= 0 and <= 40 && Names(service, "sea", "brackish") => Leak.OfLiquid(
                hole,
                Fluids.SeaWater(service.OperatingTemperature)
            ),
            FluidState.Liquid when temperature is >= 0 and <= 350 && Names(service, "water", "condensate") =>
                Leak.OfLiquid(hole, Fluids.FreshWater(service.OperatingTemperature)),
            FluidState.Gas when Names(service, "air") => Leak.OfGas(hole, service.OperatingTemperature, Fluids.Air),
            _ => null,
        };
    }

    private static bool Names(Service service, params string[] words) =>
        service
            .Fluid.Split([' ', ',', '-', '/'], StringSplitOptions.RemoveEmptyEntries)
            .Any(w => words.Contains(w, StringComparer.OrdinalIgnoreCase));
}
