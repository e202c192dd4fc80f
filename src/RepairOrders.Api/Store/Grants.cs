using Npgsql;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Stock;

namespace RepairOrders.Api.Store;

/// <summary>
/// What the running service's own role may do in the store. It reads and writes, but what was written into the history stays:
/// no update, delete or truncate of journal and changes, and of a signed record only the marks that set it aside.
/// </summary>
internal static class Grants
{
    private static readonly Type[] AppendOnly =
    [
        typeof(JournalEntry),
        typeof(Change),
        typeof(StockMove),
        typeof(BatchJudgement),
        typeof(StockCount),
        typeof(PhotoBlock),
        typeof(PhotoThumbnail),
    ];

    /// <summary>Sets the role's rights to exactly these; asking again changes nothing.</summary>
    /// <exception cref="InvalidOperationException">There is no such role, or rights would not bind it.</exception>
    public static async Task Apply(RepairStore store, string role)
    {
        await MustBeBound(store, role);
        var to = new NpgsqlCommandBuilder().QuoteIdentifier(role);
        var records = Tables(store, typeof(SignedRecord).IsAssignableFrom);
        var appendOnly = Tables(store, t => AppendOnly.Contains(t));
        string[] statements =
        [
            // Takes back rights on single columns too.
            $"REVOKE ALL ON ALL TABLES IN SCHEMA public FROM {to}",
            $"GRANT USAGE ON SCHEMA public TO {to}",
            $"GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO {to}",
            $"GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO {to}",
            .. appendOnly.Concat(records).Select(t => $"REVOKE UPDATE, DELETE ON {t} FROM {to}"),
            .. records.Select(t => $"GRANT UPDATE (set_aside_at, set_aside_by, set_aside_why) ON {t} TO {to}"),
            $"REVOKE DELETE ON orders, lines, sites, people FROM {to}",
        ];
        await using var transaction = await store.Database.BeginTransactionAsync();
        foreach (var statement in statements)
            await store.Database.ExecuteSqlRawAsync(statement);
        await transaction.CommitAsync();
    }

    // Rights bind neither a superuser nor the owner of a table, nor whoever may become either.
    private static async Task MustBeBound(RepairStore store, string role)
    {
        var found = await store
            .Database.SqlQuery<bool>(
                $"""
                SELECT rolsuper OR EXISTS (
                    SELECT FROM pg_tables t WHERE t.schemaname = 'public' AND pg_has_role(r.rolname, t.tableowner, 'MEMBER')
                ) AS "Value" FROM pg_roles r WHERE rolname = {role}
                """
            )
            .ToListAsync();
        if (found.Count == 0)
            throw new InvalidOperationException(
                $"Store:ServiceRole is \"{role}\"; the store has no such role. Make it first: CREATE ROLE {role} LOGIN PASSWORD '…'."
            );
        if (found[0])
            throw new InvalidOperationException(
                $"Store:ServiceRole is \"{role}\", which is a superuser or may act as the owner of the tables: rights would not bind it. Give the service a role of its own."
            );
    }

    private static List<string> Tables(RepairStore store, Func<Type, bool> of) =>
        [
            .. store
                .Model.GetEntityTypes()
                .Where(e => of(e.ClrType))
                .Select(e => e.GetTableName())
                .OfType<string>()
                .Distinct()
                .Order(),
        ];
}
