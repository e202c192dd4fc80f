using System.Globalization;

namespace RepairOrders.Api.Charts;

/// <summary>An axis whose ticks are round figures, or the first days of months and years.</summary>
internal sealed record Axis(double Least, double Most, IReadOnlyList<double> Ticks, Func<double, string> Words)
{
    private const int MostTicks = 6;
    private static readonly int[] MonthSteps = [1, 2, 3, 6, 12, 24, 60, 120, 240, 600];

    public double Share(double value) => (value - Least) / (Most - Least);

    public static Axis Round(IEnumerable<double> values, bool fromZero)
    {
        var all = values.Where(double.IsFinite).DefaultIfEmpty(0).ToList();
        var (least, most) = (fromZero ? Math.Min(0, all.Min()) : all.Min(), all.Max());
        if (most - least < 1e-9)
            (least, most) = fromZero ? (least, least + 1) : (least - 1, most + 1);
        var rough = (most - least) / 5;
        var ten = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = ten * new[] { 1.0, 2, 2.5, 5, 10 }.First(s => s * ten >= rough * 0.999);
        // A curve that begins where its axis does would lie on it.
        var (from, to) = (Math.Floor(least / step + (fromZero ? 1e-9 : -1e-9)), Math.Ceiling(most / step - 1e-9));
        List<double> ticks = [.. Enumerable.Range(0, (int)(to - from) + 1).Select(i => (from + i) * step)];
        return new(from * step, to * step, ticks, Figure);
    }

    /// <summary>Days by their number, with ticks at the first of months; of weeks where that is too wide.</summary>
    public static Axis Calendar(IEnumerable<double> days)
    {
        var all = days.DefaultIfEmpty(0).ToList();
        var (first, last) = (DateOnly.FromDayNumber((int)all.Min()), DateOnly.FromDayNumber((int)all.Max()));
        if (last.DayNumber - first.DayNumber < 62)
            return Weeks(first, last);
        var months = 12 * (last.Year - first.Year) + last.Month - first.Month + 1;
        var step = MonthSteps.First(s => months <= MostTicks * s || s == MonthSteps[^1]);
        var at =
            step >= 12
                ? new DateOnly(first.Year, 1, 1)
                : new DateOnly(first.Year, first.Month - (first.Month - 1) % step, 1);
        List<double> ticks = [at.DayNumber];
        for (; at < last; ticks.Add(at.DayNumber))
            at = at.AddMonths(step);
        return new(ticks[0], ticks[^1], ticks, step >= 12 ? Year : Month);
    }

    private static Axis Weeks(DateOnly first, DateOnly last)
    {
        var step = Math.Max(1, (int)Math.Ceiling((last.DayNumber - first.DayNumber + 1) / (7.0 * MostTicks))) * 7;
        List<double> ticks = [first.DayNumber];
        while (ticks[^1] < last.DayNumber)
            ticks.Add(ticks[^1] + step);
        if (ticks.Count == 1)
            ticks.Add(ticks[0] + step);
        return new(ticks[0], ticks[^1], ticks, d => Said(d, "MM-dd"));
    }

    private static string Year(double day) => Said(day, "yyyy");

    private static string Month(double day) => Said(day, "yyyy-MM");

    private static string Said(double day, string format) =>
        DateOnly.FromDayNumber((int)Math.Round(day)).ToString(format, CultureInfo.InvariantCulture);

    private static string Figure(double value) =>
        (Math.Abs(value) < 1e-9 ? 0 : value).ToString("0.####", CultureInfo.InvariantCulture);
}
