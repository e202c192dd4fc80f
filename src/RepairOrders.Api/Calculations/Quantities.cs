using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using UnitsNet;

namespace RepairOrders.Api.Calculations;

/// <summary>The numbers of the wire as the engine's quantities.</summary>
internal static class Quantities
{
    public static Length Mm(double value) => Length.FromMillimeters(value);

    public static Length? Mm(double? value) => value is { } v ? Mm(v) : null;

    public static Pressure Bar(double value) => Pressure.FromBars(value);

    public static Pressure? Bar(double? value) => value is { } v ? Bar(v) : null;

    public static Pressure Mpa(double value) => Pressure.FromMegapascals(value);

    public static Pressure? Mpa(double? value) => value is { } v ? Mpa(v) : null;

    public static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);

    public static Temperature? Celsius(double? value) => value is { } v ? Celsius(v) : null;

    public static Engineering.Pipework.Pipe Pipe(this PipeToReckon p) =>
        new(
            Mm(p.OutsideDiameterMm),
            Mm(p.WallThicknessMm),
            p.Metal.As<Engineering.Pipework.MetalFamily>(),
            Mpa(p.YieldStrengthMpa),
            Mpa(p.TensileStrengthMpa),
            Mpa(p.AllowableStressMpa),
            p.QualityFactor ?? Defaults.QualityFactor
        );

    public static Engineering.Damage.Defect Defect(this DefectToReckon d) =>
        new(
            d.Kind.As<Engineering.Damage.DefectKind>(),
            d.Side.As<Engineering.Damage.DefectSide>(),
            d.Cause.As<Engineering.Damage.DefectCause>(),
            d.ThroughWall,
            Mm(d.AxialLengthMm),
            Mm(d.CircumferentialLengthMm),
            Mm(d.RemainingWallMm),
            Mm(d.HoleDiameterMm),
            Mm(d.SoundWallBesideMm),
            d.ClockHours,
            d.Growing
        );

    public static Engineering.Pipework.Service Service(this ServiceToReckon s) =>
        new(
            s.Fluid,
            s.FluidState.As<Engineering.Pipework.FluidState>(),
            s.ServiceCategory.As<Engineering.Pipework.ServiceCategory>(),
            s.FluidGroup,
            s.InspectionClass,
            s.Flammable,
            s.Toxic,
            s.AboveAutoIgnition,
            Bar(s.OperatingPressureBar),
            Bar(s.DesignPressureBar),
            Celsius(s.OperatingTemperatureC),
            Celsius(s.DesignTemperatureC),
            s.SafetyCritical,
            s.Potable,
            s.Cyclic
        );

    public static Engineering.Strength.WallDuty Duty(this WallDutyToReckon d) =>
        new(
            d.Code.As<Engineering.Strength.WallCode>(),
            Bar(d.DesignPressureBar),
            Celsius(d.DesignTemperatureC),
            d.WeldFactor,
            d.DesignFactor ?? Defaults.DesignFactor,
            d.TemperatureFactor,
            Mm(d.StructuralMinimumMm)
        );

    public static Engineering.Strength.PlantPiping? Plant(this PlantToReckon? p) =>
        p is null ? null : new(Mm(p.FutureLossMm), Mm(p.DistanceToDiscontinuityMm), p.Cyclic, p.WeldFactor);

    /// <summary>A value that must be given with what else was asked.</summary>
    public static double Needed(string field, double? value, string when) =>
        value ?? throw new MalformedAsk(field, $"{field} is missing; it is needed {when}.");
}
