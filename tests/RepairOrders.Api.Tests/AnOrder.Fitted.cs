using System.Text.Json;
using RepairOrders.Contract;
using SkiaSharp;

namespace RepairOrders.Api.Tests;

/// <summary>
/// From the approval into service, by doing what people do: Signe issues, Olaf readies and accepts, Tove and Anton fit, Pavel
/// witnesses. Every step also goes on from an order that stands before it, whatever its method and class.
/// </summary>
internal static partial class AnOrder
{
    public static async Task<string> Issued(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Approved(scene, sizing);
        await scene.Issue(number);
        return number;
    }

    public static async Task<string> Ready(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Issued(scene, sizing);
        await scene.Readied(number);
        return number;
    }

    /// <summary>The first hold point is signed.</summary>
    public static async Task<string> Fitting(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Ready(scene, sizing);
        await scene.Release(number, (await scene.Tove.Fitting(number)).Points[0].Point);
        return number;
    }

    public static async Task<string> Fitted(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Ready(scene, sizing);
        await scene.Fit(number);
        return number;
    }

    /// <summary>Fitted, proved, accepted; all its material is accounted for.</summary>
    public static async Task<string> InService(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Fitted(scene, sizing);
        await scene.IntoService(number);
        return number;
    }

    /// <summary>Takes what the bill needs into the stores and issues it to Tove.</summary>
    public static async Task<RecordView> Issue(this Scene scene, string number)
    {
        var list = await scene.Signe.PickList(number);
        foreach (var line in list.Lines.Where(l => l.Wanting > 0))
            await Stores.Receive(scene, line.Code, line.Unit, (decimal)Math.Ceiling(line.Wanting));
        list = await scene.Signe.PickList(number);
        return await scene.Signe.IssueMaterial(
            number,
            new IssueMaterial(
                scene.IdOf("tove"),
                [.. list.Lines.SelectMany(l => l.Picks.Select(p => new IssueLine(l.Line, p.Batch, p.Bin, p.Quantity)))],
                HazardSheetsGiven: true
            )
        );
    }

    /// <summary>A permit of three days on the isolated line, Tove and Anton fit.</summary>
    public static ReadyOrder Readiness(Scene scene, ReadinessFor what = ReadinessFor.Fit) =>
        new(
            what,
            "PTW 881",
            PermitKind.Hot,
            scene.Clock.Now,
            scene.Clock.Now.AddDays(3),
            new Isolation(
                "IC 204",
                "V-22 lock 14, V-23 lock 15",
                "vent opened at the low point, drain runs dry",
                "Olaf Brekke",
                "Tove Aune",
                Measure.Of(0, "bar")
            ),
            null,
            new GasTest(scene.Clock.Now, "Olaf Brekke", 0, 20.9, 0, WithinPermit: true),
            [scene.IdOf("tove"), scene.IdOf("anton")],
            [scene.IdOf("tove"), scene.IdOf("anton")]
        );

    public static Task<RecordView> Readied(this Scene scene, string number, ReadinessFor what = ReadinessFor.Fit) =>
        scene.Olaf.ReadyOrder(number, Readiness(scene, what));

    /// <summary>Signs every hold point in turn, waiting for the cure where it must.</summary>
    public static async Task Fit(this Scene scene, string number)
    {
        foreach (var point in (await scene.Tove.Fitting(number)).Points.Where(p => p.ReleasedAt is null))
            await scene.Release(number, point.Point);
    }

    /// <summary>Signs one hold point with all the evidence it asks for.</summary>
    public static async Task<RecordView> Release(this Scene scene, string number, HoldPointView point)
    {
        if (point.Evidence.Contains(Evidence.Photo))
            await scene.Photograph(number, PhotoOf.HoldPoint, point.Code);
        if (point.Evidence.Contains(Evidence.ClimateReading) || point.Evidence.Contains(Evidence.Mix))
            await scene.Tove.RecordClimate(number, Dry);
        if (point.Evidence.Contains(Evidence.Mix))
            await scene.MixAndUse(number);
        if (point.Evidence.Contains(Evidence.CureLog))
            await scene.LetSet(number);
        return await scene.Tove.ReleaseHoldPoint(number, await scene.Evidenced(number, point));
    }

