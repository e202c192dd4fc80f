using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Methods;

/// <summary>A repair that may be fitted before it is assessed, within the limits two engineers signed.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="LeastDiameter">Smallest outside diameter.</param>
/// <param name="GreatestDiameter">Largest outside diameter.</param>
/// <param name="GreatestPressure">Greatest gauge pressure.</param>
/// <param name="GreatestTemperature">Greatest temperature.</param>
/// <param name="Fluids">The fluids it is for, as the line list names them.</param>
public sealed record EmergencyEntry(
    string Method,
    Length LeastDiameter,
    Length GreatestDiameter,
    Pressure GreatestPressure,
    Temperature GreatestTemperature,
    IReadOnlyList<string> Fluids
);

/// <summary>What is known in the first minutes, and what bars the emergency path.</summary>
/// <param name="Kind">What it looks like.</param>
/// <param name="CauseUnknown">Nobody knows why.</param>
/// <param name="ListedContents">H2S, HF, chlorine and the like.</param>
/// <param name="FailedBefore">A repair on this spot has failed before.</param>
public sealed record EmergencyFacts(DefectKind Kind, bool CauseUnknown, bool ListedContents, bool FailedBefore);

/// <summary>Whether a repair may be fitted on spoken consent, before it is assessed. Nobody may sign past any of it.</summary>
public static class EmergencyList
{
    private static readonly Clause Rule = new("emergency list, signed for a year", "", Provenance.OwnRule);

    /// <summary>Puts a line and its leak to an entry of the list.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="outsideDiameter">Outside diameter of the pipe.</param>
    /// <param name="service">The service.</param>
    /// <param name="facts">What is known so far.</param>
    /// <returns>A finding for each limit of the entry and each bar of the path.</returns>
    /// <exception cref="ImpossibleInputException">A diameter, pressure or temperature that cannot be.</exception>
    public static IReadOnlyList<Finding> Findings(
        EmergencyEntry entry,
        Length outsideDiameter,
        Service service,
        EmergencyFacts facts
    )
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(service);
        ArgumentNullException.ThrowIfNull(facts);
        var D = Require.Between("outsideDiameterMm", outsideDiameter.Millimeters, 1, 10_000);
        var P = Require.Between("operatingPressureBar", service.OperatingPressure.Bars, 0, 10_000);
        var T = Require.Between("operatingTemperatureC", service.OperatingTemperature.DegreesCelsius, -273, 2000);
        return
        [
            AtLeast("emergency-diameter-least", "Outside diameter", D, entry.LeastDiameter.Millimeters, "mm"),
            AtMost("emergency-diameter", "Outside diameter", D, entry.GreatestDiameter.Millimeters, "mm"),
            AtMost("emergency-pressure", "Operating pressure", P, entry.GreatestPressure.Bars, "bar"),
            AtMost("emergency-temperature", "Operating temperature", T, entry.GreatestTemperature.DegreesCelsius, "°C"),
            Fluid(entry, service),
            .. Bars(service, facts),
        ];
    }

    private static Finding Fluid(EmergencyEntry entry, Service service) =>
        entry.Fluids.Contains(service.Fluid, StringComparer.OrdinalIgnoreCase)
            ? Finding.Pass("emergency-fluid", $"{service.Fluid} is on the entry.", Rule)
            : Finding.Refuse(
                "emergency-fluid",
                $"{service.Fluid} is not on the entry; it is for {string.Join(", ", entry.Fluids)}.",
                Rule
            );

    private static IEnumerable<Finding> Bars(Service service, EmergencyFacts facts)
    {
        if (service.Category == ServiceCategory.M)
            yield return Bar("emergency-category-m", "Category M fluid.");
        if (facts.ListedContents)
            yield return Bar("emergency-contents", "H2S, HF, chlorine or the like.");
        if (facts.Kind == DefectKind.CrackLike)
            yield return Bar("emergency-crack", "It looks like a crack.");
        if (facts.CauseUnknown && service.AboveAutoIgnition)
            yield return Bar("emergency-cause-unknown-hot", "Cause unknown above the auto-ignition temperature.");
        if (facts.FailedBefore)
            yield return Bar("emergency-failed-before", "A repair on this spot has failed before.");
    }

    private static Finding Bar(string code, string why) =>
        Finding.Refuse(code, $"The emergency path is barred. {why}", Rule);

    private static Finding AtLeast(string code, string what, double value, double limit, string unit) =>
        Finding.AtLeast(code, what, value, limit, unit, Rule, LimitKind.Absolute);

    private static Finding AtMost(string code, string what, double value, double limit, string unit) =>
        Finding.AtMost(code, what, value, limit, unit, Rule, LimitKind.Absolute);
}
