using RepairOrders.Api.Sites;

namespace RepairOrders.Api.Standing;

/// <summary>Days of a site as moments.</summary>
internal static class SiteClock
{
    public static TimeZoneInfo Zone(this Site site) => TimeZoneInfo.FindSystemTimeZoneById(site.TimeZone);

    /// <summary>The moment a day is over at the site.</summary>
    public static DateTimeOffset EndOf(this Site site, DateOnly day)
    {
        var zone = site.Zone();
        var midnight = day.AddDays(1).ToDateTime(TimeOnly.MinValue);
        // Where clocks jump at midnight, the day that follows begins an hour later.
        if (zone.IsInvalidTime(midnight))
            midnight = midnight.AddHours(1);
        return new DateTimeOffset(midnight, zone.GetUtcOffset(midnight)).ToUniversalTime();
    }

    public static DateOnly Day(this TimeZoneInfo zone, DateTimeOffset at) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);
}
