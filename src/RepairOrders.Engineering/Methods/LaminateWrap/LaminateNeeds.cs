using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>The thicknesses that hoop load, axial load and a hole ask for, mm; the greatest governs.</summary>
internal sealed class LaminateNeeds
{
    private readonly Sheet s;
    private readonly LaminateDuty duty;
    private readonly LaminateStrain strain;
    private readonly double allowable;
    private readonly LaminateBond? bond;

    public LaminateNeeds(Sheet s, LaminateDuty duty, LaminateStrain strain)
    {
        (this.s, this.duty, this.strain) = (s, duty, strain);
        allowable = s.Given(
            "s",
            "allowable stress of the pipe",
            s.Pipe.AllowableStress.Megapascals,
            "MPa",
            Sources.Pipe
        );
        bond = duty.ThroughWall ? Bond() : null;
        Hoop = HoopNeed();
        Axial = AxialNeed();
        Hole = duty.ThroughWall ? HoleNeed() : 0;
    }

    public double Hoop { get; }

    public double Axial { get; }

    public double Hole { get; }

    public double Thickest => Math.Max(Hoop, Math.Max(Axial, Hole));

    /// <summary>Thickness at which the laminate alone, without the pipe, carries the end load.</summary>
    public double AxialAlone =>
        LaminateThickness
            .StrainAxial(N(duty.Axial), Mm(duty.D), Mpa(allowable), Mm(0), strain.Axial, Mpa(duty.Ea))
            .Millimeters;

    // Over a hole no wall is credited.
    private double WallCredit => duty.ThroughWall ? 0 : duty.WallAtEnd;

    private double RingCredit => duty.ThroughWall ? 0 : duty.RingAtEnd;

    private bool Elastic => !duty.ThroughWall && s.Count("basis") == 1;

    /// <summary>Puts the laminate as laid to each need.</summary>
    public void Check(double t)
    {
        s.Add(
            Finding.AtLeast("laminate-hoop", "Laminate, for hoop load", t, Hoop, "mm", Sources.Wrap, LimitKind.Absolute)
        );
        s.Add(
            Finding.AtLeast(
                "laminate-axial",
                "Laminate, for axial load",
                t,
                Axial,
                "mm",
                Sources.Wrap,
                LimitKind.Absolute
            )
        );
        if (!duty.ThroughWall)
            return;
        if (bond is not null && Hole > 0)
            s.Add(
                Finding.AtLeast(
                    "laminate-over-hole",
                    "Laminate, over the hole",
                    t,
                    Hole,
                    "mm",
                    Sources.Wrap,
                    LimitKind.Absolute
                )
            );
        s.Add(
            Finding.AtMost(
                "hole-above-formula",
                "Hole at the end of life",
                duty.Hole,
                Math.Sqrt(6 * duty.D * Math.Min(s.Pipe.NominalWall.Millimeters, t)),
                "mm",
                Sources.Wrap,
                LimitKind.Absolute
            )
        );
    }

    /// <summary>Gauge pressure the laminate as laid holds, bar.</summary>
    public double HeldBar(double t)
    {
        var byStrain = 2 * (strain.Hoop * duty.Ec * t + allowable * WallCredit) / duty.D;
        if (!duty.ThroughWall)
            return 10 * byStrain;
        return bond is null ? 0 : 10 * Math.Min(byStrain, OverHole(t).Megapascals);
    }

    private double HoopNeed()
    {
        if (!Elastic)
            return s.Step(
                "t hoop",
                "thickness for hoop load",
                "(P D/2 − s ts)/(ε Ec)",
                $"({duty.P} × {duty.D}/2 − {allowable} × {WallCredit})/({strain.Hoop} × {duty.Ec})",
                LaminateThickness
                    .StrainHoop(Mpa(duty.P), Mm(duty.D), Mpa(allowable), Mm(WallCredit), strain.Hoop, Mpa(duty.Ec))
                    .Millimeters,
                "mm",
                Sources.Wrap
            );
        var (Es, Ps) = (PipeFacts.ModulusMpa(s.Pipe.Metal), 2 * allowable * WallCredit / duty.D);
        return s.Step(
            "t hoop",
            "thickness for hoop load, pipe elastic",
            "(D/2s)(Es/Ec)(P − 2 s ts/D)",
            $"({duty.D}/(2 × {allowable})) × ({Es}/{duty.Ec}) × ({duty.P} − {Ps})",
            LaminateThickness
                .ElasticHoop(Mm(duty.D), Mpa(allowable), Mpa(Es), Mpa(duty.Ec), Mpa(duty.P), Mpa(Ps))
                .Millimeters,
            "mm",
            Sources.Wrap
        );
    }

