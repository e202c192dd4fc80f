using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>Where a laminate may go, and whether by the low-risk route.</summary>
internal static class LaminateWrapClaims
{
    private const double LowRiskBar = 10.34;
    private const double LowRiskColdC = -17.8;
    private const double LowRiskHotC = 48.9;
    private const double LowRiskProduct = 0.16;

    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. CommonLimits.Known(pipe, defect, service),
            CommonLimits.NoCrack(defect),
            .. CommonLimits.StraightPipe(defect),
            LowRisk(pipe, defect, service),
            .. Medium(defect, service),
            .. Damage(defect),
            .. CommonLimits.Brittle(pipe),
            .. CommonLimits.Fire(service),
            .. CommonLimits.Review(pipe, defect, service),
        ];
    }

    private static Finding LowRisk(Pipe pipe, Defect defect, Service service)
    {
        string[] against = [.. Against(pipe, defect, service)];
        return against.Length == 0
            ? Finding.Pass("low-risk-route", "The low-risk route applies.", Sources.LowRiskWrap)
            : Finding.Watch(
                "high-risk-route",
                $"The low-risk route is refused ({string.Join("; ", against)}): qualify and design by the high-risk article.",
                Sources.LowRiskWrap
            );
    }

    private static IEnumerable<string> Against(Pipe pipe, Defect defect, Service s)
    {
        if (s.DesignPressure.Bars >= LowRiskBar)
            yield return "150 psi and more";
        if (s.DesignTemperature.DegreesCelsius > LowRiskHotC || s.OperatingTemperature.DegreesCelsius < LowRiskColdC)
            yield return "outside −17.8 to 48.9 °C";
        if (s.Flammable || s.Toxic || s.FluidGroup == 1 || s.Category == ServiceCategory.M)
            yield return "hazardous fluid";
        if (s.SafetyCritical)
            yield return "the line protects people";
        if (defect.HoleDiameter.Millimeters >= 0.25 * pipe.OutsideDiameter.Millimeters)
            yield return "leak of a quarter of the diameter and more";
        if (LaminateOverlap.RiskProduct(s.DesignPressure, defect.HoleDiameter) > LowRiskProduct)
            yield return "P √d above 0.16 MPa m^0.5";
    }

    private static IEnumerable<Finding> Medium(Defect defect, Service s)
    {
        if (s.AboveAutoIgnition)
            yield return Finding.Refuse(
                "above-auto-ignition",
                "Above its auto-ignition temperature: no polymer, and nobody near.",
                Sources.OrderOfPreference
            );
        if (s.Category == ServiceCategory.M && defect.ThroughWall)
            yield return Finding.Refuse("category-m-leak", "Category M fluid and a hole: no wrap.", Sources.Own);
        if ((s.Flammable || s.Toxic) && defect.ThroughWall)
            yield return Finding.Fail(
                "hazardous-leak",
                "Flammable or toxic fluid and a hole: only with a fire rating and a basis a second engineer signs.",
                Sources.NavyPatches
            );
        else if (s.Flammable || s.Toxic)
            yield return Finding.Watch(
                "hazardous-fluid",
                "Hazardous fluid: the wrap reinforces wall that still holds; have its fire performance reviewed.",
                Sources.FireOfComposites
            );
        if (s.Cyclic)
            yield return Finding.Watch("cyclic", "Cyclic duty: size with the cycles of the design life.", Sources.Wrap);
    }

    private static IEnumerable<Finding> Damage(Defect defect)
    {
        if (defect.ThroughWall)
            yield return Finding.Watch(
                "dry-and-drained",
                "A hole: the line must be drained and dry, or the leak stopped, before the first ply.",
                new Clause("US Navy damage control training manual", "preparation, step 4")
            );
        if (defect.Growing)
            yield return Finding.Watch(
                "growing",
                "The damage grows: size with the wall and the hole as they will be at the end of life.",
                Sources.Wrap
            );
    }
}
