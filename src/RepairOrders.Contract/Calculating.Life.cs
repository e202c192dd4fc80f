using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>One wall reading at one spot.</summary>
/// <param name="On">Day of the reading.</param>
/// <param name="WallMm">Wall read; 0 where it is through.</param>
/// <param name="Place">The spot; only readings of one spot give a rate.</param>
/// <param name="Instrument">Kind of probe.</param>
/// <param name="IsAverage">An average over an area.</param>
public sealed record WallReadingOn(
    DateOnly On,
    double WallMm,
    [property: Required, StringLength(100)] string Place,
    [property: Required, StringLength(100)] string Instrument,
    bool IsAverage = false
);

/// <summary>Asks for corrosion rates and the life they leave.</summary>
/// <param name="Readings">Wall readings, one at least.</param>
/// <param name="NominalWallMm">Wall as ordered.</param>
/// <param name="RequiredWallMm">Wall needed.</param>
/// <param name="InspectionClass">API 570 class, 1 to 4; 0 for an injection point.</param>
/// <param name="Commissioned">Day the pipe began to corrode; nothing where not known.</param>
/// <param name="Pitting">The damage is pitting.</param>
/// <param name="ThroughWall">The spot has leaked through.</param>
/// <param name="FloorMmPerYear">Least rate to reckon with; nothing for the default.</param>
public sealed record CalculateRemainingLife(
    [property: Required, MinLength(1), MaxLength(1000)] IReadOnlyList<WallReadingOn> Readings,
    double NominalWallMm,
    double RequiredWallMm,
    int InspectionClass,
    DateOnly? Commissioned = null,
    bool Pitting = false,
    bool ThroughWall = false,
    double? FloorMmPerYear = null
);

/// <summary>What a rate rests on.</summary>
public enum RateBasis
{
    /// <summary>Nothing measured gives a rate.</summary>
    Unknown,

    /// <summary>First reading to last.</summary>
    LongTerm,

    /// <summary>Last reading but one to last.</summary>
    ShortTerm,

    /// <summary>Whole nominal wall over the pipe's age.</summary>
    ThroughWall,

    /// <summary>The floor: what was measured is less.</summary>
    Floor,
}

/// <summary>Corrosion rates and remaining life.</summary>
/// <param name="Place">The spot that governs.</param>
/// <param name="ActualMm">Last wall read there.</param>
/// <param name="ActualOn">When.</param>
/// <param name="LongTermMmPerYear">Long-term rate as measured; may be negative.</param>
/// <param name="ShortTermMmPerYear">Short-term rate as measured; may be negative.</param>
/// <param name="GoverningMmPerYear">Rate to reckon with; nothing where none can be had.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="RemainingDays">Remaining life; nothing where no rate can be had.</param>
/// <param name="ReachesRequiredOn">The day the wall reaches what is needed; nothing where it is past the calendar.</param>
/// <param name="HalfLifeDays">Half the remaining life.</param>
/// <param name="ThicknessIntervalDays">Longest time to the next thickness reading.</param>
/// <param name="VisualIntervalDays">Longest time to the next outside look.</param>
/// <param name="ThicknessBy">Day of the next thickness reading at the latest.</param>
public sealed record RemainingLifeResult(
    string Place,
    double ActualMm,
    DateOnly ActualOn,
    double? LongTermMmPerYear,
    double? ShortTermMmPerYear,
    double? GoverningMmPerYear,
    RateBasis Basis,
    double? RemainingDays,
    DateOnly? ReachesRequiredOn,
    double? HalfLifeDays,
    double? ThicknessIntervalDays,
    double? VisualIntervalDays,
    DateOnly? ThicknessBy
);

/// <summary>The pressure a wall must be strong for, and the defect it is weakened by.</summary>
/// <param name="OutsideDiameterMm">Outside diameter.</param>
/// <param name="FullWallMm">Wall beside the defect.</param>
/// <param name="AxialLengthMm">Axial length of the defect at the date.</param>
/// <param name="AxialLengthSpreadMm">Its standard deviation.</param>
/// <param name="FlowStressMpa">Flow stress.</param>
/// <param name="PressureBar">Mean of the greatest pressure until the date, gauge.</param>
/// <param name="PressureSpreadBar">Its standard deviation.</param>
/// <param name="SafetyFactor">Factor on the pressure that must be held, 1 or more.</param>
public sealed record StrengthNeed(
    double OutsideDiameterMm,
    double FullWallMm,
    double AxialLengthMm,
    double AxialLengthSpreadMm,
    double FlowStressMpa,
    double PressureBar,
    double PressureSpreadBar,
    double SafetyFactor
);

