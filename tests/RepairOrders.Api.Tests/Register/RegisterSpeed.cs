using Microsoft.EntityFrameworkCore;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Register;

[Collection(nameof(Alone))]
public sealed class RegisterSpeed(Workshop workshop, ITestOutputHelper output)
{
    [Fact]
    public async Task A_page_of_five_thousand_orders_comes_within_200_ms()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        await ManyOrders.Lines(scene, 400);
        await ManyOrders.Copy(
            scene,
            number,
            5000,
            """
            jsonb_build_object(
                'line_id', (SELECT to_jsonb(l.id) FROM lines l WHERE l.site_id = t.site_id AND l.number = 'copy-' || i % 400),
                'stage', (ARRAY['InService','Closed','Closed','Closed','Assessed'])[1 + i % 5],
                'open', i % 5 IN (0, 4),
                'last_leak_at', timestamptz '2026-03-02 06:30Z' - i / 400 * interval '1 day',
                'live', i % 5 = 0,
                'words', '{site}-c' || i || ' cw-150-3104 pump house ' || i || ' lot-' || i % 97,
                'end_date', date '2026-03-01' + i % 400,
                'ends_at', timestamptz '2026-03-01Z' + i % 400 * interval '1 day',
                'look_due_at', timestamptz '2026-02-01Z' + i % 90 * interval '1 day',
                'look_overdue_at', timestamptz '2026-02-04Z' + i % 90 * interval '1 day')
            """.Replace("{site}", scene.Site, StringComparison.Ordinal)
        );
        await workshop.InStore(store => store.Database.ExecuteSqlRawAsync("ANALYZE orders"));
        RegisterFilter[] asked =
        [
            new(),
            new(Live: true, Sort: RegisterSort.EndDate),
            new(Live: true, Sort: RegisterSort.NextLook),
            new(Flag: Flags.PastLife, Live: true),
            new(Flag: Flags.LookOverdue, Live: true, Sort: RegisterSort.NextLook),
            new(Flag: Flags.RepeatLeak, Live: true),
            new(Flag: Flags.CarriedRisk),
            new(Search: "cw-150 lot-13"),
            new(Search: $"{scene.Site}-c4711"),
        ];
        foreach (var filter in asked)
        {
            var rows = (await scene.Mara.Register(filter)).Rows.Count;
            var median = await Alone.Median(() => scene.Mara.Register(filter));
            output.WriteLine($"{median, 7:0.0} ms, {rows, 3} rows: {filter}");
            rows.ShouldBeGreaterThan(0);
            median.ShouldBeLessThan(200, filter.ToString());
        }
    }
}
