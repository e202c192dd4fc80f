using System.Globalization;
using RepairOrders.Engineering.Joints;
using UnitsNet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>Sizes one banded patch, in the order a hand calculation goes.</summary>
internal sealed class BandedPatchSizing
{
    private const double Poisson = 0.3;
    private const double LeastPuttyMm = 2;
    private const double LeastGapMm = 5;

    private readonly BandedPatch method;
    private readonly Readings readings;
    private readonly Working working = new();
    private readonly List<Finding> findings = [];
    private readonly InputReader input;

    private readonly double D;
    private readonly double P;
    private readonly double m;
    private readonly double tp;
    private readonly double t;
    private readonly double w;
    private readonly double tb;
    private readonly double g;

    public BandedPatchSizing(BandedPatch method, Readings readings)
    {
        this.method = method;
        this.readings = readings;
        input = new InputReader(method.Inputs, readings, working, findings);
        D = working.Given("D", "outside diameter", readings.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        P = Pressure();
        m = input["puttyFactor"];
        tp = input["puttyThicknessMm"];
        t = input["plateThicknessMm"];
        w = input["bandWidthMm"];
        tb = input["bandThicknessMm"];
        g = input["bandGapMm"];
    }

    private double Ds => D + 2 * (tp + t);

    private double r => Ds / 2;

    public MethodDesign Design()
    {
        working.Step(
            "Ds",
            "diameter over the plate",
            "D + 2 (tp + t)",
            $"{D} + 2 × ({tp} + {t})",
            Ds,
            "mm",
            Sources.Geometry
        );
        var plate = SizePlate();
        var round = SizeRound(plate);
        var limits = SizeTension();
        var tension = limits.Best(round, this);
        var row = tension.Row;
        CheckTension(tension.Tension, limits, row, round, plate);
        CheckPlate(row);
        CheckPutty(plate);
        return Assemble(plate, round, row, tension.Tension);
    }

    // ---- pressure ----

    private double Pressure()
    {
        var service = readings.Service;
        var given = input.Optional("pressureBar");
        var test = input.Optional("testPressureBar") ?? 0;
        var line = given ?? service.DesignPressure.Bars;
        var greatest = Math.Max(Math.Max(line, test), service.OperatingPressure.Bars);
        if (line < service.OperatingPressure.Bars)
            findings.Add(
                Finding.AtLeast(
                    "below-operating-pressure",
                    "The pressure it is sized for",
                    line,
                    service.OperatingPressure.Bars,
                    "bar",
                    Sources.Own,
                    LimitKind.Absolute
                )
            );
        else if (line < service.DesignPressure.Bars)
            findings.Add(
                new(
                    "interim-pressure-limit",
                    Severity.Watch,
                    Text(
                        $"Sized for {line:G4} bar, the line for {service.DesignPressure.Bars:G4} bar: limit the line while the repair is live."
                    ),
                    line,
                    service.DesignPressure.Bars,
                    "bar",
                    Sources.Own
                )
            );
        return working.Step(
            "P",
            "greatest gauge pressure at the patch",
            "max(line, test, operating)/10",
            $"max({line}, {test}, {service.OperatingPressure.Bars})/10",
            greatest / 10,
            "MPa",
            Sources.Balance
        );
    }

    // ---- plate ----

    private sealed record Blank(double Length, double Arc, double Gap, bool Full, double HalfAngle);

    private Blank SizePlate()
    {
        var defect = readings.Defect;
        var form = input.Count("plateForm");
        var squeeze = input["puttySqueezeMm"];
        var length = PatchPlate.BlankLength(defect.AxialLength).Millimeters;
        var arc = PatchPlate.BlankArc(defect.CircumferentialLength, Mm(D), Mm(tp), Mm(t)).Millimeters;
        var girth = Math.PI * (D + 2 * tp + t);
        var gap = Math.Max(LeastGapMm, 2 * Math.PI * squeeze);
        var full = form == 2 || arc > girth - gap;
        working.Step(
            "L0",
            "plate along the pipe, least",
            "d + 2 × 50.8",
            $"{defect.AxialLength.Millimeters} + 2 × 50.8",
            length,
            "mm",
            Sources.PuttyCover
        );
        working.Step(
            "W",
            "plate round the pipe",
            "(d + 2 × 50.8)(R + tp + t/2)/R",
            $"({defect.CircumferentialLength.Millimeters} + 101.6) × ({D / 2} + {tp} + {t}/2)/{D / 2}",
            arc,
            "mm",
            Sources.PuttyCover
        );
        if (full && form == 1)
            findings.Add(
                Finding.Watch(
                    "full-circle",
                    "The arc would meet itself: a split full circle is sized.",
                    Sources.Geometry
                )
            );
        if (!full)
            return new(length, arc, 0, false, Math.Min(Math.PI, arc / 2 / (D / 2 + tp + t / 2)));
        working.Step(
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

    // ---- friction round the band ----

    private sealed record Round(double Friction, int Fasteners, double Away, double Share, double AngleDeg);

    private Round SizeRound(Blank plate)
    {
        var mu = input["friction"];
        var k = input.Count("fastenersRound");
        var theta = Math.Min(input["fastenerAngleDeg"], 180.0 / k);
        var away = Math.Min(Math.PI / k, theta * Math.PI / 180 + plate.HalfAngle);
        working.Step(
            "φ",
            "nearest fastener to the farthest edge of the plate",
            "min(π/k, θ + a)",
            $"min(π/{k}, {theta * Math.PI / 180} + {plate.HalfAngle})",
            away,
            "rad",
            Sources.Geometry
        );
        var share = 1 / BandTension.CapstanRatio(mu, Angle.FromRadians(away));
        working.Step("c", "share of the tension left there", "exp(−μ φ)", $"exp(−{mu} × {away})", share, "-", Capstan);
        return new(mu, k, away, share, theta);
    }

    // ---- tension ----

    private sealed record Limits(
        double Allowed,
        double BandAllowed,
        double ScrewAllowed,
        double Crush,
        double Lost,
        double Gained,
        double Kept,
        int Layers,
        int Turns,
        int Screws,
        (string Name, double DiameterMm, double StressAreaMm2) Screw
    )
    {
        // First the tension that spares the pipe too; where its bands do not fit, the tension the bands themselves bear.
        public (Tension Tension, Row Row) Best(Round round, BandedPatchSizing sizing)
        {
            var gentle = sizing.Set(this, Math.Min(Allowed, Crush));
            var row = sizing.Place(gentle, this, round);
            if (row.Fits || Crush >= Allowed || sizing.TensionIsGiven)
                return (gentle, row);
            var full = sizing.Set(this, Allowed);
            var other = sizing.Place(full, this, round);
            return other.Fits ? (full, other) : (gentle, row);
        }
    }

    private sealed record Tension(double Low, double High, double Torque, double KLow, double KHigh, bool Measured)
    {
        public double Left(Limits l) => Math.Max(0, l.Kept * Low - l.Lost);
    }

    private bool TensionIsGiven => input.Optional("torqueNm") is not null || Measures;

    private bool Measures => input.Count("tensionBasis") == 1;

    private Limits SizeTension()
    {
        var Sy = input["bandYieldMpa"];
        if (Sy > 205)
            findings.Add(
                Finding.Watch(
                    "band-certificate",
                    "Band yield above annealed minimum: only with the coil's certificate.",
                    Sources.Own
                )
            );
        var e = input["jointEfficiency"];
        var kind = input.Count("fastenerKind");
        var screw = BandedPatch.Screws[input.Count("screw")];
        var screws = kind == 1 ? 2 : 1;
        var Rp = input["screwProofMpa"];
        var turns = input.Count("wraps");
        var layers = input.Count("innerTurnMeasured") == 1 ? turns : 1;
        if (turns > layers)
            findings.Add(
                Finding.Watch(
                    "inner-turns-not-counted",
                    "Inner turns whose tension was not measured are not counted.",
                    Sources.Balance
                )
            );
        if (kind == 2 && !Measures)
            findings.Add(
                Finding.Refuse(
                    "worm-drive",
                    "A worm drive has no nut factor: measure its tension, or use a straight screw.",
                    Sources.Own
                )
            );

        var band = BandTension.Allowable(Mpa(Sy), Mm(w), Mm(tb), e).Newtons;
        working.Step(
            "T band",
            "tension the band may carry",
            "2/3 Sy w tb e",
            $"2/3 × {Sy} × {w} × {tb} × {e}",
            band,
            "N",
            Sources.Balance
        );
        var ofScrews = 2.0 / 3 * Rp * screw.StressAreaMm2 * screws;
        working.Step(
            "T screw",
            "tension the screws may carry",
            "2/3 Rp As n",
            $"2/3 × {Rp} × {screw.StressAreaMm2} × {screws}",
            ofScrews,
            "N",
            Sources.Balance
        );
        var (lost, gained) = Heat();
        var kept = input["preloadKept"];
        var allowed = Math.Max(0, Math.Min(band, ofScrews) - gained);
        working.Step(
            "T allow",
            "tension allowed at fitting",
            "min(T band, T screw) − gain in the cold",
            $"min({band}, {ofScrews}) − {gained}",
            allowed,
            "N",
            Sources.Balance
        );
        return new(allowed, band, ofScrews, Crush(turns), lost, gained, kept, layers, turns, screws, screw);
    }

    private (double Lost, double Gained) Heat()
    {
        var fit = input["fitTemperatureC"];
        var run = readings.Service.OperatingTemperature.DegreesCelsius;
        var alpha = input["bandExpansion"];
        var E = input["bandModulusGpa"];
        var pipe = PipeFacts.Expansion(readings.Pipe.Metal);
        working.Given("αp", "expansion of the pipe", pipe * 1e6, "10⁻⁶/K", PipeFacts.MetalData);
        var slack = BandTension
            .HeatSlackening(Mpa(E * 1000), alpha * 1e-6, pipe, TemperatureDelta.FromKelvins(run - fit))
            .Megapascals;
        working.Step(
            "Δσ",
            "stress lost with heat (negative: gained)",
            "Eb (αb − αp)(T2 − T1)",
            $"{E * 1000} × ({alpha} − {pipe * 1e6}) × 10⁻⁶ × ({run} − {fit})",
            slack,
            "MPa",
            Sources.Balance
        );
        return (Math.Max(0, slack) * w * tb, Math.Max(0, -slack) * w * tb);
    }

    private double Crush(int turns)
    {
        var ts = PipeFacts.RingWallMm(readings.Defect);
        var E = PipeFacts.ModulusMpa(readings.Pipe.Metal);
        working.Given("ts", "least wall under the bands", ts, "mm", Sources.Pipe);
        var pcr = BandTension.RingCollapse(Mpa(E), Poisson, Mm(ts), Mm(D)).Megapascals;
        working.Step(
            "pcr",
            "outside pressure at which the empty pipe collapses",
            "2 E/(1 − ν²)(ts/D)³",
            $"2 × {E}/(1 − {Poisson}²) × ({ts}/{D})³",
            pcr,
            "MPa",
            Ring
        );
        var crush = pcr / 3 * r * w / turns;
        return working.Step(
            "T pipe",
            "tension the empty pipe stands",
            "pcr/3 r w/N",
            $"{pcr}/3 × {r} × {w}/{turns}",
            crush,
            "N",
            Ring
        );
    }

    private Tension Set(Limits l, double most)
    {
        if (Measures)
            return Measured();
        var kLow = input["nutFactorLow"];
        var kHigh = input["nutFactorHigh"];
        if (kLow > kHigh)
            throw new ImpossibleInputException(
                "nutFactorLow",
                Text($"{kLow:G6}"),
                Text($"at most the greatest nut factor, {kHigh:G6}")
            );
        var d = Mm(l.Screw.DiameterMm);
        var greatest = Tightening.ForPreload(Force.FromNewtons(most / l.Screws), kLow, d).NewtonMeters;
        var torque = input.Optional("torqueNm") ?? Settable(greatest);
        var low = Tightening.Preload(Torque.FromNewtonMeters(torque), kHigh, d).Newtons * l.Screws;
        var high = Tightening.Preload(Torque.FromNewtonMeters(torque), kLow, d).Newtons * l.Screws;
        return new(low, high, torque, kLow, kHigh, false);
    }

    private Tension Measured()
    {
        var low = input["tensionLowN"];
        var high = input["tensionHighN"];
        if (low <= 0 || high < low)
            throw new ImpossibleInputException(
                "tensionLowN",
                Text($"{low:G6}"),
                "above 0 and at most tensionHighN where the tension was measured"
            );
        return new(low, high, 0, 0, 0, true);
    }

    // A wrench reads half newton metres, and tenths below five.
    private static double Settable(double torque)
    {
        var step = torque < 5 ? 0.1 : 0.5;
        return Math.Floor(Math.Round(torque / step, 9)) * step;
    }

    // ---- bands on the plate ----

    private sealed record Row(int Bands, int Needed, int Fit, double Length, double Gap, double Overhang, bool Fits)
    {
        public double Pitch(double w) => w + Gap;
    }

    // Beyond one band more than fits on the least plate nothing is won: the load grows with the plate.
    private Row Place(Tension tension, Limits l, Round round)
    {
        var least = PatchPlate.BlankLength(readings.Defect.AxialLength).Millimeters;
        var most = BandTension.BandsThatFit(Mm(least), Mm(w), Mm(g)) + 1;
        Row? enough = null;
        for (var n = 2; n <= Math.Max(2, most); n++)
        {
            var row = Lay(n, least, tension, l, round);
            if (row.Fits && BendsWithin(row))
                return row;
            enough ??= row.Fits ? row : null;
        }
        return enough ?? Lay(Math.Max(2, most), least, tension, l, round);
    }

    private Row Lay(int n, double least, Tension tension, Limits l, Round round)
    {
        var length = Math.Ceiling(Math.Round(Math.Max(least, n * (w + g) - g), 6));
        var left = tension.Left(l);
        var layers =
            left > 0
                ? BandTension.BandsNeeded(
                    Mpa(P),
                    m,
                    Mm(r),
                    Mm(length),
                    Force.FromNewtons(left),
                    round.Friction,
                    Angle.FromRadians(round.Away)
                )
                : 1_000_000;
        var needed = Math.Max(2, (layers + l.Layers - 1) / l.Layers);
        var fit = BandTension.BandsThatFit(Mm(length), Mm(w), Mm(g));
        var (gap, overhang) = Spread(n, length);
        return new(n, needed, fit, length, gap, overhang, needed <= n && n <= fit);
    }

    // Gap and overhang such that the plate bends alike between and beyond the bands.
    private (double Gap, double Overhang) Spread(int n, double length)
    {
        double Over(double gap) => Math.Sqrt(gap * Math.Max(2 * gap + w, gap + 2 * w) / 12);
        var (low, high) = (0.0, length);
        for (var i = 0; i < 60; i++)
        {
            var mid = (low + high) / 2;
            if (n * w + (n - 1) * mid + 2 * Over(mid) > length)
                high = mid;
            else
                low = mid;
        }
        var gap = Math.Max(g, Math.Floor(low * 10) / 10);
        return (gap, Math.Max(0, (length - n * w - (n - 1) * gap) / 2));
    }

    private double Bends(Row row) =>
        Math.Max(
            PatchPlate.StressBetweenBands(Mpa((1 + m) * P), Mm(w), Mm(row.Gap), Mm(t)).Megapascals,
            PatchPlate.StressOfOverhang(Mpa((1 + m) * P), Mm(row.Overhang), Mm(t)).Megapascals
        );

    private bool BendsWithin(Row row) => Bends(row) <= 2.0 / 3 * input["plateYieldMpa"];

    // ---- checks ----

    private void CheckTension(Tension tension, Limits l, Row row, Round round, Blank plate)
    {
        NoteTension(tension, l);
        NoteEdges(tension, plate);
        var left = tension.Left(l);
        working.Step(
            "T eff",
            "tension left at the fastener",
            "η T low − heat",
            $"{l.Kept} × {tension.Low} − {l.Lost}",
            left,
            "N",
            Sources.Balance
        );
        var load = BandTension.Load(Mpa(P), m, Mm(r), Mm(row.Length)).Newtons;
        working.Step(
            "F",
            "band force needed",
            "(1 + m) P r L",
            $"(1 + {m}) × {P} × {r} × {row.Length}",
            load,
            "N",
            Envelope
        );
        working.Step(
            "n need",
            "bands needed",
            "max(2, ⌈F/(T eff c)⌉)",
            $"{load}/({left} × {round.Share})",
            row.Needed,
            "-",
            Envelope
        );
        working.Step(
            "n fit",
            "bands that fit",
            "⌊(L + g)/(w + g)⌋",
            $"({row.Length} + {g})/({w} + {g})",
            row.Fit,
            "-",
            Sources.Geometry
        );
        findings.Add(
            new(
                "bands-fit",
                row.Fits ? Severity.Pass : Severity.Fail,
                row.Fits
                    ? Text($"{row.Needed} bands are needed, {row.Bands} are fitted, {row.Fit} would fit.")
                    : Text(
                        $"{Words(row.Needed)} bands are needed and {row.Fit} fit. A longer plate does not help: take wider or thicker bands, more fasteners round the band, or a lower pressure."
                    ),
                row.Needed,
                row.Fit,
                "-",
                Envelope,
                LimitKind.Absolute
            )
        );
        var resisted = Resisted(row, left, l, round);
        working.Step(
            "P held",
            "gauge pressure resisted",
            "n T eff c/((1 + m) r L)",
            $"{row.Bands * l.Layers} × {left} × {round.Share}/((1 + {m}) × {r} × {row.Length})",
            resisted,
            "MPa",
            Envelope
        );
        findings.Add(
            Finding.AtLeast(
                "pressure-held",
                "Pressure the bands resist",
                resisted * 10,
                P * 10,
                "bar",
                Envelope,
                LimitKind.Absolute
            )
        );
        findings.Add(
            Finding.AtMost(
                "band-tension",
                "Band tension, high estimate",
                tension.High,
                l.BandAllowed - l.Gained,
                "N",
                Sources.Balance,
                LimitKind.Absolute
            )
        );
        findings.Add(
            Finding.AtMost(
                "screw-tension",
                "Tension in the screws, high estimate",
                tension.High,
                l.ScrewAllowed - l.Gained,
                "N",
                Sources.Balance,
                LimitKind.Absolute
            )
        );
        findings.Add(
            Finding.AtMost(
                "pipe-under-band",
                "Band tension against what the empty, thinned pipe stands",
                tension.High,
                l.Crush,
                "N",
                Ring
            )
        );
        findings.AddRange(Window(tension, l, row, load, round));
    }

    private static string Words(int needed) =>
        needed >= 1_000_000 ? "More than a million" : needed.ToString(CultureInfo.InvariantCulture);

    private double Resisted(Row row, double left, Limits l, Round round) =>
        BandTension
            .Resisted(
                row.Bands * l.Layers,
                Force.FromNewtons(left),
                round.Friction,
                Angle.FromRadians(round.Away),
                m,
                Mm(r),
                Mm(row.Length)
            )
            .Megapascals;

    private void NoteTension(Tension tension, Limits l)
    {
        if (tension.Measured)
            return;
        var d = l.Screw.DiameterMm;
        working.Step(
            "M",
            "torque on each screw",
            "K low d T/n",
            $"{tension.KLow} × {d}/1000 × {tension.High}/{l.Screws}",
            tension.Torque,
            "N m",
            NutFactor
        );
        working.Step(
            "T low",
            "tension, high nut factor",
            "n M/(K high d)",
            $"{l.Screws} × {tension.Torque}/({tension.KHigh} × {d}/1000)",
            tension.Low,
            "N",
            NutFactor
        );
        working.Step(
            "T high",
            "tension, low nut factor",
            "n M/(K low d)",
            $"{l.Screws} × {tension.Torque}/({tension.KLow} × {d}/1000)",
            tension.High,
            "N",
            NutFactor
        );
    }

    // It digs into the putty's edge and gives nothing at the leak, so it is shown and not credited.
    private void NoteEdges(Tension tension, Blank plate)
    {
        if (plate.Full)
            return;
        var edge = BandTension.EdgeLoad(Force.FromNewtons(tension.High), Mm(D), Mm(Ds)).Newtons;
        working.Step(
            "F edge",
            "load of a band on each edge of the plate, not credited",
            "2 T sin(δ/2), cos δ = D/Ds",
            $"2 × {tension.High} × sin(acos({D}/{Ds})/2)",
            edge,
            "N",
            Sources.Balance
        );
    }

    private (double Least, double Most)? window;

    private IEnumerable<Finding> Window(Tension tension, Limits l, Row row, double load, Round round)
    {
        if (tension.Measured)
            yield break;
        var need = (load / (row.Bands * l.Layers) / round.Share + l.Lost) / l.Kept;
        var d = Mm(l.Screw.DiameterMm);
        var least = Tightening.ForPreload(Force.FromNewtons(need / l.Screws), tension.KHigh, d).NewtonMeters;
        var most = Tightening.ForPreload(Force.FromNewtons(l.Allowed / l.Screws), tension.KLow, d).NewtonMeters;
        window = (least, most);
        working.Step(
            "M least",
            "least torque that surely seals",
            "K high d T need/n",
            $"{tension.KHigh} × {l.Screw.DiameterMm}/1000 × {need}/{l.Screws}",
            least,
            "N m",
            NutFactor
        );
        working.Step(
            "M most",
            "greatest torque the band surely bears",
            "K low d T allow/n",
            $"{tension.KLow} × {l.Screw.DiameterMm}/1000 × {l.Allowed}/{l.Screws}",
            most,
            "N m",
            NutFactor
        );
        var inside = tension.Torque >= least * (1 - 1e-9) && tension.Torque <= most * (1 + 1e-9);
        yield return new(
            "torque-window",
            inside ? Severity.Pass : Severity.Fail,
            least <= most
                ? Text(
                    $"Torque {tension.Torque:G3} N m; the window is {least:G3} to {most:G3} N m, for the lubricant in hand only."
                )
                : Text(
                    $"No torque does both: sealing surely takes {least:G3} N m, and the band surely bears {most:G3} N m only."
                ),
            tension.Torque,
            tension.Torque < least ? least : most,
            "N m",
            NutFactor,
            LimitKind.Absolute
        );
    }

    private void CheckPlate(Row row)
    {
        var p = (1 + m) * P;
        var Sp = input["plateYieldMpa"];
        var between = PatchPlate.StressBetweenBands(Mpa(p), Mm(w), Mm(row.Gap), Mm(t)).Megapascals;
        var end = PatchPlate.StressOfOverhang(Mpa(p), Mm(row.Overhang), Mm(t)).Megapascals;
        working.Step(
            "σ between",
            "plate between bands",
            "p g max(2g + w, g + 2w)/(4 t²)",
            $"{p} × {row.Gap} × max(2 × {row.Gap} + {w}, {row.Gap} + 2 × {w})/(4 × {t}²)",
            between,
            "MPa",
            Sources.Balance
        );
        working.Step(
            "σ end",
            "plate beyond the last band",
            "3 p c²/t²",
            $"3 × {p} × {row.Overhang}²/{t}²",
            end,
            "MPa",
            Sources.Balance
        );
        findings.Add(
            Finding.AtMost(
                "plate-bending",
                "Bending of the plate between the bands",
                between,
                2.0 / 3 * Sp,
                "MPa",
                Sources.Balance
            )
        );
        findings.Add(
            Finding.AtMost(
                "plate-overhang",
                "Bending of the plate beyond the last band",
                end,
                2.0 / 3 * Sp,
                "MPa",
                Sources.Balance
            )
        );
    }

    private void CheckPutty(Blank plate)
    {
        var squeeze = input["puttySqueezeMm"];
        findings.Add(
            Finding.AtLeast("putty-left", "Putty left after squeezing", tp - squeeze, LeastPuttyMm, "mm", Sources.Own)
        );
        if (m < 1)
            findings.Add(
                Finding.Watch(
                    "putty-factor",
                    "A putty factor below 1 is for a soft rubber sheet under the plate, never for hardened putty.",
                    Sources.Own
                )
            );
        var defect = readings.Defect;
        var damage = defect.AxialLength.Millimeters * defect.CircumferentialLength.Millimeters;
        findings.Add(
            Finding.AtLeast(
                "putty-area",
                "Putty area over the damage's",
                damage > 0 ? plate.Length * plate.Arc / damage : 1000,
                3,
                "-",
                Clause.CommonPractice
            )
        );
    }

    // ---- design ----

    private MethodDesign Assemble(Blank plate, Round round, Row row, Tension tension)
    {
        var cut = Cut(plate, round);
        var putty = Putty(plate, row);
        var contact = BandTension.ContactPressure(Force.FromNewtons(tension.High), Mm(r), Mm(w)).Megapascals;
        var (set, full, at) = (input["setForLoadH"], input["fullHardnessH"], input["cureReferenceC"]);
        var life = input["designLifeDays"];
        var leastWall = LeastWall(contact);
        var blocking = method.Claims(readings.Pipe, readings.Defect, readings.Service).Findings.Where(f => f.Blocks);
        return new(
            method.Code,
            Dimensions(plate, round, row, tension, cut, putty, contact),
            Held(row),
            Bill(plate, row, cut, putty),
            method.HoldPoints,
            [.. Cautions.General, .. Cautions.Resin, .. Cautions.Bolts, .. OwnCautions, .. Cautions.After],
            working,
            [.. blocking, .. findings],
            set,
            full,
            at,
            life,
            leastWall,
            CarriesAxialLoad: false
        )
        {
            Series = [Arc(tension, round)],
        };
    }

    private double Held(Row row) =>
        Math.Min(BandedPatchClaims.CeilingBar, 10 * working.Last(s => s.Symbol == "P held").Value);

    // The wall at which a third of the collapse pressure is just what the bands press with.
    private double LeastWall(double contact)
    {
        var E = PipeFacts.ModulusMpa(readings.Pipe.Metal);
        var wall = D * Math.Cbrt(3 * contact * (1 - Poisson * Poisson) / (2 * E));
        return working.Step(
            "t least",
            "least wall the bands may press on",
            "D (3 p (1 − ν²)/(2 E))^(1/3)",
            $"{D} × (3 × {contact} × (1 − {Poisson}²)/(2 × {E}))^(1/3)",
            wall,
            "mm",
            Ring
        );
    }

    private sealed record CutBand(double Piece, int Pieces, double Total);

    private CutBand Cut(Blank plate, Round round)
    {
        var largest = Math.Max(D, input.Optional("largestDiameterMm") ?? D);
        var (turns, lo, lt) = (input.Count("wraps"), input["overlapMm"], input["tailMm"]);
        var over = largest + 2 * (tp + t);
        var once = plate.Full
            ? BandLength.FullCircle(Mm(over), Mm(tb), turns, Mm(0), Mm(0))
            : BandLength.ArcPlate(
                Mm(largest),
                Mm(over),
                Angle.FromRadians(plate.HalfAngle),
                Mm(tb),
                turns,
                Mm(0),
                Mm(0)
            );
        var each = once.Millimeters / round.Fasteners + lo + lt;
        working.Step(
            "Lb",
            "band between two fasteners, with overlap and tail",
            "(N H + π N² tb)/k + Lo + Lt",
            $"{once.Millimeters}/{round.Fasteners} + {lo} + {lt}",
            each,
            "mm",
            Sources.Geometry
        );
        var (coil, splice) = (input["coilLengthMm"], input["spliceOverlapMm"]);
        var pieces = BandLength.Pieces(Mm(each), Mm(coil), Mm(splice));
        var piece = pieces == 1 ? each : (each + (pieces - 1) * splice) / pieces;
        var marked = Math.Ceiling(Math.Round(piece / 5, 6)) * 5;
        return new(marked, pieces * round.Fasteners, marked * pieces * round.Fasteners);
    }

    private sealed record PuttyNeed(double Volume, double Mass, int Sticks);

    private PuttyNeed Putty(Blank plate, Row row)
    {
        var defect = readings.Defect;
        var cavity = Math.Sqrt(defect.AxialLength.Millimeters * defect.CircumferentialLength.Millimeters);
        var depth = Math.Max(
            0,
            readings.Pipe.NominalWall.Millimeters - (defect.ThroughWall ? 0 : defect.RemainingWall.Millimeters)
        );
        var (waste, rho, stick) = (input["puttyWastePercent"], input["puttyDensityGCm3"], input["stickMassG"]);
        var volume = PatchPlate
            .PuttyVolume(Mm(cavity), Mm(depth), Mm(row.Length), Mm(plate.Arc), Mm(tp), waste / 100)
            .CubicCentimeters;
        working.Step(
            "V",
            "putty, waste included",
            "(π/4 d² h + L W tp)(1 + w)",
            $"(π/4 × {cavity}² × {depth} + {row.Length} × {plate.Arc} × {tp})/1000 × (1 + {waste}/100)",
            volume,
            "cm³",
            Sources.Geometry
        );
        var mass = working.Step("mp", "putty", "ρ V", $"{rho} × {volume}", rho * volume, "g", Sources.Geometry);
        return new(volume, mass, PatchPlate.Sticks(Mass.FromGrams(mass), Mass.FromGrams(stick)));
    }

    private List<Dimension> Dimensions(
        Blank plate,
        Round round,
        Row row,
        Tension tension,
        CutBand cut,
        PuttyNeed putty,
        double contact
    )
    {
        List<Dimension> all =
        [
            K.PlateLength.Of(row.Length),
            K.PlateArc.Of(plate.Arc),
            K.PlateHalfAngle.Of(plate.HalfAngle * 180 / Math.PI),
            K.PlateThickness.Of(t),
            K.PlateGap.Of(plate.Gap),
            K.FullCircle.Of(plate.Full ? 1 : 0),
            K.PuttyThickness.Of(tp),
            K.PuttyVolume.Of(putty.Volume),
            K.PuttyMass.Of(putty.Mass),
            K.BandCount.Of(row.Bands),
            K.BandsNeeded.Of(row.Needed),
            K.BandsThatFit.Of(row.Fit),
            K.BandWidth.Of(w),
            K.BandThickness.Of(tb),
            K.BandPitch.Of(row.Pitch(w)),
            K.PlateOverhang.Of(row.Overhang),
            K.Wraps.Of(input.Count("wraps")),
            K.BandPieceLength.Of(cut.Piece),
            K.PiecesPerBand.Of(cut.Pieces),
            K.FastenersPerBand.Of(cut.Pieces),
            K.FastenerAngle.Of(round.AngleDeg),
            K.BoltDiameter.Of(BandedPatch.Screws[input.Count("screw")].DiameterMm),
            K.TensionLow.Of(tension.Low),
            K.TensionHigh.Of(tension.High),
            K.ContactPressure.Of(contact),
        ];
        if (window is { } torque)
            all.AddRange([K.Torque.Of(tension.Torque), K.TorqueLeast.Of(torque.Least), K.TorqueMost.Of(torque.Most)]);
        return all;
    }

    private List<MaterialNeed> Bill(Blank plate, Row row, CutBand cut, PuttyNeed putty)
    {
        var screw = BandedPatch.Screws[input.Count("screw")].Name;
        var shape = plate.Full ? "split full circle" : "arc";
        return
        [
            new(
                "plate",
                Text(
                    $"stainless plate {t:0.##} mm, {row.Length:0} × {plate.Arc:0} mm, {shape}, rolled to {D / 2 + tp:0.#} mm radius"
                ),
                1,
                "pcs",
                "plate"
            ),
            new(
                "band",
                Text($"stainless band {w:0.##} × {tb:0.##} mm, {row.Bands * cut.Pieces} pieces of {cut.Piece:0} mm"),
                row.Bands * cut.Total,
                "mm",
                "band"
            ),
            new(
                "fastener",
                Text($"fastener for {w:0.##} mm band, straight screw {screw}, hexagon drive"),
                row.Bands * cut.Pieces,
                "pcs",
                "fastener"
            ),
            new(
                "putty",
                Text($"epoxy putty, sticks of {input["stickMassG"]:0.#} g; {putty.Mass:0} g needed"),
                putty.Sticks,
                "pcs",
                "putty"
            ),
        ];
    }

    private Series Arc(Tension tension, Round round) =>
        new(
            "pressure-round-the-arc",
            "pressure under a band, low estimate, from the fastener to the farthest edge of the plate",
            "angle from the fastener, °",
            "pressure, MPa",
            [
                .. BandTension
                    .RoundTheArc(
                        Force.FromNewtons(tension.Low),
                        round.Friction,
                        Angle.FromRadians(round.Away),
                        Mm(r),
                        Mm(w),
                        36
                    )
                    .Select(p => new Point(p.Away.Degrees, p.Contact.Megapascals)),
            ]
        );

    private static string[] OwnCautions =>
        [
            "The bands carry no end load: where the pipe may part, stop.",
            "Keep the fastener near the leak, not over it and not opposite.",
            "Cut band and plate edges are sharp; a band under tension whips when it lets go.",
        ];

    private static Clause Envelope => new("envelope in the form of ASME VIII-1 Appendix 2", "", Provenance.Derived);

    private static Clause Capstan => new("capstan equation", "");

    private static Clause Ring => new("Bresse's ring formula, a third of it", "", Provenance.Derived);

    private static Clause NutFactor => new("Shigley, Mechanical Engineering Design, 9th ed.", "eq. 8-27");

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static UnitsNet.Pressure Mpa(double value) => UnitsNet.Pressure.FromMegapascals(value);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
