using RepairOrders.Engineering.Methods;
using static System.FormattableString;

namespace RepairOrders.Engineering.Life;

// One question from samples to answer.
internal sealed class OutlivingRun
{
    private static readonly Clause Model = new("probability of outliving a date", "", Provenance.OwnRule);

    private readonly OutlivingAsk ask;
    private readonly OutlivingModel model;
    private readonly OutlivingSampler counts = new(Outliving.HorizonDays);
    private readonly int days;
    private readonly double years;
    private readonly Working working = new();
    private readonly List<Finding> findings = [];

    public OutlivingRun(OutlivingAsk ask)
    {
        this.ask = ask;
        model = new(ask);
        days = ask.By.DayNumber - ask.MeasuredOn.DayNumber;
        years = days / CorrosionRate.DaysPerYear;
    }

    private delegate double Margin(in OutlivingModel model, double years, double[] u);

    public Calculated<Outliving> Answer()
    {
        counts.Run(model, ask.Seed, ask.Samples);
        OutlivingInput.Note(working, ask, model, years);
        var wall = Shortfall("wall", counts.Wall, FirstOrder.WallMargin);
        var strength = model.AsksStrength ? Shortfall("strength", counts.Strength, FirstOrder.StrengthMargin) : null;
        var either = Sampled("P", "share of samples short in either way", counts.Either);
        var result = new Outliving(wall, strength, either, Error(either), Crosses(), Curve());
        findings.Add(Target(result));
        return new(result, [.. working], findings, []);
    }

    private Shortfall Shortfall(string words, int[] byDay, Margin margin)
    {
        var sampled = Sampled($"P_{words}", $"share of samples short in {words}", byDay);
        if (sampled * ask.Samples < 10)
        {
            Few(words, sampled * ask.Samples);
        }
        if (FirstOrder.Nearest(u => margin(model, years, u)) is not { } near)
        {
            NotFound(words);
            return new(sampled, Error(sampled), margin(model, years, new double[4]) > 0 ? 0 : 1, null);
        }
        Note(words, near);
        if (Math.Abs(near.Probability - sampled) > Math.Max(sampled, near.Probability) / 2 + 3 * Error(sampled))
        {
            Differs(words, sampled, near.Probability);
        }
        return new(sampled, Error(sampled), near.Probability, near.Beta);
    }

    private double Sampled(string symbol, string words, int[] byDay)
    {
        var count = CountBy(byDay, days);
        return working.Step(symbol, words, "n_short/n", $"{count}/{ask.Samples}", Share(count), "-", Model);
    }

    private void Note(string words, DesignPoint near)
    {
        string[] names = ["wall read", "rate", "pressure", "length"];
        var place = names.Zip(near.Point, (name, u) => Invariant($"{name} {u:+0.000;−0.000;0}"));
        working.Step(
            $"β_{words}",
            $"nearest point that falls short in {words}, in standard deviations: {string.Join(", ", place)}",
            "±√(Σu²), − where the means fall short",
            $"√({Invariant($"{near.Beta * near.Beta:G5}")})",
            near.Beta,
            "-",
            Model
        );
        working.Step(
            $"Φ_{words}",
            $"first-order estimate for {words}",
            "Φ(−β)",
            $"Φ(−({near.Beta}))",
            near.Probability,
            "-",
            Model
        );
    }

    private static long CountBy(int[] byDay, int day)
    {
        var sum = 0L;
        for (var i = 0; i <= day; i++)
        {
            sum += byDay[i];
        }
        return sum;
    }

    private double Share(long count) => count / (double)ask.Samples;

    private double Error(double share) => Math.Max(Math.Sqrt(share * (1 - share) / ask.Samples), 1.0 / ask.Samples);

    private DateOnly? Crosses()
    {
        var sum = 0L;
        for (var day = 0; day <= Outliving.HorizonDays; day++)
        {
            sum += counts.Either[day];
            if (Share(sum) >= ask.TargetProbability)
            {
                return ask.MeasuredOn.AddDays(day);
            }
        }
        return null;
    }

    private List<ShortfallBy> Curve()
    {
        var step = Math.Max(1, days / 60);
        var curve = new List<ShortfallBy>();
        var sum = 0L;
        for (var day = 0; day <= days; day++)
        {
            sum += counts.Either[day];
            if (day % step == 0 || day == days)
            {
                curve.Add(new(ask.MeasuredOn.AddDays(day), Share(sum)));
            }
        }
        return curve;
    }

    private Finding Target(Outliving result)
    {
        var crossing = result.CrossesOn is { } day
            ? Invariant($"the target is reached on {day:yyyy-MM-dd}.")
            : "the target is not reached within 50 years.";
        return new(
            "shortfall-target",
            result.Either < ask.TargetProbability ? Severity.Pass : Severity.Fail,
            Invariant(
                $"By {ask.By:yyyy-MM-dd} the probability to have fallen short is {result.Either:G3}, against a target of {ask.TargetProbability:G3}; {crossing}"
            ),
            result.Either,
            ask.TargetProbability,
            "-",
            Model
        );
    }

    private void Few(string words, double count) =>
        Watch(
            "few-samples-short",
            Invariant(
                $"Only {count:F0} samples fall short in {words}: their share is a rough figure. Go by the first-order estimate or take more samples."
            ),
            count,
            10
        );

    private void Differs(string words, double sampled, double firstOrder) =>
        Watch(
            "first-order-differs",
            Invariant(
                $"In {words} sampling gives {sampled:G3} and the first-order estimate {firstOrder:G3}: the limit is bent. Go by the samples."
            ),
            firstOrder,
            sampled
        );

    private void NotFound(string words) =>
        Watch(
            "first-order-not-found",
            $"No nearest point was found for {words}: nothing in it is uncertain, or the limit has a step. The first-order figure is that of the means alone.",
            null,
            null
        );

    private void Watch(string code, string words, double? value, double? limit) =>
        findings.Add(new(code, Severity.Watch, words, value, limit, "-", Model));
}
