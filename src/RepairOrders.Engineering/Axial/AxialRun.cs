using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Axial;

// One case from loads to restraint.
internal sealed class AxialRun
{
    private static readonly Clause Thrust = new("UK HSE note on leak sealing repair clamps", "");
    private static readonly Clause Rule = new("when full thrust is assumed on a repair", "", Provenance.OwnRule);
    private static readonly Clause Sustained = new("ASME B31.3", "302.3.5", Provenance.FromMemory);
    private static readonly Clause NetSection = new(
        "net-section collapse of a circumferential flaw",
        "",
        Provenance.FromMemory
    );

    private readonly AxialCase axial;
    private readonly Working working = new();
    private readonly List<Finding> findings = [];
    private readonly double D;
    private readonly double t_s;
    private readonly double t_mm;
    private readonly double round;

    public AxialRun(AxialCase axial)
    {
        this.axial = axial;
        (D, _) = Shell.Of(axial.Pipe.OutsideDiameter, axial.Pipe.NominalWall);
        var defect = axial.Defect;
        t_s = Require.Between("soundWallBesideMm", defect.SoundWallBeside.Millimeters, 0, D / 2);
        t_mm = defect.ThroughWall ? 0 : Math.Min(t_s, Take.Extent("remainingWallMm", defect.RemainingWall));
        round = Math.Min(
            Math.PI * D,
            Math.Max(
                Take.Extent("circumferentialLengthMm", defect.CircumferentialLength),
                Take.Extent("holeDiameterMm", defect.HoleDiameter)
            )
        );
    }

    public Calculated<AxialCheck> Answer()
    {
        var meanDiameter = Length.FromMillimeters(Math.Max(D - t_s, D / 2));
        var thrust = PressureThrust();
        var load = Load(thrust, meanDiameter);
        var capacity = Capacity();
        var wall = EndLoad.WallNeeded(load, meanDiameter, axial.Pipe.AllowableStress);
        working.Step(
            "t_ax",
            "wall the end load needs",
            "F/(π Dm S)",
            $"{load.Newtons}/(π × {meanDiameter.Millimeters} × {axial.Pipe.AllowableStress.Megapascals})",
            wall.Millimeters,
            "mm",
            Thrust
        );
        var full = AssumeFullThrust();
        var tooWeak = capacity < load;
        var restraint = full || tooWeak ? load : Force.Zero;
        findings.Add(Together(load, capacity, tooWeak));
        if (full)
        {
            findings.Add(FullThrust(load));
        }
        Stress();
        return new(
            new(load, thrust, capacity, wall, full, restraint),
            [.. working],
            findings,
            restraint > Force.Zero
                ?
                [
                    "The pipe may part under the repair. Fit the restraint before the pressure comes up, and keep people out of the line of the pipe.",
                ]
                : []
        );
    }

    private Force PressureThrust()
    {
        var seal = Require.Between("sealDiameterMm", axial.SealDiameter.Millimeters, D, 20 * D);
        var P = Take.Gauge("pressureBar", axial.Pressure);
        var dP = Take.Gauge("surgeRiseBar", axial.SurgeRise);
        var thrust = EndLoad.Thrust(Pressure.FromMegapascals(P + dP), axial.SealDiameter);
        working.Step(
            "F_p",
            "pressure thrust on the seal diameter",
            "(P + dP) π/4 Ds²",
            $"({P} + {dP}) × π/4 × {seal}²",
            thrust.Newtons,
            "N",
            Thrust
        );
        return thrust;
    }

    private Force Load(Force thrust, Length meanDiameter)
    {
        var outside = Require.Between("outsidePullKn", axial.OutsidePull.Kilonewtons, 0, 1e9) * 1000;
        var bending = EndLoad.OfBending(axial.BendingMoment, meanDiameter).Newtons;
        return Force.FromNewtons(
            working.Step(
                "F",
                "end load, bending as an even pull",
                "F_p + F_out + 4 M/Dm",
                $"{thrust.Newtons} + {outside} + {bending}",
                thrust.Newtons + outside + bending,
                "N",
                Thrust
            )
        );
    }

    private Force Capacity()
    {
        if (t_s <= 0)
        {
            return Force.FromNewtons(working.Given("F_c", "capacity: no sound wall was measured", 0, "N", NetSection));
        }
        var capacity = EndLoad.Capacity(
            axial.Pipe.OutsideDiameter,
            axial.Defect.SoundWallBeside,
            Length.FromMillimeters(t_mm),
            Length.FromMillimeters(round),
            axial.Pipe.AllowableStress
        );
        var eta = working.Step(
            "η",
            "depth of the loss",
            "1 − tmm/t",
            $"1 − {t_mm}/{t_s}",
            1 - t_mm / t_s,
            "-",
            NetSection
        );
        var theta = working.Step(
            "θ",
            "half its angle round the pipe",
            "c/D",
            $"{round}/{D}",
            Math.Min(round / D, Math.PI),
            "rad",
            NetSection
        );
        working.Step(
            "F_c",
            "end load the thinned wall bears",
            "S π (D − t) t (1 − (η θ + 2 asin(½ η sin θ))/π)",
            $"{axial.Pipe.AllowableStress.Megapascals} × π × ({D} − {t_s}) × {t_s} × (1 − ({eta} × {theta} + 2 asin(½ × {eta} × sin {theta}))/π)",
            capacity.Newtons,
            "N",
            NetSection
        );
        return capacity;
    }

