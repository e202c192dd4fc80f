using RepairOrders.Engineering.Joints;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Axial;

/// <summary>What presses on a pipe from outside: injected sealant, a clamp, a band.</summary>
/// <param name="OutsideDiameter">Outside diameter.</param>
/// <param name="LeastWall">Least wall under the pressure.</param>
/// <param name="Metal">Family of the metal.</param>
/// <param name="YieldStrength">Yield strength; nothing for gray iron.</param>
/// <param name="Modulus">Young's modulus; nothing takes the typical value of the family.</param>
/// <param name="Ovality">(Dmax − Dmin)/D, 0 to 0.1; nothing takes <see cref="Crushing.DefaultOvality"/>.</param>
/// <param name="OutsidePressure">Greatest pressure from outside.</param>
/// <param name="LeastInsidePressure">Least gauge pressure inside at that moment; 0 where the line may be empty.</param>
public sealed record CrushingCase(
    Length OutsideDiameter,
    Length LeastWall,
    MetalFamily Metal,
    Pressure? YieldStrength,
    Pressure? Modulus,
    double? Ovality,
    Pressure OutsidePressure,
    Pressure LeastInsidePressure
);

/// <summary>Whether a thinned pipe bears what presses on it.</summary>
/// <param name="Allowed">Greatest net pressure from outside.</param>
/// <param name="Net">Net pressure from outside.</param>
/// <param name="Collapse">Pressure at which the oval pipe begins to yield.</param>
/// <param name="Elastic">Elastic collapse pressure of the round pipe.</param>
public sealed record CrushingCheck(Pressure Allowed, Pressure Net, Pressure Collapse, Pressure Elastic);

/// <summary>Crushing of thinned pipe from outside.</summary>
public static class Crushing
{
    /// <summary>Ovality taken where none was measured.</summary>
    public const double DefaultOvality = 0.02;

    private const double Poisson = 0.3;
    private static readonly Clause Buckling = new(
        "Timoshenko and Gere, Theory of Elastic Stability",
        "long circular tubes",
        Provenance.FromMemory
    );
    private static readonly Clause Measured = new("measured", "", Provenance.Entered);
    private static readonly Clause Factors = new("factors 1.5 on yield, 3 on collapse", "", Provenance.OwnRule);

    /// <summary>Pressure from outside at which a long oval tube begins to yield.</summary>
    /// <remarks>
    /// <para>Formula: p² − (p_y + (1 + 1.5 f D/t) p_e) p + p_y p_e = 0, the lesser root; p_y = 2 Sy t/D.</para>
    /// <para>Symbols: p pressure, MPa; p_e elastic collapse, MPa; p_y yield by ring push, MPa; Sy yield strength, MPa; t wall, mm; D outside diameter, mm; f ovality (Dmax − Dmin)/D, -.</para>
    /// <para>Validity: thin wall, long, oval in two waves; the first yield, not the collapse that follows.</para>
    /// <para>Reference: Timoshenko and Gere, Theory of Elastic Stability, tube with initial ellipticity (from memory); n = f/2, m = D/(2t) put in.</para>
    /// </remarks>
    /// <param name="elastic">Elastic collapse pressure p_e.</param>
    /// <param name="yieldStrength">Yield strength Sy.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="ovality">Ovality f [-], 0 to 0.1.</param>
    /// <returns>Pressure p.</returns>
    /// <exception cref="ImpossibleInputException">A strength, wall or diameter is not above 0, or the ovality is out of range.</exception>
    /// <example>p_e 0.7487 MPa, 240 MPa, 168.3 mm, 2 mm, f 0.02: p_y 5.704 MPa, p² − 8.343 p + 4.271 = 0, p = 0.548 MPa.</example>
    public static Pressure OvalYield(
        Pressure elastic,
        Pressure yieldStrength,
        Length outsideDiameter,
        Length wall,
        double ovality
    )
    {
        var p_e = Require.Between("elasticCollapseMpa", elastic.Megapascals, 1e-12, 1e9);
        var Sy = Take.Stress("yieldStrengthMpa", yieldStrength);
        var (D, t) = Shell.Of(outsideDiameter, wall);
        var f = Require.Between("ovality", ovality, 0, 0.1);
        var p_y = 2 * Sy * t / D;
        var half = (p_y + (1 + 1.5 * f * D / t) * p_e) / 2;
        // The lesser root without the difference of near-equal numbers.
        return Pressure.FromMegapascals(p_y * p_e / (half + Math.Sqrt(Math.Max(0, half * half - p_y * p_e))));
    }

