using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;
using RepairOrders.Engineering.Life;
using UnitsNet;

namespace RepairOrders.Api.Revisiting;

/// <summary>What walls read at a visit say: against their forecast, and of the life that is left.</summary>
internal static class Forecasts
{
    /// <summary>What a hand-held reading may be off. Common practice, no source.</summary>
    public const double ReadingErrorMm = 0.1;

    public static SignedVisit Of(RepairOrder order, RecordVisit ask, DateTimeOffset doneAt, bool countersign)
    {
        var readings = ask.Readings ?? [];
        var rate = Rate(order);
        var walls = readings.Select(r => Read(order, r, rate)).ToList();
        var faster = walls.Zip(readings).Where(w => w.First.Below).Select(w => RateSince(order, w.Second)).Max();
        var now = faster > (rate ?? 0) ? faster : rate;
        var end = EndInForce.Of(order);
        var day = order.Site.Today(doneAt);
        var life = order.ApprovedDesign is { } design ? Life(order, design, readings, now) : null;
        var moved = life is { } days && end is { } current ? MovedIn(day, current.On, days) : null;
        return new(ask, doneAt, countersign, walls, now, life, moved, end?.On);
    }

    /// <summary>The rate in force: that of the last visit that reckoned one, else the assessment's.</summary>
    private static double? Rate(RepairOrder order)
    {
        var assessed = order.InRound<Assessment>().LastOrDefault();
        var visited = order
            .InRound<Visit>()
            .LastOrDefault(v => v.Asked.RateMmPerYear is not null && v.At > (assessed?.At ?? DateTimeOffset.MinValue));
        return visited?.Asked.RateMmPerYear ?? assessed?.Asked.Judgement.RateMmPerYear;
    }

    private static ForecastRead Read(RepairOrder order, ThicknessReading reading, double? rate)
    {
        var before = Before(order, reading);
        var forecast =
            before is not null && rate is { } r
                ? Math.Max(0, before.Wall.Value - r * Years(before.On, reading.On))
                : (double?)null;
        return new(reading.Spot, reading.Wall.Value, forecast, reading.Wall.Value < forecast - ReadingErrorMm);
    }

    private static double? RateSince(RepairOrder order, ThicknessReading reading)
    {
        var before = Before(order, reading)!;
        var years = Math.Max(Years(before.On, reading.On), 1 / CorrosionRate.DaysPerYear);
        return (before.Wall.Value - reading.Wall.Value) / years;
    }

    // The last reading of the same spot; of a spot never read before, the least of its kind stands for it.
    private static ThicknessReading? Before(RepairOrder order, ThicknessReading reading)
    {
        var earlier = order
            .InRound<Assessment>()
            .SelectMany(a => a.Asked.Ask.Readings)
            .Concat(order.InRound<Visit>().SelectMany(v => v.Asked.Ask.Readings ?? []))
            .Where(r => r.Where == reading.Where && r.On <= reading.On)
            .ToList();
        return earlier.Where(r => Same(r.Spot, reading.Spot)).MaxBy(r => r.On) ?? earlier.MinBy(r => r.Wall.Value);
    }

    // Where the repair holds the pressure the wall beside it counts, where it only seals every wall does.
    private static double? Life(
        RepairOrder order,
        Design design,
        IReadOnlyList<ThicknessReading> readings,
        double? rate
    )
    {
        var method = design.Asked.Method;
        var holds = method.PressureHeldBar is not null;
        var walls = readings.Where(r => !holds || r.Where == ReadingPlace.Beside).Select(r => r.Wall.Value).ToList();
        var required = order.All<Assessment>().FirstOrDefault(a => a.Id == design.Asked.Assessment);
        var least = holds ? method.LeastWallMm : required?.Asked.Judgement.RequiredWallMm;
        if (walls.Count == 0 || rate is not { } r || least is not { } need)
            return null;
        return RemainingLife
            .Of(
                Length.FromMillimeters(walls.Min()),
                Length.FromMillimeters(need),
                CorrosionRate.FromMillimetresPerYear(r)
            )
            ?.Days;
    }

    private static DateOnly? MovedIn(DateOnly day, DateOnly end, double lifeDays)
    {
        var reckoned = EndDate.Earliest(
            new EndDateAsk(day, end, null, Duration.FromDays(lifeDays), day, null, null, null)
        );
        return reckoned.Result.On < end ? reckoned.Result.On : null;
    }

    private static double Years(DateOnly from, DateOnly to) =>
        (to.DayNumber - from.DayNumber) / CorrosionRate.DaysPerYear;

    private static bool Same(string a, string b) =>
        string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
}
