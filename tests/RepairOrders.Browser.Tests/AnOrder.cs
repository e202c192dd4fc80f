using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests;

/// <summary>Orders at a stage, reached by the product's own client as the people of the mill.</summary>
internal static class AnOrder
{
    public static readonly LeakConsequences FewPeople = new(
        PeopleNearby.Rarely,
        IsolableWithinTenMinutes: true,
        Measure.Of(500, "kg"),
        DrainsToWater: false
    );

    public static readonly DefectMeasured Pinhole = new(
        DefectKind.Pinhole,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        ThroughWall: true,
        Measure.Of(15, "mm"),
        Measure.Of(15, "mm"),
        Measure.Of(4, "mm"),
        ClockHours: 4,
        Growing: false
    );

    private static DateOnly Today => DateOnly.FromDateTime(DateTime.UtcNow);

    /// <summary>A pinhole on the cooling water, assessed and sized by Ines: class C, a banded patch.</summary>
    public static async Task<string> Sized(Service service)
    {
        var number = await Requested(service);
        var ines = await service.Client("ines");
        await Assess(ines, number);
        await Choose(ines, number);
        await Size(ines, number, (await (await service.Client("ada")).Person("mara")).Id);
        return number;
    }

    public static async Task Assess(RepairOrdersClient ines, string number) =>
        await ines.Assess(
            number,
            new(
                [
                    new(ReadingPlace.Beside, "3 o'clock", Measure.Of(6.4, "mm"), Today, "UT-0417"),
                    new(ReadingPlace.Beside, "5 o'clock", Measure.Of(6.6, "mm"), Today, "UT-0417"),
                ],
                null,
                Pinhole,
                FewPeople,
                QualityFactor: 1
            ),
            await Version(ines, number)
        );

    public static async Task Choose(RepairOrdersClient ines, string number) =>
        await ines.Choose(
            number,
            new(
                "banded-patch",
                [new("section-replacement", "the line cannot be taken off before the January stop")],
                "a pinhole with sound metal round it, water at 6 bar"
            ),
            await Version(ines, number)
        );

    public static async Task Size(RepairOrdersClient ines, string number, Guid owner) =>
        await ines.Size(
            number,
            new(
                new Dictionary<string, InputValue>
                {
                    ["pressureBar"] = 6,
                    ["bandYieldMpa"] = 500,
                    ["nutFactorLow"] = 0.14,
                    ["nutFactorHigh"] = 0.18,
                    ["plateThicknessMm"] = 0.6,
                    ["designLifeDays"] = 180,
                },
                null,
                Today.AddDays(1),
                owner,
                new("job 4411", Today.AddDays(60)),
                InterimLimits: new(Measure.Of(6, "bar"), null, null)
            ),
            await Version(ines, number)
        );

    /// <summary>A pinhole on the cooling water, raised by Tove.</summary>
    public static async Task<string> Requested(Service service)
    {
        return (
            await (await service.Client("tove")).Request(
                new(
                    "mill",
                    "CW-150-3104",
                    "Pump house 2, north wall, 4.2 m from valve V-22",
                    "cooling water, brackish",
                    "pinhole weeping at 4 o'clock",
                    FoundHow.Round,
                    LeakState.Weep,
                    Hazardous: false,
                    Measure.Of(6, "bar"),
                    Measure.Of(18, "°C"),
                    "drip tray, area roped off",
                    "the line cools the turbine until the January stop",
                    null
                )
            )
        )
            .Title
            .Number;
    }

    public static async Task<string> Version(RepairOrdersClient client, string number) =>
        (await client.Order(number)).Version;
}
