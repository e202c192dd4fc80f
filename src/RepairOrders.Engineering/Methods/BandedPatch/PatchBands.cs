using RepairOrders.Engineering.Joints;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>Bands on the plate: how many are laid, needed and would fit; plate length, clear gap and overhang in mm.</summary>
internal sealed record PatchBands(int Count, int Needed, int Fit, double PlateLength, double Gap, double Overhang)
{
    public const int TooMany = 1_000_000;

    public bool Holds => Needed <= Count && Count <= Fit;

    /// <summary>
    /// The fewest bands that hold and keep the plate from bending too far; where it bends anyway, the most that hold on that plate.
    /// Beyond one band more than fits on the least plate nothing is won: the load grows with the plate.
    /// </summary>
    public static PatchBands Lay(
        Sheet s,
        Patch p,
        PatchBlank blank,
        PatchFriction friction,
        TensionLimits limits,
        PatchTension tension
    )
    {
        var most = Math.Max(2, BandTension.BandsThatFit(Mm(blank.Length), Mm(p.w), Mm(p.g)) + 1);
        PatchBands? enough = null;
        for (var n = 2; n <= most; n++)
        {
            var bands = With(n);
            if (bands.Holds && bands.Bending(p) <= 2.0 / 3 * s["plateYieldMpa"])
                return bands;
            if (bands.Holds && (enough is null || bands.PlateLength <= enough.PlateLength))
                enough = bands;
        }
        return enough ?? With(most);

        PatchBands With(int n)
        {
            var length = Math.Ceiling(Math.Round(Math.Max(blank.Length, n * (p.w + p.g) - p.g), 6));
            var (gap, overhang) = Spread(n, length, p);
            var fit = BandTension.BandsThatFit(Mm(length), Mm(p.w), Mm(p.g));
            return new(n, NeededOn(length), fit, length, gap, overhang);
        }

        int NeededOn(double length)
        {
            var left = limits.Left(tension.Low);
            if (left <= 0)
                return TooMany;
            var layers = BandTension.BandsNeeded(
                Mpa(p.P),
                p.m,
                Mm(p.r),
                Mm(length),
                N(left),
                friction.Coefficient,
                friction.Away
            );
            return Math.Max(2, (layers + limits.Layers - 1) / limits.Layers);
        }
    }

    /// <summary>Greatest bending stress of the plate, MPa.</summary>
    public double Bending(Patch p) => Math.Max(BetweenBands(p), BeyondBands(p));

    public double BetweenBands(Patch p) =>
        PatchPlate.StressBetweenBands(Mpa((1 + p.m) * p.P), Mm(p.w), Mm(Gap), Mm(p.t)).Megapascals;

    public double BeyondBands(Patch p) =>
        PatchPlate.StressOfOverhang(Mpa((1 + p.m) * p.P), Mm(Overhang), Mm(p.t)).Megapascals;

    // Gap and overhang such that the plate bends alike between and beyond the bands. Not rounded: a rounded gap would bend a
    // longer plate less than a shorter one.
    private static (double Gap, double Overhang) Spread(int n, double length, Patch p)
    {
        var (low, high) = (0.0, length);
        for (var i = 0; i < 50; i++)
        {
            var gap = (low + high) / 2;
            var overhang = Math.Sqrt(gap * Math.Max(2 * gap + p.w, gap + 2 * p.w) / 12);
            if (n * p.w + (n - 1) * gap + 2 * overhang > length)
                high = gap;
            else
                low = gap;
        }
        var even = Math.Max(p.g, low);
        return (even, Math.Max(0, (length - n * p.w - (n - 1) * even) / 2));
    }
}
