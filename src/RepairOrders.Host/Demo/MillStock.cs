using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>What the stores hold. Products are invented; their times are common practice, no source.</summary>
internal static class MillStock
{
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
        new(Mill.Site, "PLATE-SS", "stainless plate, cut and rolled to blank", "plate", "pcs", false, true),
        new(Mill.Site, "PUTTY-W", "two-part putty stick for wet surfaces, 114 g", "putty", "pcs", true, true, WetPutty),
        new(Mill.Site, "RESIN-1", "laminating resin and hardener, set", "resin", "g", true, true, Resin),
        new(Mill.Site, "CLOTH-400", "glass cloth 400 g/m2", "cloth", "m2", false, true),
        new(Mill.Site, "FILL-2", "load-transfer filler", "filler", "cm3", true, true),
        new(Mill.Site, "CLAMP", "split clamp, two halves, to measure", "clamp", "pcs", false, true),
        new(Mill.Site, "SEAL-N", "nitrile seal set for split clamps", "seal", "pcs", false, true),
        new(Mill.Site, "STUD-B7", "stud bolt B7 with two nuts", "bolt", "pcs", false, true),
        new(Mill.Site, "PATCH-CS", "carbon steel patch, cut and rolled", "patch", "pcs", false, true),
        new(Mill.Site, "SLEEVE-CS", "carbon steel sleeve, two halves", "sleeve", "pcs", false, true),
        new(Mill.Site, "ROD-7018", "weld metal, low hydrogen, by run", "electrode", "mm", false, true),
        new(Mill.Site, "PLUG-SS", "screw plug with collar, stainless", "plug", "pcs", false, true),
        new(Mill.Site, "SEAL-T", "thread sealant, tube", "sealant", "pcs", false, true),
    ];

    /// <summary>What came in, the day it came, and the day it expires; days count from the day the demo is loaded.</summary>
    public static readonly (
        double Day,
        string Item,
        string Number,
        double? Expires,
        string Bin,
        decimal Quantity
    )[] Deliveries =
    [
        (-400, "BAND-30", "B-1107", null, "A1", 900000),
        (-400, "FAST-M8", "F-0220", null, "A1", 1500),
        (-400, "PLATE-SS", "PL-031", null, "A1", 150),
        (-400, "PUTTY-W", "P-0188", -188, "C1", 900),
        (-400, "PUTTY-W", "P-0190", -30, "N1", 24),
        (-400, "BAND-30", "B-1108", null, "N1", 24000),
        (-400, "RESIN-1", "R-0631", -150, "C1", 160000),
        (-400, "CLOTH-400", "G-0055", null, "C1", 400),
        (-400, "FILL-2", "L-0140", -140, "C1", 6000),
        (-400, "CLAMP", "K-0021", null, "A2", 20),
        (-400, "SEAL-N", "S-0077", null, "A2", 24),
        (-400, "STUD-B7", "ST-410", null, "A2", 300),
        (-400, "PATCH-CS", "PC-012", null, "A2", 12),
        (-400, "SLEEVE-CS", "SL-004", null, "A2", 6),
        (-400, "ROD-7018", "W-7741", null, "A2", 60000),
        (-400, "PLUG-SS", "PG-009", null, "A2", 12),
        (-400, "SEAL-T", "T-0031", null, "A2", 12),
        (-200, "PUTTY-W", "P-0291", 160, "C1", 900),
        (-170, "RESIN-1", "R-0712", 40, "C1", 60000),
        (-160, "FILL-2", "L-0166", 200, "C1", 6000),
        (-95, "RESIN-1", "R-0745", 240, "C1", 160000),
        (-60, "PUTTY-W", "P-0305", 330, "C1", 900),
        (-40, "PUTTY-W", "P-0310", 330, "N1", 24),
    ];

    /// <summary>Books what comes in while the stories go on, and takes a bad batch back.</summary>
    public static async Task Keep(Crew crew, Walk walk)
    {
        var ids = new Dictionary<string, Guid>();
        foreach (var (day, item, number, expires, bin, quantity) in Deliveries)
        {
            await walk.Until(day, 5.5);
            DateOnly? last = expires is { } days ? walk.Today.AddDays((int)(days - day)) : null;
            var batch = await (await crew.As("signe")).ReceiveBatch(
                new(Mill.Site, item, number, last, $"3.1 no. {number}", bin, quantity)
            );
            ids[number] = batch.Id;
        }
        await walk.Until(-25, 9);
        await (await crew.As("signe")).JudgeBatch(
            ids["P-0190"],
            new(BatchStanding.Quarantined, "expired in the emergency locker, found at the monthly count")
        );
        await walk.Until(-5, 13);
        await (await crew.As("signe")).JudgeBatch(
            ids["R-0712"],
            new(BatchStanding.Recalled, "the maker called it back: hardener filled short in part of the lot")
        );
    }
}
