using RepairOrders.Api.Instruments;
using RepairOrders.Api.Lines;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>The cast and the sample lines.</summary>
internal static class Cast
{
    public static readonly string[] Methods =
    [
        "banded-patch",
        "laminate-wrap",
        "bolted-clamp",
        "welded-patch",
        "welded-sleeve",
        "plug",
        "section-replacement",
    ];

    internal sealed record Member(string Name, string FullName, Role[] Roles, string[] Competences);

    public static readonly Member[] People =
    [
        new("mara", "Mara Lindqvist", [Role.Supervisor], []),
        new("olaf", "Olaf Brekke", [Role.Supervisor], [Competence.OperationsInCharge]),
        new("tove", "Tove Aune", [Role.Technician], Methods),
        new("anton", "Anton Reyes", [Role.Technician], Methods),
        new("vera", "Vera Sand", [Role.Technician], [.. Methods, Competence.Inspector]),
        new("signe", "Signe Dahl", [Role.Storekeeper], []),
        new("ines", "Ines Duarte", [Role.IntegrityEngineer], []),
        new("pavel", "Pavel Horak", [Role.IntegrityEngineer], [Competence.Inspector]),
        new("henrik", "Henrik Vold", [Role.Manager], []),
        new("ada", "Ada Mensah", [Role.Administrator], []),
        new("rune", "Rune Falk", [Role.Reader], []),
    ];

    /// <summary>A cooling-water line DN 150, a fire main DN 200, and a hot hydrocarbon line DN 100.</summary>
    public static IEnumerable<Line> Lines(Guid site) =>
        [
            new()
            {
                SiteId = site,
                Number = "CW-150-3104",
                Area = "Pump house 2",
                Section = "CW-N",
                Nps = "6",
                Dn = 150,
                OutsideDiameterMm = 168.3,
                NominalWallMm = 7.11,
                Grade = "ASTM A106 B",
                Fluid = "cooling water, brackish",
                FluidGroup = 2,
                ServiceCategory = "d",
                InspectionClass = 4,
                DesignPressureBar = 10,
                DesignTemperatureC = 50,
                OperatingPressureBar = 6,
                OperatingTemperatureC = 18,
                YearInstalled = 2004,
            },
            new()
            {
                SiteId = site,
                Number = "FM-200-0012",
                Area = "Yard",
                Section = "FM-E",
                Nps = "8",
                Dn = 200,
                OutsideDiameterMm = 219.1,
                NominalWallMm = 8.18,
                Grade = "ASTM A106 B",
                Fluid = "fire water",
                FluidGroup = 2,
                ServiceCategory = "d",
                InspectionClass = 4,
                DesignPressureBar = 10,
                DesignTemperatureC = 50,
                OperatingPressureBar = 9,
                OperatingTemperatureC = 12,
                SafetyCritical = true,
                YearInstalled = 1998,
            },
            new()
            {
                SiteId = site,
                Number = "HO-100-0450",
                Area = "Boiler house",
                Section = "HO-1",
                Nps = "4",
                Dn = 100,
                OutsideDiameterMm = 114.3,
                NominalWallMm = 6.02,
                Grade = "ASTM A106 B",
                Fluid = "heating oil",
                FluidGroup = 1,
                ServiceCategory = "normal",
                InspectionClass = 2,
                Flammable = true,
                AutoIgnitionC = 250,
                DesignPressureBar = 12,
                DesignTemperatureC = 90,
                OperatingPressureBar = 7,
                OperatingTemperatureC = 45,
                YearInstalled = 2001,
            },
        ];

    /// <summary>Instruments in calibration, one of each kind; the pressure gauges suit tests up to 8 and up to 16 bar.</summary>
    public static IEnumerable<Instrument> Instruments(Guid site) =>
        [
            Instrument(site, "UT-7", InstrumentKind.ThicknessGauge, "ultrasonic thickness gauge"),
            Instrument(site, "PG-16", InstrumentKind.PressureGauge, "gauge 0 to 16 bar", 16),
            Instrument(site, "PG-25", InstrumentKind.PressureGauge, "gauge 0 to 25 bar", 25),
            Instrument(site, "TW-2", InstrumentKind.TorqueWrench, "torque wrench 5 to 60 N m"),
            Instrument(site, "SD-1", InstrumentKind.HardnessTester, "durometer, Shore D"),
            Instrument(site, "ST-3", InstrumentKind.SurfaceThermometer, "surface thermometer"),
            Instrument(site, "HY-5", InstrumentKind.Hygrometer, "hygrometer"),
            Instrument(site, "CA-6", InstrumentKind.Calliper, "calliper 300 mm"),
            new()
            {
                SiteId = site,
                Serial = "UT-1",
                Kind = InstrumentKind.ThicknessGauge,
                Words = "ultrasonic thickness gauge, out of calibration",
                CalibrationDue = new DateOnly(2026, 1, 15),
            },
            Instrument(site, "PG-3", InstrumentKind.PressureGauge, "gauge 0 to 25 bar, old yard", 25),
            Instrument(site, "PR-8", InstrumentKind.ProfileGauge, "profile gauge"),
        ];

    private static Instrument Instrument(
        Guid site,
        string serial,
        InstrumentKind kind,
        string words,
        double? greatest = null
    ) =>
        new()
        {
            SiteId = site,
            Serial = serial,
            Kind = kind,
            Words = words,
            CalibrationDue = new DateOnly(2029, 12, 31),
            GreatestReading = greatest is { } bar ? Measure.Of(bar, "bar") : null,
        };

    /// <summary>A weep on the cooling-water line.</summary>
    public static RequestRepair Weep(string site) =>
        new(
            site,
            "CW-150-3104",
            "Pump house 2, north wall, 4.2 m from valve V-22",
            "cooling water, brackish",
            "pinhole weeping at 4 o'clock",
            FoundHow.Round,
            LeakState.Weep,
            false,
            Measure.Of(6, "bar"),
            Measure.Of(18, "°C"),
            "drip tray, area roped off",
            "the line cools the turbine and cannot be taken off before the January stop",
            null
        );
}
