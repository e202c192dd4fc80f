namespace RepairOrders.Api.Store;

/// <summary>
/// Indexes by the shape of what is asked: open work by site and date, text by three-letter parts. They stand here because the
/// columns are a complex property, on which the model can lay none.
/// </summary>
internal static class Indexes
{
    private const string Sql = """
        CREATE EXTENSION IF NOT EXISTS pg_trgm;
        CREATE INDEX IF NOT EXISTS orders_newest ON orders (site_id, id DESC);
        CREATE INDEX IF NOT EXISTS orders_by_end ON orders (site_id, end_date, id DESC);
        CREATE INDEX IF NOT EXISTS orders_by_look ON orders (site_id, look_due_at, id DESC);
        CREATE INDEX IF NOT EXISTS orders_open_by_end ON orders (site_id, end_date, id DESC) WHERE open;
        CREATE INDEX IF NOT EXISTS orders_open_by_look ON orders (site_id, look_due_at, id DESC) WHERE open;
        CREATE INDEX IF NOT EXISTS orders_live ON orders (site_id, line_id) WHERE live;
        CREATE INDEX IF NOT EXISTS orders_shutdown ON orders (site_id, shutdown) WHERE open;
        CREATE INDEX IF NOT EXISTS orders_words ON orders USING gin (words gin_trgm_ops);
        CREATE INDEX IF NOT EXISTS lines_number_parts ON lines USING gin (number gin_trgm_ops);
        """;

    public static Task Create(RepairStore store) => store.Database.ExecuteSqlRawAsync(Sql);
}
