using RepairOrders.Engineering.Joints;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>Sizes common to all parts of a banded patch, mm and MPa.</summary>
internal sealed record Patch(double D, double P, double m, double tp, double t, double w, double tb, double g)
{
    /// <summary>Diameter over the plate; putty as applied, since the thicker is the safer.</summary>
    public double Ds => D + 2 * (tp + t);

    /// <summary>Contact radius under the bands.</summary>
    public double r => Ds / 2;

    public static Patch Read(Sheet s)
    {
        var D = s.Given("D", "outside diameter", s.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        var patch = new Patch(
            D,
            s.GreatestPressure(),
            s["puttyFactor"],
            s["puttyThicknessMm"],
            s["plateThicknessMm"],
            s["bandWidthMm"],
            s["bandThicknessMm"],
            s["bandGapMm"]
        );
        s.Step(
            "Ds",
            "over the plate",
            "D + 2 (tp + t)",
            $"{D} + 2 × ({patch.tp} + {patch.t})",
            patch.Ds,
            "mm",
            Sources.Geometry
        );
        return patch;
    }
}

/// <summary>The plate's blank: along and round the pipe, mm; half-angle at the axis, rad.</summary>
internal sealed record PatchBlank(double Length, double Arc, double Gap, bool Full, double HalfAngle)
{
    private const double LeastGapMm = 5;

    public static PatchBlank Size(Sheet s, Patch p)
    {
        var along = s.Defect.AxialLength.Millimeters;
        var length = PatchPlate.BlankLength(Mm(along)).Millimeters;
        s.Step(
            "L0",
            "plate along the pipe, least",
            "d + 2 × 50.8",
            $"{along} + 2 × 50.8",
            length,
            "mm",
            Sources.PuttyCover
        );
        var arc = Round(s, p);
        var squeeze = s["puttySqueezeMm"];
        var gap = Math.Max(LeastGapMm, 2 * Math.PI * squeeze);
        var girth = Math.PI * (p.D + 2 * p.tp + p.t);
        var form = s.Count("plateForm");
        if (form != 2 && arc <= girth - gap)
            return new(length, arc, 0, false, Math.Min(Math.PI, arc / (p.D + 2 * p.tp + p.t)));
        if (form == 1)
            s.Add(
                Finding.Watch(
                    "full-circle",
                    "The arc would meet itself: a split full circle is sized.",
                    Sources.Geometry
                )
            );
        s.Step(
            "gap",
            "gap of the split plate",
            "max(5, 2 π q)",
            $"max(5, 2 π × {squeeze})",
            gap,
            "mm",
            Sources.Balance
        );
        return new(length, girth - gap, gap, true, Math.PI);
    }

    private static double Round(Sheet s, Patch p)
    {
        var (d, R) = (s.Defect.CircumferentialLength.Millimeters, p.D / 2);
        var arc = PatchPlate.BlankArc(Mm(d), Mm(p.D), Mm(p.tp), Mm(p.t)).Millimeters;
        return s.Step(
            "W",
            "plate round the pipe",
            "(d + 2 × 50.8)(R + tp + t/2)/R",
            $"({d} + 101.6) × ({R} + {p.tp} + {p.t}/2)/{R}",
            arc,
            "mm",
            Sources.PuttyCover
        );
    }
}