/// <summary>Asks whether a wall will outlive a date.</summary>
/// <param name="MeasuredOn">Day of the last wall reading.</param>
/// <param name="By">The date it must outlive.</param>
/// <param name="WallMm">Least wall read.</param>
/// <param name="ReadingSpreadMm">Standard deviation of a reading.</param>
/// <param name="CorrosionRateMmPerYear">Mean rate.</param>
/// <param name="RateSpreadMmPerYear">Standard deviation of the rate.</param>
/// <param name="RequiredWallMm">Least wall needed.</param>
/// <param name="TargetProbability">The probability whose date is asked for.</param>
/// <param name="Strength">Strength needed; nothing asks for the wall only.</param>
/// <param name="WallRateCorrelation">Correlation of true wall and rate; the default holds where the rate comes from two readings of one probe.</param>
/// <param name="Samples">Samples, 1 000 to 10 000 000.</param>
/// <param name="Seed">Seed; the same seed gives the same answer to the last bit.</param>
public sealed record CalculateOutliving(
    DateOnly MeasuredOn,
    DateOnly By,
    double WallMm,
    double ReadingSpreadMm,
    double CorrosionRateMmPerYear,
    double RateSpreadMmPerYear,
    double RequiredWallMm,
    double TargetProbability,
    StrengthNeed? Strength = null,
    double WallRateCorrelation = -0.7071067811865476,
    int Samples = 1_000_000,
    ulong Seed = 1
);

/// <summary>Probability of one way to fall short.</summary>
/// <param name="Sampled">Share of samples.</param>
/// <param name="StandardError">Standard error of that share.</param>
/// <param name="FirstOrder">First-order estimate.</param>
/// <param name="ReliabilityIndex">Reliability index of the estimate; nothing where nothing is uncertain.</param>
public sealed record ShortfallResult(double Sampled, double StandardError, double FirstOrder, double? ReliabilityIndex);

/// <summary>Probability to have fallen short by the end of a day.</summary>
/// <param name="On">The day.</param>
/// <param name="Probability">Either way.</param>
public sealed record ShortfallByDay(DateOnly On, double Probability);

/// <summary>Whether a wall will outlive a date.</summary>
/// <param name="Wall">The wall falls below need.</param>
/// <param name="Strength">The strength falls below need; nothing where not asked.</param>
/// <param name="Either">Share of samples, either way.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="CrossesOn">The day the target probability is crossed; nothing within fifty years.</param>
/// <param name="Curve">Probability over time.</param>
public sealed record OutlivingResult(
    ShortfallResult Wall,
    ShortfallResult? Strength,
    double Either,
    double StandardError,
    DateOnly? CrossesOn,
    IReadOnlyList<ShortfallByDay> Curve
);

/// <summary>A term that bounds the time to the next revisit.</summary>
/// <param name="Code">One of remaining-life, depth-life, length-life, hole-life, class-maximum, design-life, next-outage, monitoring.</param>
/// <param name="TimeDays">The term before it is halved; nothing where not known, for which 90 days stand.</param>
/// <param name="Applies">It applies to this repair.</param>
public sealed record RevisitTerm(
    [property: Required, StringLength(40)] string Code,
    double? TimeDays = null,
    bool Applies = true
);

/// <summary>Asks for the revisits of a repair.</summary>
/// <param name="InServiceFrom">Start in service.</param>
/// <param name="EndDate">Last day of the repair.</param>
/// <param name="RiskClass">The class whose duties hold.</param>
/// <param name="RemainingLifeDays">Life of the wall; nothing where not known.</param>
/// <param name="Terms">Terms that bound the next revisit; one that is left out counts as not known.</param>
public sealed record CalculateRevisitPlan(
    DateTimeOffset InServiceFrom,
    DateOnly EndDate,
    RiskClass RiskClass,
    double? RemainingLifeDays = null,
    [property: MaxLength(20)] IReadOnlyList<RevisitTerm>? Terms = null
);

/// <summary>A bound and where it comes from.</summary>
/// <param name="Code">The term.</param>
/// <param name="Words">In words.</param>
/// <param name="TimeDays">The bound it sets.</param>
/// <param name="IsDefault">It was not known, and 90 days stand for it.</param>
public sealed record RevisitBoundResult(string Code, string Words, double TimeDays, bool IsDefault);

/// <summary>The revisits of a repair.</summary>
/// <param name="LookIntervalDays">Interval of looks.</param>
/// <param name="LookIntervalBy">What sets it.</param>
/// <param name="ThicknessIntervalDays">Interval of thickness readings.</param>
/// <param name="ThicknessIntervalBy">What sets it.</param>
/// <param name="FirstLook">When the first look is due.</param>
/// <param name="FirstThickness">When the first thickness reading is due.</param>
/// <param name="GraceDays">Time a look may be late.</param>
/// <param name="BoundDays">Longest time to the next revisit.</param>
/// <param name="Bounds">All bounds, shortest first.</param>
public sealed record RevisitPlanResult(
    double LookIntervalDays,
    string LookIntervalBy,
    double ThicknessIntervalDays,
    string ThicknessIntervalBy,
    DateTimeOffset FirstLook,
    DateTimeOffset FirstThickness,
    double GraceDays,
    double BoundDays,
    IReadOnlyList<RevisitBoundResult> Bounds
);
