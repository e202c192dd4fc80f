using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>What a data sheet says of a material's cure. Setting hard enough to be loaded and full hardness are two times.</summary>
/// <param name="Reference">Temperature both times are stated at, °C.</param>
/// <param name="SetForLoad">Time at the reference until it may be loaded and tested, h.</param>
/// <param name="FullHardness">Time at the reference until fully hard, h.</param>
/// <param name="Least">Least cure temperature, °C; below it nothing is credited.</param>
/// <param name="TestedLeast">Lowest temperature the maker gives times for, °C; nothing where it is the reference.</param>
/// <param name="TestedGreatest">Highest temperature the maker gives times for, °C; nothing where it is the reference.</param>
/// <param name="Law">The material's own law; nothing to take the safe pair of ten-degree ratios.</param>
public sealed record CureData(
    Temperature Reference,
    Duration SetForLoad,
    Duration FullHardness,
    Temperature Least,
    Temperature? TestedLeast = null,
    Temperature? TestedGreatest = null,
    RateLaw? Law = null
);

/// <summary>Times at one steady temperature.</summary>
/// <param name="Factor">Rate against the reference, -; 0 where nothing cures.</param>
/// <param name="SetForLoad">Time until it may be loaded, h; nothing where it never sets.</param>
/// <param name="FullHardness">Time until fully hard, h; nothing where it never does.</param>
public sealed record CureTimes(double Factor, Duration? SetForLoad, Duration? FullHardness);

/// <summary>How far a cure has come.</summary>
/// <param name="Equivalent">Equivalent time at the reference, h.</param>
/// <param name="SetForLoad">It may be loaded and tested.</param>
/// <param name="FullyHard">It is fully hard.</param>
/// <param name="LeftToLoad">Time left until it may be loaded if the last temperature stays, h; nothing where it never would.</param>
/// <param name="LeftToHardness">Time left until fully hard if the last temperature stays, h; nothing where it never would.</param>
/// <param name="ReadyForLoadAt">When it reached or, by the forecast, will reach set-for-load; nothing where it does not.</param>
/// <param name="FullyHardAt">When it reached or, by the forecast, will reach full hardness; nothing where it does not.</param>
public sealed record CureProgress(
    Duration Equivalent,
    bool SetForLoad,
    bool FullyHard,
    Duration? LeftToLoad,
    Duration? LeftToHardness,
    DateTimeOffset? ReadyForLoadAt,
    DateTimeOffset? FullyHardAt
);

/// <summary>When a resin may be loaded, and when it is fully hard.</summary>
public static class Cure
{
    /// <summary>Kelvin beyond the tested range within which the law is still believed.</summary>
    public const double CarryK = 20;

    private static readonly Clause Rule = new(
        "cure clock",
        "rate at the interval's mean temperature",
        Provenance.OwnRule
    );
    private static readonly Clause DataSheet = new("the material's data sheet", "", Provenance.Entered);
    private static readonly Clause Reading = new("reading at the pipe", "", Provenance.Entered);

    private static readonly string[] Cautions =
    [
        "No load, pressure or heat before set-for-load, by time and by hardness.",
        "The sensor sits on the pipe: a cold pipe, or cold water flowing in it, governs, not the air.",
        "Set is not service: full hardness takes longer, and the heat of thin layers is not credited.",
    ];

    /// <summary>Times at one steady temperature.</summary>
    /// <remarks>
    /// <para>Formula: t = tref/f(T).</para>
    /// <para>Symbols: tref time at the reference, h; f rate factor of the law, -; T temperature, °C; t time at T, h.</para>
    /// <para>Validity: T at or above the least cure temperature, and within 20 K of the tested range; above it the rate at its edge is used.</para>
    /// <para>Reference: the material's data; without it the safe pair Q10 2.6 below and 1.8 above the reference (own rule).</para>
    /// </remarks>
    /// <param name="data">The material's data.</param>
    /// <param name="at">Temperature of the pipe, °C.</param>
    /// <returns>Times in h, with defaults and limits as findings.</returns>
    /// <exception cref="ImpossibleInputException">A time not above 0, full hardness before set-for-load, or a temperature outside −60 to 300 °C.</exception>
    /// <example>2 h at 25 °C, no product data, pipe at 15 °C: f = 2.6^(−1) = 0.38462; 5.2 h.</example>
    public static Calculated<CureTimes> At(CureData data, Temperature at)
    {
        var clock = new Clock(data);
        var T = CureRate.Celsius("temperatureC", at);
        var working = new Working();
        working.Given("T", "temperature of the pipe", T, "°C", Reading);
        var f = clock.Step(working, T);
        var set = Left(clock.SetForLoad, f);
        var hard = Left(clock.FullHardness, f);
        if (f > 0)
        {
            working.Step("t1", "set for load", "tset/f", $"{clock.SetForLoad}/{f}", clock.SetForLoad / f, "h", Rule);
            working.Step(
                "t2",
                "full hardness",
                "tfull/f",
                $"{clock.FullHardness}/{f}",
                clock.FullHardness / f,
                "h",
                Rule
            );
        }

        return new(new(f, set, hard), working, [.. clock.Findings([T])], Cautions);
    }

