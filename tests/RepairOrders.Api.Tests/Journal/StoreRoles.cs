using Microsoft.EntityFrameworkCore;
using Npgsql;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Store;
using RepairOrders.Api.Tests.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Journal;

public sealed class StoreRoles(Workshop workshop) : IAsyncLifetime
{
    private readonly string role = $"service_{Guid.NewGuid():N}";
    private string service = "";

    public async ValueTask InitializeAsync()
    {
        await OwnStore.Run(workshop.Address, $"CREATE ROLE {role} LOGIN PASSWORD 'for this test only'");
        service = new NpgsqlConnectionStringBuilder(workshop.Address)
        {
            Username = role,
            Password = "for this test only",
            MaxPoolSize = 10,
        }.ConnectionString;
        await workshop.InStore(store => Grants.Apply(store, role));
    }

    public async ValueTask DisposeAsync()
    {
        await using (var connection = new NpgsqlConnection(service))
            NpgsqlConnection.ClearPool(connection);
        await OwnStore.Run(workshop.Address, $"DROP OWNED BY {role}; DROP ROLE {role}");
    }

    [Theory]
    [InlineData("UPDATE journal SET what = 'x'")]
    [InlineData("UPDATE journal SET hash = hash")]
    [InlineData("DELETE FROM journal")]
    [InlineData("TRUNCATE journal")]
    [InlineData("UPDATE changes SET what = 'x'")]
    [InlineData("DELETE FROM changes")]
    [InlineData("TRUNCATE changes")]
    [InlineData("UPDATE requests SET body = '{}'")]
    [InlineData("UPDATE requests SET by = 'x', set_aside_at = now()")]
    [InlineData("DELETE FROM requests")]
    [InlineData("TRUNCATE requests CASCADE")]
    [InlineData("DELETE FROM orders")]
    [InlineData("TRUNCATE orders CASCADE")]
    [InlineData("DROP TABLE journal")]
    [InlineData("ALTER TABLE journal DISABLE TRIGGER ALL")]
    [InlineData("CREATE RULE r AS ON INSERT TO journal DO INSTEAD NOTHING")]
    [InlineData("CREATE TABLE mine (x int)")]
    [InlineData("COPY journal TO PROGRAM 'true'")]
    public async Task The_services_role_may_not(string sql)
    {
        var no = await Should.ThrowAsync<PostgresException>(() => OwnStore.Run(service, sql));
        no.SqlState.ShouldBe(PostgresErrorCodes.InsufficientPrivilege);
    }

    [Fact]
    public async Task Every_record_the_service_signs_is_out_of_its_own_reach()
    {
        await workshop.InStore(async store =>
        {
            var tables = store
                .Model.GetEntityTypes()
                .Where(e => typeof(SignedRecord).IsAssignableFrom(e.ClrType) && e.GetTableName() is not null)
                .Select(e => e.GetTableName()!);
            foreach (var table in tables)
            {
                var no = await Should.ThrowAsync<PostgresException>(() =>
                    OwnStore.Run(service, $"UPDATE {table} SET body = '{{}}'")
                );
                no.SqlState.ShouldBe(PostgresErrorCodes.InsufficientPrivilege, table);
                await OwnStore.Run(service, $"UPDATE {table} SET set_aside_why = 'x' WHERE false");
            }
        });
    }

    [Fact]
    public async Task The_service_does_all_its_work_under_that_role()
    {
        var scene = await workshop.Scene();
        await using var api = OwnStore.Host(service);
        var mara = new RepairOrdersClient(api.CreateClient()) { Token = scene.Mara.Token };
        var ada = new RepairOrdersClient(api.CreateClient()) { Token = scene.Ada.Token };
        var order = await mara.Request(Cast.Weep(scene.Site));
        (await mara.Order(order.Title.Number)).Records.Count.ShouldBe(1);
        var site = await ada.Site(scene.Site);
        await ada.ChangeSite(scene.Site, await Sites.SitesOverHttp.WithLines(scene, "Mill"), site.Version);
        var name = $"tove.{scene.Site}";
        await ada.SetOneTimePassword(name, new SetOneTimePassword("one time and no more"));
        var tove = new RepairOrdersClient(api.CreateClient());
        await tove.SignIn(new SignIn(name, "one time and no more"));
        await tove.ChangePassword(new ChangePassword("one time and no more", "seven herons at low tide"));
        await tove.SignOut();
        (await ada.VerifyJournals()).Broken.ShouldBeEmpty();
        (await ada.VerifyChanges()).Broken.ShouldBeEmpty();
    }

    [Fact]
    public async Task Asking_for_the_rights_again_changes_nothing()
    {
        var before = await Rights();
        await workshop.InStore(store => Grants.Apply(store, role));
        (await Rights()).ShouldBe(before);
        before.ShouldNotBeEmpty();
    }

    [Fact]
    public async Task Rights_given_by_hand_are_taken_back()
    {
        await OwnStore.Run(
            workshop.Address,
            $"GRANT ALL ON journal TO {role}; GRANT UPDATE (what) ON journal TO {role}"
        );
        await workshop.InStore(store => Grants.Apply(store, role));
        foreach (var sql in new[] { "UPDATE journal SET what = 'x'", "TRUNCATE journal" })
            (await Should.ThrowAsync<PostgresException>(() => OwnStore.Run(service, sql))).SqlState.ShouldBe("42501");
    }

    [Fact]
    public async Task A_role_that_is_not_there_or_that_rights_do_not_bind_is_refused_in_words()
    {
        await workshop.InStore(async store =>
        {
            (
                await Should.ThrowAsync<InvalidOperationException>(() => Grants.Apply(store, "nobody_here"))
            ).Message.ShouldStartWith("Store:ServiceRole is \"nobody_here\"; the store has no such role.");
            var owner = new NpgsqlConnectionStringBuilder(workshop.Address).Username!;
            (
                await Should.ThrowAsync<InvalidOperationException>(() => Grants.Apply(store, owner))
            ).Message.ShouldContain("rights would not bind it");
            await OwnStore.Run(workshop.Address, $"CREATE ROLE {role}_deputy LOGIN IN ROLE {owner}");
            (
                await Should.ThrowAsync<InvalidOperationException>(() => Grants.Apply(store, $"{role}_deputy"))
            ).Message.ShouldContain("rights would not bind it");
            await OwnStore.Run(workshop.Address, $"DROP ROLE {role}_deputy");
        });
    }

    private async Task<List<string>> Rights()
    {
        List<string> rights = [];
        await workshop.InStore(async store =>
            rights = await store
                .Database.SqlQuery<string>(
                    $"""
                    SELECT c.relname || ' ' || coalesce(c.relacl::text, '') || coalesce(a.columns, '') AS "Value"
                    FROM pg_class c
                    LEFT JOIN LATERAL (
                        SELECT string_agg(attname || attacl::text, ',' ORDER BY attname) AS columns
                        FROM pg_attribute WHERE attrelid = c.oid AND attacl IS NOT NULL
                    ) a ON true
                    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'S') ORDER BY c.relname
                    """
                )
                .ToListAsync()
        );
        return
        [
            .. rights.Select(r =>
                string.Join('\n', r.Split('{', ',', '}').Where(p => p.Contains(role, StringComparison.Ordinal)))
            ),
        ];
    }
}
