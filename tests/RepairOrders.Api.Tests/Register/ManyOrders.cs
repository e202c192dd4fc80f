using Microsoft.EntityFrameworkCore;

namespace RepairOrders.Api.Tests.Register;

/// <summary>Copies of one order's row, each with dates of its own: what a register of thousands is made of.</summary>
internal static class ManyOrders
{
    /// <summary>Copies a line of the scene's site as copy-0, copy-1 and so on, ten to a section.</summary>
    public static Task Lines(Scene scene, int count) =>
        scene.Workshop.InStore(store =>
            store.Database.ExecuteSqlRawAsync(
                $$"""
                INSERT INTO lines
                SELECT (jsonb_populate_record(t, jsonb_build_object(
                    'id', gen_random_uuid(), 'number', 'copy-' || i, 'section', 'part ' || i / 10))).*
                FROM lines t, generate_series(0, {{count}} - 1) AS i
                WHERE t.id = (SELECT min(l.id::text)::uuid FROM lines l JOIN sites s ON s.id = l.site_id WHERE s.short_name = '{{scene.Site}}')
                """.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)
            )
        );

    /// <summary>Copies the row of an order, putting other values into some of its columns.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="number">The order that is copied.</param>
    /// <param name="count">How many copies.</param>
    /// <param name="other">A JSON object of column values in SQL; <c>i</c> runs from 1.</param>
    public static Task Copy(Scene scene, string number, int count, string other) =>
        scene.Workshop.InStore(store =>
        {
            // Five thousand rows with all their indexes take their time while other tests write.
            store.Database.SetCommandTimeout(TimeSpan.FromMinutes(5));
            return store.Database.ExecuteSqlRawAsync(
                $$"""
                INSERT INTO orders
                SELECT (jsonb_populate_record(t, jsonb_build_object(
                    'id', gen_random_uuid(), 'number', '{{scene.Site}}-c' || i) || ({{other}}))).*
                FROM orders t, generate_series(1, {{count}}) AS i
                WHERE t.number = '{{number}}'
                """.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)
            );
        });
}
