using MathNet.Numerics;
using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>A straight line through readings of a leak test.</summary>
/// <param name="Slope">Free gas for each unit of pressure, in the units of the readings.</param>
/// <param name="Intercept">Free gas at no pressure, in the unit of the readings.</param>
public sealed record LeakLine(double Slope, double Intercept)
{
    internal double At(double pressure) => Intercept + Slope * pressure;
}

/// <summary>Leak rate from the fall of pressure in a line that is shut in.</summary>
public static class PressureDecay
{
    /// <summary>Mean leak of a closed volume of gas from its fall in pressure, as free gas.</summary>
    /// <remarks>
    /// <para>Formula: Q = V·(P1 − P2)/(Pa·t).</para>
    /// <para>Symbols: V closed volume, m³; P1, P2 pressure at start and end (both gauge or both absolute), Pa; Pa atmospheric pressure, Pa; t
    /// time, s; Q mean leak as free gas at the line's temperature, m³/s.</para>
    /// <para>Validity: ideal gas, steady temperature; a change of 1 K moves an absolute pressure by 0.34 % and can hide a small leak.</para>
    /// <para>Reference: ideal gas law.</para>
    /// </remarks>
    /// <param name="volume">Closed volume.</param>
    /// <param name="start">Pressure at the start.</param>
    /// <param name="end">Pressure at the end.</param>
    /// <param name="atmosphereAbs">Atmospheric pressure, absolute.</param>
    /// <param name="time">Time between.</param>
    /// <returns>Mean leak as free gas.</returns>
    /// <exception cref="ImpossibleInputException">A volume, pressure or time that cannot be, or a pressure that rises.</exception>
    /// <example>10 m³ from 7 to 6 bar in 20 min, atmosphere 1 bar: 10 × 1/(1 × 20) = 0.5 m³/min.</example>
    public static VolumeFlow FreeGas(Volume volume, Pressure start, Pressure end, Pressure atmosphereAbs, Duration time)
    {
        var V = Require.Between("volumeM3", Require.Positive("volumeM3", volume.CubicMeters), 1e-9, 1e9);
        var P1 = Require.Between("startPressureBar", start.Bars, -1.1, 1e5);
        var P2 = Require.Between("endPressureBar", end.Bars, -1.1, P1);
        var Pa = Require.Between("atmosphereBarAbs", atmosphereAbs.Bars, 0.1, 1.2);
        var t = Require.Between("timeMin", Require.Positive("timeMin", time.Minutes), 1e-6, 1e9);
        return VolumeFlow.FromCubicMetersPerMinute(V * (P1 - P2) / (Pa * t));
    }

    /// <summary>The straight line through readings of leak against pressure, by least squares.</summary>
    /// <param name="pressures">Pressures, all in one unit.</param>
    /// <param name="leaks">Leaks at those pressures, all in one unit.</param>
    /// <returns>The line, in the units of the readings.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two readings, lists of unequal length, a value that is not finite, or one pressure only.</exception>
    public static LeakLine Line(IReadOnlyList<double> pressures, IReadOnlyList<double> leaks)
    {
        ArgumentNullException.ThrowIfNull(pressures);
        ArgumentNullException.ThrowIfNull(leaks);
        if (pressures.Count < 2 || pressures.Count != leaks.Count)
        {
            throw new ImpossibleInputException(
                "readings",
                $"{pressures.Count} pressures and {leaks.Count} leaks",
                "two or more of each, as many of one as of the other"
            );
        }

        double[] x = [.. pressures.Select(p => Require.Between("pressure", p, -1e9, 1e9))];
        double[] y = [.. leaks.Select(q => Require.Between("leak", q, -1e9, 1e9))];
        if (x.Max() - x.Min() < 1e-9)
        {
            throw new ImpossibleInputException("pressures", "all the same", "at least two different pressures");
        }

        var (intercept, slope) = Fit.Line(x, y);
        return new(slope, intercept);
    }
}
