using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Life;

// The rules for bad data, in the order they bite: which readings count, which pairs give a rate, which rate governs.
internal sealed class RateChoice
{
    private static readonly Clause Rate = new("API 570", "7.1.1");
    private static readonly Clause BadData = new("rules for bad thickness data", "", Provenance.OwnRule);

    private readonly WallHistory history;
    private readonly Working working = new();
    private readonly List<Finding> findings = [];
    private readonly List<(RateBasis Basis, double Rate)> candidates = [];

    public RateChoice(WallHistory history)
    {
        this.history = history;
        var t_nom = Require.Between("nominalWallMm", history.NominalWall.Millimeters, 0.001, 10_000);
        foreach (var reading in history.Readings)
        {
            // More than a quarter over nominal is a misreading or another pipe; no rate can be had from it.
            Require.Between("readings.wallMm", reading.Wall.Millimeters, 0, 1.25 * t_nom);
            if (history.Commissioned is { } day && reading.On < day)
            {
                throw new ImpossibleInputException(
                    "readings.on",
                    reading.On.ToString("O", CultureInfo.InvariantCulture),
                    Invariant($"the day of commissioning, {day:yyyy-MM-dd}, or later")
                );
            }
        }
    }

    public Calculated<CorrosionRates> Choose()
    {
        var series = Series();
        var last = series[^1];
        working.Given("t_actual", "last wall read", last.Wall.Millimeters, "mm", Rate);

        var longTerm = LongTerm(series, last);
        var shortTerm = ShortTerm(series, last);
        ThroughWall(last);
        var (basis, rate) = Governing();
        return new(
            new(last.Place, last.Wall, last.On, AsSpeed(longTerm), AsSpeed(shortTerm), AsSpeed(rate), basis),
            [.. working],
            findings,
            []
        );
    }

    private List<WallReading> Series()
    {
        var usable = history.Readings.Where(r => !(history.Pitting && r.IsAverage)).ToList();
        if (usable.Count < history.Readings.Count)
        {
            Watch(
                "average-excluded",
                "Averages are left out: where the damage is pitting only the deepest pit gives a rate."
            );
        }
        if (usable.Count == 0)
        {
            throw new ImpossibleInputException(
                "readings",
                history.Readings.Count == 0 ? "empty" : "averages only",
                "at least one reading that is not an average over pits"
            );
        }
        var lastDay = usable.Max(r => r.On);
        var place = usable.Where(r => r.On == lastDay).MinBy(r => r.Wall.Millimeters)!.Place;
        var there = usable.Where(r => r.Place == place).ToList();
        if (there.Count < usable.Count)
        {
            Watch(
                "other-place",
                Invariant($"{usable.Count - there.Count} readings of other places give no rate for {place}.")
            );
        }
        return [.. there.GroupBy(r => r.On).Select(day => day.MinBy(r => r.Wall.Millimeters)!).OrderBy(r => r.On)];
    }

    private double? LongTerm(List<WallReading> series, WallReading last)
    {
        var first = series[0];
        if (YearsBetween(first.On, last.On) >= CorrosionRate.LeastYearsBetween)
        {
            return Pair("CR_LT", "long-term rate", RateBasis.LongTerm, first, last);
        }
        if (history.Commissioned is not { } start || YearsBetween(start, last.On) < CorrosionRate.LeastYearsBetween)
        {
            return null;
        }
        Watch(
            "initial-wall-nominal",
            "No earlier reading far enough back: the nominal wall on the day of commissioning stands for it, though a pipe may be 12.5 % thinner when new."
        );
        var asNew = new WallReading(start, history.NominalWall, last.Place, last.Instrument);
        return Pair("CR_LT", "long-term rate, from the nominal wall", RateBasis.LongTerm, asNew, last);
    }

    private double? ShortTerm(List<WallReading> series, WallReading last)
    {
        if (series.Count < 2)
        {
            return null;
        }
        var before = series[^2];
        var years = YearsBetween(before.On, last.On);
        if (years >= CorrosionRate.LeastYearsBetween)
        {
            // Of two readings the long-term rate has told all.
            return series.Count == 2 ? null : Pair("CR_ST", "short-term rate", RateBasis.ShortTerm, before, last);
        }
        findings.Add(
            new(
                "interval-short",
                Severity.Watch,
                Invariant($"The last two readings are {years:G3} y apart; under 0.5 y no short-term rate is taken."),
                years,
                CorrosionRate.LeastYearsBetween,
                "y",
                BadData
            )
        );
        return null;
    }

