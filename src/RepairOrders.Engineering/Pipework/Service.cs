using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>State of the fluid inside the pipe.</summary>
public enum FluidState
{
    /// <summary>Liquid below its boiling point at atmospheric pressure.</summary>
    Liquid,

    /// <summary>Liquid above its boiling point at atmospheric pressure: it flashes when it leaks.</summary>
    FlashingLiquid,

    /// <summary>Gas.</summary>
    Gas,

    /// <summary>Steam.</summary>
    Steam,
}

/// <summary>ASME B31.3 fluid service category, para. 300.2.</summary>
public enum ServiceCategory
{
    /// <summary>Category D: not flammable, not toxic, not harmful; up to 1035 kPa and −29 to 186 °C.</summary>
    D,

    /// <summary>Normal.</summary>
    Normal,

    /// <summary>Category M: one exposure to a very small amount can do serious lasting harm.</summary>
    M,

    /// <summary>High pressure.</summary>
    HighPressure,
}

/// <summary>What flows, and how hot and hard it presses. All pressures are gauge.</summary>
/// <param name="Fluid">The fluid in words.</param>
/// <param name="State">Its state in the pipe.</param>
/// <param name="Category">Fluid service category.</param>
/// <param name="FluidGroup">Group 1 (hazardous) or 2, Directive 2014/68/EU Art. 13.</param>
/// <param name="InspectionClass">API 570 class, 1 to 4.</param>
/// <param name="Flammable">It burns.</param>
/// <param name="Toxic">It poisons.</param>
/// <param name="AboveAutoIgnition">It is flammable and operates at or above its auto-ignition temperature.</param>
/// <param name="OperatingPressure">Gauge pressure in operation.</param>
/// <param name="DesignPressure">Gauge pressure of design.</param>
/// <param name="OperatingTemperature">Temperature in operation.</param>
/// <param name="DesignTemperature">Temperature of design.</param>
/// <param name="SafetyCritical">The line's duty protects people: fire water, emergency cooling.</param>
/// <param name="Potable">Drinking water.</param>
/// <param name="Cyclic">Marked vibration, cyclic duty or hammer.</param>
public sealed record Service(
    string Fluid,
    FluidState State,
    ServiceCategory Category,
    int FluidGroup,
    int InspectionClass,
    bool Flammable,
    bool Toxic,
    bool AboveAutoIgnition,
    Pressure OperatingPressure,
    Pressure DesignPressure,
    Temperature OperatingTemperature,
    Temperature DesignTemperature,
    bool SafetyCritical,
    bool Potable,
    bool Cyclic
);
