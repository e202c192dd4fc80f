using RepairOrders.Engineering.Joints;
using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>What is cut and drawn: pieces of band (mm, number for each band), putty (cm³, g, sticks).</summary>
internal sealed record PatchBill(double PieceMm, int PiecesPerBand, double PuttyCm3, double PuttyG, int Sticks)
{
    private const double MarkMm = 5;

    public static PatchBill Count(Sheet s, Patch p, PatchBlank blank, PatchFriction friction, PatchBands bands)
    {
        var (piece, pieces) = Cut(s, p, blank, friction.Fasteners);
        var volume = Volume(s, p, blank, bands);
        var density = s["puttyDensityGCm3"];
        var mass = s.Step("mp", "putty", "ρ V", $"{density} × {volume}", density * volume, "g", Sources.Geometry);
        return new(
            piece,
            pieces,
            volume,
            mass,
            PatchPlate.Sticks(Mass.FromGrams(mass), Mass.FromGrams(s["stickMassG"]))
        );
    }

    public IReadOnlyList<MaterialNeed> Lines(Sheet s, Patch p, PatchBlank blank, PatchBands bands)
    {
        var shape = blank.Full ? "split full circle" : "arc";
        var pieces = bands.Count * PiecesPerBand;
        var screw = BandedPatchInputs.Screws[s.Count("screw")].Name;
        return
        [
            new(
                "plate",
                Text(
                    $"stainless plate {p.t:0.##} mm, {bands.PlateLength:0} × {blank.Arc:0} mm, {shape}, rolled to {p.D / 2 + p.tp:0.#} mm radius"
                ),
                1,
                "pcs",
                "plate"
            ),
            new(
                "band",
                Text($"stainless band {p.w:0.##} × {p.tb:0.##} mm, {pieces} pieces of {PieceMm:0} mm"),
                pieces * PieceMm,
                "mm",
                "band"
            ),
            new(
                "fastener",
                Text($"fastener for {p.w:0.##} mm band, screw {screw}, hexagon drive"),
                pieces,
                "pcs",
                "fastener"
            ),
            new(
                "putty",
                Text($"epoxy putty, sticks of {s["stickMassG"]:0.#} g; {PuttyG:0} g needed"),
                Sticks,
                "pcs",
                "putty"
            ),
        ];
    }

    // A band with k fasteners is k pieces; one longer than the coil is spliced, with one more fastener each.
    private static (double Piece, int Pieces) Cut(Sheet s, Patch p, PatchBlank blank, int fasteners)
    {
        var largest = Math.Max(p.D, s.Optional("largestDiameterMm") ?? p.D);
        var (turns, overlap, tail) = (s.Count("wraps"), s["overlapMm"], s["tailMm"]);
        var over = Mm(largest + 2 * (p.tp + p.t));
        var round = blank.Full
            ? BandLength.FullCircle(over, Mm(p.tb), turns, Mm(0), Mm(0))
            : BandLength.ArcPlate(Mm(largest), over, Rad(blank.HalfAngle), Mm(p.tb), turns, Mm(0), Mm(0));
        var each = s.Step(
            "Lb",
            "band between two fasteners, with overlap and tail",
            "(N H + π N² tb)/k + Lo + Lt",
            $"{round.Millimeters}/{fasteners} + {overlap} + {tail}",
            round.Millimeters / fasteners + overlap + tail,
            "mm",
            Sources.Geometry
        );
        var (coil, splice) = (s["coilLengthMm"], s["spliceOverlapMm"]);
        var pieces = BandLength.Pieces(Mm(each), Mm(coil), Mm(splice));
        var piece = (each + (pieces - 1) * splice) / pieces;
        return (Math.Ceiling(Math.Round(piece / MarkMm, 6)) * MarkMm, pieces * fasteners);
    }

    private static double Volume(Sheet s, Patch p, PatchBlank blank, PatchBands bands)
    {
        var damage = s.Defect.AxialLength.Millimeters * s.Defect.CircumferentialLength.Millimeters;
        var left = s.Defect.ThroughWall ? 0 : s.Defect.RemainingWall.Millimeters;
        var depth = Math.Max(0, s.Pipe.NominalWall.Millimeters - left);
        var waste = s["puttyWastePercent"];
        var volume = PatchPlate.PuttyVolume(
            Mm(Math.Sqrt(damage)),
            Mm(depth),
            Mm(bands.PlateLength),
            Mm(blank.Arc),
            Mm(p.tp),
            waste / 100
        );
        return s.Step(
            "V",
            "putty, waste included",
            "(π/4 A h + L W tp)(1 + q)",
            $"(π/4 × {damage} × {depth} + {bands.PlateLength} × {blank.Arc} × {p.tp})/1000 × (1 + {waste}/100)",
            volume.CubicCentimeters,
            "cm³",
            Sources.Geometry
        );
    }
}
