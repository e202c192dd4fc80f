using RepairOrders.Engineering.Joints;
using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>What band, screws and pipe bear, N, and what is lost of a tension once it is set.</summary>
internal sealed record TensionLimits(
    double Band,
    double Screws,
    double Pipe,
    double Lost,
    double Gained,
    double Kept,
    int Layers,
    int ScrewCount,
    double ScrewDiameterMm
)
{
    /// <summary>Tension that band and screws bear at fitting, the gain in the cold kept free.</summary>
    public double Allowed => Math.Max(0, Math.Min(Band, Screws) - Gained);

    /// <summary>Tension left at the fastener after creep and heat.</summary>
    public double Left(double low) => Math.Max(0, Kept * low - Lost);

    public static TensionLimits Read(Sheet s, Patch p)
    {
        var band = OfBand(s, p);
        var (screws, count, diameter) = OfScrews(s);
        var (lost, gained) = Heat(s, p);
        var kept = s["preloadKept"];
        var turns = s.Count("wraps");
        var layers = s.Count("innerTurnMeasured") == 1 ? turns : 1;
        if (turns > layers)
            s.Add(
                Finding.Watch(
                    "inner-turns-not-counted",
                    "Inner turns whose tension was not measured are not counted.",
                    Sources.Balance
                )
            );
        var limits = new TensionLimits(band, screws, OfPipe(s, p, turns), lost, gained, kept, layers, count, diameter);
        s.Step(
            "T allow",
            "tension allowed at fitting",
            "min(T band, T screw) − gain in the cold",
            $"min({band}, {screws}) − {gained}",
            limits.Allowed,
            "N",
            Sources.Balance
        );
        return limits;
    }

    private static double OfBand(Sheet s, Patch p)
    {
        var (Sy, e) = (s["bandYieldMpa"], s["jointEfficiency"]);
        if (Sy > BandedPatchInputs.AnnealedYieldMpa)
            s.Add(
                Finding.Watch(
                    "band-certificate",
                    "Band yield above the annealed minimum: only with the coil's certificate.",
                    Sources.Own
                )
            );
        return s.Step(
            "T band",
            "tension the band may carry",
            "2/3 Sy w tb e",
            $"2/3 × {Sy} × {p.w} × {p.tb} × {e}",
            BandTension.Allowable(Mpa(Sy), Mm(p.w), Mm(p.tb), e).Newtons,
            "N",
            Sources.Balance
        );
    }

    private static (double Tension, int Count, double Diameter) OfScrews(Sheet s)
    {
        var kind = s.Count("fastenerKind");
        if (kind == 2 && s.Count("tensionBasis") != 1)
            s.Add(
                Finding.Refuse(
                    "worm-drive",
                    "A worm drive has no nut factor: measure its tension, or use a straight screw.",
                    Sources.Own
                )
            );
        var screw = BandedPatchInputs.Screws[s.Count("screw")];
        var (count, Rp) = (kind == 1 ? 2 : 1, s["screwProofMpa"]);
        s.Given("d", "screw", screw.DiameterMm, "mm", Sources.Chosen);
        var tension = s.Step(
            "T screw",
            "tension the screws may carry",
            "2/3 Rp As n",
            $"2/3 × {Rp} × {screw.StressAreaMm2} × {count}",
            2.0 / 3 * Rp * screw.StressAreaMm2 * count,
            "N",
            Sources.Balance
        );
        return (tension, count, screw.DiameterMm);
    }

    private static (double Lost, double Gained) Heat(Sheet s, Patch p)
    {
        var (fit, run) = (s["fitTemperatureC"], s.Service.OperatingTemperature.DegreesCelsius);
        var (E, band, pipe) = (s["bandModulusGpa"] * 1000, s["bandExpansion"], PipeFacts.Expansion(s.Pipe.Metal) * 1e6);
        s.Given("αp", "expansion of the pipe", pipe, "10⁻⁶/K", PipeFacts.MetalData);
        var rise = TemperatureDelta.FromKelvins(run - fit);
        var slack = BandTension.HeatSlackening(Mpa(E), band * 1e-6, pipe * 1e-6, rise).Megapascals;
        s.Step(
            "Δσ",
            "stress lost with heat; negative, gained in the cold",
            "Eb (αb − αp)(T2 − T1)",
            $"{E} × ({band} − {pipe}) × 10⁻⁶ × ({run} − {fit})",
            slack,
            "MPa",
            Sources.Balance
        );
        return (Math.Max(0, slack) * p.w * p.tb, Math.Max(0, -slack) * p.w * p.tb);
    }

    private static double OfPipe(Sheet s, Patch p, int turns)
    {
        var (ts, E) = (PipeFacts.RingWallMm(s.Defect), PipeFacts.ModulusMpa(s.Pipe.Metal));
        s.Given("ts", "least wall under the bands", ts, "mm", Sources.Pipe);
        var pcr = BandTension.RingCollapse(Mpa(E), PipeFacts.Poisson, Mm(ts), Mm(p.D)).Megapascals;
        s.Step(
            "pcr",
            "outside pressure at which the empty pipe collapses",
            "2 E/(1 − ν²)(ts/D)³",
            $"2 × {E}/(1 − {PipeFacts.Poisson}²) × ({ts}/{p.D})³",
            pcr,
            "MPa",
            Sources.Ring
        );
        return s.Step(
            "T pipe",
            "tension the empty pipe stands",
            "pcr/3 r w/N",
            $"{pcr}/3 × {p.r} × {p.w}/{turns}",
            pcr / 3 * p.r * p.w / turns,
            "N",
            Sources.Ring
        );
    }
}

