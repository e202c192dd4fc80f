using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>The stores' books of a scene: bins, items and batches, entered by the storekeeper.</summary>
internal static class Stores
{
    /// <summary>What a maker might state of a two-part putty that holds on wet steel.</summary>
    public static readonly MaterialLimits WetPutty = new(
        Measure.Of(5, "°C"),
        Measure.Of(40, "°C"),
        ForWetSurfaces: true,
        PotLife: Measure.Of(20, "min"),
        PotLifeAt: Measure.Of(20, "°C"),
        SetForLoad: Measure.Of(2, "h"),
        FullHardness: Measure.Of(24, "h"),
        CureAt: Measure.Of(20, "°C"),
        LeastCure: Measure.Of(5, "°C")
    );

    /// <summary>A laminating resin for dry steel, mixed four parts to one with its own hardener.</summary>
    public static readonly MaterialLimits DryResin = new(
        Measure.Of(10, "°C"),
        Measure.Of(35, "°C"),
        ForWetSurfaces: false,
        PotLife: Measure.Of(30, "min"),
        PotLifeAt: Measure.Of(20, "°C"),
        MixRatio: 4,
        MixTolerancePercent: 5,
        Hardener: "HARD-1",
        SetForLoad: Measure.Of(8, "h"),
        FullHardness: Measure.Of(72, "h"),
        CureAt: Measure.Of(20, "°C"),
        LeastCure: Measure.Of(10, "°C"),
        LeastHardness: 70
    );

    public static DescribeStockItem Putty(string site) =>
        new(site, "PUT-12", "putty, two parts, 500 g tin", "putty", "g", true, false, WetPutty);

    public static DescribeStockItem Band(string site) =>
        new(site, "BND-30", "band 30 × 0.8 mm, stainless", "band", "mm", false, true);

    public static async Task<BatchView> PuttyBatch(
        Scene scene,
        string number,
        DateOnly expiry,
        decimal quantity,
        string bin = "A-1"
    )
    {
        await Listed(scene, Putty(scene.Site), bin);
        return await scene.Signe.ReceiveBatch(
            new ReceiveBatch(scene.Site, "PUT-12", number, expiry, null, bin, quantity)
        );
    }

    /// <summary>Takes in what a line of a bill needs: a fresh batch that lasts a year, of an item that serves it.</summary>
    public static async Task<BatchView> Receive(Scene scene, string need, string unit, decimal quantity)
    {
        var cures = need is "putty" or "resin" or "filler" or "sealant" or "adhesive";
        var item = new DescribeStockItem(
            scene.Site,
            need.ToUpperInvariant(),
            $"{need}, as drawn",
            need,
            unit,
            Expires: cures,
            NeedsCertificate: !cures,
            cures ? WetPutty : null
        );
        await Listed(scene, item, "A-1");
        return await scene.Signe.ReceiveBatch(
            new ReceiveBatch(
                scene.Site,
                item.Code,
                $"{need} lot {scene.NextLot()}",
                cures ? scene.Clock.Today.AddDays(365) : null,
                cures ? null : "3.1 no. 4471",
                "A-1",
                quantity
            )
        );
    }

    public static async Task Listed(Scene scene, DescribeStockItem item, string bin)
    {
        if ((await scene.Signe.Bins(scene.Site)).All(b => b.Said.Code != bin))
            await scene.Signe.AddBin(new DescribeBin(scene.Site, bin, "stores, first row", bin.StartsWith('L')));
        if ((await scene.Signe.StockItems(scene.Site, item.Code)).Rows.Count == 0)
            await scene.Signe.AddStockItem(item);
    }
}
