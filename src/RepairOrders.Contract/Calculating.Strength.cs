using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>The code whose wall formula is used.</summary>
public enum WallCodeToReckon
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
/// <param name="DesignPressureBar">Design pressure, gauge.</param>
/// <param name="DesignTemperatureC">Design temperature.</param>
/// <param name="WeldFactor">Weld strength reduction factor W.</param>
/// <param name="DesignFactor">Design factor F of a pipeline; nothing takes 0.72 and says so.</param>
/// <param name="TemperatureFactor">Temperature factor T of a gas pipeline.</param>
/// <param name="StructuralMinimumMm">An engineer's structural minimum, where the table has none.</param>
public sealed record WallDutyToReckon(
    WallCodeToReckon Code,
    double DesignPressureBar,
    double DesignTemperatureC,
    double WeldFactor = 1,
    double? DesignFactor = null,
    double TemperatureFactor = 1,
    double? StructuralMinimumMm = null
);

/// <summary>A measured wall, for the pressure it holds.</summary>
/// <param name="MeasuredWallMm">Least wall measured.</param>
/// <param name="ExpectedLossMm">Loss expected until it is measured again.</param>
/// <param name="MechanicalAllowanceMm">Depth of threads and grooves.</param>
/// <param name="StrengthToday">The strength of today is asked, without the coming loss.</param>
public sealed record WallMeasured(
    double MeasuredWallMm,
    double ExpectedLossMm,
    double MechanicalAllowanceMm = 0,
    bool StrengthToday = false
);

/// <summary>New pipe to order.</summary>
/// <param name="AllowanceMm">Allowances for corrosion, erosion and threads.</param>
/// <param name="MillTolerancePercent">Mill under-tolerance in per cent; nothing takes 12.5 % and says so.</param>
/// <param name="MillToleranceMm">A fixed mill under-tolerance instead, as plate pipe has.</param>
public sealed record WallToOrder(
    double AllowanceMm,
    double? MillTolerancePercent = null,
    double? MillToleranceMm = null
);

/// <summary>Asks for the wall a pipe needs and, where one was measured, the pressure it holds.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Duty">What the wall must do.</param>
/// <param name="Measured">A measured wall; nothing where only the need is asked.</param>
/// <param name="Order">New pipe to order; nothing where none is.</param>
public sealed record CalculateWallThickness(
    [property: Required] PipeToReckon Pipe,
    [property: Required] WallDutyToReckon Duty,
    WallMeasured? Measured = null,
    WallToOrder? Order = null
);

/// <summary>The wall a pipe needs, without corrosion allowance and mill tolerance.</summary>
/// <param name="ForPressureMm">For internal pressure; nothing where the formula does not apply.</param>
/// <param name="StructuralMm">For other loads; nothing where an engineer must give it.</param>
/// <param name="AlertMm">At which the inspector is told; nothing where the table has none.</param>
/// <param name="RequiredMm">The larger of pressure and structural wall; nothing where either is unknown.</param>
/// <param name="GovernedBy"><c>pressure</c> or <c>structural</c>.</param>
/// <param name="Held">What a measured wall holds; nothing where none was given.</param>
/// <param name="Order">Wall to order; nothing where none was asked, or the formula does not apply.</param>
public sealed record WallThicknessResult(
    double? ForPressureMm,
    double? StructuralMm,
    double? AlertMm,
    double? RequiredMm,
    string GovernedBy,
    HeldPressureResult? Held,
    OrderedWallResult? Order
);

/// <summary>A wall to order, by pressure; the structural minimum stands beside it.</summary>
/// <param name="MinimumMm">Wall for pressure with its allowances.</param>
/// <param name="NominalMm">Least nominal wall to order.</param>
public sealed record OrderedWallResult(double MinimumMm, double NominalMm);

/// <summary>The pressure a measured wall holds.</summary>
/// <param name="MawpBar">Maximum allowable working pressure, gauge; nothing where the formula does not apply.</param>
/// <param name="WallThatCountsMm">The wall it rests on.</param>
/// <param name="StrengthToday">The coming loss is not taken off.</param>
public sealed record HeldPressureResult(double? MawpBar, double WallThatCountsMm, bool StrengthToday);

/// <summary>One point of a river-bottom profile.</summary>
/// <param name="PositionMm">Position along the pipe, rising.</param>
/// <param name="DepthMm">Deepest reading round the pipe there.</param>
public sealed record ProfilePointView(double PositionMm, double DepthMm);

/// <summary>What API 579-1 needs beside the metal loss.</summary>
/// <param name="FutureLossMm">Loss expected until the next revisit.</param>
/// <param name="DistanceToDiscontinuityMm">Distance to the nearest nozzle, elbow weld, support or flange; nothing where not known.</param>
/// <param name="Cyclic">In cyclic service.</param>
/// <param name="WeldFactor">Weld strength reduction factor W.</param>
public sealed record PlantToReckon(
    double FutureLossMm,
    double? DistanceToDiscontinuityMm = null,
    bool Cyclic = false,
    double WeldFactor = 1
);