    private bool AssumeFullThrust()
    {
        var deep = t_s <= 0 || 1 - t_mm / t_s > 0.8;
        (string Code, bool Met, string Words)[] rules =
        [
            (
                "full-thrust-deep-loss",
                deep && round > Math.PI * D / 4,
                "loss over 80 % deep on over a quarter of the girth"
            ),
            ("full-thrust-crack", axial.Defect.Kind == DefectKind.CrackLike, "a crack-like defect"),
            ("full-thrust-unknown", axial.ConditionUnknown, "a condition that could not be measured"),
            ("full-thrust-unrestrained", axial.Unrestrained, "a line that nothing else holds together"),
            ("full-thrust-surge", axial.SurgeRise > Pressure.Zero, "surge"),
        ];
        foreach (var (code, met, words) in rules)
        {
            findings.Add(
                new(
                    code,
                    met ? Severity.Watch : Severity.Pass,
                    met ? $"Full thrust is assumed on the repair: {words}." : $"No full thrust on account of {words}.",
                    null,
                    null,
                    null,
                    Rule
                )
            );
        }
        return rules.Any(r => r.Met);
    }

    private Finding Together(Force load, Force capacity, bool tooWeak) =>
        new(
            "axial-capacity",
            (tooWeak, axial.RepairCarriesAxialLoad) switch
            {
                (false, _) => Severity.Pass,
                (true, true) => Severity.Watch,
                _ => Severity.Fail,
            },
            Invariant($"End load {load.Kilonewtons:G4} kN, the thinned wall bears {capacity.Kilonewtons:G4} kN")
                + (tooWeak ? "; a restraint must hold the whole of it." : "."),
            load.Kilonewtons,
            capacity.Kilonewtons,
            "kN",
            NetSection,
            LimitKind.Absolute
        );

    private Finding FullThrust(Force load) =>
        new(
            "full-thrust-restraint",
            axial.RepairCarriesAxialLoad ? Severity.Watch : Severity.Fail,
            Invariant($"The repair must hold the full {load.Kilonewtons:G4} kN: ")
                + (
                    axial.RepairCarriesAxialLoad
                        ? "see that grips, tie rods or weld are sized for it."
                        : "a repair that only seals will not; design a restraint."
                ),
            load.Kilonewtons,
            null,
            "kN",
            Thrust,
            LimitKind.Absolute
        );

    private void Stress()
    {
        if (t_s <= 0)
        {
            return;
        }
        var S = axial.Pipe.AllowableStress.Megapascals;
        var Di = Length.FromMillimeters(D - 2 * t_s);
        var still = PipeStress
            .LongitudinalCombined(
                axial.Pressure,
                axial.Pipe.OutsideDiameter,
                Di,
                axial.BendingMoment,
                axial.OutsidePull
            )
            .Megapascals;
        var surging = PipeStress
            .LongitudinalCombined(
                axial.Pressure + axial.SurgeRise,
                axial.Pipe.OutsideDiameter,
                Di,
                axial.BendingMoment,
                axial.OutsidePull
            )
            .Megapascals;
        var (Z, A) = (
            Math.PI * (Math.Pow(D, 4) - Math.Pow(Di.Millimeters, 4)) / (32 * D),
            Math.PI * (D * D - Di.Millimeters * Di.Millimeters) / 4
        );
        working.Step(
            "S_L",
            "longitudinal stress in the sound wall",
            "P Di²/(Do² − Di²) + M/Z + F/A, Z and A those of the wall",
            $"{axial.Pressure.Megapascals} × {Di.Millimeters}²/({D}² − {Di.Millimeters}²) + {axial.BendingMoment.NewtonMeters * 1000}/{Z} + {axial.OutsidePull.Newtons}/{A}",
            still,
            "MPa",
            Sustained
        );
        findings.Add(StressFinding("sustained-stress", "Sustained", still, S));
        if (axial.SurgeRise > Pressure.Zero)
        {
            findings.Add(StressFinding("occasional-stress", "Occasional", surging, 1.33 * S));
        }
    }

    private static Finding StressFinding(string code, string words, double stress, double limit) =>
        new(
            code,
            stress <= limit ? Severity.Pass : Severity.Fail,
            Invariant($"{words} longitudinal stress {stress:G4} MPa in the sound wall, limit {limit:G4} MPa."),
            stress,
            limit,
            "MPa",
            Sustained
        );
}
