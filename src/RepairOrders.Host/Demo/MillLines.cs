using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>Some forty lines with real pipe sizes; the mill is invented.</summary>
internal static class MillLines
{
    private sealed record Duty(
        string Fluid,
        FluidState State,
        ServiceCategory Category,
        int InspectionClass,
        double DesignBar,
        double DesignC,
        double Bar,
        double C,
        bool Lagged = false,
        bool Critical = false,
        int Group = 2,
        bool Flammable = false,
        double? Ignites = null
    );

    private static readonly Duty Cooling = new(
        "cooling water, brackish",
        FluidState.Liquid,
        ServiceCategory.D,
        4,
        10,
        50,
        6,
        18
    );
    private static readonly Duty Fire = new(
        "fire water",
        FluidState.Liquid,
        ServiceCategory.D,
        4,
        10,
        50,
        8,
        10,
        Critical: true
    );
    private static readonly Duty Condensate = new(
        "condensate",
        FluidState.Liquid,
        ServiceCategory.Normal,
        4,
        6,
        120,
        2,
        85,
        Lagged: true
    );
    private static readonly Duty Steam = new(
        "low-pressure steam",
        FluidState.Steam,
        ServiceCategory.Normal,
        4,
        6,
        170,
        3,
        144,
        Lagged: true
    );
    private static readonly Duty Air = new("compressed air", FluidState.Gas, ServiceCategory.D, 4, 10, 50, 7, 25);
    private static readonly Duty Stock = new(
        "paper stock 4 %",
        FluidState.Liquid,
        ServiceCategory.D,
        4,
        6,
        70,
        2.6,
        45
    );
    private static readonly Duty Effluent = new("effluent", FluidState.Liquid, ServiceCategory.D, 4, 4, 60, 0.8, 30);
    private static readonly Duty Oil = new(
        "heating oil",
        FluidState.Liquid,
        ServiceCategory.Normal,
        2,
        12,
        90,
        6,
        45,
        Group: 1,
        Flammable: true,
        Ignites: 250
    );

