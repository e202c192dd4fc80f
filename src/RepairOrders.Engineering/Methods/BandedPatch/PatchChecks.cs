using System.Globalization;
using RepairOrders.Engineering.Joints;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>Puts a laid-out patch to its limits and writes down how it meets them.</summary>
internal sealed class PatchChecks(
    Sheet s,
    Patch p,
    PatchBlank blank,
    PatchFriction friction,
    TensionLimits limits,
    PatchTension tension,
    PatchBands bands
)
{
    private const double LeastPuttyMm = 2;

    private static readonly Clause Envelope = new(
        "envelope in the form of ASME VIII-1 Appendix 2",
        "",
        Provenance.Derived
    );

    private static readonly Clause NutFactor = new("Shigley, Mechanical Engineering Design, 9th ed.", "eq. 8-27");

    private double Left => limits.Left(tension.Low);

    private double Load => BandTension.Load(Mpa(p.P), p.m, Mm(p.r), Mm(bands.PlateLength)).Newtons;

    /// <summary>Gauge pressure the bands resist, MPa.</summary>
    public double Held =>
        BandTension
            .Resisted(
                bands.Count * limits.Layers,
                N(Left),
                friction.Coefficient,
                friction.Away,
                p.m,
                Mm(p.r),
                Mm(bands.PlateLength)
            )
            .Megapascals;

    /// <summary>Least and greatest torque; nothing where the tension was measured.</summary>
    public (double Least, double Most)? Window =>
        tension.Torque is null
            ? null
            : (
                PatchTension.TorqueFor(TensionNeeded, tension.NutHigh, limits),
                PatchTension.TorqueFor(limits.Allowed, tension.NutLow, limits)
            );

    private double TensionNeeded => (Load / (bands.Count * limits.Layers) / friction.Share + limits.Lost) / limits.Kept;

    public void Run()
    {
        if (tension.Torque is { } torque)
            NoteTorque(torque);
        if (!blank.Full)
            NoteEdges();
        Bands();
        Tension();
        if (Window is { } window)
            TorqueWindow(window.Least, window.Most);
        Plate();
        Putty();
    }

    private void NoteTorque(double torque)
    {
        var (n, d) = (limits.ScrewCount, limits.ScrewDiameterMm);
        s.Given("M", "torque on each screw", torque, "N m", NutFactor);
        s.Step(
            "T low",
            "tension at the high nut factor",
            "n M/(K high d)",
            $"{n} × {torque}/({tension.NutHigh} × {d}/1000)",
            tension.Low,
            "N",
            NutFactor
        );
        s.Step(
            "T high",
            "tension at the low nut factor",
            "n M/(K low d)",
            $"{n} × {torque}/({tension.NutLow} × {d}/1000)",
            tension.High,
            "N",
            NutFactor
        );
    }

    // It digs into the putty's edge and gives nothing at the leak, so it is shown and not credited.
    private void NoteEdges() =>
        s.Step(
            "F edge",
            "load of a band on each edge of the plate, not credited",
            "2 T high sin(δ/2), cos δ = D/Ds",
            $"2 × {tension.High} × sin(acos({p.D}/{p.Ds})/2)",
            BandTension.EdgeLoad(N(tension.High), Mm(p.D), Mm(p.Ds)).Newtons,
            "N",
            Sources.Balance
        );

    private void Bands()
    {
        var (L, share) = (bands.PlateLength, friction.Share);
        s.Step(
            "T eff",
            "tension left at the fastener",
            "η T low − heat",
            $"{limits.Kept} × {tension.Low} − {limits.Lost}",
            Left,
            "N",
            Sources.Balance
        );
        s.Step("F", "band force needed", "(1 + m) P r L", $"(1 + {p.m}) × {p.P} × {p.r} × {L}", Load, "N", Envelope);
        s.Step(
            "n need",
            "bands needed",
            "max(2, ⌈F/(T eff c)⌉)",
            $"{Load}/({Left} × {share})",
            bands.Needed,
            "-",
            Envelope
        );
        s.Step(
            "n fit",
            "bands that fit",
            "⌊(L + g)/(w + g)⌋",
            $"({L} + {p.g})/({p.w} + {p.g})",
            bands.Fit,
            "-",
            Sources.Geometry
        );
        s.Add(Fit);
        s.Step(
            "P held",
            "gauge pressure resisted",
            "n T eff c/((1 + m) r L)",
            $"{bands.Count * limits.Layers} × {Left} × {share}/((1 + {p.m}) × {p.r} × {L})",
            Held,
            "MPa",
            Envelope
        );
        s.Add(
            Finding.AtLeast(
                "pressure-held",
                "Pressure the bands resist",
                Held * 10,
                p.P * 10,
                "bar",
                Envelope,
                LimitKind.Absolute
            )
        );
    }

    private Finding Fit =>
        new(
            "bands-fit",
            bands.Holds ? Severity.Pass : Severity.Fail,
            bands.Holds
                ? Text($"{bands.Needed} bands are needed, {bands.Count} are fitted, {bands.Fit} would fit.")
                : Text(
                    $"{Needed} bands are needed and {bands.Fit} fit. A longer plate does not help: take wider or thicker bands, more fasteners round the band, or a lower pressure."
                ),
            bands.Needed,
            bands.Fit,
            "-",
            Envelope,
            LimitKind.Absolute
        );

    private string Needed =>
        bands.Needed >= PatchBands.TooMany ? "No number of" : bands.Needed.ToString(CultureInfo.InvariantCulture);

    private void Tension()
    {
        s.Add(Bears("band-tension", "Band tension, high estimate,", limits.Band - limits.Gained, LimitKind.Absolute));
        s.Add(
            Bears(
                "screw-tension",
                "Tension in the screws, high estimate,",
                limits.Screws - limits.Gained,
                LimitKind.Absolute
            )
        );
        s.Add(Bears("pipe-under-band", "Band tension on the empty, thinned pipe", limits.Pipe, LimitKind.ByDeviation));
    }

    private Finding Bears(string code, string what, double limit, LimitKind kind) =>
        Finding.AtMost(
            code,
            what,
            tension.High,
            Math.Max(0, limit),
            "N",
            code == "pipe-under-band" ? Sources.Ring : Sources.Balance,
            kind
        );

    private void TorqueWindow(double least, double most)
    {
        var (torque, d) = (tension.Torque!.Value, limits.ScrewDiameterMm);
        s.Step(
            "M least",
            "least torque that surely seals",
            "K high d T need/n",
            $"{tension.NutHigh} × {d}/1000 × {TensionNeeded}/{limits.ScrewCount}",
            least,
            "N m",
            NutFactor
        );
        s.Step(
            "M most",
            "greatest torque the band surely bears",
            "K low d T allow/n",
            $"{tension.NutLow} × {d}/1000 × {limits.Allowed}/{limits.ScrewCount}",
            most,
            "N m",
            NutFactor
        );
        var inside = torque >= least * (1 - 1e-9) && torque <= most * (1 + 1e-9);
        s.Add(
            new(
                "torque-window",
                inside ? Severity.Pass : Severity.Fail,
                least <= most
                    ? Text(
                        $"Torque {torque:G3} N m; the window is {least:G3} to {most:G3} N m, for the lubricant in hand only."
                    )
                    : Text(
                        $"No torque does both: sealing surely takes {least:G3} N m, the band surely bears {most:G3} N m."
                    ),
                torque,
                torque < least ? least : most,
                "N m",
                NutFactor,
                LimitKind.Absolute
            )
        );
    }

    private void Plate()
    {
        var (pressure, limit) = ((1 + p.m) * p.P, 2.0 / 3 * s["plateYieldMpa"]);
        s.Step(
            "σ between",
            "plate between bands",
            "p g max(2g + w, g + 2w)/(4 t²)",
            $"{pressure} × {bands.Gap} × max(2 × {bands.Gap} + {p.w}, {bands.Gap} + 2 × {p.w})/(4 × {p.t}²)",
            bands.BetweenBands(p),
            "MPa",
            Sources.Balance
        );
        s.Step(
            "σ end",
            "plate beyond the last band",
            "3 p c²/t²",
            $"3 × {pressure} × {bands.Overhang}²/{p.t}²",
            bands.BeyondBands(p),
            "MPa",
            Sources.Balance
        );
        s.Add(
            Finding.AtMost(
                "plate-bending",
                "Bending of the plate between and beyond the bands",
                bands.Bending(p),
                limit,
                "MPa",
                Sources.Balance
            )
        );
    }

    private void Putty()
    {
        var left = p.tp - s["puttySqueezeMm"];
        s.Add(Finding.AtLeast("putty-left", "Putty left after squeezing", left, LeastPuttyMm, "mm", Sources.Own));
        if (p.m < 1)
            s.Add(
                Finding.Watch(
                    "putty-factor",
                    "A putty factor below 1 is for a soft rubber sheet under the plate, never for hardened putty.",
                    Sources.Own
                )
            );
        var damage = s.Defect.AxialLength.Millimeters * s.Defect.CircumferentialLength.Millimeters;
        if (damage > 1e-6)
            s.Add(
                Finding.AtLeast(
                    "putty-area",
                    "Putty area over that of the damage",
                    bands.PlateLength * blank.Arc / damage,
                    3,
                    "-",
                    Clause.CommonPractice
                )
            );
    }
}
