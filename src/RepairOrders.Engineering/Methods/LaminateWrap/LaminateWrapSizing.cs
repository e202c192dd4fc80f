using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>Sizes one laminate: what must be held, what strain is allowed, the thinnest laminate that does all, and its length.</summary>
internal sealed class LaminateWrapSizing(Sheet s)
{
    private const double LeastWallMm = 1;
    private const double ThickestShareOfDiameter = 1.0 / 6;

    private static readonly string[] OwnCautions =
    [
        "Cover cleaned metal within the time shown, or clean it again.",
        "Heating on a flammable line: fire watch and gas test all through; log the temperature.",
        "A wrap hides later thinning. Note where readings can still be taken.",
    ];

    public MethodDesign Design()
    {
        var duty = LaminateDuty.Read(s, LeastWallMm);
        var strain = LaminateStrain.Read(s, duty);
        if (strain.Refused)
            return Refused(duty);
        var needs = new LaminateNeeds(s, duty, strain);
        var plies = LaminateThickness.Plies(Mm(needs.Thickest), Mm(s["plyThicknessMm"]));
        var t = s.Step(
            "t",
            "laminate as laid",
            "max(2, ⌈t need/tp⌉) tp",
            $"{plies} × {s["plyThicknessMm"]}",
            plies * s["plyThicknessMm"],
            "mm",
            Sources.Wrap
        );
        needs.Check(t);
        s.Add(
            Finding.AtMost(
                "laminate-thick",
                "Laminate over the diameter",
                t / duty.D,
                ThickestShareOfDiameter,
                "-",
                Sources.Wrap
            )
        );
        return Laid(duty, strain, needs, plies, t);
    }

    private MethodDesign Laid(LaminateDuty duty, LaminateStrain strain, LaminateNeeds needs, int plies, double t)
    {
        var overlap = Overlap(duty, strain, t);
        var taper = s.Step("k", "taper at each end", "5 t", $"5 × {t}", 5 * t, "mm", Sources.Wrap);
        var length = LaminateOverlap.Total(s.Defect.AxialLength, Mm(overlap), Mm(taper)).Millimeters;
        s.Step(
            "L",
            "laminate along the pipe",
            "d + 2 l + 2 k",
            $"{s.Defect.AxialLength.Millimeters} + 2 × {overlap} + 2 × {taper}",
            length,
            "mm",
            Sources.Wrap
        );
        return s.Design(
            Dimensions(duty, plies, t, length, overlap, taper),
            needs.HeldBar(t),
            Bill(duty, plies, t, length),
            [.. Cautions.Resin, .. OwnCautions],
            Cure(),
            duty.Years * 365,
            duty.ThroughWall ? 0 : duty.WallAtEnd,
            carriesAxialLoad: t >= needs.AxialAlone
        );
    }

    // No strain is left or the resin is too warm: nothing can be laid, and the sheet says why.
    private MethodDesign Refused(LaminateDuty duty) =>
        s.Design(
            Dimensions(duty, 0, 0, 0, 0, 0),
            0,
            [],
            [.. Cautions.Resin, .. OwnCautions],
            Cure(),
            duty.Years * 365,
            duty.WallAtEnd,
            carriesAxialLoad: false
        );

    private CureTimes Cure() => new(s["setForLoadH"], s["fullHardnessH"], s["cureReferenceC"]);

    private double Overlap(LaminateDuty duty, LaminateStrain strain, double t)
    {
        var iso = LaminateOverlap.Iso(Mm(duty.D), s.Pipe.NominalWall).Millimeters;
        s.Step(
            "l1",
            "overlap, geometric",
            "2 √(D tw)",
            $"2 √({duty.D} × {s.Pipe.NominalWall.Millimeters})",
            iso,
            "mm",
            Sources.Wrap
        );
        var shear = LaminateOverlap.BondShear(Mpa(duty.Ea), strain.Axial, Mm(t), Mpa(s["lapShearMpa"])).Millimeters;
        s.Step(
            "l2",
            "overlap, bond shear",
            "3 Ea ε t/τ",
            $"3 × {duty.Ea} × {strain.Axial} × {t}/{s["lapShearMpa"]}",
            shear,
            "mm",
            Sources.Wrap
        );
        var hole = duty.ThroughWall ? 4 * duty.Hole : 0;
        var overlap = Math.Ceiling(Math.Max(Math.Max(iso, shear), Math.Max(50, hole)));
        return s.Step(
            "l",
            "overlap each side, the largest",
            "max(l1, l2, 50, 4 d)",
            $"max({iso}, {shear}, 50, {hole})",
            overlap,
            "mm",
            Sources.Wrap
        );
    }

    private static Dimension[] Dimensions(
        LaminateDuty duty,
        int plies,
        double t,
        double length,
        double overlap,
        double taper
    ) =>
        [
            K.LaminateThickness.Of(t),
            K.LaminateLength.Of(length),
            K.Overlap.Of(overlap),
            K.Taper.Of(taper),
            K.Plies.Of(plies),
            K.ThroughWallDesign.Of(duty.ThroughWall ? 1 : 0),
        ];

    private List<MaterialNeed> Bill(LaminateDuty duty, int plies, double t, double length)
    {
        var waste = s["clothWastePercent"];
        var one = Math.PI * (duty.D + t) * length / 1e6;
        var cloth = s.Step(
            "A",
            "cloth, waste included",
            "π (D + t) L n (1 + w)",
            $"π × ({duty.D} + {t}) × {length} × {plies}/10⁶ × (1 + {waste}/100)",
            one * plies * (1 + waste / 100),
            "m²",
            Sources.Geometry
        );
        var resin = s.Step(
            "mR",
            "mixed resin",
            "R A",
            $"{s["resinGPerM2"]} × {cloth}",
            s["resinGPerM2"] * cloth,
            "g",
            Sources.PuttyManual
        );
        var filler = Filler();
        return
        [
            new(
                "cloth",
                Text($"reinforcing cloth, {plies} plies of {length:0} mm width round {Math.PI * duty.D:0} mm"),
                Math.Ceiling(cloth * 100) / 100,
                "m2",
                "laminate"
            ),
            new("resin", "laminating resin with its hardener", Math.Ceiling(resin), "g", "laminate"),
            new("filler", "load-transfer filler for the cavity and the edges", Math.Ceiling(filler), "cm3", "filler"),
        ];
    }

    private double Filler()
    {
        var left = s.Defect.ThroughWall ? 0 : s.Defect.RemainingWall.Millimeters;
        var depth = Math.Max(0, s.Pipe.NominalWall.Millimeters - left);
        return Math.Max(
            1,
            s.Defect.AxialLength.Millimeters * s.Defect.CircumferentialLength.Millimeters * depth / 1000
        );
    }
}
