using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing.Methods;

/// <summary>Plate over putty, held by bands with their fasteners.</summary>
internal static class BandedPatchFit
{
    // What a fastener looks like is the maker's; its place is the design's.
    private const double FastenerRoundMm = 22;
    private const double FastenerHeightMm = 9;

    public static Fit? Of(Subject s)
    {
        if (s["plateLengthMm"] is not { } length || s["plateThicknessMm"] is not { } plate)
            return null;
        var (half, putty) = (HalfAngle(s, plate), s["puttyThicknessMm"] ?? 0);
        var under = putty + plate;
        var band = Bands(s, half, under);
        return new(
            [
                Puttied(s, length, half, putty),
                new("plate", Say($"plate {Number(plate)}"), Fill.Plate, -length / 2, length / 2, putty, under)
                {
                    HalfAngle = half,
                },
                .. band.Pieces,
            ],
            band.Fasteners,
            Sizes(s, length, band.Middles),
            [.. Angles(s, half)],
            Notes(s, plate)
        );
    }

    private static double HalfAngle(Subject s, double plate) =>
        s["fullCircle"] is 1
            ? 180 - (s["plateGapMm"] ?? 0) / 2 / (s.Radius + plate) * 180 / Math.PI
            : s["plateHalfAngleDeg"] ?? (s["plateArcMm"] ?? 0) / 2 / s.Radius * 180 / Math.PI;

    private static Piece Puttied(Subject s, double length, double half, double putty) =>
        new("putty", Say($"putty {Number(putty)}"), Fill.Putty, -length / 2, length / 2, 0, putty)
        {
            HalfAngle = half,
            Covered = true,
        };

    private static (List<Piece> Pieces, List<Fastener> Fasteners, List<double> Middles) Bands(
        Subject s,
        double half,
        double under
    )
    {
        List<Piece> pieces = [];
        List<Fastener> fasteners = [];
        List<double> middles = [];
        var (count, width, thick) = ((int)(s["bandCount"] ?? 0), s["bandWidthMm"] ?? 0, s["bandThicknessMm"] ?? 0);
        if (count < 1 || width <= 0)
            return (pieces, fasteners, middles);
        var pitch = s["bandPitchMm"] ?? width * 1.2;
        var high = under + Math.Max(1, s["wraps"] ?? 1) * thick;
        var round = (int)Math.Max(1, s["fastenersPerBand"] ?? 1);
        var first = s["fastenerAngleDeg"] ?? 180.0 / round;
        for (var i = 0; i < count; i++)
        {
            var at = (i - (count - 1) / 2.0) * pitch;
            middles.Add(at);
            pieces.Add(
                new(
                    "band",
                    i == 0
                        ? Say($"band {Number(thick)}{(s["wraps"] is > 1 and var n ? Say($", {n} turns") : "")}")
                        : "",
                    Fill.Band,
                    at - width / 2,
                    at + width / 2,
                    under,
                    high
                )
                {
                    RunsDownFrom = half < 175 ? half : null,
                }
            );
            for (var k = 0; k < round; k++)
            {
                var angle = Turned(first + k * 360.0 / round);
                // Beyond the plate the band lies on the pipe.
                var foot = Math.Abs(angle) <= half ? high : high - under;
                fasteners.Add(
                    new("fastener", FastenerKind.Band, angle, at, width * 1.1, FastenerRoundMm, foot, FastenerHeightMm)
                );
            }
        }
        return (pieces, fasteners, middles);
    }

    private static List<AlongSize> Sizes(Subject s, double length, List<double> middles)
    {
        List<AlongSize> sizes = [new(-length / 2, length / 2, Say($"plate {Number(length)}"), 1, true)];
        if (middles.Count > 1)
        {
            var pitch = middles[1] - middles[0];
            sizes.Add(
                new(
                    middles[0],
                    middles[1],
                    Say($"{Number(pitch)}{(middles.Count > 2 ? Say($"  × {middles.Count - 1} pitches") : "")}"),
                    0,
                    false
                )
            );
        }
        if (middles.Count > 0 && s["bandWidthMm"] is { } width)
        {
            var edge = middles[^1] + width / 2;
            if (length / 2 - edge > 0.5)
                sizes.Add(new(edge, length / 2, Say($"{Number(length / 2 - edge)}"), 0, true));
        }
        return sizes;
    }

    private static IEnumerable<RoundSize> Angles(Subject s, double half)
    {
        if (half < 175)
            yield return new(-half, half, Say($"{2 * half:0}°"));
    }

    private static List<string> Notes(Subject s, double plate)
    {
        List<string> notes =
        [
            Say(
                $"plate {Number(s["plateLengthMm"] ?? 0)} × {Number(s["plateArcMm"] ?? 0)} round the pipe, {Number(plate)} thick"
            ),
        ];
        if (s["bandCount"] is { } n && s["bandWidthMm"] is { } w)
            notes.Add(
                Say(
                    $"{n} bands {Number(w)} × {Number(s["bandThicknessMm"] ?? 0)}, {s["piecesPerBand"] ?? 1} × {Number(s["bandPieceLengthMm"] ?? 0)} each"
                )
            );
        if (s["fastenerAngleDeg"] is { } angle)
            notes.Add(
                Say(
                    $"fastener {Number(angle)}° from the middle of the plate{(s["fastenersPerBand"] is > 1 and var k ? Say($", {k} a band") : "")}"
                )
            );
        if (s["torqueNm"] is { } torque)
            notes.Add(Fits.Torque(s, torque));
        else if (s["bandTensionLowN"] is { } low && s["bandTensionHighN"] is { } high)
            notes.Add(Say($"band tension {low:0} to {high:0} N"));
        if (s["plateGapMm"] is > 0 and var gap)
            notes.Add(Say($"split plate, gap {Number(gap)} opposite the defect"));
        return notes;
    }

    private static double Turned(double degrees) => degrees > 180 ? degrees - 360 : degrees;
}
