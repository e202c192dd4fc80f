using System.Globalization;
using System.Text;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Parts;

/// <summary>How dates, choices and distances in time are written.</summary>
internal static class Show
{
    public static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "—";

    /// <summary>A figure to as many digits as it is worth: four significant ones.</summary>
    public static string Figure(double value) =>
        Math.Abs(value) >= 10000
            ? value.ToString("0", CultureInfo.InvariantCulture)
            : value.ToString("G4", CultureInfo.InvariantCulture);

    /// <summary>A figure with its unit; a count has none.</summary>
    public static string Figure(double value, string unit) => unit == "-" ? Figure(value) : $"{Figure(value)} {unit}";

    /// <summary>A moment on the clock of the site, or of whoever reads.</summary>
    public static string Moment(DateTimeOffset at, TimeZoneInfo? zone) =>
        In(at, zone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The day it is in a zone; that of UTC before the browser has said its own.</summary>
    public static DateOnly Today(this TimeProvider clock, TimeZoneInfo? zone) =>
        DateOnly.FromDateTime(In(clock.GetUtcNow(), zone).DateTime);

    private static DateTimeOffset In(DateTimeOffset at, TimeZoneInfo? zone) =>
        zone is null ? at : TimeZoneInfo.ConvertTime(at, zone);

    /// <summary>A choice's name in sentence case: <c>InService</c> is "In service".</summary>
    public static string Words<T>(T choice)
        where T : struct, Enum
    {
        var words = new StringBuilder();
        foreach (var letter in choice.ToString())
            if (char.IsUpper(letter) && words.Length > 0)
                words.Append(' ').Append(char.ToLowerInvariant(letter));
            else
                words.Append(letter);
        return words.ToString();
    }

    public static string DaysLeft(int? days) =>
        days switch
        {
            null => "",
            0 => "today",
            1 => "tomorrow",
            -1 => "1 day past",
            < 0 => $"{-days} days past",
            _ => $"in {days} days",
        };

    public static Tone DaysTone(int? days) =>
        days switch
        {
            null => Tone.Go,
            < 0 => Tone.Stop,
            <= 30 => Tone.Watch,
            _ => Tone.Go,
        };
}