    /// <summary>A mild dry day; the pipe is drained and has warmed up.</summary>
    public static readonly RecordClimate Dry = new(Measure.Of(21, "°C"), 50, Measure.Of(20, "°C"), "HY-5");

    public static async Task<ReleaseHoldPoint> Evidenced(this Scene scene, string number, HoldPointView point)
    {
        var asked = point.Evidence;
        var design = await scene.Design(number);
        return new(
            point.Code,
            Walls: asked.Contains(Evidence.ThicknessReadings)
                ? [new("upstream end", Measure.Of(6.5, "mm")), new("downstream end", Measure.Of(6.4, "mm"))]
                : null,
            Diameters: asked.Contains(Evidence.DiameterReadings)
                ? [new("horizontal", Measure.Of(168.4, "mm")), new("vertical", Measure.Of(168.1, "mm"))]
                : null,
            Surface: asked.Contains(Evidence.SurfaceGrade) ? new(SurfaceGrade.St3, [58, 62, 60], 15) : null,
            Tightening: asked.Contains(Evidence.TorqueReadings) ? Tightened(design) : null,
            ShoreD: asked.Contains(Evidence.HardnessReading) ? [82, 84, 83] : null,
            Instrument: asked.Contains(Evidence.ThicknessReadings) ? "UT-7"
                : asked.Contains(Evidence.TorqueReadings) ? "TW-2"
                : asked.Contains(Evidence.HardnessReading) ? "SD-1"
                : null,
            Witness: new(scene.IdOf("pavel"), scene.Clock.Now, Came: true)
        );
    }

    /// <summary>Two passes over every fastener, the last one in the middle of the design's window.</summary>
    public static IReadOnlyList<Tightened> Tightened(SignedDesign design)
    {
        var method = design.Method;
        var count = (int)(method["clampBoltCount"] ?? method["bandCount"] * (method["fastenersPerBand"] ?? 1) ?? 4);
        var torque = method["torqueLeastNm"] is not null;
        var middle = torque
            ? (method["torqueLeastNm"]!.Value + method["torqueMostNm"]!.Value) / 2
            : ((method["bandTensionLowN"] ?? 100) + (method["bandTensionHighN"] ?? 100)) / 2;
        return
        [
            .. from pass in new[] { 1, 2 }
            from fastener in Enumerable.Range(1, count)
            let reached = pass == 1 ? middle / 2 : middle
            select torque
                ? new Tightened(fastener, pass, Torque: Measure.Of(reached, "N m"))
                : new Tightened(fastener, pass, Tension: Measure.Of(reached, "N")),
        ];
    }

    /// <summary>Mixes what was issued and puts it on the pipe.</summary>
    public static async Task MixAndUse(this Scene scene, string number)
    {
        var mix = await scene.Tove.StartMix(number, await scene.SomeMix(number));
        scene.Clock.Pass(TimeSpan.FromMinutes(8));
        await scene.Tove.UseMix(number, mix.Id, new UseMix("under the plate"));
    }

    public static async Task<StartMix> SomeMix(this Scene scene, string number)
    {
        var order = await scene.Mara.Order(number);
        var issued = order
            .Records.Where(r => r.Kind == "material-issue" && r.SetAsideAt is null && r.Round == order.Title.Round)
            .SelectMany(r => r.Body.Deserialize<SignedIssue>(RepairOrdersClient.Json)!.Lines)
            .ToList();
        var items = (await scene.Signe.StockItems(scene.Site)).Rows;
        foreach (var line in issued)
        {
            var limits = items.First(i => i.Said.Code == line.Item).Said.Limits;
            if (limits?.PotLife is null)
                continue;
            var hardener = issued.FirstOrDefault(l => l.Item == limits.Hardener);
            return new(
                line.Batch,
                limits.MixRatio is { } ratio ? Measure.Of(100 * ratio, "g") : null,
                hardener?.Batch,
                hardener is null ? null : Measure.Of(100, "g"),
                Measure.Of(20, "°C")
            );
        }
        throw new InvalidOperationException("Nothing that is mixed was issued.");
    }

