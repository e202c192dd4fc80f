using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Sites;
using RepairOrders.Contract;
using RepairOrders.Engineering.Pipework;
using FluidServiceCategory = RepairOrders.Contract.ServiceCategory;

namespace RepairOrders.Api.Lines;

/// <summary>What a line of the list may be: each field against the others, and size and grade against the tables.</summary>
internal static class LineRules
{
    /// <summary>Everything that is wrong, by field.</summary>
    public static IEnumerable<(string Field, string Sentence)> Problems(LineDetails ask, Site site, int year) =>
        [.. Place(ask, site), .. Size(ask), .. Grade(ask), .. Duty(ask), .. Fluid(ask), .. Age(ask, year)];

    public static Objection? Taken(bool exists, string number, string site) =>
        exists
            ? new Objection(
                "line-number-taken",
                $"Line {number} is in the line list of {site} already. Change that one, or choose another number.",
                "administrator, with another number"
            )
            : null;

    private static IEnumerable<(string, string)> Place(LineDetails ask, Site site)
    {
        var area = site.Areas.FirstOrDefault(a => a.Name == ask.Area);
        if (area is null)
            yield return (
                "area",
                $"area is \"{ask.Area}\"; allowed at {site.ShortName} is one of {Listed(site.Areas.Select(a => a.Name))}."
            );
        else if (!area.Sections.Contains(ask.Section))
            yield return (
                "section",
                $"section is \"{ask.Section}\"; allowed in {ask.Area} is one of {Listed(area.Sections)}."
            );
    }

    private static IEnumerable<(string, string)> Size(LineDetails ask)
    {
        var (D, t) = (ask.OutsideDiameter.Value, ask.NominalWall.Value);
        if (2 * t >= D)
            yield return (
                "nominalWall",
                $"nominalWall is {ask.NominalWall.Entered}; allowed is less than half the outside diameter, {Shown(D / 2)} mm."
            );
        var size =
            ask.Nps is { Length: > 0 } nps ? PipeSizes.ByNps(nps)
            : ask.Dn is { } dn ? PipeSizes.ByDn(dn)
            : null;
        if (ask.Nps is { Length: > 0 } && size is null)
            yield return (
                "nps",
                $"nps is \"{ask.Nps}\"; allowed is one of {string.Join(", ", PipeSizes.All.Select(s => s.Nps))}, or nothing for pipe that is not listed."
            );
        if (size is null)
            yield break;
        if (ask.Dn is { } given && given != size.Dn)
            yield return ("dn", $"dn is {given}; NPS {size.Nps} is DN {size.Dn}.");
        var listed = Diameters(size).ToList();
        if (!listed.Any(d => Math.Abs(D - d) <= Math.Max(0.01 * d, 0.5)))
            yield return (
                "outsideDiameter",
                $"outsideDiameter is {ask.OutsideDiameter.Entered}; listed for NPS {size.Nps} (DN {size.Dn}) is {string.Join(", ", listed.Select(Shown))} mm. For pipe that is not listed leave nps and dn empty."
            );
        var thickest = size.Walls.Max(w => w.Wall.Millimeters);
        if (2 * t < D && t > 1.1 * thickest)
            yield return (
                "nominalWall",
                $"nominalWall is {ask.NominalWall.Entered}; the thickest listed for NPS {size.Nps} is {Shown(thickest)} mm. For pipe that is not listed leave nps and dn empty."
            );
    }

    private static IEnumerable<double> Diameters(PipeSize size) =>
        PipeSizes
            .Diameters.Where(d => d.Size == $"DN{size.Dn}" || d.Size == $"NPS {size.Nps}")
            .Select(d => d.OutsideDiameter.Millimeters)
            .Append(size.OutsideDiameter.Millimeters)
            .Append(size.StainlessOutsideDiameter?.Millimeters ?? size.OutsideDiameter.Millimeters)
            .Append(size.EnOutsideDiameter?.Millimeters ?? size.OutsideDiameter.Millimeters)
            .Distinct()
            .Order();

    private static IEnumerable<(string, string)> Grade(LineDetails ask)
    {
        if (ask.Grade is { Length: > 0 } grade && PipeLists.Grade(grade) is null)
            yield return (
                "grade",
                $"grade is \"{grade}\", which is not listed; allowed is specification and grade such as ASTM A106 B (GET /pipe-grades lists all), or nothing when nobody knows."
            );
    }

    private static IEnumerable<(string, string)> Duty(LineDetails ask)
    {
        if (ask.OperatingPressure.Value > ask.DesignPressure.Value)
            yield return (
                "operatingPressure",
                $"operatingPressure is {ask.OperatingPressure.Entered}; allowed is at most the design pressure, {ask.DesignPressure.Entered}."
            );
        if (ask.OperatingTemperature.Value > ask.DesignTemperature.Value)
            yield return (
                "operatingTemperature",
                $"operatingTemperature is {ask.OperatingTemperature.Entered}; allowed is at most the design temperature, {ask.DesignTemperature.Entered}."
            );
    }

    // ASME B31.3, 300.2: Category D is not flammable, not toxic, up to 1035 kPa gauge, −29 to 186 °C.
    private static IEnumerable<(string, string)> Fluid(LineDetails ask)
    {
        if (
            ask.ServiceCategory == FluidServiceCategory.D
            && (
                ask.Flammable
                || ask.Toxic
                || ask.DesignPressure.Value > 10.35
                || ask.DesignTemperature.Value is < -29 or > 186
            )
        )
            yield return (
                "serviceCategory",
                "serviceCategory is d; allowed for it is a fluid neither flammable nor toxic, at most 10.35 bar and −29 to 186 °C (ASME B31.3, 300.2)."
            );
        if (ask.AutoIgnition is { } ignition && !ask.Flammable)
            yield return (
                "autoIgnition",
                $"autoIgnition is {ignition.Entered}; allowed for a flammable fluid only. Say that it is flammable, or leave it empty."
            );
    }

    private static IEnumerable<(string, string)> Age(LineDetails ask, int year)
    {
        if (ask.YearInstalled > year)
            yield return ("yearInstalled", $"yearInstalled is {ask.YearInstalled}; allowed is at most {year}.");
    }

    private static string Listed(IEnumerable<string> names) =>
        string.Join(", ", names.DefaultIfEmpty("none, for none is kept yet"));

    private static string Shown(double millimetres) => millimetres.ToString("0.##", CultureInfo.InvariantCulture);
}
