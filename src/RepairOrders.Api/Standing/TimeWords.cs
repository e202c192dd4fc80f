using System.Globalization;

namespace RepairOrders.Api.Standing;

/// <summary>Spans of time as a flag tells them.</summary>
internal static class TimeWords
{
    /// <summary>"3 days", "1 day", "14 h", "20 min"; part days and hours are dropped.</summary>
    public static string Of(TimeSpan time) =>
        time.Duration() switch
        {
            { TotalDays: >= 2 } t => Plural((int)t.TotalDays, "day"),
            { TotalHours: >= 1 } t => $"{(int)t.TotalHours} h",
            var t => $"{(int)t.TotalMinutes} min",
        };

    public static string Days(int days) => Plural(Math.Abs(days), "day");

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The moment on the clock of the site.</summary>
    public static string Moment(DateTimeOffset at, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(at, zone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Plural(int count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