    /// <summary>How far the cure has come over a temperature log, what is left, and when it is ready by a forecast.</summary>
    /// <remarks>
    /// <para>Formula: te = Σ f(Tm)·Δt over intervals of at most 2 h; left = (tref − te)/f(last T).</para>
    /// <para>Symbols: Tm mean temperature of an interval, °C; Δt its length, h; f rate factor of the law, -; te equivalent time, h; tref time at
    /// the reference, h.</para>
    /// <para>Validity: sensor on the pipe; nothing is credited below the least cure temperature or across a gap over 2 h; above 20 K beyond the
    /// tested range the rate at its edge is used, 20 K below it nothing is credited.</para>
    /// <para>Reference: derived here, see <see cref="EquivalentTime.Of"/>.</para>
    /// </remarks>
    /// <param name="data">The material's data.</param>
    /// <param name="log">Readings on the pipe from the end of mixing to now, in order.</param>
    /// <param name="forecast">Pipe temperatures expected after the log's end, in order; empty where none is known.</param>
    /// <returns>Progress, with gaps, cold spells and defaults as findings.</returns>
    /// <exception cref="ImpossibleInputException">No reading, readings out of order, a forecast that starts before the log's end, or a value out of range.</exception>
    /// <example>Readings of 15, 15 and 25 °C at 8, 9 and 10 o'clock, reference 25 °C, no product data: 2.6^(−1) + 2.6^(−0.5) = 1.0048 h.</example>
    public static Calculated<CureProgress> Over(
        CureData data,
        IReadOnlyList<LogReading> log,
        IReadOnlyList<LogReading> forecast
    )
    {
        ArgumentNullException.ThrowIfNull(forecast);
        var clock = new Clock(data);
        var past = TemperatureLog.Intervals(log);
        if (forecast.Count > 0 && forecast[0].At <= log[^1].At)
        {
            throw new ImpossibleInputException(
                "forecast[0].at",
                forecast[0].At.ToString("o", CultureInfo.InvariantCulture),
                "later than the log's last reading"
            );
        }

        var all = TemperatureLog.Intervals([.. log, .. forecast]);
        var working = new Working();
        var credits = past.Select(i => clock.Credit(i, working)).ToList();
        var te = working.Step("te", "equivalent time", "Σ f·Δt", $"{Sum(credits)}", credits.Sum(), "h", Rule);

        var f = clock.Factor(log[^1].Temperature.DegreesCelsius);
        var progress = new CureProgress(
            Duration.FromHours(te),
            te >= clock.SetForLoad,
            te >= clock.FullHardness,
            Left(Math.Max(0, clock.SetForLoad - te), f),
            Left(Math.Max(0, clock.FullHardness - te), f),
            Reached(clock, log[0].At, all, clock.SetForLoad),
            Reached(clock, log[0].At, all, clock.FullHardness)
        );
        List<Finding> findings =
        [
            Milestone("set-for-load", "Set for load", te, clock.SetForLoad, Severity.Fail),
            Milestone("full-hardness", "Full hardness", te, clock.FullHardness, Severity.Watch),
            .. clock.Findings([.. past.Select(i => i.Mean.DegreesCelsius)]),
            .. Gaps([.. log, .. forecast], log.Count),
        ];
        return new(progress, working, findings, Cautions);
    }

    // A long log is not written out twice: its intervals stand above.
    private static string Sum(List<double> credits) =>
        credits.Count is > 0 and <= 24
            ? string.Join(" + ", credits.Select(c => Text($"{c:G5}")))
            : $"the {credits.Count} intervals above";

    private static Duration? Left(double hours, double f) =>
        hours == 0 ? Duration.Zero
        : f > 0 ? Duration.FromHours(hours / f)
        : null;

    private static DateTimeOffset? Reached(
        Clock clock,
        DateTimeOffset start,
        IReadOnlyList<CureInterval> intervals,
        double need
    )
    {
        var te = 0.0;
        foreach (var interval in intervals)
        {
            var credit = clock.Credit(interval);
            if (credit > 0 && te + credit >= need)
            {
                return start + interval.Length.ToTimeSpan() * ((need - te) / credit);
            }

            te += credit;
            start += interval.Length.ToTimeSpan();
        }

        return null;
    }

    private static Finding Milestone(string code, string words, double te, double need, Severity otherwise) =>
        te >= need
            ? new(
                code,
                Severity.Pass,
                Text($"{words}: {te:F2} h at the reference reached, {need:F2} h needed."),
                te,
                need,
                "h",
                DataSheet
            )
            : new(
                code + "-not-reached",
                otherwise,
                Text($"{words} is not reached: {te:F2} h at the reference of {need:F2} h needed."),
                te,
                need,
                "h",
                DataSheet,
                otherwise == Severity.Fail ? LimitKind.Absolute : LimitKind.ByDeviation
            );