    /// <summary>Reads the pipe every hour until everything that cures has set.</summary>
    public static async Task LetSet(this Scene scene, string number)
    {
        for (var hours = 0; (await scene.Tove.Fitting(number)).Cures.Any(c => !c.SetForLoad); hours++)
        {
            hours.ShouldBeLessThan(200, "the repair never sets");
            scene.Clock.Pass(TimeSpan.FromHours(1));
            await scene.Tove.RecordCure(number, new RecordCure([new(null, Measure.Of(20, "°C"))], "ST-3"));
        }
    }

    /// <summary>Proves, witnesses and accepts; the material is accounted for.</summary>
    public static async Task IntoService(this Scene scene, string number)
    {
        await scene.Proved(number);
        await scene.Account(number);
        var owner = (await scene.Design(number)).Ask.Owner!.Value;
        await scene.Of(owner).AcceptFirstLook(number, new AcceptFirstLook());
        await scene.Olaf.AcceptRepair(number, new AcceptRepair("day shift, by the board", IsolationsRemoved: true));
    }

    /// <summary>Tests at the most the line may see while the repair is live; Pavel witnesses.</summary>
    public static async Task<RecordView> Proved(this Scene scene, string number)
    {
        var proof = await scene.Tove.RecordProof(number, await scene.Test(number));
        await scene.Pavel.WitnessProof(number, proof.Id, new WitnessProof("tight"));
        return proof;
    }

    public static async Task<RecordProof> Test(this Scene scene, string number)
    {
        var design = await scene.Design(number);
        var pressure = design.Ask.InterimLimits?.Pressure?.Value ?? design.Facts.OperatingPressureBar;
        var tag = await scene.Photograph(number, PhotoOf.Tag);
        return new(
            new TestMade(
                TestKind.Hydrostatic,
                Measure.Of(pressure, "bar"),
                Measure.Of(15, "min"),
                "water",
                Measure.Of(15, "°C"),
                pressure <= 8 ? "PG-16" : "PG-25",
                Tight: true
            ),
            Measure.Of(20, "°C"),
            "T-118",
            tag.Id
        );
    }

    /// <summary>All that was issued is in the repair.</summary>
    public static async Task Account(this Scene scene, string number)
    {
        var rest = (await scene.Signe.PickList(number)).Out;
        if (rest.Count > 0)
            await scene.Tove.AccountForMaterial(
                number,
                new AccountForMaterial([.. rest.Select(o => new UseLine(o.Batch, o.Quantity, 0))])
            );
    }

    public static Task<RecordView> Photograph(this Scene scene, string number, PhotoOf of, string? subject = null) =>
        scene.Tove.AddPhoto(number, new MemoryStream(Picture()), of, subject, "drawn for a test");

    /// <summary>A small drawn picture.</summary>
    public static byte[] Picture(
        int width = 64,
        int height = 48,
        SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg
    )
    {
        using var bitmap = new SKBitmap(width, height);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.SteelBlue);
            canvas.DrawRect(0, 0, width / 2f, height / 2f, new SKPaint { Color = SKColors.OrangeRed });
        }
        using var data = bitmap.Encode(format, 90);
        return data.ToArray();
    }

    /// <summary>The design that was signed last.</summary>
    public static async Task<SignedDesign> Design(this Scene scene, string number) =>
        (await scene.Mara.Order(number))
            .Records.Last(r => r.Kind == "design" && r.SetAsideAt is null)
            .Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!;

    private static RepairOrdersClient Of(this Scene scene, Guid person) =>
        scene.As(Cast.People.First(m => scene.IdOf(m.Name) == person).Name);
}
