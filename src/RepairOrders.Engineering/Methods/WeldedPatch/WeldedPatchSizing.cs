using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.WeldedPatch;

/// <summary>Sizes one patch: thickness, size, fillet.</summary>
internal sealed class WeldedPatchSizing(Sheet s)
{
    private static readonly Clause Fillet = new("ASME PCC-2 Art. 212 form", "", Provenance.FromMemory);

    public MethodDesign Design()
    {
        var D = s.Given("D", "outside diameter", s.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        var P = s.GreatestPressure();
        var S = Math.Min(s["patchAllowableMpa"], s.Pipe.AllowableStress.Megapascals);
        s.Given("S", "allowable stress, the lesser of patch and pipe", S, "MPa", Sources.Pipe);
        var t = Thickness(D, P, S);
        var leg = Leg(D, P, S, t);
        var (length, width) = Size();
        foreach (var finding in Rule(D, t, Math.Max(length, width)))
            s.Add(finding);
        if (s.Count("inService") == 1)
            foreach (var finding in WeldLimits.InService(s.Pipe, s.Defect, s.Service))
                s.Add(finding);
        AtEndOfLife();
        return s.Design(
            [
                K.PatchLength.Of(length),
                K.PatchWidth.Of(width),
                K.PatchThickness.Of(t),
                K.CornerRadius.Of(s["cornerRadiusMm"]),
                K.FilletLeg.Of(leg),
            ],
            10 * Math.Min(2 * S * t / D, 2 * s["filletEfficiency"] * S * leg / D),
            [
                new(
                    "patch",
                    Text(
                        $"steel plate {t:0.#} mm, {length:0} × {width:0} mm, corners {s["cornerRadiusMm"]:0} mm, rolled to {D / 2:0.#} mm"
                    ),
                    1,
                    "pcs",
                    "patch"
                ),
                new(
                    "electrode",
                    Text($"weld metal for {2 * (length + width):0} mm of {leg:0.#} mm fillet"),
                    Math.Ceiling(2 * (length + width)),
                    "mm",
                    "weld"
                ),
            ],
            Cautions.Welding,
            CureTimes.None,
            s["designLifeDays"],
            WeldWall,
            carriesAxialLoad: false
        );
    }

    private const double WeldWall = 3.2;

    private double Thickness(double D, double P, double S)
    {
        var need = s.Step(
            "t need",
            "patch for hoop load",
            "P D/(2 S)",
            $"{P} × {D}/(2 × {S})",
            P * D / (2 * S),
            "mm",
            Sources.Balance
        );
        var wall = s.Pipe.NominalWall.Millimeters;
        var t = s.Optional("patchThicknessMm") ?? Math.Ceiling(Math.Max(need, wall) * 2) / 2;
        s.Step(
            "tp",
            "patch thickness",
            "≥ max(t need, pipe wall)",
            $"max({need}, {wall})",
            t,
            "mm",
            Sources.WeldedPatch
        );
        s.Add(
            Finding.AtLeast(
                "patch-holds",
                "Patch thickness, for pressure,",
                t,
                need,
                "mm",
                Sources.Balance,
                LimitKind.Absolute
            )
        );
        return t;
    }

    private double Leg(double D, double P, double S, double t)
    {
        var E = s["filletEfficiency"];
        var need = s.Step(
            "w need",
            "fillet leg for the hoop load of the patch",
            "P D/2/(E S)",
            $"{P} × {D}/2/({E} × {S})",
            P * D / 2 / (E * S),
            "mm",
            Fillet
        );
        var most = Math.Min(t, 40);
        var leg = Math.Min(
            most,
            Math.Max(Math.Ceiling(need * 2) / 2, Math.Min(t, s.Defect.SoundWallBeside.Millimeters))
        );
        s.Step(
            "w",
            "fillet leg",
            "max(w need, min(tp, t)), at most tp",
            $"max({need}, min({t}, {s.Defect.SoundWallBeside.Millimeters}))",
            leg,
            "mm",
            Fillet
        );
        s.Add(Finding.AtLeast("fillet-leg", "Leg of the fillet weld", leg, need, "mm", Fillet, LimitKind.Absolute));
        return leg;
    }

    private (double Length, double Width) Size()
    {
        var edge = s["patchEdgeMm"];
        return (
            Of(s.Defect.AxialLength, "L", "patch along the pipe"),
            Of(s.Defect.CircumferentialLength, "W", "patch round the pipe")
        );

        double Of(Length damage, string symbol, string words) =>
            s.Step(
                symbol,
                words,
                "d + 2 c",
                $"{damage.Millimeters} + 2 × {edge}",
                Math.Ceiling(damage.Millimeters + 2 * edge),
                "mm",
                Sources.Geometry
            );
    }

    private IReadOnlyList<Finding> Rule(double D, double t, double size) =>
        WeldedPatchRule.Findings(
            s.Pipe.YieldStrength,
            s.Defect.Kind,
            s.Pipe.NominalWall,
            Mm(t),
            Mm(size),
            Mm(D),
            WeldedPatchClaims.KindFor(s.Service)
        );

    private void AtEndOfLife()
    {
        var (growth, days) = (s["growthMmPerYear"], s["designLifeDays"]);
        var left = Math.Max(0, s.Defect.SoundWallBeside.Millimeters - growth * days / 365);
        s.Step(
            "te",
            "wall under the fillet at the end of life",
            "t − CR y",
            $"{s.Defect.SoundWallBeside.Millimeters} − {growth} × {days}/365",
            left,
            "mm",
            Sources.Balance
        );
        s.Add(
            Finding.AtLeast(
                "wall-at-end",
                "Wall under the fillet at the end of life",
                left,
                WeldWall,
                "mm",
                Sources.HotWorkInService
            )
        );
    }
}
