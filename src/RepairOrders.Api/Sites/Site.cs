namespace RepairOrders.Api.Sites;

/// <summary>A works with its own running numbers, time zone and people. Rights divide by site.</summary>
internal sealed class Site
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    /// <summary>The first part of an order's number: <c>mill</c>.</summary>
    public string ShortName { get; init; } = "";
    public string Name { get; set; } = "";
    public string TimeZone { get; set; } = "Etc/UTC";

    /// <summary>The last order number given; numbers are never reused.</summary>
    public int LastNumber { get; set; }

    /// <summary>The calendar day at the site.</summary>
    public DateOnly Today(DateTimeOffset at) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, TimeZoneInfo.FindSystemTimeZoneById(TimeZone)).DateTime);
}
