using System.Globalization;
using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Lines;

internal static class LineViews
{
    public static LineView View(this Line line, string site) =>
        new(
            line.Id,
            site,
            line.Number,
            line.Details(),
            line.Retired,
            line.Revision.ToString(CultureInfo.InvariantCulture)
        );

    public static LineDetails Details(this Line line) =>
        new(
            line.Area,
            line.Section,
            line.Nps.Length > 0 ? line.Nps : null,
            line.Dn,
            Measure.Of(line.OutsideDiameterMm, "mm"),
            Measure.Of(line.NominalWallMm, "mm"),
            line.Grade.Length > 0 ? line.Grade : null,
            line.Fluid,
            Enum.Parse<FluidState>(line.FluidState, ignoreCase: true),
            line.FluidGroup,
            Enum.Parse<ServiceCategory>(line.ServiceCategory, ignoreCase: true),
            line.InspectionClass,
            line.Flammable,
            line.Toxic,
            line.AutoIgnitionC is { } ignition ? Measure.Of(ignition, "°C") : null,
            Measure.Of(line.DesignPressureBar, "bar"),
            Measure.Of(line.DesignTemperatureC, "°C"),
            Measure.Of(line.OperatingPressureBar, "bar"),
            Measure.Of(line.OperatingTemperatureC, "°C"),
            line.Lagged,
            line.Potable,
            line.SafetyCritical,
            line.YearInstalled
        );

    public static void Take(this Line line, LineDetails details)
    {
        line.Area = details.Area;
        line.Section = details.Section;
        line.Nps = details.Nps?.Trim() ?? "";
        line.Dn = details.Dn;
        line.OutsideDiameterMm = details.OutsideDiameter.Value;
        line.NominalWallMm = details.NominalWall.Value;
        line.Grade = details.Grade is { Length: > 0 } grade ? PipeLists.Grade(grade)!.Name : "";
        line.Fluid = details.Fluid.Trim();
        line.FluidState = Word(details.FluidState);
        line.FluidGroup = details.FluidGroup;
        line.ServiceCategory = Word(details.ServiceCategory);
        line.InspectionClass = details.InspectionClass;
        line.Flammable = details.Flammable;
        line.Toxic = details.Toxic;
        line.AutoIgnitionC = details.AutoIgnition?.Value;
        line.DesignPressureBar = details.DesignPressure.Value;
        line.DesignTemperatureC = details.DesignTemperature.Value;
        line.OperatingPressureBar = details.OperatingPressure.Value;
        line.OperatingTemperatureC = details.OperatingTemperature.Value;
        line.Lagged = details.Lagged;
        line.Potable = details.Potable;
        line.SafetyCritical = details.SafetyCritical;
        line.YearInstalled = details.YearInstalled;
        line.Retired = false;
    }

    private static string Word<T>(T choice)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(choice.ToString());
}
