using RepairOrders.Api.Store;
using RepairOrders.Api.Tests.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Journal;

public sealed class Tampering(Workshop workshop)
{
    // Everything an entry says, changed by the one who can: the owner of the tables.
    [Theory]
    [InlineData("at = at + interval '1 second'")]
    [InlineData("by_id = gen_random_uuid()")]
    [InlineData("by = by || '!'")]
    [InlineData("what = what || '!'")]
    [InlineData("why = coalesce(why, '') || 'because'")]
    [InlineData("record_id = gen_random_uuid()")]
    [InlineData("record_id = NULL")]
    [InlineData("old = '{}'")]
    [InlineData("new = replace(new, 'cooling', 'heating')")]
    [InlineData("previous_hash = repeat('0', 64)")]
    [InlineData("hash = repeat('0', 64)")]
    [InlineData("line = line + 100")]
    public async Task A_changed_field_of_a_journal_entry_is_found(string change)
    {
        var scene = await workshop.Scene();
        var order = await scene.Tove.Request(Cast.Weep(scene.Site));
        await Owner(
            $"UPDATE journal SET {change} WHERE line = 1 AND order_id = (SELECT id FROM orders WHERE number = '{order.Title.Number}')"
        );
        var found = (await scene.Rune.VerifyJournals()).Broken.Single();
        (found.Kind, found.Name, found.Line).ShouldBe(("order", order.Title.Number, 1));
        (await scene.Mara.Journal(order.Title.Number)).BrokenAt.ShouldBe(1);
    }

    [Theory]
    [InlineData("DELETE FROM journal WHERE order_id = {0}", 1)]
    [InlineData("UPDATE orders SET journal_lines = 2 WHERE id = {0}", 2)]
    [InlineData("UPDATE orders SET journal_hash = repeat('0', 64) WHERE id = {0}", 2)]
    [InlineData("UPDATE requests SET body = jsonb_set(body, '{{place}}', '\"elsewhere\"') WHERE order_id = {0}", 1)]
    [InlineData("UPDATE requests SET by = 'Somebody Else' WHERE order_id = {0}", 1)]
    [InlineData("UPDATE requests SET by_id = gen_random_uuid() WHERE order_id = {0}", 1)]
    [InlineData("UPDATE requests SET at = at - interval '1 day' WHERE order_id = {0}", 1)]
    [InlineData(
        "INSERT INTO requests SELECT gen_random_uuid(), order_id, round, by_id, by, at, set_aside_at, set_aside_by, set_aside_why, body FROM requests WHERE order_id = {0}",
        2
    )]
    public async Task A_missing_entry_and_a_changed_or_smuggled_record_are_found(string sql, int line)
    {
        var scene = await workshop.Scene();
        var order = await scene.Tove.Request(Cast.Weep(scene.Site));
        var other = await scene.Tove.Request(Cast.Weep(scene.Site));
        (await scene.Rune.VerifyJournals()).Broken.ShouldBeEmpty();
        var id = $"(SELECT id FROM orders WHERE number = '{order.Title.Number}')";
        await Owner(string.Format(System.Globalization.CultureInfo.InvariantCulture, sql, id));
        var answer = await scene.Rune.VerifyJournals();
        answer.Chains.ShouldBe(2);
        (answer.Broken.Single().Name, answer.Broken.Single().Line).ShouldBe((order.Title.Number, line));
        other.Title.Number.ShouldNotBe(order.Title.Number);
    }

    [Theory]
    [InlineData("at = at + interval '1 second'")]
    [InlineData("by_id = gen_random_uuid()")]
    [InlineData("by = by || '!'")]
    [InlineData("kind = 'site'")]
    [InlineData("what = what || '!'")]
    [InlineData("why = 'because'")]
    [InlineData("old = '{}'")]
    [InlineData("new = replace(new, 'Mill', 'Kiln')")]
    [InlineData("previous_hash = repeat('0', 64)")]
    [InlineData("hash = repeat('0', 64)")]
    [InlineData("line = 2")]
    public async Task A_changed_field_of_a_change_is_found(string change)
    {
        var scene = await workshop.Scene();
        var person = await scene.Ada.Person($"tove.{scene.Site}");
        await scene.Ada.ChangePerson(person.Name, person.Details with { FullName = "Tove Mill" }, person.Version);
        (await scene.Rune.VerifyChanges()).Broken.ShouldBeEmpty();
        await Owner($"UPDATE changes SET {change} WHERE subject_id = '{scene.IdOf("tove")}'");
        // What was changed to another kind is still the same person's first entry.
        var found = (await scene.Rune.VerifyChanges()).Broken.Single();
        (found.Kind, found.Name, found.Line).ShouldBe(("person", person.Name, 1));
    }

    [Fact]
    public async Task Changes_taken_out_are_found()
    {
        var scene = await workshop.Scene();
        var person = await scene.Ada.Person($"tove.{scene.Site}");
        await scene.Ada.ChangePerson(person.Name, person.Details with { FullName = "Tove Mill" }, person.Version);
        await Owner($"DELETE FROM changes WHERE subject_id = '{scene.IdOf("tove")}'");
        (await scene.Rune.VerifyChanges()).Broken.Single().Name.ShouldBe(person.Name);
    }

    [Fact]
    public async Task The_verification_is_read_a_page_at_a_time()
    {
        var scene = await workshop.Scene();
        for (var i = 0; i < 5; i++)
            await scene.Tove.Request(Cast.Weep(scene.Site));
        var (chains, entries) = (0, 0);
        string? after = null;
        do
        {
            var page = await scene.Ada.VerifyJournals(after, 2);
            (chains, entries) = (chains + page.Chains, entries + page.Entries);
            after = page.Next;
        } while (after is not null);
        (chains, entries).ShouldBe((5, 5));
        (await Should.ThrowAsync<Refused>(() => scene.Tove.VerifyJournals())).Status.ShouldBe(403);
    }

    [Fact]
    public async Task The_command_names_the_broken_entry()
    {
        await using var own = await OwnStore.Make(workshop);
        await using var store = own.Open();
        using var words = new StringWriter();
        (await Verification.Report(store, words)).ShouldBeTrue();
        words.ToString().Trim().ShouldBe("0 histories of 0 entries verified, 0 broken.");
        await using var api = own.Api();
        await OwnStore.Run(
            own.Address,
            "INSERT INTO changes (kind, subject_id, line, at, by_id, by, what, previous_hash, hash) VALUES ('line', gen_random_uuid(), 1, now(), gen_random_uuid(), 'x', 'x', '', '')"
        );
        using var more = new StringWriter();
        (await Verification.Report(store, more)).ShouldBeFalse();
        more.ToString().ShouldContain("There is no line of these entries any more.");
        more.ToString().ShouldContain("1 broken.");
    }

    private Task Owner(string sql) => OwnStore.Run(workshop.Address, sql);
}
