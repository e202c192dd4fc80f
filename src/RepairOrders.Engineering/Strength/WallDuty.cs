using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The code whose wall formula is used.</summary>
public enum WallCode
{
    /// <summary>ASME B31.3, process piping.</summary>
    B313,

    /// <summary>ASME B31.1, power piping.</summary>
    B311,

    /// <summary>ASME B31.4, liquid pipelines.</summary>
    B314,

    /// <summary>ASME B31.8, gas pipelines.</summary>
    B318,

    /// <summary>Barlow on the outside diameter.</summary>
    Barlow,
}

/// <summary>What a wall must do, and by which code it is judged.</summary>
/// <param name="Code">The code.</param>
/// <param name="DesignPressure">Gauge design pressure.</param>
/// <param name="DesignTemperature">Design temperature.</param>
/// <param name="WeldFactor">Weld strength reduction factor W, 1 below the creep range [-].</param>
/// <param name="DesignFactor">Design factor F of a pipeline, 0.72 or less [-].</param>
/// <param name="TemperatureFactor">Temperature factor T of a gas pipeline, 1 up to 121 °C [-].</param>
/// <param name="StructuralMinimum">An engineer's structural minimum, where the table has none.</param>
public sealed record WallDuty(
    WallCode Code,
    Pressure DesignPressure,
    Temperature DesignTemperature,
    double WeldFactor = 1,
    double DesignFactor = 0.72,
    double TemperatureFactor = 1,
    Length? StructuralMinimum = null
);

/// <summary>The wall a pipe needs, without corrosion allowance and mill tolerance.</summary>
/// <param name="ForPressure">Wall for internal pressure; nothing where the formula does not apply.</param>
/// <param name="Structural">Wall for loads other than pressure; nothing where an engineer must give it.</param>
/// <param name="Alert">Wall at which the inspector is told; nothing where the table has none.</param>
/// <param name="Required">The larger of pressure and structural wall; nothing where either is unknown.</param>
/// <param name="GovernedBy"><c>pressure</c> or <c>structural</c>; empty where the required wall is unknown.</param>
public sealed record NeededWall(
    Length? ForPressure,
    Length? Structural,
    Length? Alert,
    Length? Required,
    string GovernedBy
);
