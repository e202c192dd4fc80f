using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Risk;

/// <summary>Who is near the pipe.</summary>
public enum PeopleNearby
{
    /// <summary>Rarely anybody.</summary>
    Rarely,

    /// <summary>A walkway.</summary>
    Walkway,

    /// <summary>A manned area.</summary>
    MannedArea,

    /// <summary>A public way.</summary>
    PublicWay,

    /// <summary>A confined space.</summary>
    ConfinedSpace,
}

/// <summary>What a leak would do.</summary>
/// <param name="Service">Fluid, pressures, temperatures and its hazard marks.</param>
/// <param name="NominalSizeDn">Nominal size DN, mm.</param>
/// <param name="People">Who is near.</param>
/// <param name="ListedContents">HF, dry HCl, chlorine, phosgene, or gas with 3 % H2S by weight and more.</param>
/// <param name="LiquefiedFlammableGas">Liquefied flammable gas.</param>
/// <param name="StrongAcidOrAlkali">Strong acid or alkali.</param>
/// <param name="ShipClassOne">Ship piping of class I with a flammable or toxic fluid.</param>
/// <param name="IsolableWithinTenMinutes">The escape can be shut off within ten minutes.</param>
/// <param name="EscapableInventory">What could get out between the isolation points.</param>
/// <param name="DrainsToWater">Over or beside water, drained to a river, or without a bund.</param>
public sealed record ConsequenceFacts(
    Service Service,
    int NominalSizeDn,
    PeopleNearby People,
    bool ListedContents,
    bool LiquefiedFlammableGas,
    bool StrongAcidOrAlkali,
    bool ShipClassOne,
    bool IsolableWithinTenMinutes,
    Mass EscapableInventory,
    bool DrainsToWater
);

/// <summary>A score with its reasons.</summary>
/// <param name="Value">The score.</param>
/// <param name="Reasons">Why, as sentences.</param>
public sealed record Score(int Value, IReadOnlyList<string> Reasons)
{
    /// <summary>The hand calculation.</summary>
    public IReadOnlyList<WorkingStep> Working { get; init; } = [];
}

/// <summary>
/// Consequence score, 1 to 5: the highest row that is true, then raisers. Rows rest on ASME B31.3 para. 300.2, API 570 section
/// 6.3.4 and Directive 2014/68/EU Art. 13; the scale and the raisers are rules of our own.
/// </summary>
public static class Consequence
{
    private const double CategoryDCeilingBar = 10.35;

    private static readonly Clause Category = new("ASME B31.3", "300.2");
    private static readonly Clause Inspection = new("API 570", "6.3.4");
    private static readonly Clause FluidGroup = new("Directive 2014/68/EU", "Art. 13");
    private static readonly Clause ShipPiping = new("IACS UR P2.2", "Table 1", Provenance.FromMemory);
    private static readonly Clause Own = new("consequence score", "", Provenance.OwnRule);

    /// <summary>Scores the consequence.</summary>
    /// <param name="facts">What a leak would do.</param>
    /// <returns>1 to 5 with reasons.</returns>
    /// <exception cref="ImpossibleInputException">Fluid group, inspection class, size or inventory out of range.</exception>
    public static Score Score(ConsequenceFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        Check(facts);
        var (row, why, source) = Row(facts);
        List<string> reasons = [$"Consequence {row}: {why}."];
        var raisers = Raisers(facts).ToList();
        var raise = Math.Min(2, raisers.Count);
        reasons.AddRange(raisers.Select(r => $"Consequence +1: {r}."));
        if (raisers.Count > 2)
            reasons.Add("Raisers add 2 at most.");
        var working = new Working();
        working.Given("C0", $"highest row that is true: {why}", row, "-", source);
        foreach (var raiser in raisers)
            working.Given("ΔC", raiser, 1, "-", Own);
        var C = working.Step(
            "C",
            "consequence score",
            "min(5, C0 + min(2, Σ ΔC))",
            $"min(5, {row} + min(2, {raisers.Count}))",
            Math.Min(5, row + raise),
            "-",
            Own
        );
        return new Score((int)C, reasons) { Working = working };
    }

