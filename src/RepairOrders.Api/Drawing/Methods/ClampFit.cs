using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing.Methods;

/// <summary>Two halves with end seals, bolted through ears on both sides of the defect.</summary>
internal static class ClampFit
{
    public static Fit? Of(Subject s)
    {
        if (s["clampLengthMm"] is not { } length || s["clampThicknessMm"] is not { } shell)
            return null;
        var half = length / 2;
        var seal = s["sealWidthMm"] ?? 0;
        var (bearing, between) = (Math.Max(0, ((s["sealDiameterMm"] ?? s.Outside) - s.Outside) / 2), s["sealLengthMm"]);
        var bore = bearing + seal;
        List<Piece> pieces = [new("clamp", Say($"shell {Number(shell)}"), Fill.Shell, -half, half, bore, bore + shell)];
        var middle = between is { } l ? l / 2 : half - seal / 2;
        if (seal > 0)
            foreach (var side in new[] { -1, 1 })
                pieces.Add(
                    new(
                        "seal",
                        side > 0 ? Say($"seal {Number(seal)} wide") : "",
                        Fill.Seal,
                        side * middle - seal / 2,
                        side * middle + seal / 2,
                        0,
                        bore
                    )
                    {
                        Covered = true,
                    }
                );
        List<AlongSize> sizes = [new(-half, half, Say($"clamp {Number(length)}"), 1, true)];
        if (between is { } seals)
            sizes.Add(new(-seals / 2, seals / 2, Say($"between seals {Number(seals)}"), 0, false));
        return new(pieces, Bolts(s, half, bore + shell), sizes, [], [.. Notes(s)]);
    }

    private static List<Fastener> Bolts(Subject s, double half, double height)
    {
        List<Fastener> bolts = [];
        var d = s["boltDiameterMm"] ?? 16;
        var each = (int)Math.Ceiling((s["clampBoltCount"] ?? 0) / 2);
        for (var i = 0; i < each; i++)
            foreach (var side in new[] { -90, 90 })
                bolts.Add(
                    new("bolt", FastenerKind.Ears, side, -half + 2 * half * (i + 0.5) / each, d, 2.4 * d, height, 3 * d)
                );
        if (s["restraint"] is 1)
            foreach (var side in new[] { -55.0, 55 })
                bolts.Add(new("restraint", FastenerKind.Rod, side, 0, 2 * half + 6 * d, d, height + d / 2, d));
        return bolts;
    }

    private static IEnumerable<string> Notes(Subject s)
    {
        if (s["clampBoltCount"] is { } count)
            yield return Say($"{count} bolts, {Number(s["boltDiameterMm"] ?? 0)} mm, split square to the defect");
        if (s["torqueNm"] is { } torque)
            yield return Fits.Torque(s, torque);
        if (s["restraint"] is { } restraint)
            yield return restraint is 1
                ? Say($"restraint for {Number(s["restraintLoadKn"] ?? 0)} kN: fit before the test")
                : "no restraint: the pipe holds its own end load";
        if (s["repairMassKg"] is { } mass)
            yield return Say($"about {mass:0} kg on the pipe: support it");
    }
}
