using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Reviewing;

/// <summary>The risk that live repairs lay on the sections of a site.</summary>
internal static class CarriedRiskQuery
{
    public static async Task<IReadOnlyList<CarriedRiskView>> Read(
        RepairStore store,
        string site,
        string? section,
        Person by,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var live = await store
            .Orders.AsNoTracking()
            .Where(o =>
                by.Sites.Contains(o.Site.ShortName)
                && o.Site.ShortName == site
                && o.Columns.Live
                && o.Line!.Section != ""
                && (section == null || o.Line.Section == section)
            )
            .Select(o => new
            {
                o.Number,
                Line = o.Line!.Number,
                o.Line.Section,
                o.Columns,
            })
            .ToListAsync(stop);
        return
        [
            .. live.GroupBy(o => o.Section)
                .Select(g => View(site, g.Key, g.Select(o => (o.Number, o.Line, OrderToday.ClassOf(o.Columns, at)))))
                .OrderByDescending(v => v.Sum)
                .ThenBy(v => v.Section, StringComparer.Ordinal),
        ];
    }

    public static CarriedRiskView View(
        string site,
        string section,
        IEnumerable<(string Number, string Line, RiskClass? Class)> live
    )
    {
        // Nobody has judged it: it weighs as the gravest.
        CarriedRepair[] repairs =
        [
            .. live.Select(o => (o.Number, o.Line, Class: o.Class ?? RiskClass.A))
                .OrderBy(o => o.Class)
                .ThenBy(o => o.Number, StringComparer.Ordinal)
                .Select(o => new CarriedRepair(o.Number, o.Line, o.Class, CarriedRisks.Weight(o.Class))),
        ];
        return new(site, section, repairs.Sum(r => r.Weight), repairs);
    }
}
