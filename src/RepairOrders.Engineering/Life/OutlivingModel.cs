using System.Numerics;
using System.Runtime.CompilerServices;

namespace RepairOrders.Engineering.Life;

// The model in SI-free numbers (mm, MPa, years) for sampling and for the first-order estimate. Four standard normals: wall
// reading, rate, pressure, defect length.
internal readonly struct OutlivingModel(OutlivingAsk ask)
{
    // Beyond this share of the wall B31G gives no strength credit.
    public const double DeepestShare = 0.8;

    public readonly double Wall = ask.Wall.Millimeters;
    public readonly double ReadingSpread = ask.ReadingSpread.Millimeters;
    public readonly double Correlation = ask.WallRateCorrelation;
    public readonly double RateSigma = Sigma(ask);
    public readonly double RateMu = Reproducible.Log(ask.Rate.MillimetresPerYear()) - Sigma(ask) * Sigma(ask) / 2;
    public readonly double RequiredWall = ask.RequiredWall.Millimeters;
    public readonly bool AsksStrength = ask.Strength is not null;
    public readonly double Diameter = ask.Strength?.OutsideDiameter.Millimeters ?? 1;
    public readonly double FullWall = ask.Strength?.FullWall.Millimeters ?? 1;
    public readonly double Length = ask.Strength?.AxialLength.Millimeters ?? 0;
    public readonly double LengthSpread = ask.Strength?.AxialLengthSpread.Millimeters ?? 0;
    public readonly double FlowStress = ask.Strength?.FlowStress.Megapascals ?? 1;
    public readonly double Pressure = (ask.Strength?.Pressure.Megapascals ?? 0) * (ask.Strength?.SafetyFactor ?? 1);
    public readonly double PressureSpread =
        (ask.Strength?.PressureSpread.Megapascals ?? 0) * (ask.Strength?.SafetyFactor ?? 1);

    private static double Sigma(OutlivingAsk ask)
    {
        var cov = ask.RateSpread.MillimetresPerYear() / ask.Rate.MillimetresPerYear();
        return Math.Sqrt(Reproducible.Log(1 + cov * cov));
    }

    /// <summary>Years until the wall and until the strength falls short; 0 or less where it has.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (Vector<double> Wall, Vector<double> Strength) Years(
        Vector<double> z1,
        Vector<double> z2,
        Vector<double> z3,
        Vector<double> z4
    )
    {
        var wall = WallNow(z1);
        var rate = Rate(z1, z2);
        var byWall = (wall - new Vector<double>(RequiredWall)) / rate;
        return AsksStrength ? (byWall, (wall - StrengthWall(z3, z4)) / rate) : (byWall, byWall);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<double> WallNow(Vector<double> z1) => new Vector<double>(Wall) + z1 * ReadingSpread;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<double> Rate(Vector<double> z1, Vector<double> z2)
    {
        var own = Math.Sqrt(1 - Correlation * Correlation);
        return Reproducible.Exp(new Vector<double>(RateMu) + (z1 * Correlation + z2 * own) * RateSigma);
    }

    /// <summary>The wall at which the modified B31G pressure is down to the pressure that must be held: the equation solved for
    /// the depth, d/t = ((Sf − σ)/(Sf − σ/M))/0.85, never above the depth limit. Where σ is not below Sf, the whole wall that would
    /// hold it, t·σ/Sf.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<double> StrengthWall(Vector<double> z3, Vector<double> z4)
    {
        var one = Vector<double>.One;
        var stress = (new Vector<double>(Pressure) + z3 * PressureSpread) * (Diameter / (2 * FullWall));
        var length = Vector.Max(new Vector<double>(Length) + z4 * LengthSpread, Vector<double>.Zero);
        var z = length * length * (1 / (Diameter * FullWall));

        var bulging = Vector.ConditionalSelect(
            Vector.LessThanOrEqual(z, new Vector<double>(50)),
            Vector.SquareRoot(one + z * (new Vector<double>(0.6275) - z * 0.003375)),
            z * 0.032 + new Vector<double>(3.3)
        );
        var flow = new Vector<double>(FlowStress);
        var share = (flow - stress) / ((flow - stress / bulging) * 0.85);
        var depth = Vector.Min(share, new Vector<double>(DeepestShare)) * FullWall;
        return Vector.ConditionalSelect(
            Vector.LessThan(stress, flow),
            new Vector<double>(FullWall) - depth,
            stress * (FullWall / FlowStress)
        );
    }
}
