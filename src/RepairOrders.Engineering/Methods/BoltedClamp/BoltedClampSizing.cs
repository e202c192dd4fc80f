using RepairOrders.Engineering.Joints;
using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>Sizes one clamp: seal loop, bolts, shell, end load, weight.</summary>
internal sealed class BoltedClampSizing(Sheet s)
{
    private const double SteelKgMm3 = 7.85e-6;
    private const double LeastShellMm = 6;

    // Ears, bolts and ribs weigh about as much again as half the shell.
    private const double EarsShare = 1.5;

    private static readonly string[] OwnCautions =
    [
        "Injection pressure never above the figure shown; stop at the volume shown; sealant may enter the line.",
        "Never inject again without a new order: a second leak is a warning, not a nuisance.",
        "Support the clamp's weight.",
    ];

    public MethodDesign Design()
    {
        var c = ClampCase.Read(s);
        var seal = ClampSeal.Read(s, c);
        var bolting = ClampBolts.Size(s, c, seal);
        var shell = Shell(c);
        var mass = Mass(c, shell);
        var axial = EndLoad(c);
        Injection(c);
        s.Add(
            Finding.AtMost(
                "temperature-above-seal",
                "Temperature at the seal",
                Hottest,
                s["sealTemperatureC"],
                "°C",
                Sources.Own,
                LimitKind.Absolute
            )
        );
        s.Add(
            Finding.Watch(
                "ears",
                "Ears and their bending are the maker's: ask for his calculation or drawing.",
                Sources.Own
            )
        );
        return s.Design(
            Dimensions(c, bolting, seal, shell, mass, axial.Thrust),
            Math.Min(bolting.Held(seal), HeldByShell(c, shell)) * 10,
            Bill(c, bolting, shell, mass),
            [.. Cautions.Bolts, .. OwnCautions],
            CureTimes.None,
            c.LifeDays,
            axial.LeastWall,
            carriesAxialLoad: c.Restrained && s["restraintKn"] >= axial.Thrust
        );
    }

    private double Hottest =>
        Math.Max(s.Service.OperatingTemperature.DegreesCelsius, s.Service.DesignTemperature.DegreesCelsius);

    private double Shell(ClampCase c)
    {
        var (S, ca) = (s["shellAllowableMpa"], s["shellAllowanceMm"]);
        var bore = c.Ds + 2 * s["sealWidthMm"];
        var need = c.P * bore / (2 * S) + ca;
        s.Step(
            "t need",
            "shell for hoop load",
            "P Db/(2 S) + ca",
            $"{c.P} × {bore}/(2 × {S}) + {ca}",
            need,
            "mm",
            Sources.Balance
        );
        return s.Step(
            "t shell",
            "shell as made",
            "max(6, ⌈t need⌉)",
            $"max(6, {need})",
            Math.Max(LeastShellMm, Math.Ceiling(need)),
            "mm",
            Sources.Own
        );
    }

    private double HeldByShell(ClampCase c, double shell) =>
        2 * s["shellAllowableMpa"] * (shell - s["shellAllowanceMm"]) / (c.Ds + 2 * s["sealWidthMm"]);

    private double Mass(ClampCase c, double shell)
    {
        var bore = c.Ds + 2 * s["sealWidthMm"];
        var mass = s.Step(
            "m",
            "mass on the pipe, about",
            "1.5 π (Db + t) t L ρ",
            $"{EarsShare} × π × ({bore} + {shell}) × {shell} × {c.ClampLength} × {SteelKgMm3}",
            EarsShare * Math.PI * (bore + shell) * shell * c.ClampLength * SteelKgMm3,
            "kg",
            Sources.Own
        );
        s.Add(
            Finding.Watch(
                "clamp-weight",
                Text($"The clamp adds about {mass:0} kg to the pipe: check the span and support it."),
                Sources.LeakClamps
            )
        );
        return mass;
    }