/// <summary>Asks for the strength of a pipe with metal loss, by every method that applies.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="ReferenceWallMm">Full wall beside the loss, from which the depth counts.</param>
/// <param name="DepthMm">Greatest depth.</param>
/// <param name="AxialLengthMm">Extent along the pipe.</param>
/// <param name="CircumferentialLengthMm">Extent round the pipe.</param>
/// <param name="Side">The face that is attacked.</param>
/// <param name="MaopBar">Established maximum operating pressure, gauge.</param>
/// <param name="TemperatureC">Metal temperature.</param>
/// <param name="SafetyFactor">Safety factor on the failure pressure by ASME B31G; nothing takes 1.39 and says so.</param>
/// <param name="UsageFactor">Operational usage factor of the corroded-pipe method; nothing takes 0.72 and says so.</param>
/// <param name="Profile">River-bottom profile, two points or more; nothing where only the deepest reading was taken.</param>
/// <param name="Plant">What the plant-piping method needs; nothing for a pipeline.</param>
public sealed record CalculateRemainingStrength(
    [property: Required] PipeToReckon Pipe,
    double ReferenceWallMm,
    double DepthMm,
    double AxialLengthMm,
    double CircumferentialLengthMm,
    DefectSide Side,
    double MaopBar,
    double TemperatureC,
    double? SafetyFactor = null,
    double? UsageFactor = null,
    [property: MaxLength(5000)] IReadOnlyList<ProfilePointView>? Profile = null,
    PlantToReckon? Plant = null
);

/// <summary>What a method's answer counts for.</summary>
public enum AnswerStanding
{
    /// <summary>The least of those that count.</summary>
    Governs,

    /// <summary>It counts; another is less.</summary>
    Counts,

    /// <summary>Shown beside the others; it does not count.</summary>
    SecondOpinion,

    /// <summary>Another method knows more of the loss.</summary>
    SetAside,

    /// <summary>Outside the method's validity.</summary>
    Refused,
}

/// <summary>What one method says of the strength.</summary>
/// <param name="Code">The method: <c>b31g-modified</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="Standing">What it counts for.</param>
/// <param name="Reason">Why.</param>
/// <param name="Assumes">What it takes the lost metal and the strength to be.</param>
/// <param name="FailurePressureBar">Predicted failure pressure, gauge; nothing where refused.</param>
/// <param name="SafePressureBar">Pressure it allows, gauge; nothing where refused.</param>
/// <param name="EstimatedRepairFactor">Established pressure over safe pressure.</param>
/// <param name="Working">Its hand calculation.</param>
/// <param name="Findings">Its limits.</param>
public sealed record StrengthAnswerResult(
    string Code,
    string Name,
    AnswerStanding Standing,
    string Reason,
    string Assumes,
    double? FailurePressureBar,
    double? SafePressureBar,
    double? EstimatedRepairFactor,
    IReadOnlyList<WorkingStepView> Working,
    IReadOnlyList<FindingView> Findings
);

/// <summary>The strength of a pipe with metal loss.</summary>
/// <param name="Governs">The method that governs; nothing where no pressure is credited.</param>
/// <param name="SafePressureBar">Its safe pressure, gauge.</param>
/// <param name="PressureLimitBar">Pressure to hold to: the safe pressure, never above the established one.</param>
/// <param name="EstimatedRepairFactor">Established pressure over safe pressure.</param>
/// <param name="Answers">What each method says.</param>
/// <param name="WhyTheyDiffer">Why the methods differ, as sentences.</param>
public sealed record RemainingStrengthResult(
    string? Governs,
    double? SafePressureBar,
    double? PressureLimitBar,
    double? EstimatedRepairFactor,
    IReadOnlyList<StrengthAnswerResult> Answers,
    IReadOnlyList<string> WhyTheyDiffer
);

/// <summary>The unit of the readings of a grid.</summary>
public enum GridUnit
{
    /// <summary>Millimetre.</summary>
    Millimetre,

    /// <summary>Inch.</summary>
    Inch,
}

/// <summary>Which way the rows of a grid's text run.</summary>
public enum GridRows
{
    /// <summary>A row runs along the pipe.</summary>
    AlongThePipe,

    /// <summary>A row runs round the pipe.</summary>
    RoundThePipe,
}

