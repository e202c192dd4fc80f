using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;
using FluidState = RepairOrders.Engineering.Pipework.FluidState;
using MetalFamily = RepairOrders.Engineering.Pipework.MetalFamily;
using ServiceCategory = RepairOrders.Engineering.Pipework.ServiceCategory;

namespace RepairOrders.Api.Lines;

/// <summary>
/// Pipe and service of an order in the engine's terms: the one place where the line list, or what was given for an unlisted line,
/// is read for the engine. Operating values are the greater of line list and request.
/// </summary>
internal sealed record LineFacts(LineFactsGiven Source, Service Service, DateOnly? InServiceFrom)
{
    private const double QualityOfWeldedJoint = 0.85;
    private static readonly Clause WeldedJoint = new("ASME B31.3", "Table A-1B, welded pipe", Provenance.FromMemory);

    public int Dn => Source.Dn;

    /// <summary>The facts; nothing for an unlisted line of which none were given.</summary>
    public static LineFacts? Of(RepairOrder order, LineFactsGiven? given, bool cyclic)
    {
        if ((order.Line is { } line ? Listed(line) : given) is not { } source)
            return null;
        var request = order.Request.Asked;
        var pressure = Math.Max(order.Line?.OperatingPressureBar ?? 0, request.OperatingPressure.Value);
        var temperature = Math.Max(
            order.Line?.OperatingTemperatureC ?? request.OperatingTemperature.Value,
            request.OperatingTemperature.Value
        );
        var service = new Service(
            order.Line?.Fluid ?? request.Fluid,
            source.State.As<FluidState>(),
            source.Category.As<ServiceCategory>(),
            source.FluidGroup,
            source.InspectionClass,
            source.Flammable,
            source.Toxic,
            source.Flammable && source.AutoIgnition is { } ignition && temperature >= ignition.Value,
            Pressure.FromBars(pressure),
            Pressure.FromBars(Math.Max(source.DesignPressure.Value, pressure)),
            Temperature.FromDegreesCelsius(temperature),
            Temperature.FromDegreesCelsius(Math.Max(source.DesignTemperature.Value, temperature)),
            source.SafetyCritical,
            source.Potable,
            cyclic
        );
        return new(source, service, From(source.YearInstalled, order));
    }

    /// <summary>
    /// The pipe; nothing where neither the tables nor the engineer give its strength at design temperature. Reports what was
    /// assumed to <paramref name="findings"/>.
    /// </summary>
    public Pipe? Pipe(MetalGiven? metal, double? qualityFactor, List<Finding> findings)
    {
        var outside = Length.FromMillimeters(Source.OutsideDiameter.Value);
        var wall = Length.FromMillimeters(Source.NominalWall.Value);
        var factor = qualityFactor ?? QualityOfWeldedJoint;
        if (qualityFactor is null)
            findings.Add(
                new(
                    "joint-quality-assumed",
                    Severity.Watch,
                    "The longitudinal joint is not on record: 0.85 of a welded joint is taken. Give the factor where papers tell it.",
                    QualityOfWeldedJoint,
                    null,
                    "-",
                    WeldedJoint
                )
            );
        if (metal is not null)
            return new(
                outside,
                wall,
                metal.Metal.As<MetalFamily>(),
                Megapascals(metal.YieldStrength),
                Megapascals(metal.TensileStrength),
                Megapascals(metal.AllowableStress)!.Value,
                factor
            );
        var grade = PipeGrades.All.FirstOrDefault(g =>
            string.Equals(g.Name, Source.Grade, StringComparison.OrdinalIgnoreCase)
        );
        if (grade is null)
            return null;
        var stress = PipeGrades.AllowableStress(grade, Service.DesignTemperature, wall);
        findings.AddRange(stress.Findings);
        return stress.Result is { } allowable
            ? new(outside, wall, grade.Family, grade.YieldStrength, grade.TensileStrength, allowable, factor)
            : null;
    }

    public FactsView View(Pipe pipe) =>
        new(
            Dn,
            pipe.OutsideDiameter.Millimeters,
            pipe.NominalWall.Millimeters,
            Source.Grade,
            pipe.Metal.As<Contract.MetalFamily>(),
            pipe.AllowableStress.Megapascals,
            pipe.QualityFactor,
            Service.Fluid,
            Service.State.As<Contract.FluidState>(),
            Service.Category.As<Contract.ServiceCategory>(),
            Service.FluidGroup,
            Service.InspectionClass,
            Service.Flammable,
            Service.Toxic,
            Service.AboveAutoIgnition,
            Service.OperatingPressure.Bars,
            Service.DesignPressure.Bars,
            Service.OperatingTemperature.DegreesCelsius,
            Service.DesignTemperature.DegreesCelsius,
            Service.SafetyCritical,
            Service.Potable
        );

    private static LineFactsGiven Listed(Line line) =>
        new(
            line.Dn ?? (int)Math.Round(line.OutsideDiameterMm),
            Measure.Of(line.OutsideDiameterMm, "mm"),
            Measure.Of(line.NominalWallMm, "mm"),
            line.Grade,
            Enum.Parse<Contract.FluidState>(line.FluidState, ignoreCase: true),
            Enum.Parse<Contract.ServiceCategory>(line.ServiceCategory, ignoreCase: true),
            line.FluidGroup,
            line.InspectionClass,
            line.Flammable,
            line.Toxic,
            line.AutoIgnitionC is { } ignition ? Measure.Of(ignition, "°C") : null,
            Measure.Of(line.DesignPressureBar, "bar"),
            Measure.Of(line.DesignTemperatureC, "°C"),
            line.SafetyCritical,
            line.Potable,
            line.YearInstalled
        );

    // The last day of the year: a younger pipe has lost its wall faster.
    private static DateOnly? From(int? year, RepairOrder order)
    {
        if (year is not { } y)
            return null;
        var end = new DateOnly(y, 12, 31);
        var raised = order.Site.Today(order.RaisedAt).AddDays(-1);
        return end < raised ? end : raised;
    }

    private static Pressure? Megapascals(Measure? stress) => stress is { } s ? Pressure.FromMegapascals(s.Value) : null;
}