    private double AxialNeed()
    {
        if (!Elastic)
            return s.Step(
                "t axial",
                "thickness for axial load",
                "(F/(π D) − s tr)/(ε Ea)",
                $"({duty.Axial}/(π × {duty.D}) − {allowable} × {RingCredit})/({strain.Axial} × {duty.Ea})",
                LaminateThickness
                    .StrainAxial(N(duty.Axial), Mm(duty.D), Mpa(allowable), Mm(RingCredit), strain.Axial, Mpa(duty.Ea))
                    .Millimeters,
                "mm",
                Sources.Wrap
            );
        var (Es, Ps) = (PipeFacts.ModulusMpa(s.Pipe.Metal), 2 * allowable * RingCredit / duty.D);
        return s.Step(
            "t axial",
            "thickness for axial load, pipe elastic",
            "(D/2s)(Es/Ea)(2 F/(π D²) − 2 s tr/D)",
            $"({duty.D}/(2 × {allowable})) × ({Es}/{duty.Ea}) × (2 × {duty.Axial}/(π × {duty.D}²) − {Ps})",
            LaminateThickness
                .ElasticAxial(Mm(duty.D), Mpa(allowable), Mpa(Es), Mpa(duty.Ea), N(duty.Axial), Mpa(Ps))
                .Millimeters,
            "mm",
            Sources.Wrap
        );
    }

    private LaminateBond? Bond()
    {
        if (s.Optional("toughnessJm2") is not { } gamma)
        {
            s.Add(
                Finding.Refuse(
                    "toughness-not-known",
                    "Over a hole the toughness of the bond must come from a qualification test: without it nothing is sized.",
                    Sources.Wrap
                )
            );
            return null;
        }
        var life = LaminateDerating.LifeFactor(duty.Years);
        s.Step("f life", "life factor", "0.666 × 10^(−0.01584 (y − 1))", $"y = {duty.Years}", life, "-", Sources.Wrap);
        var f = life * strain.Temperature * strain.Cycles;
        s.Step(
            "f",
            "service factor",
            "f life fT fc",
            $"{life} × {strain.Temperature} × {strain.Cycles}",
            f,
            "-",
            Sources.Wrap
        );
        if (strain.Temperature < 1)
            s.Add(
                Finding.Watch(
                    "over-hole-temperature",
                    "No verified temperature factor over a hole was found: that of the strain is used.",
                    Sources.Own
                )
            );
        return new(
            Mpa(Math.Min(duty.Ec, duty.Ea)),
            Mpa(s["shearModulusGpa"] * 1000),
            s["poisson"],
            ForcePerLength.FromNewtonsPerMillimeter(gamma / 1000),
            f
        );
    }

    // The formula holds for d up to √(6 D t), so a large hole asks for thickness of its own.
    private double HoleNeed()
    {
        if (bond is null)
            return 0;
        var need =
            duty.Slot > 0
                ? LaminateOverHole.ForSlot(Mpa(duty.P), Mm(duty.Slot), bond)
                : LaminateOverHole.ForRoundHole(Mpa(duty.P), Mm(duty.Hole), bond);
        if (need is not { } t)
        {
            s.Add(
                Finding.Refuse(
                    "no-thickness-holds",
                    "However thick, a laminate of this toughness does not hold this pressure over this hole.",
                    Sources.Wrap
                )
            );
            return 0;
        }
        var valid = duty.Hole * duty.Hole / (6 * duty.D);
        NoteHole(t.Millimeters);
        return s.Step(
            "t hole",
            "thickness over the hole",
            "max(t P, d²/(6 D))",
            $"max({t.Millimeters}, {duty.Hole}²/(6 × {duty.D}))",
            Math.Max(t.Millimeters, valid),
            "mm",
            Sources.Wrap
        );
    }

    private void NoteHole(double t)
    {
        var (E, G, gamma) = (
            bond!.Modulus.Megapascals,
            bond.ShearModulus.Megapascals,
            bond.Toughness.NewtonsPerMillimeter
        );
        if (duty.Slot > 0)
            s.Step(
                "t P",
                "thickness at which the pressure over the slot is held",
                "P = f √(γ/{(1 − ν²)/E [W⁴/(24 t³) + π W/4] + 3 W²/(16 G t)})",
                $"P = {duty.P}, f = {bond.ServiceFactor}, γ = {gamma}, E = {E}, G = {G}, ν = {bond.Poisson}, W = {duty.Slot}",
                t,
                "mm",
                Sources.Wrap
            );
        else
            s.Step(
                "t P",
                "thickness at which the pressure over the hole is held",
                "P = f √(γ/{(1 − ν²)/E [3 d⁴/(512 t³) + d/π] + 3 d²/(64 G t)})",
                $"P = {duty.P}, f = {bond.ServiceFactor}, γ = {gamma}, E = {E}, G = {G}, ν = {bond.Poisson}, d = {duty.Hole}",
                t,
                "mm",
                Sources.Wrap
            );
    }

    private Pressure OverHole(double t) =>
        duty.Slot > 0
            ? LaminateOverHole.Slot(Mm(duty.Slot), Mm(t), bond!)
            : LaminateOverHole.RoundHole(Mm(duty.Hole), Mm(t), bond!);
}
