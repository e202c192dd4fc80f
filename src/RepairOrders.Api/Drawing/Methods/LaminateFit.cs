using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing.Methods;

/// <summary>A laminate all round, filler in the defect, tapered at both ends.</summary>
internal static class LaminateFit
{
    public static Fit? Of(Subject s)
    {
        if (s["laminateLengthMm"] is not > 0 and var _ || s["laminateLengthMm"] is not { } length)
            return null;
        var (thick, taper, overlap) = (s["laminateThicknessMm"] ?? 0, s["taperMm"] ?? 0, s["overlapMm"] ?? 0);
        var half = length / 2;
        List<AlongSize> sizes = [new(-half, half, Say($"laminate {Number(length)}"), 1, true)];
        if (overlap > 0)
        {
            sizes.Add(
                new(s.Length / 2, s.Length / 2 + overlap, Say($"overlap {Number(overlap)}, both sides"), 0, false)
            );
        }
        if (taper > 0)
            sizes.Add(new(half - taper, half, Say($"taper {Number(taper)}, both ends"), 0, true));
        return new(
            [
                .. Filler(s),
                new(
                    "laminate",
                    Say($"laminate {Number(thick)}{(s["plies"] is { } n ? Say($", {n} plies") : "")}"),
                    Fill.Laminate,
                    -half,
                    half,
                    0,
                    thick
                )
                {
                    Taper = taper,
                },
            ],
            [],
            sizes,
            [],
            [.. Notes(s)]
        );
    }

    // An inner defect leaves the outside whole; an outer one is filled flush first.
    private static IEnumerable<Piece> Filler(Subject s)
    {
        if (s.Outer && s.Thinnest is { } left && left < s.Wall)
            yield return new("filler", "filler, flush", Fill.Putty, -s.Length / 2, s.Length / 2, left - s.Wall, 0)
            {
                HalfAngle = s.HalfAngle,
                Covered = true,
            };
    }

    private static IEnumerable<string> Notes(Subject s)
    {
        if (s["plies"] is { } plies)
            yield return Say($"{plies} plies, full thickness over defect and overlap");
        if (s["throughWallDesign"] is { } through)
            yield return through is 1 ? "sized over a hole" : "reinforces; not sized over a hole";
    }
}