    private static void Check(ConsequenceFacts f)
    {
        Require.Between("fluidGroup", f.Service.FluidGroup, 1, 2);
        Require.Between("inspectionClass", f.Service.InspectionClass, 1, 4);
        Require.Positive("nominalSizeDn", f.NominalSizeDn);
        Require.NotNegative("escapableInventoryKg", f.EscapableInventory.Kilograms);
        Require.NotNegative("designPressureBar", f.Service.DesignPressure.Bars);
    }

    private static (int Row, string Why, Clause Source) Row(ConsequenceFacts f) =>
        Five(f) is { } five ? (5, five.Why, five.Source)
        : Four(f) is { } four ? (4, four.Why, four.Source)
        : Three(f) is { } three ? (3, three.Why, three.Source)
        : Two(f) is { } two ? (2, two.Why, two.Source)
        : (1, "Category D and inspection class 4", Category);

    private static (string Why, Clause Source)? Five(ConsequenceFacts f) =>
        f.Service.Category == ServiceCategory.M ? ("Category M fluid", Category)
        : f.Service.InspectionClass == 1 ? ("inspection class 1", Inspection)
        : f.ListedContents ? ("contents on the list of the most harmful", Own)
        : f.Service.AboveAutoIgnition ? ("at or above its auto-ignition temperature", Inspection)
        : f.LiquefiedFlammableGas ? ("liquefied flammable gas", Own)
        : null;

    private static (string Why, Clause Source)? Four(ConsequenceFacts f) =>
        f.Service is { FluidGroup: 1, State: FluidState.Gas } ? ("group 1 gas", FluidGroup)
        : f.Service is { Flammable: true, State: FluidState.FlashingLiquid }
            ? ("flammable liquid at or above its boiling point", Own)
        : f.Service is { Flammable: true, State: FluidState.Gas } ? ("flammable gas", Own)
        : f.ShipClassOne ? ("ship piping class I, flammable or toxic", ShipPiping)
        : Scalds(f.Service) && f.People != PeopleNearby.Rarely
            ? ("steam or water of 100 °C and more with people near", Own)
        : null;

    private static (string Why, Clause Source)? Three(ConsequenceFacts f) =>
        f.Service.FluidGroup == 1 ? ("group 1 liquid", FluidGroup)
        : f.StrongAcidOrAlkali ? ("strong acid or alkali", Own)
        : f.Service.InspectionClass == 2 ? ("inspection class 2", Inspection)
        : IsCompressible(f.Service) && f.Service.DesignPressure.Bars * f.NominalSizeDn > 1000
            ? ("group 2 gas or steam with pressure times size above 1000 bar mm", Own)
        : null;

    private static (string Why, Clause Source)? Two(ConsequenceFacts f) =>
        f.Service.InspectionClass == 3 ? ("inspection class 3", Inspection)
        : f.Service.OperatingTemperature.DegreesCelsius > 60 ? ("hotter than 60 °C", Own)
        : f.Service.DesignPressure.Bars > CategoryDCeilingBar ? ("design pressure above 10.35 bar", Category)
        : f.Service.Category != ServiceCategory.D ? ("not Category D, and no higher row is true", Category)
        : null;

    private static IEnumerable<string> Raisers(ConsequenceFacts f)
    {
        if (f.People is PeopleNearby.MannedArea or PeopleNearby.PublicWay or PeopleNearby.ConfinedSpace)
            yield return "people are near";
        if (f.Service.SafetyCritical)
            yield return "the line's own duty protects people";
        if (!f.IsolableWithinTenMinutes || LargeInventory(f))
            yield return "the escape cannot be shut off in ten minutes, or much could get out";
        if (f.DrainsToWater)
            yield return "it would reach water, or there is no bund";
    }

    private static bool Scalds(Service s) =>
        (s.State == FluidState.Steam || !s.Flammable) && s.OperatingTemperature.DegreesCelsius >= 100;

    private static bool IsCompressible(Service s) => s.State is FluidState.Gas or FluidState.Steam;

    private static bool LargeInventory(ConsequenceFacts f) =>
        (f.Service.Flammable && f.EscapableInventory.Kilograms > 1000)
        || (f.Service.Toxic && f.EscapableInventory.Kilograms > 100);
}
