using System.Globalization;
using System.Text;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Parts;

/// <summary>How dates, choices and distances in time are written.</summary>
internal static class Show
{
    public static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "—";

    public static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A figure to as many digits as it is worth: four significant ones.</summary>
    public static string Figure(double value) =>
        Math.Abs(value) >= 10000
            ? value.ToString("0", CultureInfo.InvariantCulture)
            : value.ToString("G4", CultureInfo.InvariantCulture);

    /// <summary>A moment on the clock of the site.</summary>
    public static string Moment(DateTimeOffset at, TimeZoneInfo? zone) =>
        Moment(zone is null ? at : TimeZoneInfo.ConvertTime(at, zone));

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
