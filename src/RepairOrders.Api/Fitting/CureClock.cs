using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Curing;
using UnitsNet;

namespace RepairOrders.Api.Fitting;

/// <summary>
/// How far the cure has come by the temperatures measured on the pipe. The maker's times of every mix count, and the design's own;
/// the repair is set when all of them are.
/// </summary>
internal static class CureClock
{
    // Where nobody states a least cure temperature (from memory, often 5 °C).
    private const double LeastCureC = 5;

    /// <param name="order">The order.</param>
    /// <param name="now">One more reading, taken now; nothing where none is.</param>
    public static IReadOnlyList<CureClockView> Of(RepairOrder order, LogReading? now = null)
    {
        var plan = WorkPlan.Of(order);
        var clocks = order
            .InRound<Mix>()
            .Where(m => m.Asked.Limits.SetForLoad is not null)
            .Select(m => Clock($"{m.Asked.Words}, batch {m.Asked.Number}", m.At, Data(m.Asked.Limits), order, now));
        if (plan is not null && Cures(plan) && Begun(order) is { } begun)
            clocks = clocks.Append(Clock("the repair, by its design,", begun, Data(plan.Design), order, now));
        return [.. clocks];
    }

    private static bool Cures(WorkPlan plan) => plan.Design.SetForLoadHours > 0;

    /// <summary>Something cures and is not set for load at the temperature measured.</summary>
    public static Objection? NotSet(RepairOrder order, LogReading? now = null)
    {
        var clocks = Of(order, now);
        var open = clocks.FirstOrDefault(c => !c.SetForLoad);
        return open is null && (clocks.Count > 0 || !Cures(WorkPlan.Of(order)!))
            ? null
            : new Objection(
                "not-set-for-load",
                open is null
                    ? "The repair cures, and nothing on record says when that began."
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"Not set for load: {open.Words} has {open.EquivalentHours:0.0} h of the {open.SetForLoadHours:0.0} h it needs, by the temperatures on the pipe. {Ready(order, open)} Readings more than two hours apart count for nothing."
                    ),
                "technician, once it has set"
            );
    }

    private static string Ready(RepairOrder order, CureClockView clock) =>
        clock switch
        {
            { LastReadingC: null } => "No temperature was read on it yet.",
            { SetForLoadAt: { } at } => string.Create(
                CultureInfo.InvariantCulture,
                $"At {clock.LastReadingC:0.#} °C it is set by {TimeZoneInfo.ConvertTime(at, TimeZoneInfo.FindSystemTimeZoneById(order.Site.TimeZone)):yyyy-MM-dd HH:mm}."
            ),
            _ => string.Create(CultureInfo.InvariantCulture, $"At {clock.LastReadingC:0.#} °C it never sets: warm it."),
        };

    /// <summary>
    /// The temperatures that count for the repair's own cure, each with the hours at the reference that it brought it to; no more
    /// than <paramref name="most"/> of them. Empty where nothing cures or nothing was read.
    /// </summary>
    public static IReadOnlyList<(LogReading Read, double Hours)> Course(RepairOrder order, int most)
    {
        if (WorkPlan.Of(order) is not { } plan || !Cures(plan) || Begun(order) is not { } begun)
            return [];
        var log = Log(order, begun, null);
        var every = Math.Max(1, (log.Count + most - 1) / most);
        return
        [
            .. Enumerable
                .Range(0, log.Count)
                .Where(i => i % every == 0 || i == log.Count - 1)
                .Select(i =>
                    (
                        log[i],
                        i == 0 ? 0 : Cure.Over(Data(plan.Design), log.GetRange(0, i + 1), []).Result.Equivalent.Hours
                    )
                ),
        ];
    }

    private static DateTimeOffset? Begun(RepairOrder order) =>
        order.InRound<Mix>().LastOrDefault()?.At ?? order.InRound<HoldPointRelease>().LastOrDefault()?.At;

    private static CureClockView Clock(
        string words,
        DateTimeOffset since,
        CureData data,
        RepairOrder order,
        LogReading? now
    )
    {
        var log = Log(order, since, now);
        if (log.Count == 0)
            return new(
                words,
                since,
                null,
                null,
                0,
                data.SetForLoad.Hours,
                data.FullHardness.Hours,
                false,
                false,
                null,
                null,
                []
            );
        var cure = Cure.Over(data, log, []);
        var progress = cure.Result;
        var last = log[^1];
        return new(
            words,
            since,
            last.At,
            last.Temperature.DegreesCelsius,
            progress.Equivalent.Hours,
            data.SetForLoad.Hours,
            data.FullHardness.Hours,
            progress.SetForLoad,
            progress.FullyHard,
            progress.ReadyForLoadAt ?? last.At + progress.LeftToLoad?.ToTimeSpan(),
            progress.FullyHardAt ?? last.At + progress.LeftToHardness?.ToTimeSpan(),
            [.. cure.Findings.Select(f => f.View())]
        );
    }

    /// <summary>
    /// Readings on the pipe from the start of the cure on, each moment once. What was read last before it stands for the start, if
    /// it was fresh.
    /// </summary>
    private static List<LogReading> Log(RepairOrder order, DateTimeOffset since, LogReading? now)
    {
        var all = order
            .InRound<ClimateReading>()
            .Select(c => new LogReading(c.At, Temperature.FromDegreesCelsius(c.Asked.Ask.Steel.Value)))
            .Concat(
                order
                    .InRound<CureReading>()
                    .SelectMany(c =>
                        c.Asked.Readings.Select(r => new LogReading(
                            r.At ?? c.At,
                            Temperature.FromDegreesCelsius(r.Pipe.Value)
                        ))
                    )
            )
            .ToList();
        if (now is not null)
            all.Add(now);
        var before = all.Where(r => r.At <= since && since - r.At <= ClimateReading.GoodFor).MaxBy(r => r.At);
        if (before is not null)
            all.Add(before with { At = since });
        // Two readings of one moment: the colder one counts.
        return
        [
            .. all.Where(r => r.At >= since)
                .GroupBy(r => r.At)
                .Select(g => g.MinBy(r => r.Temperature.DegreesCelsius)!)
                .OrderBy(r => r.At),
        ];
    }

    private static CureData Data(MaterialLimits limits) =>
        new(
            Celsius(limits.CureAt!),
            Duration.FromHours(limits.SetForLoad!.Value),
            Duration.FromHours(limits.FullHardness!.Value),
            limits.LeastCure is { } least ? Celsius(least) : Temperature.FromDegreesCelsius(LeastCureC),
            limits.CureTestedLeast is { } low ? Celsius(low) : null,
            limits.CureTestedGreatest is { } high ? Celsius(high) : null,
            limits is { Q10Below: { } below, Q10Above: { } above } ? new Q10Law(below, above) : null
        );

    private static CureData Data(MethodDesignView design) =>
        new(
            Temperature.FromDegreesCelsius(design.CureReferenceC),
            Duration.FromHours(design.SetForLoadHours),
            Duration.FromHours(Math.Max(design.SetForLoadHours, design.FullHardnessHours)),
            Temperature.FromDegreesCelsius(LeastCureC)
        );

    private static Temperature Celsius(Measure measure) => Temperature.FromDegreesCelsius(measure.Value);
}
