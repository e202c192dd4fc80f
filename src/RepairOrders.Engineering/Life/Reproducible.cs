using System.Numerics;
using System.Runtime.CompilerServices;

namespace RepairOrders.Engineering.Life;

// Elementary functions built from + − × ÷ √ alone, which IEEE 754 rounds correctly everywhere; the C library's log, exp, sin
// and cos differ in the last bit from machine to machine. The runtime never fuses a product and a sum by itself, so a lane of a
// vector of any width gives the same bits. Polynomials and their coefficients: Sun Microsystems, fdlibm 5.3 (1993), error under
// 1 unit in the last place.
internal static class Reproducible
{
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;

    // 1.5 · 2^52: added to a small number it leaves the number's nearest integer in the low bits.
    private const double Round = 6755399441055744.0;
    private static readonly Vector<long> OneBits = new(0x3FF0_0000_0000_0000);
    private static readonly Vector<long> MantissaBits = new(0x000F_FFFF_FFFF_FFFF);

    public static double Log(double x) => Log(new Vector<double>(x))[0];

    public static double Exp(double x) => Exp(new Vector<double>(x))[0];

    /// <summary>Natural logarithm of positive, normal numbers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<double> Log(Vector<double> x)
    {
        // x = 2^k · m with m in [√½, √2): the mantissa is shifted so that the exponent changes at √2.
        var shifted = Vector.AsVectorInt64(x) + new Vector<long>(0x3FF0_0000_0000_0000 - 0x3FE6_A09E_667F_3BCD);
        var k = Integer(Vector.ShiftRightLogical(shifted, 52) - new Vector<long>(0x3FF));
        var m = Vector.AsVectorDouble((shifted & MantissaBits) + new Vector<long>(0x3FE6_A09E_667F_3BCD));

        var f = m - Vector<double>.One;
        var s = f / (f + new Vector<double>(2.0));
        var z = s * s;
        var w = z * z;
        var even = w * (V(3.999999999940941908e-01) + w * (V(2.222219843214978396e-01) + w * 1.531383769920937332e-01));
        var odd =
            z
            * (
                V(6.666666666666735130e-01)
                + w * (V(2.857142874366239149e-01) + w * (V(1.818357216161805012e-01) + w * 1.479819860511658591e-01))
            );
        var half = f * f * 0.5;
        return k * Ln2High - (half - (s * (half + (even + odd)) + k * Ln2Low) - f);
    }

    /// <summary>e to the x, with x held to −700 … 700.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<double> Exp(Vector<double> x)
    {
        x = Vector.Min(Vector.Max(x, V(-700)), V(700));
        var rounded = x * 1.44269504088896338700 + V(Round);
        var k = rounded - V(Round);
        var high = x - k * Ln2High;
        var low = k * Ln2Low;
        var r = high - low;
        var t = r * r;
        var c =
            r
            - t
                * (
                    V(1.66666666666666019037e-01)
                    + t
                        * (
                            V(-2.77777777770155933842e-03)
                            + t
                                * (
                                    V(6.61375632143793436117e-05)
                                    + t * (V(-1.65339022054652515390e-06) + t * 4.13813679705723846039e-08)
                                )
                        )
                );
        var y = Vector<double>.One - (low - r * c / (V(2) - c) - high);
        return y * Vector.AsVectorDouble(Vector.ShiftLeft(Vector.AsVectorInt64(rounded), 52) + OneBits);
    }

    /// <summary>Sine and cosine of 2π·u for u in 0 … 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector<double> Sin, Vector<double> Cos) SinCosTurns(Vector<double> u)
    {
        var quarters = u * 4.0;
        var rounded = quarters + V(Round);
        var angle = (quarters - (rounded - V(Round))) * 1.5707963267948966;
        var z = angle * angle;
        var sin =
            angle
            + angle
                * z
                * (
                    V(-1.66666666666666324348e-01)
                    + z
                        * (
                            V(8.33333333332248946124e-03)
                            + z
                                * (
                                    V(-1.98412698298579493134e-04)
                                    + z
                                        * (
                                            V(2.75573137070700676789e-06)
                                            + z * (V(-2.50507602534068634195e-08) + z * 1.58969099521155010221e-10)
                                        )
                                )
                        )
                );
        var cos =
            Vector<double>.One
            - (
                z * 0.5
                - z
                    * z
                    * (
                        V(4.16666666666666019037e-02)
                        + z
                            * (
                                V(-1.38888888888741095749e-03)
                                + z
                                    * (
                                        V(2.48015872894767294178e-05)
                                        + z
                                            * (
                                                V(-2.75573143513906633035e-07)
                                                + z * (V(2.08757232129817482790e-09) + z * -1.13596475577881948265e-11)
                                            )
                                    )
                            )
                    )
            );
        return Turn(sin, cos, Vector.AsVectorInt64(rounded));
    }

    // Quarter turns swap sine and cosine and their signs: the low bits of the rounded number tell how many.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector<double> Sin, Vector<double> Cos) Turn(
        Vector<double> sin,
        Vector<double> cos,
        Vector<long> quarter
    )
    {
        var swap = Vector.Equals(quarter & Vector<long>.One, Vector<long>.One);
        var sinSign = Vector.ShiftLeft(quarter & new Vector<long>(2), 62);
        var cosSign = Vector.ShiftLeft((quarter + Vector<long>.One) & new Vector<long>(2), 62);
        var s = Vector.ConditionalSelect(swap, cos, sin);
        var c = Vector.ConditionalSelect(swap, sin, cos);
        return (
            Vector.AsVectorDouble(Vector.AsVectorInt64(s) ^ sinSign),
            Vector.AsVectorDouble(Vector.AsVectorInt64(c) ^ cosSign)
        );
    }

    private static Vector<double> Integer(Vector<long> small) =>
        Vector.AsVectorDouble(Vector.AsVectorInt64(V(Round)) + small) - V(Round);

    private static Vector<double> V(double value) => new(value);
}
