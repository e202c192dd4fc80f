using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>The pressure a wall must be strong for, and the defect it is weakened by.</summary>
/// <param name="OutsideDiameter">Outside diameter.</param>
/// <param name="FullWall">Wall beside the defect; depths are counted from it.</param>
/// <param name="AxialLength">Axial length of the defect as it will be at the date asked for.</param>
/// <param name="AxialLengthSpread">Standard deviation of that length.</param>
/// <param name="FlowStress">Flow stress.</param>
/// <param name="Pressure">Mean of the greatest gauge pressure until the date.</param>
/// <param name="PressureSpread">Standard deviation of that pressure.</param>
/// <param name="SafetyFactor">Factor on the pressure that must be held, 1 or more.</param>
public sealed record StrengthNeed(
    Length OutsideDiameter,
    Length FullWall,
    Length AxialLength,
    Length AxialLengthSpread,
    Pressure FlowStress,
    Pressure Pressure,
    Pressure PressureSpread,
    double SafetyFactor
);

/// <summary>Will this wall outlive that date?</summary>
/// <param name="MeasuredOn">Day of the last wall reading.</param>
/// <param name="By">The date it must outlive.</param>
/// <param name="Wall">Least wall read.</param>
/// <param name="ReadingSpread">Standard deviation of a wall reading.</param>
/// <param name="Rate">Mean corrosion rate.</param>
/// <param name="RateSpread">Standard deviation of the rate.</param>
/// <param name="RequiredWall">Least wall needed.</param>
/// <param name="Strength">Strength needed; nothing asks for the wall only.</param>
/// <param name="TargetProbability">The probability whose date is asked for.</param>
/// <param name="WallRateCorrelation">Correlation of true wall and rate, −1 to 1. Where the rate comes from two readings of one probe, the
/// last of them being <paramref name="Wall"/>, it is <see cref="Outliving.SameReadings"/>, which is the default.</param>
/// <param name="Samples">Number of samples, 1 000 to 10 000 000.</param>
/// <param name="Seed">Seed; the same seed gives the same answer to the last bit.</param>
public sealed record OutlivingAsk(
    DateOnly MeasuredOn,
    DateOnly By,
    Length Wall,
    Length ReadingSpread,
    Speed Rate,
    Speed RateSpread,
    Length RequiredWall,
    StrengthNeed? Strength,
    double TargetProbability,
    double WallRateCorrelation = Outliving.SameReadings,
    int Samples = 1_000_000,
    ulong Seed = 1
);

/// <summary>The probability of one way to fall short, sampled and by a first-order estimate.</summary>
/// <param name="Sampled">Share of samples that fall short by the date.</param>
/// <param name="StandardError">Standard error of that share; where no sample falls short, one part in the number of samples.</param>
/// <param name="FirstOrder">First-order estimate.</param>
/// <param name="ReliabilityIndex">Reliability index β of the first-order estimate; nothing where nothing is uncertain.</param>
public sealed record Shortfall(double Sampled, double StandardError, double FirstOrder, double? ReliabilityIndex);

/// <summary>Probability to have fallen short by the end of a day.</summary>
/// <param name="On">The day.</param>
/// <param name="Probability">Share of samples, either way.</param>
public sealed record ShortfallBy(DateOnly On, double Probability);
