using Microsoft.EntityFrameworkCore;

namespace RepairOrders.Api.Tests.Register;

/// <summary>Copies of one order's row, each with dates of its own: what a register of thousands is made of.</summary>
internal static class ManyOrders
{
    /// <summary>Copies the row of an order, putting other values into some of its columns.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="number">The order that is copied.</param>
    /// <param name="count">How many copies.</param>
    /// <param name="other">A JSON object of column values in SQL; <c>i</c> runs from 1.</param>
    public static Task Copy(Scene scene, string number, int count, string other) =>
        scene.Workshop.InStore(store =>
            store.Database.ExecuteSqlRawAsync(
                $$"""
                INSERT INTO orders
                SELECT (jsonb_populate_record(t, jsonb_build_object(
                    'id', gen_random_uuid(), 'number', '{{scene.Site}}-c' || i) || ({{other}}))).*
                FROM orders t, generate_series(1, {{count}}) AS i
                WHERE t.number = '{{number}}'
                """.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)
            )
        );
}
