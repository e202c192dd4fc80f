using RepairOrders.Engineering.Joints;
using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>Bolts of a clamp: how many, how many fit, torques in N m, preload left in N, load allowed on one in N.</summary>
internal sealed record ClampBolts(
    MetricBolt Bolt,
    int Count,
    int Fit,
    double Torque,
    double TorqueMost,
    double Kept,
    double Allowed
)
{
    private const double PitchOverDiameter = 3;
    private const double SmallestMm = 12;

    private static readonly Clause NutFactor = new("Shigley, Mechanical Engineering Design, 9th ed.", "eq. 8-27");

    /// <summary>The smallest bolt whose number finds room on the flanges, or the bolt asked for.</summary>
    public static ClampBolts Size(Sheet s, ClampCase c, ClampSeal seal)
    {
        var chosen = s.Count("bolt");
        IEnumerable<MetricBolt> bolts =
            chosen > 0 ? [MetricBolt.All[chosen - 1]] : MetricBolt.All.Where(b => b.Diameter.Millimeters >= SmallestMm);
        var sized = bolts.Select(b => For(s, c, b, seal.Load)).ToList();
        var best = sized.FirstOrDefault(b => b.Count <= b.Fit) ?? sized[^1];
        best.Check(s, c, seal);
        return best;
    }

    /// <summary>Least torque that surely seals.</summary>
    public double TorqueLeast(ClampSeal seal) => Torque * seal.Load / (Count * Kept);

    /// <summary>Gauge pressure the bolts hold, MPa.</summary>
    public double Held(ClampSeal seal) => Count * Math.Min(Kept, Allowed) / seal.PerMpa;

    private static ClampBolts For(Sheet s, ClampCase c, MetricBolt bolt, double load)
    {
        var (At, d) = (bolt.StressArea.SquareMillimeters, bolt.Diameter);
        var (least, greatest) = NutFactors(s);
        var most = Tightening.ForPreload(N(2.0 / 3 * s["boltYieldMpa"] * At), least, d).NewtonMeters;
        var torque = most < 5 ? most : Math.Floor(most / 5) * 5;
        var kept = Tightening.Preload(UnitsNet.Torque.FromNewtonMeters(torque), greatest, d).Newtons * s["preloadKept"];
        var allowed = s["boltAllowableMpa"] * At;
        var count = BoltLoad.Bolts(N(load), N(Math.Min(kept, allowed)));
        var side = (int)Math.Floor(c.ClampLength / (PitchOverDiameter * d.Millimeters));
        return new(bolt, count, 2 * Math.Max(2, side), torque, most, kept, allowed);
    }

    private static (double Least, double Greatest) NutFactors(Sheet s)
    {
        var (least, greatest) = (s["nutFactorLow"], s["nutFactorHigh"]);
        return least <= greatest
            ? (least, greatest)
            : throw new ImpossibleInputException(
                "nutFactorLow",
                Text($"{least:G6}"),
                Text($"at most the greatest nut factor, {greatest:G6}")
            );
    }

    private void Check(Sheet s, ClampCase c, ClampSeal seal)
    {
        Note(s, seal);
        s.Add(Finding.AtMost("bolts-fit", "Bolts", Count, Fit, "-", Sources.Own, LimitKind.Absolute));
        s.Add(
            Finding.AtLeast(
                "bolt-preload",
                "Preload of all bolts, low estimate,",
                Count * Kept,
                seal.Load,
                "N",
                ClampSeal.Form,
                LimitKind.Absolute
            )
        );
        var left = BoltLoad
            .SealPressure(
                Count,
                N(Kept),
                Mpa(c.P),
                Area.FromSquareMillimeters(seal.Inside),
                Area.FromSquareMillimeters(seal.Face)
            )
            .Megapascals;
        s.Step(
            "p seal",
            "pressure left on the seal",
            "(n F low − P A)/As",
            $"({Count} × {Kept} − {c.P} × {seal.Inside})/{seal.Face}",
            left,
            "MPa",
            Sources.Balance
        );
        s.Add(
            Finding.AtLeast(
                "seal-pressure",
                "Pressure left on the seal",
                left,
                seal.Factor * c.P,
                "MPa",
                ClampSeal.Form,
                LimitKind.Absolute
            )
        );
    }

    private void Note(Sheet s, ClampSeal seal)
    {
        var (At, d) = (Bolt.StressArea.SquareMillimeters, Bolt.Diameter.Millimeters);
        s.Given("d", $"bolt {Bolt.Name}", d, "mm", Sources.Chosen);
        s.Step(
            "M most",
            "greatest torque",
            "K low d 2/3 Sy At",
            $"{s["nutFactorLow"]} × {d}/1000 × 2/3 × {s["boltYieldMpa"]} × {At}",
            TorqueMost,
            "N m",
            NutFactor
        );
        s.Given("M", "torque to set", Torque, "N m", NutFactor);
        s.Step(
            "F low",
            "preload left, low estimate",
            "η M/(K high d)",
            $"{s["preloadKept"]} × {Torque}/({s["nutFactorHigh"]} × {d}/1000)",
            Kept,
            "N",
            NutFactor
        );
        s.Step(
            "n",
            "bolts, an even number",
            "2 ⌈max(W op, W seat)/min(F low, Sb At)/2⌉",
            $"2 ⌈{seal.Load}/min({Kept}, {Allowed})/2⌉",
            Count,
            "-",
            ClampSeal.Form
        );
        s.Step(
            "M least",
            "least torque that surely seals",
            "M W/(n F low)",
            $"{Torque} × {seal.Load}/({Count} × {Kept})",
            TorqueLeast(seal),
            "N m",
            NutFactor
        );
    }
}
