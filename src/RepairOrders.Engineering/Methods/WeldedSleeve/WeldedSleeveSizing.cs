using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.WeldedSleeve;

/// <summary>Sizes one sleeve: type, thickness, length, end fillets.</summary>
internal sealed class WeldedSleeveSizing(Sheet s)
{
    private const double SteelKgMm3 = 7.85e-6;
    private const double LeastLengthMm = 101.6;
    private const double FilletShare = 0.55;

    private static readonly Clause Form = new("ASME PCC-2 Art. 206 form", "", Provenance.FromMemory);

    public MethodDesign Design()
    {
        var D = s.Given("D", "outside diameter", s.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        var P = s.GreatestPressure();
        var typeB = TypeB();
        var (S, E, ca, gap) = (s["sleeveAllowableMpa"], s["seamEfficiency"], s["sleeveAllowanceMm"], s["sleeveGapMm"]);
        var bore = D + 2 * gap;
        var t = Thickness(P, bore, S, E, ca, typeB);
        var leg = typeB ? Leg(P, bore, S, t, gap) : 0;
        var length = Length();
        if (s.Count("inService") == 1)
            foreach (var finding in WeldLimits.InService(s.Pipe, s.Defect, s.Service))
                s.Add(finding);
        var mass = s.Step(
            "m",
            "mass on the pipe",
            "π (Db + t) t L ρ",
            $"π × ({bore} + {t}) × {t} × {length} × {SteelKgMm3}",
            Math.PI * (bore + t) * t * length * SteelKgMm3,
            "kg",
            Sources.Geometry
        );
        // The allowance is metal that will be gone: it neither carries nor counts in the diameter, as in the balance t comes from.
        var held = 2 * S * E * Math.Max(0, t - ca) / (bore + 2 * Math.Max(0, t - ca));
        return s.Design(
            [
                K.SleeveLength.Of(length),
                K.SleeveThickness.Of(t),
                K.EndsWelded.Of(typeB ? 1 : 0),
                K.FilletLeg.Of(leg),
                K.RepairMass.Of(mass),
            ],
            10 * (typeB ? Math.Min(held, AxialHeld(bore, S, leg)) : held),
            [
                new(
                    "sleeve",
                    Text(
                        $"split sleeve, type {(typeB ? "B" : "A")}, bore {bore:0.#} mm, {t:0.#} mm thick, {length:0} mm long"
                    ),
                    1,
                    "pcs",
                    "sleeve"
                ),
                new(
                    "electrode",
                    Text(
                        $"weld metal for two seams of {length:0} mm{(typeB ? Text($" and two end fillets of {leg:0.#} mm leg") : "")}"
                    ),
                    Math.Ceiling(2 * length + (typeB ? 2 * Math.PI * D : 0)),
                    "mm",
                    "weld"
                ),
            ],
            Cautions.Welding,
            CureTimes.None,
            s["designLifeDays"],
            LeastWall(typeB, P),
            carriesAxialLoad: typeB
        );
    }

    private bool TypeB()
    {
        var asked = s.Count("sleeveType");
        var needs = WeldedSleeveClaims.NeedsTypeB(s.Defect);
        if (asked == 1 && s.Defect.ThroughWall)
            s.Add(Finding.Refuse("type-a-over-leak", "Type A never goes over a leak.", Sources.Sleeves));
        else if (asked == 1 && needs)
            s.Add(
                Finding.Fail(
                    "type-a-growing",
                    "Type A over damage that grows from inside will not hold when it goes through.",
                    Sources.Sleeves
                )
            );
        return asked == 2 || (asked == 0 && needs);
    }

    private double Thickness(double P, double bore, double S, double E, double ca, bool typeB)
    {
        // Lamé's outside diameter holds the thickness itself, so the balance on the bore is used: t = P Db/(2 (S E − P)).
        if (S * E <= P)
        {
            s.Add(Finding.AtMost("sleeve-pressure", "Pressure", P, S * E, "MPa", Sources.Balance, LimitKind.Absolute));
            return 80;
        }
        var need = s.Step(
            "t need",
            "sleeve for hoop load",
            "P Db/(2 (S E − P)) + ca",
            $"{P} × {bore}/(2 × ({S} × {E} − {P})) + {ca}",
            P * bore / (2 * (S * E - P)) + ca,
            "mm",
            Sources.Balance
        );
        var wall = typeB ? 0 : s.Pipe.NominalWall.Millimeters;
        var t = s.Optional("sleeveThicknessMm") ?? Math.Ceiling(Math.Max(need, wall) * 2) / 2;
        s.Step(
            "t",
            "sleeve thickness",
            typeB ? "≥ t need" : "≥ max(t need, pipe wall)",
            $"max({need}, {wall})",
            t,
            "mm",
            Form
        );
        s.Add(
            Finding.AtLeast("sleeve-thickness", "Sleeve thickness", t, need, "mm", Sources.Balance, LimitKind.Absolute)
        );
        return t;
    }

    private double Leg(double P, double bore, double S, double t, double gap)
    {
        var need = s.Step(
            "w need",
            "end fillet for the end load",
            "P Db/4/(0.55 S) + g",
            $"{P} × {bore}/4/({FilletShare} × {S}) + {gap}",
            P * bore / 4 / (FilletShare * S) + gap,
            "mm",
            Form
        );
        var leg = s.Step(
            "w",
            "end fillet, leg",
            "max(w need, min(t, tw) + g)",
            $"max({need}, min({t}, {s.Defect.SoundWallBeside.Millimeters}) + {gap})",
            Math.Ceiling(Math.Max(need, Math.Min(t, s.Defect.SoundWallBeside.Millimeters) + gap) * 2) / 2,
            "mm",
            Form
        );
        s.Add(Finding.AtMost("end-fillet", "Leg of the end fillet", need, t + gap, "mm", Form, LimitKind.Absolute));
        return leg;
    }

    private double AxialHeld(double bore, double S, double leg) =>
        4 * FilletShare * S * Math.Max(0, leg - s["sleeveGapMm"]) / bore;

    private double Length()
    {
        var (damage, cover) = (s.Defect.AxialLength.Millimeters, s["sleeveCoverMm"]);
        var growth = s["growthMmPerYear"] * s["designLifeDays"] / 365;
        return s.Step(
            "L",
            "sleeve along the pipe",
            "max(101.6, d + 2 CR y + 2 c)",
            $"max({LeastLengthMm}, {damage} + 2 × {growth} + 2 × {cover})",
            Math.Ceiling(Math.Max(LeastLengthMm, damage + 2 * growth + 2 * cover)),
            "mm",
            Form
        );
    }

    // Type B holds the pressure itself and needs wall only where its ends are welded.
    private double LeastWall(bool typeB, double P)
    {
        if (typeB)
            return 3.2;
        return s.Step(
            "t axial",
            "least wall of the ring for the end load",
            "P D/(4 S)",
            $"{P} × {s.Pipe.OutsideDiameter.Millimeters}/(4 × {s.Pipe.AllowableStress.Megapascals})",
            P * s.Pipe.OutsideDiameter.Millimeters / (4 * s.Pipe.AllowableStress.Megapascals),
            "mm",
            Sources.Balance
        );
    }
}
