using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>The rules a pipe stands under beside those of the method.</summary>
public enum Regime
{
    /// <summary>Process or utility pipe of a plant.</summary>
    Plant,

    /// <summary>Pipe of a classed ship.</summary>
    Ship,

    /// <summary>Nuclear pipe of class 1 to 3.</summary>
    Nuclear,
}

/// <summary>What a regime says of any temporary repair.</summary>
internal static class RegimeLimits
{
    private static readonly Clause GenericLetter = new("NRC Generic Letter 90-05", "");

    private static readonly Clause FlawSize = new(
        "NRC Generic Letter 90-05",
        "through-wall flaw",
        Provenance.FromMemory
    );

    private static readonly Clause CodeCase = new("ASME Code Case N-513", "moderate energy", Provenance.FromMemory);

    private static readonly Clause ClassRules = new("IACS Rec. 76 and class survey guidance", "temporary measures");

    public static IEnumerable<Finding> Of(Regime regime, Pipe pipe, Defect defect, Service service) =>
        regime switch
        {
            Regime.Ship => Ship(service),
            Regime.Nuclear => Nuclear(pipe, defect, service),
            _ => [],
        };

    private static IEnumerable<Finding> Ship(Service s)
    {
        yield return Finding.Watch(
            "class-condition",
            "Classed ship: tell the class; a temporary measure carries a condition of class, twelve months at most.",
            ClassRules
        );
        if (s.Toxic || s is { Flammable: true, State: FluidState.Gas })
            yield return Finding.Fail(
                "surveyor",
                "Toxic fluid or flammable gas on a ship: the surveyor decides.",
                ClassRules
            );
        if (s.Flammable)
            yield return Finding.Watch("mend-stands-fire", "A mend on an oil line must stand fire.", ClassRules);
    }

    private static IEnumerable<Finding> Nuclear(Pipe pipe, Defect defect, Service s)
    {
        yield return Finding.Fail(
            "regulator-relief",
            "Nuclear class 1 to 3: only with the regulator's written relief, to the next outage over 30 days, at latest the next refuelling.",
            GenericLetter
        );
        yield return Finding.AtMost(
            "moderate-energy-pressure",
            "Operating pressure",
            s.OperatingPressure.Bars,
            19,
            "bar",
            CodeCase
        );
        yield return Finding.AtMost(
            "moderate-energy-temperature",
            "Operating temperature",
            s.OperatingTemperature.DegreesCelsius,
            93,
            "°C",
            CodeCase
        );
        yield return Finding.AtMost(
            "flaw-size",
            "Flaw",
            Math.Max(defect.AxialLength.Millimeters, defect.CircumferentialLength.Millimeters),
            Math.Min(76, 0.15 * Math.PI * pipe.OutsideDiameter.Millimeters),
            "mm",
            FlawSize
        );
    }
}
