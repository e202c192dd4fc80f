using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>How long a band is cut.</summary>
public static class BandLength
{
    /// <summary>Cut length of a band over a plate of a full circle.</summary>
    /// <remarks>
    /// <para>Formula: L = π N (Ds + N tb) + Lo + Lt</para>
    /// <para>Symbols: N wraps, -; Ds diameter over the plate, mm; tb band thickness, mm; Lo overlap, Lt tail, mm.</para>
    /// <para>Validity: exact for a full circle; an upper bound for a shorter plate. Take putty as applied and the greatest diameter of an oval pipe.</para>
    /// <para>Reference: sum of the mean circumferences π (Ds + (2 i − 1) tb), derived here.</para>
    /// </remarks>
    /// <param name="overPlate">Diameter over the plate Ds.</param>
    /// <param name="bandThickness">Band thickness tb.</param>
    /// <param name="wraps">Wraps N.</param>
    /// <param name="overlap">Overlap at the fastener Lo.</param>
    /// <param name="tail">Tail to pull on Lt.</param>
    /// <returns>Cut length L, not rounded.</returns>
    /// <exception cref="ImpossibleInputException">A diameter or thickness of 0, or a negative length.</exception>
    /// <example>D 114.3 with 3 mm putty and 1.5 mm plate, 0.76 mm band, 60 and 40 mm: 489.74 mm; two wraps 884.26 mm.</example>
    public static Length FullCircle(Length overPlate, Length bandThickness, int wraps, Length overlap, Length tail)
    {
        var Ds = Require.Positive("diameterOverPlateMm", overPlate.Millimeters);
        return Length.FromMillimeters(Math.PI * wraps * Ds + Rest(bandThickness, wraps, overlap, tail));
    }

    /// <summary>Cut length of a band over an arc plate, on bare pipe elsewhere.</summary>
    /// <remarks>
    /// <para>Formula: L = N H + π N² tb + Lo + Lt; H = 2 a Ro + 2 √(Ro² − R²) + 2 (π − a − δ) R where a + δ ≤ π, else 2 a Ro + 2 Ro sin(π − a); cos δ = R/Ro</para>
    /// <para>Symbols: H convex hull, mm; a half-angle of the plate at the pipe's axis, rad; R = D/2, Ro = Ds/2, mm; N, tb, Lo, Lt as
    /// <see cref="FullCircle"/>.</para>
    /// <para>Validity: plate rolled to the pipe; 0 &lt; a ≤ π.</para>
    /// <para>Reference: convex hull of circle and concentric arc, derived here and checked against a polygon.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter of the pipe D.</param>
    /// <param name="overPlate">Diameter over the plate Ds.</param>
    /// <param name="halfAngle">Half-angle of the plate a.</param>
    /// <param name="bandThickness">Band thickness tb.</param>
    /// <param name="wraps">Wraps N.</param>
    /// <param name="overlap">Overlap at the fastener Lo.</param>
    /// <param name="tail">Tail to pull on Lt.</param>
    /// <returns>Cut length L, not rounded.</returns>
    /// <exception cref="ImpossibleInputException">A plate smaller than the pipe, a half-angle outside 0 to 180°, or a negative length.</exception>
    /// <example>D 114.3, Ds 123.3, a 0.99388 rad, 0.76 mm band, one wrap, 60 and 40 mm: 472.72 mm.</example>
    public static Length ArcPlate(
        Length outsideDiameter,
        Length overPlate,
        Angle halfAngle,
        Length bandThickness,
        int wraps,
        Length overlap,
        Length tail
    )
    {
        var R = Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters) / 2;
        var Ro = Require.Between("diameterOverPlateMm", overPlate.Millimeters, 2 * R, 1e6) / 2;
        var a = Require.Between("plateHalfAngleRad", halfAngle.Radians, 0, Math.PI);
        return Length.FromMillimeters(wraps * Hull(R, Ro, a) + Rest(bandThickness, wraps, overlap, tail));
    }

    /// <summary>Pieces a band is made of when the coil is shorter than the band; one fastener each.</summary>
    /// <param name="cutLength">Length the band must have.</param>
    /// <param name="coil">Length of the coil or remnant.</param>
    /// <param name="spliceOverlap">Overlap at each splice.</param>
    /// <returns>1, or ⌈(L − s)/(l − s)⌉. 4000 mm from 1500 mm with 80 mm: 3 pieces, 2 splices.</returns>
    /// <exception cref="ImpossibleInputException">A coil not longer than the splice's overlap.</exception>
    public static int Pieces(Length cutLength, Length coil, Length spliceOverlap)
    {
        var L = Require.Positive("bandLengthMm", cutLength.Millimeters);
        var s = Require.NotNegative("spliceOverlapMm", spliceOverlap.Millimeters);
        var l = Require.Positive("coilLengthMm", coil.Millimeters);
        if (l <= s)
        {
            throw new ImpossibleInputException(
                "coilLengthMm",
                $"{l:0.###}",
                $"more than the splice overlap of {s:0.###} mm"
            );
        }
        return L <= l ? 1 : (int)Math.Min(1_000_000, Math.Ceiling(Math.Round((L - s) / (l - s), 9)));
    }

    private static double Hull(double R, double Ro, double a)
    {
        var delta = Math.Acos(R / Ro);
        return a + delta <= Math.PI
            ? 2 * a * Ro + 2 * Math.Sqrt(Ro * Ro - R * R) + 2 * (Math.PI - a - delta) * R
            : 2 * a * Ro + 2 * Ro * Math.Sin(Math.PI - a);
    }

    private static double Rest(Length bandThickness, int wraps, Length overlap, Length tail)
    {
        var tb = Require.Positive("bandThicknessMm", bandThickness.Millimeters);
        var N = Require.Between("wraps", wraps, 1, 100);
        return Math.PI * N * N * tb
            + Require.NotNegative("overlapMm", overlap.Millimeters)
            + Require.NotNegative("tailMm", tail.Millimeters);
    }
}
