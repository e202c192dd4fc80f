using System.Globalization;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Engineering.Life;

// What may be asked, and the assumptions as the working prints them.
internal static class OutlivingInput
{
    private static readonly Clause Given = new("as given", "", Provenance.Entered);
    private static readonly Clause Assumed = new("assumption of the model", "", Provenance.OwnRule);
    private static readonly Clause ModifiedB31G = new("ASME B31G", "modified, 0.85 dL", Provenance.FromMemory);

    public static void Check(OutlivingAsk ask)
    {
        ArgumentNullException.ThrowIfNull(ask);
        var days = ask.By.DayNumber - ask.MeasuredOn.DayNumber;
        if (days is < 0 or > Outliving.HorizonDays)
        {
            throw new ImpossibleInputException(
                "by",
                ask.By.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                "a day within 50 years after the wall was read"
            );
        }
        Size("wallMm", ask.Wall.Millimeters, 0, 1000);
        Size("readingSpreadMm", ask.ReadingSpread.Millimeters, 0, 100);
        Size("requiredWallMm", ask.RequiredWall.Millimeters, 0, 1000);
        Size("corrosionRateMmPerYear", ask.Rate.MillimetresPerYear(), 1e-4, 1000);
        Size("rateSpreadMmPerYear", ask.RateSpread.MillimetresPerYear(), 0, 1000);
        Size("wallRateCorrelation", ask.WallRateCorrelation, -1, 1);
        Size("targetProbability", ask.TargetProbability, 1e-6, 0.999999);
        Size("samples", ask.Samples, 1_000, 10_000_000);
        if (ask.Strength is { } need)
        {
            Check(need);
        }
    }

    private static void Check(StrengthNeed need)
    {
        var D = need.OutsideDiameter.Millimeters;
        Size("outsideDiameterMm", D, 1, 10_000);
        Size("fullWallMm", need.FullWall.Millimeters, 0.1, D / 2);
        Size("axialLengthMm", need.AxialLength.Millimeters, 0, 1e6);
        Size("axialLengthSpreadMm", need.AxialLengthSpread.Millimeters, 0, 1e6);
        Size("flowStressMpa", need.FlowStress.Megapascals, 1, 5000);
        Size("pressureMpa", need.Pressure.Megapascals, 0, 1000);
        Size("pressureSpreadMpa", need.PressureSpread.Megapascals, 0, 1000);
        Size("safetyFactor", need.SafetyFactor, 1, 10);
    }

    private static void Size(string field, double value, double least, double greatest) =>
        Require.Between(field, value, least, greatest);

    public static void Note(Working working, OutlivingAsk ask, in OutlivingModel model, double years)
    {
        working.Given("T", "time from the reading to the date", years, "y", Given);
        working.Given("w", "wall read; its error is normal and has no bias", model.Wall, "mm", Given);
        working.Given("s_w", "standard deviation of a reading", model.ReadingSpread, "mm", Given);
        working.Given("r", "mean rate; lognormal, steady in time", ask.Rate.MillimetresPerYear(), "mm/y", Given);
        working.Given("s_r", "standard deviation of the rate", ask.RateSpread.MillimetresPerYear(), "mm/y", Given);
        var (r, s_r) = (ask.Rate.MillimetresPerYear(), ask.RateSpread.MillimetresPerYear());
        working.Step(
            "σ",
            "log-standard deviation of the rate",
            "√(ln(1 + (s_r/r)²))",
            $"√(ln(1 + ({s_r}/{r})²))",
            model.RateSigma,
            "-",
            Assumed
        );
        working.Step(
            "μ",
            "log-mean of the rate",
            "ln r − σ²/2",
            $"ln {r} − {model.RateSigma}²/2",
            model.RateMu,
            "-",
            Assumed
        );
        working.Given("ρ", "correlation of true wall and true rate", model.Correlation, "-", Assumed);
        working.Given("t_req", "wall needed", model.RequiredWall, "mm", Given);
        if (ask.Strength is { } need)
        {
            Note(working, need, model);
        }
        working.Given("n", "samples", ask.Samples, "-", Given);
        working.Given("seed", "seed of the samples", ask.Seed, "-", Given);
    }

    private static void Note(Working working, StrengthNeed need, in OutlivingModel model)
    {
        working.Given("D", "outside diameter", model.Diameter, "mm", Given);
        working.Given("t", "full wall, taken as exact", model.FullWall, "mm", Given);
        working.Given("L", "axial length at the date; its error is normal", model.Length, "mm", Given);
        working.Given("s_L", "standard deviation of the length", model.LengthSpread, "mm", Given);
        working.Given("Sf", "flow stress, taken as exact", model.FlowStress, "MPa", Given);
        working.Given("P", "greatest gauge pressure until the date; normal", need.Pressure.Megapascals, "MPa", Given);
        working.Given("s_P", "standard deviation of the pressure", need.PressureSpread.Megapascals, "MPa", Given);
        working.Given("SF", "safety factor on the pressure", need.SafetyFactor, "-", Given);
        working.Given(
            "0.85",
            "shape of the loss, modified B31G; no error of the method itself",
            0.85,
            "-",
            ModifiedB31G
        );
        working.Given(
            "d/t",
            "depth past which no strength is credited",
            OutlivingModel.DeepestShare,
            "-",
            ModifiedB31G
        );
    }
}
