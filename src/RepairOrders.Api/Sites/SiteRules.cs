using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sites;

/// <summary>What a site may be made.</summary>
internal static class SiteRules
{
    private const int LongestSection = 60;

    public static IEnumerable<(string Field, string Sentence)> Problems(SiteDetails ask)
    {
        if (!TimeZoneInfo.TryFindSystemTimeZoneById(ask.TimeZone, out _))
            yield return (
                "timeZone",
                $"timeZone is \"{ask.TimeZone}\"; allowed is the name of a time zone such as Europe/Oslo or Etc/UTC."
            );
        foreach (var twice in Twice(ask.Areas.Select(a => a.Name)))
            yield return ("areas", $"areas names \"{twice}\" twice.");
        foreach (var area in ask.Areas)
        {
            foreach (var twice in Twice(area.Sections))
                yield return ("areas", $"Area {area.Name} names section \"{twice}\" twice.");
            if (area.Sections.Any(s => string.IsNullOrWhiteSpace(s) || s.Length > LongestSection))
                yield return (
                    "areas",
                    $"Area {area.Name} has a section without a name or with one longer than {LongestSection} characters."
                );
        }
    }

    /// <summary>Why a site may not lose an area or section: a line still lies in it.</summary>
    /// <param name="ask">The site as it is to be.</param>
    /// <param name="used">Area and section of every line of the site.</param>
    public static Objection? Objection(SiteDetails ask, IEnumerable<(string Area, string Section)> used)
    {
        var lost = used.Where(u => !Has(ask, u.Area, u.Section)).Distinct().ToList();
        return lost.Count == 0
            ? null
            : new Objection(
                "section-in-use",
                $"Lines still lie in {string.Join(", ", lost.Select(l => $"{l.Area} / {l.Section}"))}. Move them first.",
                "administrator, who keeps the line list"
            );
    }

    private static bool Has(SiteDetails ask, string area, string section) =>
        ask.Areas.Any(a => a.Name == area && a.Sections.Contains(section));

    private static IEnumerable<string> Twice(IEnumerable<string> names) =>
        names.GroupBy(n => n.Trim(), StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1).Select(g => g.Key);
}