    /// <summary>Whether a thinned pipe bears what presses on it from outside.</summary>
    /// <remarks>
    /// <para>Formula: net = p_out − p_in; allowed = min(p/1.5, p_e/3); see <see cref="BandTension.RingCollapse"/> and <see cref="OvalYield"/>.</para>
    /// <para>Symbols: those of <see cref="OvalYield"/>.</para>
    /// <para>Validity: ductile pipe, pressure all round; a plate that presses on an arc is taken as pressing all round. Not for gray iron.</para>
    /// <para>Reference: Timoshenko and Gere (from memory); factors are our own.</para>
    /// </remarks>
    /// <param name="crushing">Pipe and pressures.</param>
    /// <returns>Allowed and net pressure, with working and findings.</returns>
    /// <exception cref="ImpossibleInputException">A size is not above 0, a pressure is negative, or no modulus is known.</exception>
    /// <example>168.3 mm, 2 mm, 240 MPa, carbon steel, ovality not measured: p_e 0.7487, p 0.548; allowed min(0.365, 0.250) = 0.250 MPa.</example>
    public static Calculated<CrushingCheck> Check(CrushingCase crushing)
    {
        ArgumentNullException.ThrowIfNull(crushing);
        var outside = Take.Gauge("outsidePressureBar", crushing.OutsidePressure);
        var inside = Take.Gauge("leastInsidePressureBar", crushing.LeastInsidePressure);
        var net = Math.Max(0, outside - inside);
        Shell.Of(crushing.OutsideDiameter, crushing.LeastWall);
        if (crushing is { Metal: MetalFamily.GrayIron } or { YieldStrength: null })
        {
            return Brittle(net);
        }
        var given =
            crushing.Modulus
            ?? ThermalMetal.For(crushing.Metal)?.Modulus
            ?? throw new ImpossibleInputException("modulusMpa", "missing", "a modulus, since the metal is not listed");
        var modulus = Pressure.FromMegapascals(Require.Between("modulusMpa", given.Megapascals, 1, 1e7));
        var working = new Working();
        var findings = new List<Finding>();
        if (crushing.Ovality is null)
        {
            findings.Add(OvalityTaken());
        }
        var ovality = crushing.Ovality ?? DefaultOvality;
        var elastic = BandTension.RingCollapse(modulus, Poisson, crushing.LeastWall, crushing.OutsideDiameter);
        var oval = OvalYield(
            elastic,
            crushing.YieldStrength!.Value,
            crushing.OutsideDiameter,
            crushing.LeastWall,
            ovality
        );
        var allowed = Math.Min(oval.Megapascals / 1.5, elastic.Megapascals / 3);

        var (D, t) = (crushing.OutsideDiameter.Millimeters, crushing.LeastWall.Millimeters);
        working.Step(
            "p_e",
            "elastic collapse",
            "2 E/(1 − ν²) (t/D)³",
            $"2 × {modulus.Megapascals}/0.91 × ({t}/{D})³",
            elastic.Megapascals,
            "MPa",
            Buckling
        );
        var Sy = crushing.YieldStrength.Value.Megapascals;
        var p_y = working.Step(
            "p_y",
            "yield, round",
            "2 Sy t/D",
            $"2 × {Sy} × {t}/{D}",
            2 * Sy * t / D,
            "MPa",
            Buckling
        );
        var b = (p_y + (1 + 1.5 * ovality * D / t) * elastic.Megapascals) / 2;
        working.Given("f", "ovality", ovality, "-", crushing.Ovality is null ? OvalityTaken().Source : Measured);
        working.Step(
            "p",
            "first yield, oval",
            "b − √(b² − p_y p_e), b = (p_y + (1 + 1.5 f D/t) p_e)/2",
            $"{b} − √({b}² − {p_y} × {elastic.Megapascals})",
            oval.Megapascals,
            "MPa",
            Buckling
        );
        working.Step(
            "allowed",
            "allowed net pressure from outside",
            "min(p/1.5, p_e/3)",
            $"min({oval.Megapascals}/1.5, {elastic.Megapascals}/3)",
            allowed,
            "MPa",
            Factors
        );
        working.Step("net", "net pressure from outside", "p_out − p_in", $"{outside} − {inside}", net, "MPa", Factors);
        findings.Add(Verdict(net, allowed));
        return new(
            new(Pressure.FromMegapascals(allowed), Pressure.FromMegapascals(net), oval, elastic),
            [.. working],
            findings,
            net > 0 ? ["Never press or inject beyond the figure shown: thinned pipe collapses inward."] : []
        );
    }

    private static Calculated<CrushingCheck> Brittle(double net) =>
        new(
            new(Pressure.Zero, Pressure.FromMegapascals(net), Pressure.Zero, Pressure.Zero),
            [],
            [
                new(
                    "brittle-wall",
                    net > 0 ? Severity.Fail : Severity.Pass,
                    "The wall is brittle or has no yield strength on record: no clamp load or injection pressure may bear on it.",
                    net * 10,
                    0,
                    "bar",
                    new("brittle pipe under clamp load", "", Provenance.FromMemory),
                    LimitKind.Absolute
                ),
            ],
            ["Never load clamp bolts on a thin brittle wall."]
        );

    private static Finding OvalityTaken() =>
        new(
            "ovality-default",
            Severity.Watch,
            Invariant($"Ovality was not measured; {DefaultOvality:P0} is taken."),
            null,
            DefaultOvality,
            "-",
            Clause.Default("out of round lowers the collapse pressure")
        );

    private static Finding Verdict(double net, double allowed) =>
        new(
            "crushing",
            net <= allowed ? Severity.Pass : Severity.Fail,
            Invariant(
                $"Net pressure from outside {net * 10:G4} bar, allowed on the thinned wall {allowed * 10:G4} bar."
            ),
            net * 10,
            allowed * 10,
            "bar",
            Buckling
        );
}