/// <summary>The tension that is set: estimates in N, the torque in N m; no torque where the tension was measured.</summary>
internal sealed record PatchTension(double Low, double High, double? Torque, double NutLow, double NutHigh)
{
    /// <summary>Whether somebody gave torque or tension, so that the sizing has none to choose.</summary>
    public static bool IsGiven(Sheet s) => s.Count("tensionBasis") == 1 || s.Optional("torqueNm") is not null;

    /// <summary>The tension as given, or the greatest torque a wrench can be set to that keeps below a tension.</summary>
    public static PatchTension Set(Sheet s, TensionLimits limits, double most) =>
        s.Count("tensionBasis") == 1 ? Measured(s) : ByTorque(s, limits, most);

    /// <summary>Torque for a tension of one band, N m.</summary>
    public static double TorqueFor(double tension, double nutFactor, TensionLimits limits) =>
        Tightening.ForPreload(N(tension / limits.ScrewCount), nutFactor, Mm(limits.ScrewDiameterMm)).NewtonMeters;

    private static PatchTension Measured(Sheet s)
    {
        var (low, high) = (s["tensionLowN"], s["tensionHighN"]);
        return low > 0 && high >= low
            ? new(low, high, null, 0, 0)
            : throw new ImpossibleInputException(
                "tensionLowN",
                Text($"{low:G6}"),
                "above 0 and at most tensionHighN where the tension was measured"
            );
    }

    private static PatchTension ByTorque(Sheet s, TensionLimits limits, double most)
    {
        var (least, greatest) = (s["nutFactorLow"], s["nutFactorHigh"]);
        if (least > greatest)
            throw new ImpossibleInputException(
                "nutFactorLow",
                Text($"{least:G6}"),
                Text($"at most the greatest nut factor, {greatest:G6}")
            );
        var torque = s.Optional("torqueNm") ?? Settable(TorqueFor(most, least, limits));
        return new(Tension(greatest), Tension(least), torque, least, greatest);

        double Tension(double nutFactor) =>
            Tightening.Preload(UnitsNet.Torque.FromNewtonMeters(torque), nutFactor, Mm(limits.ScrewDiameterMm)).Newtons
            * limits.ScrewCount;
    }

    // A wrench reads half newton metres, and tenths below five.
    private static double Settable(double torque)
    {
        var step = torque < 5 ? 0.1 : 0.5;
        return Math.Floor(Math.Round(torque / step, 9)) * step;
    }
}
