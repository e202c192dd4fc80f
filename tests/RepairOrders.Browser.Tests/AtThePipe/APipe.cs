using System.Collections.Concurrent;
using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.AtThePipe;

/// <summary>An order ready to be fitted by Tove and Anton, and the phone it is worked from.</summary>
internal static class APipe
{
    public const string Code = "730519";

    // The stores are one for all tests that run side by side.
    private static readonly SemaphoreSlim AtTheCounter = new(1);

    // A patch of blue, as a camera would hand it over.
    private static readonly byte[] Blue = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAGCAIAAABxZ0isAAAAEUlEQVR42mNwy5uGFTEMpAQAE0Q94V3R96gAAAAASUVORK5CYII="
    );

    public static Stream Picture => new MemoryStream(Blue);

    public static FilePayload Photograph =>
        new()
        {
            Name = "pipe.png",
            MimeType = "image/png",
            Buffer = Blue,
        };

    /// <summary>Approved, issued and readied.</summary>
    public static async Task<string> Ready(Service service)
    {
        var number = await AnOrder.Sized(service);
        await Approve(service, number);
        await Issue(service, number);
        await Readied(service, number, ReadinessFor.Fit);
        return number;
    }

    public static async Task Approve(Service service, string number)
    {
        var fingerprint = (await (await service.Client("mara")).Order(number)).Fingerprint!;
        await (await service.Client("mara")).Approve(number, new(fingerprint, ApprovalCapacity.Supervisor));
        await (await service.Client("pavel")).Approve(number, new(fingerprint, ApprovalCapacity.Engineer));
    }

    public static async Task Issue(Service service, string number)
    {
        var tove = (await (await service.Client("tove")).Me()).Id;
        await AtTheCounter.WaitAsync();
        try
        {
            await Issue(await service.Client("signe"), number, tove);
        }
        finally
        {
            AtTheCounter.Release();
        }
    }

    public static async Task Readied(Service service, string number, ReadinessFor what)
    {
        var tove = (await (await service.Client("tove")).Me()).Id;
        var anton = (await (await service.Client("anton")).Me()).Id;
        var now = DateTimeOffset.UtcNow;
        await (await service.Client("olaf")).ReadyOrder(
            number,
            new(
                what,
                "PTW 881",
                PermitKind.Cold,
                now,
                now.AddHours(10),
                new(
                    "IC 204",
                    "V-22 lock 14, V-23 lock 15",
                    "vent opened at the low point, drain runs dry",
                    "Olaf Brekke",
                    "Tove Aune",
                    Measure.Of(0, "bar")
                ),
                null,
                new(now, "Olaf Brekke", 0, 20.9, 0, WithinPermit: true),
                [tove, anton],
                [tove, anton]
            )
        );
    }

    /// <summary>Every step before the wanted one is signed by Tove, on another device.</summary>
    public static async Task<string> ReadyFor(Service service, string step)
    {
        var number = await Ready(service);
        await FitTo(service, number, step);
        return number;
    }

    /// <summary>Tove signs what is open before a step; all of it where no hold point is called so.</summary>
    public static async Task FitTo(Service service, string number, string step)
    {
        var tove = await service.Client("tove");
        foreach (var point in (await tove.Fitting(number)).Points.TakeWhile(p => p.Point.Code != step))
            if (point.ReleasedAt is null)
                await Release(service, tove, number, point.Point);
    }

    /// <summary>
    /// What was mixed was mixed an hour and a half ago: the cure is counted by the service's clock, which no one can set, and a
    /// test cannot wait for it.
    /// </summary>
    public static async Task MixedEarlier(Service service, string number)
    {
        foreach (var table in new[] { "mixes", "climate_readings" })
            await service.Sql(
                $"update {table} set at = at - interval '90 minutes' where order_id = (select id from orders where number = '{number}')"
            );
    }

    /// <summary>Tested and tagged by Tove; nobody has witnessed it yet.</summary>
    public static async Task<RecordView> Proved(Service service, string number)
    {
        var tove = await service.Client("tove");
        var tag = await tove.AddPhoto(number, Picture, PhotoOf.Tag, null);
        return await tove.RecordProof(
            number,
            new(
                new(
                    TestKind.Hydrostatic,
                    Measure.Of(6, "bar"),
                    Measure.Of(15, "min"),
                    "water",
                    Measure.Of(15, "°C"),
                    "PG-1107",
                    Tight: true
                ),
                Measure.Of(20, "°C"),
                "T-118",
                tag.Id
            )
        );
    }

    /// <summary>All that was issued is in the repair.</summary>
    public static async Task Account(Service service, string number)
    {
        var rest = (await (await service.Client("signe")).PickList(number)).Out;
        await (await service.Client("tove")).AccountForMaterial(
            number,
            new([.. rest.Select(o => new UseLine(o.Batch, o.Quantity, 0))])
        );
    }

    /// <summary>Fitted, tested, witnessed and accepted; Mara goes back to look.</summary>
    public static async Task<string> InService(Service service)
    {
        var number = await ReadyFor(service, "proof");
        var proof = await Proved(service, number);
        await (await service.Client("pavel")).WitnessProof(number, proof.Id, new("tight"));
        await Account(service, number);
        await (await service.Client("mara")).AcceptFirstLook(number, new());
        await (await service.Client("olaf")).AcceptRepair(
            number,
            new("day shift, by the board", IsolationsRemoved: true)
        );
        return number;
    }

    public static readonly RecordClimate Dry = new(Measure.Of(21, "°C"), 50, Measure.Of(20, "°C"), "HY-0077");

    private static async Task Release(Service service, RepairOrdersClient tove, string number, HoldPointView point)
    {
        var asked = point.Evidence;
        if (asked.Contains(Evidence.Photo))
            await tove.AddPhoto(number, Picture, PhotoOf.HoldPoint, point.Code);
        if (asked.Contains(Evidence.ClimateReading) || asked.Contains(Evidence.Mix))
            await tove.RecordClimate(number, Dry);
        if (asked.Contains(Evidence.Mix))
        {
            var batch = (await tove.AtThePipe(number)).Batches[0].Batch;
            var mix = await tove.StartMix(number, new(batch, null, null, null, Measure.Of(20, "°C")));
            await tove.UseMix(number, mix.Id, new UseMix());
        }
        if (asked.Contains(Evidence.CureLog))
        {
            await MixedEarlier(service, number);
            await tove.RecordCure(number, new([new(null, Measure.Of(20, "°C"))], "ST-0220"));
        }
        await tove.ReleaseHoldPoint(
            number,
            new(
                point.Code,
                asked.Contains(Evidence.ThicknessReadings)
                    ? [new("upstream end", Measure.Of(6.5, "mm")), new("downstream end", Measure.Of(6.4, "mm"))]
                    : null,
                asked.Contains(Evidence.DiameterReadings)
                    ? [new("horizontal", Measure.Of(168.4, "mm")), new("vertical", Measure.Of(168.1, "mm"))]
                    : null,
                asked.Contains(Evidence.SurfaceGrade) ? new(SurfaceGrade.St3, [58, 62, 60]) : null,
                asked.Contains(Evidence.TorqueReadings) ? Tightened((await tove.AtThePipe(number)).Limits) : null,
                asked.Contains(Evidence.HardnessReading) ? [82, 84, 83] : null,
                asked.Contains(Evidence.ThicknessReadings) ? "UT-0417"
                    : asked.Contains(Evidence.TorqueReadings) ? "TW-0031"
                    : asked.Contains(Evidence.HardnessReading) ? "HT-0009"
                    : null
            )
        );
    }

    // Two passes over every fastener, the last one in the middle of the design's window.
    private static IReadOnlyList<Tightened> Tightened(PipeLimits limits)
    {
        var torque = (limits.LeastTorqueNm + limits.GreatestTorqueNm) / 2;
        var tension = (limits.LeastTensionN + limits.GreatestTensionN) / 2;
        return
        [
            .. from pass in new[] { 1, 2 }
            from fastener in Enumerable.Range(1, limits.Fasteners ?? 1)
            select torque is { } newtonMetres
                ? new Tightened(fastener, pass, Torque: Measure.Of(newtonMetres * pass / 2, "N m"))
                : new Tightened(fastener, pass, Tension: Measure.Of(tension!.Value * pass / 2, "N")),
        ];
    }

    private static async Task Issue(RepairOrdersClient signe, string number, Guid receiver)
    {
        var items = (await signe.StockItems("mill")).Rows;
        foreach (var line in (await signe.PickList(number)).Lines.Where(l => l.Wanting > 0))
        {
            var item = items.First(i => i.Said.Need == line.Code).Said;
            await signe.ReceiveBatch(
                new(
                    "mill",
                    item.Code,
                    $"{item.Code} lot {Guid.NewGuid():N}"[..24],
                    item.Expires ? DateOnly.FromDateTime(DateTime.UtcNow).AddYears(1) : null,
                    item.NeedsCertificate ? "3.1 no. 4471" : null,
                    "A1",
                    (decimal)Math.Ceiling(line.Wanting)
                )
            );
        }
        var list = await signe.PickList(number);
        await signe.IssueMaterial(
            number,
            new(
                receiver,
                [.. list.Lines.SelectMany(l => l.Picks.Select(p => new IssueLine(l.Line, p.Batch, p.Bin, p.Quantity)))],
                HazardSheetsGiven: true
            )
        );
    }

    // Set once for all tests: two at a time would meet each other's version of the person.
    private static readonly ConcurrentDictionary<string, Lazy<Task>> Codes = [];

    /// <summary>Somebody has set his six digits.</summary>
    public static Task HasCode(Service service, string name) =>
        Codes
            .GetOrAdd(
                name,
                _ =>
                    new(async () =>
                        await (await service.Client(name)).SetShortCode(new(service.PasswordOf(name), Code))
                    )
            )
            .Value;

    /// <summary>Tove's phone at the order.</summary>
    public static async Task<IPage> Phone(
        Service service,
        string number,
        int width = 390,
        bool dark = false,
        bool inOne = true
    )
    {
        var at = inOne ? service.Both : service.Split;
        var page = await service.SignIn(at, "tove", width, dark);
        await page.GotoAsync(new Uri(at, $"/pipe/{number}").ToString());
        return page;
    }

    public static string Address(Service service, string number) => new Uri(service.Both, $"/pipe/{number}").ToString();

    /// <summary>The step the phone is at.</summary>
    public static Task IsAt(this IPage page, int step) =>
        Assertions.Expect(page.Locator(".at")).ToContainTextAsync($"Step {step} of 13");

    /// <summary>The camera's picture of the open step is on the order.</summary>
    public static async Task Photographs(this IPage page)
    {
        await page.SetInputFilesAsync("[data-camera]", Photograph);
        await Assertions.Expect(page.Locator(".pictures[data-photos='1'] img")).ToHaveCountAsync(1);
    }

    /// <summary>Hands the phone to somebody who signs with his own digits.</summary>
    public static async Task HandsTo(this IPage page, string name)
    {
        await page.SelectOptionAsync("#f-now [data-signer]", name);
        await page.FillAsync("#f-now [data-code]", Code);
        await page.Sign();
    }

    /// <summary>Types both diameters; without signal they are signed and wait.</summary>
    public static async Task Diameters(this IPage page, bool waits = false)
    {
        await page.FillAsync("#r-diameters-0-diameter", "168.2");
        await page.FillAsync("#r-diameters-1-diameter", "168.4");
        if (!waits)
            return;
        await page.Sign();
        await Assertions.Expect(page.Locator("#waiting")).ToContainTextAsync("Not sent yet: Step 2");
    }

    public static Task Sign(this IPage page) => page.ClickAsync(".foot button[type=submit]");

    public static async Task Climate(this IPage page, string steel, string air, string humidity)
    {
        await page.FillAsync("#r-steel", steel);
        await page.FillAsync("#r-air", air);
        await page.FillAsync("#r-humidityPercent", humidity);
        await page.SelectOptionAsync("[name=instrument]", "HY-0077");
    }
}
