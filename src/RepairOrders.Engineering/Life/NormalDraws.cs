using System.Numerics;
using System.Runtime.CompilerServices;

namespace RepairOrders.Engineering.Life;

// Draw n of a seed is a function of seed and n alone, so any split of the work gives the same numbers. The generator is the
// counter form of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014); normals are made in pairs by Box and Muller (1958).
internal static class NormalDraws
{
    private const ulong Golden = 0x9E37_79B9_7F4A_7C15;

    /// <summary>The states that draws n, n + step, n + 2·step, … of a seed are made from, one a lane; draws count from 0.</summary>
    public static Vector<ulong> States(ulong seed, ulong n, ulong step)
    {
        Span<ulong> states = stackalloc ulong[Vector<ulong>.Count];
        for (var lane = 0; lane < states.Length; lane++)
        {
            states[lane] = unchecked(seed + (n + (ulong)lane * step + 1) * Golden);
        }
        return new(states);
    }

    /// <summary>How far the states move from one draw to the next.</summary>
    public static Vector<ulong> Ahead(ulong draws) => new(unchecked(draws * Golden));

    /// <summary>The random bits of the states.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<ulong> Bits(Vector<ulong> z)
    {
        z = (z ^ Vector.ShiftRightLogical(z, 30)) * 0xBF58_476D_1CE4_E5B9;
        z = (z ^ Vector.ShiftRightLogical(z, 27)) * 0x94D0_49BB_1331_11EB;
        return z ^ Vector.ShiftRightLogical(z, 31);
    }

    /// <summary>Two independent standard normals from two words of random bits in each lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector<double> First, Vector<double> Second) Pair(Vector<ulong> a, Vector<ulong> b)
    {
        var radius = Vector.SquareRoot(Reproducible.Log(Uniform(a)) * -2.0);
        var (sin, cos) = Reproducible.SinCosTurns(Uniform(b));
        return (radius * cos, radius * sin);
    }

    // 52 bits as a number of 1 … 2, less 1, and half a step up: never 0, never 1.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Uniform(Vector<ulong> bits) =>
        Vector.AsVectorDouble(Vector.ShiftRightLogical(bits, 12) | new Vector<ulong>(0x3FF0_0000_0000_0000))
        - Vector<double>.One
        + new Vector<double>(1.1102230246251565e-16);
}
