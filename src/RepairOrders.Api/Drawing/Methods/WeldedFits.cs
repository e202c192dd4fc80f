using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing.Methods;

/// <summary>A plate over the defect with a fillet all round.</summary>
internal static class WeldedPatchFit
{
    public static Fit? Of(Subject s)
    {
        if (s["patchLengthMm"] is not { } length || s["patchThicknessMm"] is not { } thick)
            return null;
        var (half, leg) = (length / 2, s["filletLegMm"] ?? 0);
        var angle = (s["patchWidthMm"] ?? length) / 2 / s.Radius * 180 / Math.PI;
        var round = leg / s.Radius * 180 / Math.PI;
        return new(
            [
                new("weld", "", Fill.Weld, -half - leg, half + leg, 0, Math.Min(leg, thick))
                {
                    HalfAngle = Math.Min(180, angle + round),
                    Corner = (s["cornerRadiusMm"] ?? 0) + leg,
                    Taper = leg,
                },
                new("patch", Say($"patch {Number(thick)}"), Fill.Plate, -half, half, 0, thick)
                {
                    HalfAngle = Math.Min(180, angle),
                    Corner = s["cornerRadiusMm"] ?? 0,
                },
            ],
            [],
            [new(-half, half, Say($"patch {Number(length)}"), 1, true)],
            angle < 175
                ? [new(-angle, angle, Say($"{2 * angle:0}°"), Say($"{Number(s["patchWidthMm"] ?? length)} round"))]
                : [],
            [
                Say(
                    $"patch {Number(length)} × {Number(s["patchWidthMm"] ?? length)} round the pipe, {Number(thick)} thick"
                ),
                Say($"fillet all round, leg {Number(leg)}"),
                Say($"corners {Number(s["cornerRadiusMm"] ?? 0)} radius"),
            ]
        );
    }
}

/// <summary>A split sleeve: two seams along the pipe, and end fillets where it is type B.</summary>
internal static class SleeveFit
{
    public static Fit? Of(Subject s)
    {
        if (s["sleeveLengthMm"] is not { } length || s["sleeveThicknessMm"] is not { } thick)
            return null;
        var (half, leg) = (length / 2, s["filletLegMm"] ?? 0);
        var welded = s["endsWelded"] is 1;
        List<Piece> pieces = [new("sleeve", Say($"sleeve {Number(thick)}"), Fill.Plate, -half, half, 0, thick)];
        if (welded && leg > 0)
        {
            pieces.Add(
                new("weld", Say($"end fillet {Number(leg)}"), Fill.Weld, half, half + leg, 0, Math.Min(leg, thick))
                {
                    Fillet = 1,
                }
            );
            pieces.Add(new("weld", "", Fill.Weld, -half - leg, -half, 0, Math.Min(leg, thick)) { Fillet = -1 });
        }
        foreach (var seam in new[] { -90, 90 })
            pieces.Add(
                new("weld", "", Fill.Weld, -half, half, 0, thick)
                {
                    At = seam,
                    HalfAngle = thick / 2 / s.Radius * 180 / Math.PI,
                }
            );
        return new(
            pieces,
            [],
            [new(-half, half, Say($"sleeve {Number(length)}"), 1, true)],
            [],
            [
                welded ? Say($"type B: end fillets, leg {Number(leg)}") : "type A: ends not welded",
                "two seams along the pipe, square to the defect",
                .. s["repairMassKg"] is { } mass ? [Say($"about {mass:0} kg on the pipe")] : Array.Empty<string>(),
            ]
        );
    }
}

/// <summary>A screw plug in the hole, with its collar.</summary>
internal static class PlugFit
{
    public static Fit? Of(Subject s)
    {
        if (s["plugDiameterMm"] is not { } d)
            return null;
        var (half, deep) = (d / 2, s["plugEngagementMm"] ?? s.Wall);
        double Angle(double radius) => radius / s.Radius * 180 / Math.PI;
        return new(
            [
                new("plug", Say($"plug {Number(d)}, {Number(deep)} in thread"), Fill.Seal, -half, half, -deep, 0)
                {
                    HalfAngle = Angle(half),
                    Covered = true,
                },
                new("plug", "", Fill.Band, -0.8 * d, 0.8 * d, 0, 0.6 * d)
                {
                    HalfAngle = Angle(0.8 * d),
                    Corner = 0.8 * d,
                },
            ],
            [],
            [new(-half, half, Say($"plug {Number(d)}"), 1, true)],
            [],
            ["a patch goes over the plug: see the order for it"]
        );
    }
}

/// <summary>New pipe between two cuts.</summary>
internal static class SpoolFit
{
    public static Fit? Of(Subject s)
    {
        if (s["spoolLengthMm"] is not { } length)
            return null;
        var (half, wall) = (length / 2, s["spoolWallMm"] ?? s.Nominal);
        var bead = Math.Max(2, wall * 0.8);
        return new Fit(
            [
                new("spool", Say($"new pipe, wall {Number(wall)}"), Fill.NewPipe, -half, half, -wall, 0),
                new("weld", "", Fill.Weld, -half - bead / 2, -half + bead / 2, -wall, wall * 0.2),
                new("weld", "", Fill.Weld, half - bead / 2, half + bead / 2, -wall, wall * 0.2),
            ],
            [],
            [new(-half, half, Say($"new pipe {Number(length)}, cut to cut"), 1, true)],
            [],
            ["two girth joints; cut in sound metal", "the defect goes with the old pipe"]
        )
        {
            Replaces = true,
        };
    }
}
