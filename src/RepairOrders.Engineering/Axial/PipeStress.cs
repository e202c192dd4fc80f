using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Axial;

/// <summary>Stresses of a straight pipe under inside pressure, end force and bending; the mean hoop stress is in
/// <see cref="Strength.Mawp.HoopStress"/>.</summary>
public static class PipeStress
{
    /// <summary>Longitudinal stress of a thin wall with closed ends.</summary>
    /// <remarks>
    /// <para>Formula: S_L = P D/(4 t).</para>
    /// <para>Symbols: S_L longitudinal stress, MPa; P gauge pressure, MPa; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: thin wall, t &lt; D/6, ends closed.</para>
    /// <para>Reference: thin cylinder, first principles.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>Longitudinal stress S_L.</returns>
    /// <exception cref="ImpossibleInputException">Pressure is negative, or wall or diameter is not above 0 or do not fit.</exception>
    /// <example>20 MPa, 50 mm, 2.5 mm: 20 × 50/10 = 100 MPa.</example>
    public static Pressure Longitudinal(Pressure pressure, Length outsideDiameter, Length wall)
    {
        var P = Take.Gauge("pressureBar", pressure);
        var (D, t) = Shell.Of(outsideDiameter, wall);
        return Pressure.FromMegapascals(P * D / (4 * t));
    }

    /// <summary>Hoop stress at the inside of any wall, by Lamé.</summary>
    /// <remarks>
    /// <para>Formula: S_H = P (Do² + Di²)/(Do² − Di²).</para>
    /// <para>Symbols: S_H hoop stress, MPa; P gauge pressure, MPa; Do outside, Di inside diameter, mm.</para>
    /// <para>Validity: elastic, round, inside pressure only.</para>
    /// <para>Reference: Lamé, thick cylinder.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter Do.</param>
    /// <param name="insideDiameter">Inside diameter Di.</param>
    /// <returns>Hoop stress S_H.</returns>
    /// <exception cref="ImpossibleInputException">Pressure is negative or the diameters do not fit.</exception>
    /// <example>2 MPa, 168.3 mm, 154.08 mm: 22.715 MPa.</example>
    public static Pressure HoopInside(Pressure pressure, Length outsideDiameter, Length insideDiameter)
    {
        var P = Take.Gauge("pressureBar", pressure);
        var (Do, Di) = Bore(outsideDiameter, insideDiameter);
        return Pressure.FromMegapascals(P * (Do * Do + Di * Di) / (Do * Do - Di * Di));
    }

    /// <summary>Longitudinal stress of any wall by pressure on its closed ends, end force and bending.</summary>
    /// <remarks>
    /// <para>Formula: S_L = P Di²/(Do² − Di²) + M/Z + F/A; Z = π (Do⁴ − Di⁴)/(32 Do); A = π (Do² − Di²)/4.</para>
    /// <para>Symbols: S_L longitudinal stress, MPa; P gauge pressure, MPa; Do outside, Di inside diameter, mm; M bending moment, N·mm; F end force, N, pull positive; Z section modulus, mm³; A area, mm².</para>
    /// <para>Validity: elastic, round, even wall.</para>
    /// <para>Reference: ASME B31.3, 302.3.5(c), force over area.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter Do.</param>
    /// <param name="insideDiameter">Inside diameter Di.</param>
    /// <param name="moment">Bending moment M, its size.</param>
    /// <param name="force">End force F beside pressure, pull positive.</param>
    /// <returns>Longitudinal stress S_L on the pulled side.</returns>
    /// <exception cref="ImpossibleInputException">Pressure or moment is negative or the diameters do not fit.</exception>
    /// <example>2 MPa, 168.3 mm, 154.08 mm, no moment, no force: 10.357 MPa.</example>
    public static Pressure LongitudinalCombined(
        Pressure pressure,
        Length outsideDiameter,
        Length insideDiameter,
        Torque moment,
        Force force
    )
    {
        var P = Take.Gauge("pressureBar", pressure);
        var M = Require.Between("bendingMomentNm", moment.NewtonMeters, 0, 1e12) * 1000;
        var F = Require.Between("outsideForceKn", force.Kilonewtons, -1e9, 1e9) * 1000;
        var (Do, Di) = Bore(outsideDiameter, insideDiameter);
        var Z = Math.PI * (Do * Do * Do * Do - Di * Di * Di * Di) / (32 * Do);
        var A = Math.PI * (Do * Do - Di * Di) / 4;
        return Pressure.FromMegapascals(P * Di * Di / (Do * Do - Di * Di) + M / Z + F / A);
    }

    private static (double Outside, double Inside) Bore(Length outsideDiameter, Length insideDiameter)
    {
        var Do = Shell.Diameter(outsideDiameter);
        var Di = Take.Extent("insideDiameterMm", insideDiameter);
        return Di < Do
            ? (Do, Di)
            : throw new ImpossibleInputException(
                "insideDiameterMm",
                FormattableString.Invariant($"{Di:G6}"),
                FormattableString.Invariant($"less than the outside diameter of {Do:G6} mm")
            );
    }
}
