using RepairOrders.Api.Figures;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sites;

/// <summary>A works with its own running numbers, time zone and people. Rights divide by site.</summary>
internal sealed class Site : IKept
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    /// <summary>The first part of an order's number: <c>mill</c>.</summary>
    public string ShortName { get; init; } = "";
    public string Name { get; set; } = "";
    public string TimeZone { get; set; } = "Etc/UTC";

    /// <summary>Its areas with their sections; a line lies in one of each.</summary>
    public List<Area> Areas { get; set; } = [];

    /// <summary>What was proposed for it beyond the first version, oldest first; only the last may wait for its second signature.</summary>
    public IReadOnlyList<FiguresVersion> Figures { get; set; } = [];

    public FiguresVersion? FiguresAwaiting => Figures is [.., { Confirmed: null } last] ? last : null;

    /// <summary>The figures new decisions are taken under.</summary>
    public SiteFigures FiguresInForce =>
        Figures.LastOrDefault(f => f.Confirmed is not null)?.Figures ?? SiteFiguresRules.First;

    public int FiguresVersionInForce => Figures.LastOrDefault(f => f.Confirmed is not null)?.Version ?? 1;

    /// <summary>The figures of a version some order was decided under.</summary>
    public SiteFigures FiguresOf(int version) =>
        version == 1 ? SiteFiguresRules.First : Figures.Single(f => f.Version == version).Figures;

    public string Kind => "site";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";

    /// <summary>The last order number given; numbers are never reused.</summary>
    public int LastNumber { get; set; }

    /// <summary>The calendar day at the site.</summary>
    public DateOnly Today(DateTimeOffset at) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, TimeZoneInfo.FindSystemTimeZoneById(TimeZone)).DateTime);
}

/// <summary>A part of a site. Looks whose owner can no longer sign fall to its supervisor, by sign-in name.</summary>
internal sealed class Area
{
    public string Name { get; init; } = "";
    public List<string> Sections { get; init; } = [];
    public string? Supervisor { get; init; }
}
