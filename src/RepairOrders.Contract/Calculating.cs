using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>The answer to a calculation: it rests on what was asked and on nothing else, and nothing of it is kept.</summary>
/// <typeparam name="T">The result.</typeparam>
/// <param name="Result">The result; the unit stands at the end of each name.</param>
/// <param name="Working">The hand calculation.</param>
/// <param name="Findings">Limits tested, defaults used, limits that could not be tested.</param>
/// <param name="Cautions">What can hurt somebody who acts on it.</param>
public sealed record CalculationAnswer<T>(
    T Result,
    IReadOnlyList<WorkingStepView> Working,
    IReadOnlyList<FindingView> Findings,
    IReadOnlyList<string> Cautions
);

/// <summary>A pipe to reckon with.</summary>
/// <param name="OutsideDiameterMm">Outside diameter.</param>
/// <param name="WallThicknessMm">Wall as ordered.</param>
/// <param name="Metal">Family of the metal.</param>
/// <param name="AllowableStressMpa">Allowable stress at the design temperature, by the code that is used.</param>
/// <param name="YieldStrengthMpa">Specified minimum yield strength; nothing for a metal without one, or when nobody knows.</param>
/// <param name="TensileStrengthMpa">Specified minimum tensile strength; nothing when nobody knows.</param>
/// <param name="QualityFactor">Casting or weld joint quality factor E, above 0 to 1; nothing takes 1, as for seamless pipe, and says so.</param>
public sealed record PipeToReckon(
    double OutsideDiameterMm,
    double WallThicknessMm,
    MetalFamily Metal,
    double AllowableStressMpa,
    double? YieldStrengthMpa = null,
    double? TensileStrengthMpa = null,
    double? QualityFactor = null
);

/// <summary>A defect to reckon with.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Side">The face that is attacked.</param>
/// <param name="Cause">Why it is there.</param>
/// <param name="AxialLengthMm">Extent along the pipe.</param>
/// <param name="CircumferentialLengthMm">Extent round the pipe.</param>
/// <param name="RemainingWallMm">Least wall left; 0 where it is through or was not measured.</param>
/// <param name="SoundWallBesideMm">Wall of the sound metal beside it; 0 where it was not measured.</param>
/// <param name="ThroughWall">It is through.</param>
/// <param name="HoleDiameterMm">Equivalent diameter of the hole; 0 where there is none.</param>
/// <param name="ClockHours">Place round the pipe, 0 to 12 o'clock, looking with the flow.</param>
/// <param name="Growing">It is known to grow.</param>
public sealed record DefectToReckon(
    DefectKind Kind,
    DefectSide Side,
    DefectCause Cause,
    double AxialLengthMm,
    double CircumferentialLengthMm,
    double RemainingWallMm,
    double SoundWallBesideMm,
    bool ThroughWall = false,
    double HoleDiameterMm = 0,
    double ClockHours = 12,
    bool Growing = false
);

/// <summary>The duty of a pipe to reckon with.</summary>
/// <param name="Fluid">What flows.</param>
/// <param name="FluidState">Its state in the pipe.</param>
/// <param name="ServiceCategory">Fluid service category.</param>
/// <param name="FluidGroup">Group 1 (hazardous) or 2 of Directive 2014/68/EU, Art. 13.</param>
/// <param name="InspectionClass">API 570 class, 1 to 4.</param>
/// <param name="OperatingPressureBar">Pressure in operation, gauge.</param>
/// <param name="DesignPressureBar">Pressure of design, gauge.</param>
/// <param name="OperatingTemperatureC">Temperature in operation.</param>
/// <param name="DesignTemperatureC">Temperature of design.</param>
/// <param name="Flammable">It burns.</param>
/// <param name="Toxic">It poisons.</param>
/// <param name="AboveAutoIgnition">It is hotter than its auto-ignition temperature.</param>
/// <param name="SafetyCritical">Its duty protects people.</param>
/// <param name="Potable">Drinking water.</param>
/// <param name="Cyclic">In cyclic service.</param>
public sealed record ServiceToReckon(
    [property: Required, StringLength(100)] string Fluid,
    FluidState FluidState,
    ServiceCategory ServiceCategory,
    int FluidGroup,
    int InspectionClass,
    double OperatingPressureBar,
    double DesignPressureBar,
    double OperatingTemperatureC,
    double DesignTemperatureC,
    bool Flammable = false,
    bool Toxic = false,
    bool AboveAutoIgnition = false,
    bool SafetyCritical = false,
    bool Potable = false,
    bool Cyclic = false
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Makes a calculation. Nothing is kept, so it needs no key and may be cancelled.</summary>
    /// <typeparam name="TResult">The result, such as <see cref="WallThicknessResult"/>.</typeparam>
    /// <param name="subject">The subject on the wire: <c>wall-thickness</c>.</param>
    /// <param name="ask">Its ask, such as <see cref="CalculateWallThickness"/>.</param>
    /// <param name="stop">Cancels the call.</param>
    /// <returns>Result, working, findings and cautions.</returns>
    /// <exception cref="Refused">400 with the field, its value and what is allowed.</exception>
    public Task<CalculationAnswer<TResult>> Calculate<TResult>(
        string subject,
        object ask,
        CancellationToken stop = default
    ) => Ask<CalculationAnswer<TResult>>(HttpMethod.Post, $"calculations/{subject}", ask, null, null, stop);
}