    private double Pair(string symbol, string words, RateBasis basis, WallReading first, WallReading last)
    {
        var t1 = first.Wall.Millimeters;
        var t2 = last.Wall.Millimeters;
        var years = YearsBetween(first.On, last.On);
        var rate = working.Step(
            symbol,
            words,
            "(t_first − t_last)/years",
            $"({t1} − {t2})/{years}",
            CorrosionRate
                .Between(first.Wall, last.Wall, Duration.FromDays(years * CorrosionRate.DaysPerYear))
                .MillimetresPerYear(),
            "mm/y",
            Rate
        );
        if (!string.Equals(first.Instrument, last.Instrument, StringComparison.OrdinalIgnoreCase))
        {
            Watch(
                "instruments-differ",
                Invariant(
                    $"Readings of {first.On:yyyy-MM-dd} and {last.On:yyyy-MM-dd} come from different probes ({first.Instrument}, {last.Instrument}); part of the difference may be theirs."
                )
            );
        }
        if (rate < 0)
        {
            Watch(
                "rate-negative",
                Invariant(
                    $"The {words} is negative ({rate:G3} mm/y): walls do not grow, this is scatter of measurement and counts as 0."
                )
            );
        }
        candidates.Add((basis, Math.Max(0, rate)));
        return rate;
    }

    private void ThroughWall(WallReading last)
    {
        if (!history.ThroughWall)
        {
            return;
        }
        if (history.Commissioned is not { } start || start == last.On)
        {
            findings.Add(
                new(
                    "age-unknown",
                    Severity.Fail,
                    "The wall is through and the pipe's age is not known, so the local rate has no lower bound.",
                    null,
                    null,
                    null,
                    BadData
                )
            );
            return;
        }
        var age = YearsBetween(start, last.On);
        var t_nom = history.NominalWall.Millimeters;
        var rate = working.Step(
            "CR_tw",
            "least local rate, since the wall is through",
            "t_nom/age",
            $"{t_nom}/{age}",
            t_nom / age,
            "mm/y",
            new("through-wall rate", "", Provenance.Derived)
        );
        candidates.Add((RateBasis.ThroughWall, rate));
        Watch(
            "through-wall-rate",
            Invariant(
                $"The wall is through: the local rate is at least {rate:G3} mm/y, whatever the circuit's average."
            )
        );
    }

    private (RateBasis Basis, double? Rate) Governing()
    {
        if (candidates.Count == 0)
        {
            findings.Add(
                new(
                    "rate-not-measured",
                    Severity.Fail,
                    "No two readings of this spot 0.5 y or more apart, and no day of commissioning: no rate, so no remaining life. Enter one, or revisit by the default interval.",
                    null,
                    null,
                    null,
                    BadData
                )
            );
            return (RateBasis.Unknown, null);
        }
        var floor = Require.Between(
            "corrosionRateFloorMmPerYear",
            (history.Floor ?? CorrosionRate.DefaultFloor).MillimetresPerYear(),
            0,
            1000
        );
        var (basis, rate) = candidates.MaxBy(c => c.Rate);
        if (rate < floor)
        {
            findings.Add(
                new(
                    "rate-floor",
                    Severity.Watch,
                    Invariant(
                        $"Measured {rate:G3} mm/y; reckoned with the floor of {floor:G3} mm/y, so that no wall lives for ever."
                    ),
                    rate,
                    floor,
                    "mm/y",
                    BadData
                )
            );
            (basis, rate) = (RateBasis.Floor, floor);
        }
        working.Step(
            "CR",
            "rate to reckon with, the greatest",
            "max(CR_LT, CR_ST, CR_tw, floor)",
            $"max({string.Join(", ", candidates.Select(c => c.Rate.ToString("G5", CultureInfo.InvariantCulture)))}, {floor})",
            rate,
            "mm/y",
            Rate
        );
        return (basis, rate);
    }

    private void Watch(string code, string words) =>
        findings.Add(new(code, Severity.Watch, words, null, null, null, BadData));

    private static double YearsBetween(DateOnly first, DateOnly last) =>
        (last.DayNumber - first.DayNumber) / CorrosionRate.DaysPerYear;

    private static Speed? AsSpeed(double? rate) => rate is { } r ? CorrosionRate.FromMillimetresPerYear(r) : null;
}
