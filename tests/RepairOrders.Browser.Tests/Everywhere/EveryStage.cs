using RepairOrders.Browser.Tests.AtThePipe;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Everywhere;

/// <summary>
/// One order from its request to the closed sheaf. At each stage its page is looked at, with every panel that opens there for the
/// first time, as whoever may open it.
/// </summary>
public sealed class EveryStage(Service service, ITestOutputHelper output)
{
    private static readonly string[] People = ["tove", "mara", "ines", "olaf", "signe", "pavel", "henrik", "vera"];
    private readonly HashSet<string> seen = [];
    private readonly HashSet<Stage> stages = [];
    private readonly List<string> faults = [];

    [Fact]
    public async Task Every_panel_of_an_order_is_sound_in_every_look()
    {
        var number = await AnOrder.Requested(service);
        var ines = await service.Client("ines");
        await Look(number);
        await AnOrder.Assess(ines, number);
        await Look(number);
        await AnOrder.Choose(ines, number);
        await Look(number);
        await AnOrder.Size(ines, number, (await (await service.Client("ada")).Person("mara")).Id);
        await Look(number);
        await APipe.Approve(service, number);
        await Look(number);
        await APipe.Issue(service, number);
        await Look(number);
        await APipe.Readied(service, number, ReadinessFor.Fit);
        await Look(number);
        await APipe.FitTo(service, number, "torque");
        await Look(number);
        var tove = await service.Client("tove");
        await tove.StopJob(number, new("it rains on the bare pipe"));
        await Look(number);
        await (await service.Client("mara")).ResumeJob(number, new("the wind has gone down"));
        await APipe.FitTo(service, number, "proof");
        await Look(number);
        var proof = await APipe.Proved(service, number);
        await Look(number);
        await (await service.Client("pavel")).WitnessProof(number, proof.Id, new("tight"));
        await APipe.Account(service, number);
        await (await service.Client("mara")).AcceptFirstLook(number, new());
        await Look(number);
        await (await service.Client("olaf")).AcceptRepair(
            number,
            new("day shift, by the board", IsolationsRemoved: true)
        );
        await Look(number);
        await EndOf(number);
        output.WriteLine($"{seen.Count} panels: {string.Join(", ", seen)}");
        faults.ShouldBeEmpty();
    }

    // A survey, an extension asked for, a failure, and all that leads to the closed sheaf.
    private async Task EndOf(string number)
    {
        var tove = await service.Client("tove");
        var mara = await service.Client("mara");
        var ines = await service.Client("ines");
        var olaf = await service.Client("olaf");
        var day = DateOnly.FromDateTime(DateTime.UtcNow);
        async Task<Guid> Picture(PhotoOf of) => (await tove.AddPhoto(number, APipe.Picture, of)).Id;
        ThicknessReading[] walls =
        [
            new(ReadingPlace.Beside, "3 o'clock", Measure.Of(6.4, "mm"), day, "UT-0417"),
            new(ReadingPlace.Beside, "5 o'clock", Measure.Of(6.6, "mm"), day, "UT-0417"),
        ];
        await tove.Visit(
            number,
            new(
                number,
                null,
                LeakState.Dry,
                Moved: false,
                EdgesState.Sound,
                await Picture(PhotoOf.Visit),
                VisitResult.FitToStay,
                Readings: walls
            )
        );
        await Look(number);
        await tove.ReportFailure(
            number,
            new(LeakState.Weep, "weeps at the edge", Photo: await Picture(PhotoOf.Failure))
        );
        await Look(number);
        await olaf.MakeSafe(
            number,
            new(SafeBy.Isolation, "IC 209", null, AreaBarred: true, null, null, FailureMode.Seal)
        );
        await Look(number);
        await ines.OrderRemoval(
            number,
            new("the new spool is here", day.AddDays(3), "new spool, welded in"),
            await AnOrder.Version(ines, number)
        );
        await Look(number);
        await APipe.Readied(service, number, ReadinessFor.Removal);
        await Look(number);
        await tove.RecordRemoval(
            number,
            new(await Picture(PhotoOf.Removal), "one pinhole, clean metal round it", TagBack: true),
            await AnOrder.Version(tove, number)
        );
        await Look(number);
        var vera = await service.Client("vera");
        await vera.InspectRemoval(
            number,
            new("one pinhole, pitting under a deposit", DefectCause.InternalCorrosion),
            await AnOrder.Version(vera, number)
        );
        await Look(number);
        await mara.RecordPermanentFix(
            number,
            new(
                PermanentFixKind.Replacement,
                "job 4411",
                day,
                "3.1 no. 88213, pipe",
                "two butt welds, radiographed, no finding",
                "water, 9 bar for 30 min, tight",
                "isometric 3104 revision C"
            ),
            await AnOrder.Version(mara, number)
        );
        await Look(number);
        await olaf.CloseOrder(
            number,
            new(
                DefectCause.InternalCorrosion,
                "cut open: pitting under deposits",
                null,
                TagBack: true,
                Lessons: "grind before the plate goes on"
            ),
            await AnOrder.Version(olaf, number)
        );
        await Look(number);
    }

    // The page as its first reader sees it, and each panel not looked at before.
    private async Task Look(string number)
    {
        foreach (var name in People)
        {
            var sheet = await (await service.Client(name)).Order(number);
            var open = sheet.Actions.Where(a => a.Objection is null && seen.Add(a.Action)).ToList();
            if (open.Count == 0)
                continue;
            var page = await service.SignIn(service.Both, name);
            await page.Open($"/orders/{number}");
            foreach (var action in open)
            {
                await page.Settled();
                var button = page.Locator($"#do .actions button[data-action='{action.Action}']");
                if (await button.CountAsync() > 0)
                    await button.ClickAsync();
                else
                    await page.EvaluateAsync("() => document.querySelectorAll('.stopbar').forEach(d => d.open = true)");
                await page.Settled();
                faults.AddRange(
                    await page.Faults(
                        $"{sheet.Title.Stage} {name} {action.Action}",
                        stages.Add(sheet.Title.Stage) ? null : "#do"
                    )
                );
            }
            await page.Context.CloseAsync();
        }
    }
}