    private static readonly (
        string Number,
        string Area,
        string Section,
        string Nps,
        int Dn,
        double Od,
        double Wall,
        Duty Duty,
        int Year
    )[] Rows =
    [
        ("CW-150-3104", "Pump house 2", "CW-N", "6", 150, 168.3, 7.11, Cooling, 2004),
        ("CW-150-3105", "Pump house 2", "CW-N", "6", 150, 168.3, 7.11, Cooling, 2004),
        ("CW-250-3111", "Pump house 2", "CW-N", "10", 250, 273.0, 9.27, Cooling, 1999),
        ("CW-250-3120", "Pump house 1", "CW-S", "10", 250, 273.0, 9.27, Cooling, 1999),
        ("CW-100-3018", "Turbine hall", "CW-T", "4", 100, 114.3, 6.02, Cooling, 2008),
        ("CW-100-3019", "Turbine hall", "CW-T", "4", 100, 114.3, 6.02, Cooling, 2008),
        ("CW-80-3022", "Turbine hall", "CW-T", "3", 80, 88.9, 5.49, Cooling, 2008),
        ("CW-200-3201", "Pump house 1", "CW-S", "8", 200, 219.1, 8.18, Cooling, 2001),
        ("CW-50-3040", "Turbine hall", "CW-T", "2", 50, 60.3, 3.91, Cooling, 2011),
        ("FM-200-0012", "Yard", "FM-E", "8", 200, 219.1, 8.18, Fire, 1998),
        ("FM-200-0013", "Yard", "FM-W", "8", 200, 219.1, 8.18, Fire, 1998),
        ("FM-150-1103", "Board machine", "FM-B", "6", 150, 168.3, 7.11, Fire, 2003),
        ("FM-100-1140", "Warehouse", "FM-W", "4", 100, 114.3, 6.02, Fire, 2003),
        ("CO-50-0412", "Board machine", "CO-1", "2", 50, 60.3, 3.91, Condensate, 2006),
        ("CO-80-0418", "Board machine", "CO-1", "3", 80, 88.9, 5.49, Condensate, 2006),
        ("CO-80-0419", "Dryer section", "CO-2", "3", 80, 88.9, 5.49, Condensate, 2006),
        ("CO-100-0430", "Boiler house", "CO-2", "4", 100, 114.3, 6.02, Condensate, 2002),
        ("CO-50-0441", "Dryer section", "CO-2", "2", 50, 60.3, 3.91, Condensate, 2006),
        ("LS-80-0907", "Dryer section", "LS-1", "3", 80, 88.9, 5.49, Steam, 2005),
        ("LS-150-0910", "Boiler house", "LS-1", "6", 150, 168.3, 7.11, Steam, 2002),
        ("LS-100-0915", "Board machine", "LS-1", "4", 100, 114.3, 6.02, Steam, 2005),
        ("LS-200-0920", "Boiler house", "LS-1", "8", 200, 219.1, 8.18, Steam, 2002),
        ("AIR-80-5002", "Compressor room", "AIR-1", "3", 80, 88.9, 5.49, Air, 2010),
        ("AIR-50-5010", "Board machine", "AIR-1", "2", 50, 60.3, 3.91, Air, 2010),
        ("AIR-50-5011", "Warehouse", "AIR-1", "2", 50, 60.3, 3.91, Air, 2010),
        ("AIR-100-5001", "Compressor room", "AIR-1", "4", 100, 114.3, 6.02, Air, 2010),
        ("ST-150-2201", "Stock preparation", "ST-1", "6", 150, 168.3, 7.11, Stock, 2007),
        ("ST-200-2207", "Stock preparation", "ST-1", "8", 200, 219.1, 8.18, Stock, 2007),
        ("ST-250-2210", "Stock preparation", "ST-2", "10", 250, 273.0, 9.27, Stock, 2007),
        ("ST-100-2230", "Board machine", "ST-2", "4", 100, 114.3, 6.02, Stock, 2007),
        ("ST-300-2240", "Stock preparation", "ST-2", "12", 300, 323.8, 9.53, Stock, 2000),
        ("EF-300-6110", "Effluent plant", "EF-1", "12", 300, 323.8, 9.53, Effluent, 1996),
        ("EF-250-6107", "Effluent plant", "EF-1", "10", 250, 273.0, 9.27, Effluent, 1996),
        ("EF-200-6120", "Effluent plant", "EF-2", "8", 200, 219.1, 8.18, Effluent, 1996),
        ("EF-150-6131", "Effluent plant", "EF-2", "6", 150, 168.3, 7.11, Effluent, 1996),
        ("EF-400-6101", "Effluent plant", "EF-1", "16", 400, 406.4, 9.53, Effluent, 1996),
        ("HO-100-0450", "Boiler house", "HO-1", "4", 100, 114.3, 6.02, Oil, 2001),
        ("HO-80-0452", "Boiler house", "HO-1", "3", 80, 88.9, 5.49, Oil, 2001),
        ("HO-50-0460", "Boiler house", "HO-1", "2", 50, 60.3, 3.91, Oil, 2001),
        ("CW-300-3001", "Intake", "CW-I", "12", 300, 323.8, 9.53, Cooling, 1995),
        ("CW-500-3000", "Intake", "CW-I", "20", 500, 508.0, 9.53, Cooling, 1995),
    ];

    public static IReadOnlyList<(string Number, LineDetails Details)> All { get; } =
    [
        .. Rows.Select(r =>
            (
                r.Number,
                new LineDetails(
                    r.Area,
                    r.Section,
                    r.Nps,
                    r.Dn,
                    Measure.Of(r.Od, "mm"),
                    Measure.Of(r.Wall, "mm"),
                    "ASTM A106 B",
                    r.Duty.Fluid,
                    r.Duty.State,
                    r.Duty.Group,
                    r.Duty.Category,
                    r.Duty.InspectionClass,
                    r.Duty.Flammable,
                    false,
                    r.Duty.Ignites is { } ignites ? Measure.Of(ignites, "°C") : null,
                    Measure.Of(r.Duty.DesignBar, "bar"),
                    Measure.Of(r.Duty.DesignC, "°C"),
                    Measure.Of(r.Duty.Bar, "bar"),
                    Measure.Of(r.Duty.C, "°C"),
                    r.Duty.Lagged,
                    false,
                    r.Duty.Critical,
                    r.Year
                )
            )
        ),
    ];
}