/// <summary>Asks what a grid of wall readings says.</summary>
/// <param name="Csv">The readings of the wall left, rows by columns; blank where it was not read.</param>
/// <param name="Unit">Their unit.</param>
/// <param name="Rows">Which way the rows run.</param>
/// <param name="AxialSpacingMm">Distance between readings along the pipe.</param>
/// <param name="CircumferentialSpacingMm">Distance between readings round the pipe.</param>
/// <param name="Pipe">The pipe.</param>
/// <param name="ReferenceWallMm">Full wall from which the depth counts.</param>
/// <param name="Side">The face that is attacked.</param>
/// <param name="MaopBar">Established maximum operating pressure, gauge.</param>
/// <param name="TemperatureC">Metal temperature.</param>
/// <param name="SafetyFactor">Safety factor on the failure pressure by ASME B31G; nothing takes 1.39 and says so.</param>
/// <param name="UsageFactor">Operational usage factor of the corroded-pipe method; nothing takes 0.72 and says so.</param>
/// <param name="Plant">What the plant-piping method needs.</param>
/// <param name="Duty">For general metal loss; nothing where it is not asked.</param>
public sealed record CalculateWallLossGrid(
    [property: Required, StringLength(900_000)] string Csv,
    GridUnit Unit,
    GridRows Rows,
    double AxialSpacingMm,
    double CircumferentialSpacingMm,
    [property: Required] PipeToReckon Pipe,
    double ReferenceWallMm,
    DefectSide Side,
    double MaopBar,
    double TemperatureC,
    double? SafetyFactor = null,
    double? UsageFactor = null,
    PlantToReckon? Plant = null,
    WallDutyToReckon? Duty = null
);

/// <summary>A pit, or several that count as one.</summary>
/// <param name="FromMm">Where it begins along the pipe.</param>
/// <param name="AxialLengthMm">Its extent along the pipe.</param>
/// <param name="AroundMm">Where it begins round the pipe.</param>
/// <param name="CircumferentialLengthMm">Its extent round the pipe.</param>
/// <param name="DepthMm">Greatest depth.</param>
/// <param name="Pits">How many separate pits are in it.</param>
public sealed record PitGroupResult(
    double FromMm,
    double AxialLengthMm,
    double AroundMm,
    double CircumferentialLengthMm,
    double DepthMm,
    int Pits
);

/// <summary>General metal loss.</summary>
/// <param name="Variation">Coefficient of variation of the readings.</param>
/// <param name="MayAverage">They vary little enough for their mean.</param>
/// <param name="AveragingLengthMm">Length to average over.</param>
/// <param name="AverageMm">Average wall; nothing where none may be taken.</param>
/// <param name="LeastMm">Least wall.</param>
/// <param name="RequiredMm">Wall needed; nothing where unknown.</param>
/// <param name="Level1">Passes level 1; nothing where it cannot be told.</param>
/// <param name="Level2">Passes level 2; nothing where it cannot be told.</param>
public sealed record GeneralLossResult(
    double Variation,
    bool MayAverage,
    double AveragingLengthMm,
    double? AverageMm,
    double LeastMm,
    double? RequiredMm,
    bool? Level1,
    bool? Level2
);

/// <summary>Loss by place, to colour a map with.</summary>
/// <param name="Stations">Stations along the pipe.</param>
/// <param name="Places">Places round the pipe.</param>
/// <param name="AxialSpacingMm">Distance between stations.</param>
/// <param name="CircumferentialSpacingMm">Distance between places.</param>
/// <param name="LossPercent">Loss in per cent of the reference wall, place by place, each with all its stations; nothing where not read.</param>
public sealed record HeatMapResult(
    int Stations,
    int Places,
    double AxialSpacingMm,
    double CircumferentialSpacingMm,
    IReadOnlyList<double?> LossPercent
);

/// <summary>What a grid of wall readings says.</summary>
/// <param name="Readings">Cells that were read.</param>
/// <param name="Missing">Cells that were not.</param>
/// <param name="LeastMm">Least wall.</param>
/// <param name="LeastRow">Its row in the text, from 1.</param>
/// <param name="LeastColumn">Its column in the text, from 1.</param>
/// <param name="AverageMm">Mean wall.</param>
/// <param name="Variation">Coefficient of variation.</param>
/// <param name="Along">River-bottom profile along the pipe.</param>
/// <param name="Round">River-bottom profile round the pipe.</param>
/// <param name="Pits">Pits and groups of pits, deepest first.</param>
/// <param name="Strength">Remaining strength.</param>
/// <param name="General">General metal loss; nothing where no duty was given.</param>
/// <param name="HeatMap">Loss by place.</param>
public sealed record WallLossGridResult(
    int Readings,
    int Missing,
    double LeastMm,
    int LeastRow,
    int LeastColumn,
    double AverageMm,
    double Variation,
    IReadOnlyList<ProfilePointView> Along,
    IReadOnlyList<ProfilePointView> Round,
    IReadOnlyList<PitGroupResult> Pits,
    RemainingStrengthResult Strength,
    GeneralLossResult? General,
    HeatMapResult HeatMap
);
