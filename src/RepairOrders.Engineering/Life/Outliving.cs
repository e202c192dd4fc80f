using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>How likely a wall is to fall short before a date.</summary>
/// <param name="Wall">The wall below the wall needed.</param>
/// <param name="Strength">The strength below the strength needed; nothing where it was not asked for.</param>
/// <param name="Either">Share of samples that fall short in either way by the date.</param>
/// <param name="StandardError">Standard error of that share.</param>
/// <param name="CrossesOn">First day on which that share reaches the target; nothing within 50 years.</param>
/// <param name="Curve">The share over time, from the reading to the date.</param>
public sealed record Outliving(
    Shortfall Wall,
    Shortfall? Strength,
    double Either,
    double StandardError,
    DateOnly? CrossesOn,
    IReadOnlyList<ShortfallBy> Curve
)
{
    /// <summary>Correlation of true wall and true rate where the rate comes from two readings of one probe, the last of them being the wall
    /// reckoned from: −1/√2. A wall that reads too thick hides both loss and rate.</summary>
    public const double SameReadings = -0.7071067811865476;

    /// <summary>Days of the 50 years looked ahead.</summary>
    internal const int HorizonDays = 18_263;

    /// <summary>Standard deviation of a rate that comes from two readings.</summary>
    /// <remarks>
    /// <para>Formula: s_r = √2·s_e/Δt.</para>
    /// <para>Symbols: s_r standard deviation of the rate, mm/y; s_e that of one reading, mm; Δt time between the readings, y.</para>
    /// <para>Validity: both readings with the same spread, errors independent.</para>
    /// <para>Reference: derived here, variance of a difference.</para>
    /// </remarks>
    /// <param name="readingSpread">Standard deviation of one reading s_e.</param>
    /// <param name="between">Time between the readings Δt.</param>
    /// <returns>Standard deviation of the rate s_r.</returns>
    /// <exception cref="ImpossibleInputException">The spread is negative or the time is not above 0.</exception>
    /// <example>0.2 mm, 4 years: √2 × 0.2/4 = 0.0707 mm a year.</example>
    public static Speed RateSpread(Length readingSpread, Duration between)
    {
        var s_e = Require.Between("readingSpreadMm", readingSpread.Millimeters, 0, 100);
        var years = Require.Between("yearsBetween", between.Days / CorrosionRate.DaysPerYear, 0.001, 10_000);
        return CorrosionRate.FromMillimetresPerYear(Math.Sqrt(2) * s_e / years);
    }

    /// <summary>Probability that the wall, or the strength by modified B31G, falls below need by a date: by sampling, and by a first-order
    /// estimate beside it.</summary>
    /// <remarks>
    /// <para>Formula: w(T) = w + s_w·Z1 − r·T; r = exp(μ + σ·(ρ·Z1 + √(1 − ρ²)·Z2)); short in wall: w(T) &lt; t_req; short in strength: w(T) &lt; t·(1 − d/t)
    /// with d/t = min((Sf − σ_h)/(Sf − σ_h/M)/0.85, 0.8), σ_h = SF·(P + s_P·Z3)·D/(2t), M of L + s_L·Z4.</para>
    /// <para>Symbols: w wall read, mm; s_w its spread, mm; r rate, lognormal with the mean and spread given, mm/y; T time from the reading, y; Z1…Z4
    /// standard normals; ρ correlation; t_req wall needed, mm; t full wall, mm; Sf flow stress, MPa; σ_h hoop stress, MPa; P greatest gauge pressure, s_P its spread, MPa; SF safety factor;
    /// D outside diameter, mm; L axial length, s_L its spread, mm; M bulging factor of modified B31G.</para>
    /// <para>Validity: one defect, corrosion steady in time, no error of the strength model; ductile pipe; a date within 50 years of the reading.</para>
    /// <para>Reference: own model; strength by ASME B31G modified (0.85 dL); SplitMix64 (Steele, Lea, Flood 2014) with Box-Muller normals; first order after Hasofer, Lind 1974.</para>
    /// </remarks>
    /// <param name="ask">Wall, rate, need and their spreads.</param>
    /// <returns>Probabilities and the date at which the target is reached, with working and findings.</returns>
    /// <exception cref="ImpossibleInputException">A size is not above 0, a spread negative, a probability not between 0 and 1, or the date
    /// not within 50 years after the reading.</exception>
    /// <example>6.0 mm read with 0.2 mm, 0.2 mm a year for certain, 4.5 mm needed in 5 years: margin 0.5 mm, P = Φ(−2.5) = 0.0062.</example>
    public static Calculated<Outliving> Before(OutlivingAsk ask)
    {
        OutlivingInput.Check(ask);
        return new OutlivingRun(ask).Answer();
    }
}
