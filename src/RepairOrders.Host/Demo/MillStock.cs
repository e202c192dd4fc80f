using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>What the stores hold. Products are invented; their times are common practice, no source.</summary>
internal static class MillStock
{
    private static readonly DateOnly Today = DateOnly.FromDateTime(DateTime.UtcNow);

    private static readonly MaterialLimits WetPutty = new(
        Measure.Of(5, "°C"),
        Measure.Of(60, "°C"),
        ForWetSurfaces: true,
        PotLife: Measure.Of(15, "min"),
        PotLifeAt: Measure.Of(20, "°C"),
        SetForLoad: Measure.Of(1, "h"),
        FullHardness: Measure.Of(24, "h"),
        CureAt: Measure.Of(20, "°C"),
        LeastCure: Measure.Of(5, "°C")
    );

    private static readonly MaterialLimits DryPutty = WetPutty with
    {
        ForWetSurfaces = false,
        LeastTemperature = Measure.Of(10, "°C"),
    };

    private static readonly MaterialLimits Resin = new(
        Measure.Of(10, "°C"),
        Measure.Of(50, "°C"),
        ForWetSurfaces: false,
        PotLife: Measure.Of(30, "min"),
        PotLifeAt: Measure.Of(20, "°C"),
        SetForLoad: Measure.Of(6, "h"),
        FullHardness: Measure.Of(24, "h"),
        CureAt: Measure.Of(20, "°C"),
        LeastCure: Measure.Of(8, "°C"),
        LeastHardness: 75
    );

    public static readonly DescribeStockItem[] Items =
    [
        new(Mill.Site, "BAND-30", "stainless band 30 × 1.5 mm, 25 m coil", "band", "mm", false, true),
        new(Mill.Site, "FAST-M8", "band fastener with M8 screw, stainless", "fastener", "pcs", false, true),
        new(Mill.Site, "PLATE-15", "stainless plate 1.5 mm, cut to blank", "plate", "pcs", false, true),
        new(Mill.Site, "PUTTY-W", "two-part putty stated for wet surfaces", "putty", "sticks", true, true, WetPutty),
        new(Mill.Site, "PUTTY-D", "two-part putty for dry surfaces", "putty", "sticks", true, true, DryPutty),
        new(Mill.Site, "RESIN-1", "laminating resin and hardener, set", "resin", "g", true, true, Resin),
        new(Mill.Site, "CLOTH-400", "glass cloth 400 g/m2", "cloth", "m2", false, true),
        new(Mill.Site, "CLAMP-200", "bolted clamp, two halves, DN 200", "clamp", "pcs", false, true),
        new(Mill.Site, "CLAMP-80", "bolted clamp, two halves, DN 80", "clamp", "pcs", false, true),
    ];

    public static readonly ReceiveBatch[] Batches =
    [
        new(Mill.Site, "BAND-30", "B-1107", null, "3.1-1107", "A1", 250000),
        new(Mill.Site, "FAST-M8", "F-0220", null, "3.1-0220", "A1", 600),
        new(Mill.Site, "PLATE-15", "PL-031", null, "3.1-031", "A1", 120),
        new(Mill.Site, "PUTTY-W", "P-0291", Today.AddDays(260), "c-0291", "C1", 400),
        new(Mill.Site, "PUTTY-W", "P-0305", Today.AddDays(420), "c-0305", "C1", 400),
        new(Mill.Site, "PUTTY-W", "P-0188", Today.AddDays(-12), "c-0188", "C1", 12),
        new(Mill.Site, "PUTTY-W", "P-0310", Today.AddDays(500), "c-0310", "N1", 20),
        new(Mill.Site, "PUTTY-D", "PD-044", Today.AddDays(300), "c-044", "C1", 80),
        new(Mill.Site, "RESIN-1", "R-0712", Today.AddDays(200), "c-0712", "C1", 90000),
        new(Mill.Site, "CLOTH-400", "G-0055", null, "c-0055", "C1", 400),
        new(Mill.Site, "CLAMP-200", "K-0021", null, "3.1-0021", "A1", 6),
        new(Mill.Site, "CLAMP-80", "K-0009", null, "3.1-0009", "A1", 6),
    ];
}