    private static IEnumerable<Finding> Gaps(IReadOnlyList<LogReading> readings, int past)
    {
        for (var i = 1; i < readings.Count; i++)
        {
            var gap = (readings[i].At - readings[i - 1].At).TotalHours;
            if (gap > TemperatureLog.LongestGapH)
            {
                var where = i < past ? "log" : "forecast";
                yield return new(
                    where + "-gap",
                    Severity.Watch,
                    Text(
                        $"The {where} has a gap of {gap:F1} h after {readings[i - 1].At:yyyy-MM-dd HH:mm}; nothing is credited across it."
                    ),
                    gap,
                    TemperatureLog.LongestGapH,
                    "h",
                    Rule
                );
            }
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // The data unwrapped and checked once, with the limits that hold for every interval.
    private sealed class Clock
    {
        private readonly CureData data;
        private readonly RateLaw law;
        private readonly double least;
        private readonly double testedLeast;
        private readonly double testedGreatest;

        public Clock(CureData data)
        {
            ArgumentNullException.ThrowIfNull(data);
            this.data = data;
            law = data.Law ?? Q10Law.SafeForCure;
            var reference = CureRate.Celsius("referenceTemperatureC", data.Reference);
            least = CureRate.Celsius("leastTemperatureC", data.Least);
            testedLeast = Math.Min(
                reference,
                data.TestedLeast is { } low ? CureRate.Celsius("testedLeastC", low) : reference
            );
            testedGreatest = Math.Max(
                reference,
                data.TestedGreatest is { } high ? CureRate.Celsius("testedGreatestC", high) : reference
            );
            SetForLoad = Require.Positive("setForLoadH", data.SetForLoad.Hours);
            FullHardness = Require.Between("fullHardnessH", data.FullHardness.Hours, SetForLoad, 1e6);
        }

        public double SetForLoad { get; }

        public double FullHardness { get; }

        public double Factor(double T) =>
            T < least || T < testedLeast - CarryK
                ? 0
                : law.Factor(Temperature.FromDegreesCelsius(Math.Min(T, testedGreatest + CarryK)), data.Reference);

        public double Step(Working working, double T)
        {
            var f = Factor(T);
            return f == 0
                ? working.Step("f", "rate factor", "0 below the least cure temperature", $"{T} °C", 0, "-", DataSheet)
                : working.Step(
                    "f",
                    "rate factor",
                    law.Symbols,
                    law.Numbers(Math.Min(T, testedGreatest + CarryK), data.Reference.DegreesCelsius),
                    f,
                    "-",
                    law.Source
                );
        }

        public double Credit(CureInterval interval, Working? working = null)
        {
            var dt = interval.Length.Hours;
            if (dt > TemperatureLog.LongestGapH)
            {
                working?.Step("Δte", "gap", "0 over 2 h", $"{dt} h", 0, "h", Rule);
                return 0;
            }

            var f = Factor(interval.Mean.DegreesCelsius);
            if (working is not null)
                Step(working, interval.Mean.DegreesCelsius);
            working?.Step(
                "Δte",
                Text($"interval at {interval.Mean.DegreesCelsius:F1} °C"),
                "f·Δt",
                $"{f} × {dt}",
                f * dt,
                "h",
                law.Source
            );
            return f * dt;
        }

        public IEnumerable<Finding> Findings(IReadOnlyList<double> temperatures)
        {
            if (data.Law is null)
            {
                yield return new(
                    "cure-law-default",
                    Severity.Watch,
                    "No law for this material was given: the safe pair of ten-degree ratios is used, 2.6 below the reference and 1.8 above.",
                    null,
                    null,
                    null,
                    law.Source
                );
            }

            if (temperatures.Any(T => T < least))
            {
                yield return new(
                    "below-least-cure-temperature",
                    Severity.Watch,
                    Text($"It was {temperatures.Min():F1} °C at the coldest; below {least:F1} °C nothing is credited."),
                    temperatures.Min(),
                    least,
                    "°C",
                    DataSheet
                );
            }

            if (temperatures.Any(T => T >= least && T < testedLeast - CarryK))
            {
                yield return Beyond(temperatures.Min(), testedLeast - CarryK, "nothing is credited below that");
            }

            if (temperatures.Any(T => T > testedGreatest + CarryK))
            {
                yield return Beyond(temperatures.Max(), testedGreatest + CarryK, "the rate at that edge is used");
            }
        }

        private static Finding Beyond(double T, double edge, string what) =>
            new(
                "beyond-tested-range",
                Severity.Watch,
                Text($"{T:F1} °C is beyond {edge:F1} °C, the tested range and 20 K: {what}."),
                T,
                edge,
                "°C",
                Rule
            );
    }
}