    private (double Thrust, double LeastWall) EndLoad(ClampCase c)
    {
        var thrust = BoltLoad.EndThrust(Mpa(c.P), Mm(c.Ds)).Kilonewtons;
        s.Step(
            "F end",
            "end load where the pipe parts",
            "P π Ds²/4",
            $"{c.P} × π × {c.Ds}²/4/1000",
            thrust,
            "kN",
            Sources.Balance
        );
        var S = s.Given("Sp", "allowable stress of the pipe", s.Pipe.AllowableStress.Megapascals, "MPa", Sources.Pipe);
        var least = s.Step(
            "t axial",
            "least wall of the ring for the end load",
            "F/(π D S), first order",
            $"{thrust} × 1000/(π × {c.D} × {S})",
            thrust * 1000 / (Math.PI * c.D * S),
            "mm",
            Sources.Balance
        );
        if (c.Restrained)
            s.Add(
                Finding.AtLeast(
                    "restraint-load",
                    "End load the restraint is made for",
                    s["restraintKn"],
                    thrust,
                    "kN",
                    Sources.LeakClamps,
                    LimitKind.Absolute
                )
            );
        else
            s.Add(Unrestrained(c, thrust));
        return (thrust, c.Restrained ? 0 : least);
    }

    private Finding Unrestrained(ClampCase c, double thrust)
    {
        var left = Math.Max(0, PipeFacts.RingWallMm(s.Defect) - c.Growth * c.LifeDays / 365);
        s.Step(
            "tr",
            "wall of the ring at the end of life",
            "t − CR y",
            $"{PipeFacts.RingWallMm(s.Defect)} − {c.Growth} × {c.LifeDays}/365",
            left,
            "mm",
            Sources.Balance
        );
        return Finding.AtLeast(
            "axial-without-restraint",
            "No restraint: end load the ring carries at the end of life",
            PipeFacts.AxialCapacityKn(s.Pipe, s.Defect, left),
            thrust,
            "kN",
            Sources.LeakClamps,
            LimitKind.Absolute
        );
    }

    // Sealant presses on the pipe from outside.
    private void Injection(ClampCase c)
    {
        if (c.Injection <= 0)
            return;
        var (E, ts) = (PipeFacts.ModulusMpa(s.Pipe.Metal), PipeFacts.RingWallMm(s.Defect));
        var pcr = BandTension.RingCollapse(Mpa(E), PipeFacts.Poisson, Mm(ts), Mm(c.D)).Megapascals;
        s.Step(
            "pcr",
            "outside pressure at which the empty pipe collapses",
            "2 E/(1 − ν²)(ts/D)³",
            $"2 × {E}/(1 − {PipeFacts.Poisson}²) × ({ts}/{c.D})³",
            pcr,
            "MPa",
            Sources.Ring
        );
        s.Add(
            Finding.AtMost(
                "injection-crushes",
                "Injection pressure",
                c.Injection * 10,
                pcr / 3 * 10,
                "bar",
                Sources.Ring,
                LimitKind.Absolute
            )
        );
    }

    private Dimension[] Dimensions(
        ClampCase c,
        ClampBolts b,
        ClampSeal seal,
        double shell,
        double mass,
        double thrust
    ) =>
        [
            K.ClampLength.Of(c.ClampLength),
            K.ClampThickness.Of(shell),
            K.SealLength.Of(c.Ls),
            K.SealDiameter.Of(c.Ds),
            K.SealWidth.Of(s["sealWidthMm"]),
            K.ClampBoltCount.Of(b.Count),
            K.BoltDiameter.Of(b.Bolt.Diameter.Millimeters),
            K.Torque.Of(b.Torque),
            K.TorqueLeast.Of(b.TorqueLeast(seal)),
            K.TorqueMost.Of(b.TorqueMost),
            K.Restraint.Of(c.Restrained ? 1 : 0),
            K.RestraintLoad.Of(c.Restrained ? thrust : 0),
            K.RepairMass.Of(mass),
        ];

    private List<MaterialNeed> Bill(ClampCase c, ClampBolts b, double shell, double mass)
    {
        List<MaterialNeed> bill =
        [
            new(
                "clamp",
                Text(
                    $"split clamp for {c.D:0.#} mm pipe, {c.ClampLength:0} mm long, shell {shell:0.#} mm, about {mass:0} kg"
                ),
                1,
                "pcs",
                "clamp"
            ),
            new(
                "seal",
                Text($"seal set, {BoltedClampInputs.Seals[s.Count("seal")].Name}, {s["sealWidthMm"]:0.#} mm wide"),
                1,
                "pcs",
                "seal"
            ),
            new("bolt", Text($"stud bolt {b.Bolt.Name} with two nuts"), b.Count, "pcs", "bolt"),
        ];
        if (c.Restrained)
            bill.Add(new("restraint", Text($"tie rods or grips for {s["restraintKn"]:0.#} kN"), 1, "pcs", "restraint"));
        return bill;
    }
}
