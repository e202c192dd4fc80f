using Microsoft.EntityFrameworkCore;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Tests.Register;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Standing;

public sealed class FlagsInTheStore(Workshop workshop)
{
    /// <summary>
    /// Each flag is told as a sentence and as a range in the store. Over a crowd of orders with every date at random, the orders a
    /// filter finds are those whose rows show the flag.
    /// </summary>
    [Fact]
    public async Task A_filter_finds_exactly_the_orders_whose_row_shows_the_flag()
    {
        var scene = await workshop.Scene();
        var batch = await Recalled(scene);
        var number = await AnOrder.Approved(scene);
        await AnOrder.Requested(scene);
        await Lose(scene, "anton");
        await ManyOrders.Copy(scene, number, 300, Anything(scene, batch));
        scene.Clock.PassDays(40);
        var rows = await All(scene, new RegisterFilter());
        foreach (var flag in Flags.All)
        {
            var shown = rows.Where(r => r.Flags.Any(f => f.Code == flag)).Select(r => r.Number).ToList();
            var found = (await All(scene, new RegisterFilter(Flag: flag))).Select(r => r.Number).ToList();
            found.Order().ShouldBe(shown.Order(), flag);
            shown.Count.ShouldBeInRange(1, rows.Count - 1, flag);
        }
    }

    [Fact]
    public async Task The_columns_are_those_the_records_give()
    {
        var scene = await workshop.Scene();
        string[] numbers =
        [
            await AnOrder.Requested(scene),
            await AnOrder.Assessed(scene),
            await AnOrder.Sized(scene),
            await AnOrder.Approved(scene),
        ];
        foreach (var number in numbers)
            await workshop.InStore(async store =>
            {
                var order = await store.Order(number, scene.Person("mara"));
                Text(OrderColumns.From(order)).ShouldBe(Text(order.Columns), number);
            });
    }

    private static string Text(OrderColumns columns) =>
        System.Text.Json.JsonSerializer.Serialize(columns, RepairOrdersClient.Json);

    private static async Task<List<RegisterRow>> All(Scene scene, RegisterFilter filter)
    {
        List<RegisterRow> rows = [];
        string? after = null;
        do
        {
            var page = await scene.Mara.Register(filter, after, 200);
            rows.AddRange(page.Rows);
            after = page.Next;
        } while (after is not null);
        return rows;
    }

    private static async Task<Guid> Recalled(Scene scene)
    {
        var batch = await Stores.PuttyBatch(scene, "lot 7", scene.Clock.Today.AddDays(300), 500);
        await scene.Signe.JudgeBatch(batch.Id, new(BatchStanding.Recalled, "notice 12"));
        return batch.Id;
    }

    private static Task Lose(Scene scene, string name)
    {
        var id = scene.IdOf(name);
        return scene.Workshop.InStore(store =>
            store.Users.Where(p => p.Id == id).ExecuteUpdateAsync(p => p.SetProperty(x => x.Disabled, true))
        );
    }

    // A moment within some days of the start, or none; one in four is none.
    private static string Some(string column, int days) =>
        $"'{column}', CASE WHEN random() < 0.25 THEN NULL ELSE timestamptz '2026-03-02 06:30Z' + (random() * {days}) * interval '1 day' END";

    private static string Anything(Scene scene, Guid batch) =>
        $$"""
                jsonb_build_object(
                    'line_id', CASE WHEN i % 7 = 0 THEN NULL ELSE (SELECT to_jsonb(l.id) FROM lines l WHERE l.site_id = t.site_id ORDER BY (i * 7919 + ascii(l.number)) % 5, l.number LIMIT 1) END,
                    'stage', (ARRAY['InService','InService','InService','LineOutOfService','Failed','Fitting','Assessed','Closed'])[1 + (random() * 7)::int],
                    'open', random() < 0.8,
                    'live', random() < 0.05,
                    'counts_neighbours', random() < 0.5,
                    'owner_id', CASE WHEN random() < 0.3 THEN '{{scene.IdOf("anton")}}' ELSE '{{scene.IdOf(
                "mara"
            )}}' END,
                    'end_date', '2026-04-01',
                    'stop_why', 'rain', 'removal_why', 'ordered', 'reassessment_why', 'an excursion',
                    'batches', CASE WHEN random() < 0.2 THEN '["{{batch}}"]'::jsonb ELSE '[]'::jsonb END)
                || jsonb_build_object({{Some("leaked_at", 20)}}, {{Some("last_leak_at", 60)}}, {{Some(
                "leaks_since",
                60
            )}},
                    {{Some("ends_at", 80)}}, {{Some("look_due_at", 50)}}, {{Some("thickness_due_at", 80)}}, {{Some(
                "settled_at",
                60
            )}},
                    {{Some("reassessment_owed_from", 120)}}, {{Some("approval_owed_until", 80)}}, {{Some(
                "removal_owed_from",
                80
            )}},
                    {{Some("stopped_since", 30)}}, {{Some("permit_until", 80)}}, {{Some("curing_until", 80)}})
                || jsonb_build_object('look_overdue_at', timestamptz '2026-03-02 06:30Z' + (40 + random() * 20) * interval '1 day')
            """;
}
