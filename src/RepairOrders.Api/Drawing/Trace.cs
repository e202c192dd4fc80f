namespace RepairOrders.Api.Drawing;

/// <summary>Lays out contours.</summary>
internal static class Trace
{
    public static Contour Line(params Spot[] spots) =>
        new(spots[0], [.. spots.Skip(1).Select(s => new Straight(s))], false);

    public static Contour Area(params Spot[] spots) => Line(spots) with { Closed = true };

    public static Contour Box(double left, double top, double right, double bottom) =>
        Area(new(left, top), new(right, top), new(right, bottom), new(left, bottom));

    /// <summary>A box with round corners.</summary>
    public static Contour Rounded(double left, double top, double right, double bottom, double radius)
    {
        var r = Math.Min(radius, Math.Min(right - left, bottom - top) / 2);
        if (r <= 0)
            return Box(left, top, right, bottom);
        return new(
            new(left + r, top),
            [
                new Straight(new(right - r, top)),
                new Arc(new(right - r, top + r), r, 0, 90),
                new Straight(new(right, bottom - r)),
                new Arc(new(right - r, bottom - r), r, 90, 90),
                new Straight(new(left + r, bottom)),
                new Arc(new(left + r, bottom - r), r, 180, 90),
                new Straight(new(left, top + r)),
                new Arc(new(left + r, top + r), r, 270, 90),
            ],
            true
        );
    }

    public static Contour Circle(Spot centre, double radius) => ArcOf(centre, radius, 0, 360) with { Closed = true };

    public static Contour ArcOf(Spot centre, double radius, double from, double sweep) =>
        new(centre.Polar(from, radius), [new Arc(centre, radius, from, sweep)], false);

    /// <summary>A piece of a ring; the whole ring is two circles.</summary>
    public static IReadOnlyList<Contour> Ring(Spot centre, double inner, double outer, double from, double sweep) =>
        sweep >= 360
            ? [Circle(centre, outer), Circle(centre, inner)]
            :
            [
                new(
                    centre.Polar(from, outer),
                    [
                        new Arc(centre, outer, from, sweep),
                        new Straight(centre.Polar(from + sweep, inner)),
                        new Arc(centre, inner, from + sweep, -sweep),
                    ],
                    true
                ),
            ];

    /// <summary>An ellipse of straight legs: a hole seen on the curve of the pipe.</summary>
    public static Contour Ellipse(Spot centre, double halfWidth, double halfHeight) =>
        Area([
            .. Enumerable
                .Range(0, 36)
                .Select(i => i * Math.PI / 18)
                .Select(a => new Spot(centre.X + halfWidth * Math.Cos(a), centre.Y + halfHeight * Math.Sin(a))),
        ]);

    /// <summary>The broken end of a pipe: a shallow wave from top to bottom.</summary>
    public static IEnumerable<Spot> Broken(double x, double top, double bottom, double depth) =>
        Enumerable
            .Range(0, 17)
            .Select(i => i / 16.0)
            .Select(s => new Spot(x + depth * Math.Sin(2 * Math.PI * s), top + s * (bottom - top)));
}
