using System.Net;
using Microsoft.EntityFrameworkCore;
using RepairOrders.Tests;

namespace RepairOrders.House.Tests;

public sealed class RunModes(RealStore store)
{
    [Theory]
    [InlineData("server")]
    [InlineData("3")]
    [InlineData("firstadministrator")]
    public async Task An_unknown_word_stops_the_program_with_a_sentence(string word)
    {
        var (code, output, errors) = await HostProcess.Run($"Run={word}");
        code.ShouldBe(2);
        output.ShouldBeEmpty();
        errors.ShouldStartWith(
            $"Run is \"{word}\"; allowed is one of both, api, ui, migrate, first-administrator, verify, demo"
        );
        errors.ShouldNotContain("   at ");
    }

    [Theory]
    [InlineData("api")]
    [InlineData("both")]
    [InlineData("migrate")]
    public async Task A_mode_that_needs_the_store_says_so_when_it_is_not_told_where(string mode)
    {
        var (code, _, errors) = await HostProcess.Run($"Run={mode}");
        code.ShouldBe(2);
        errors.ShouldStartWith("ConnectionStrings:Store is not set.");
    }

    [Fact]
    public async Task A_store_that_does_not_answer_is_a_sentence_too()
    {
        var (code, _, errors) = await HostProcess.Run(
            "Run=verify",
            "ConnectionStrings:Store=Host=127.0.0.1;Port=1;Username=x;Password=hush;Timeout=2"
        );
        code.ShouldBe(2);
        errors.Split('\n')[^1].ShouldBe("Failed to connect to 127.0.0.1:1");
        errors.ShouldNotContain("hush");
    }

    [Fact]
    public async Task The_screens_alone_run_without_a_store()
    {
        await using var host = HostProcess.Start("Run=ui", "Api:Address=http://127.0.0.1:1");
        ((int)await host.Answers("/")).ShouldBeLessThan(500);
        (await host.Answers("/api/v1/orders")).ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task The_api_alone_has_no_screens()
    {
        await using var host = HostProcess.Start("Run=api", $"ConnectionStrings:Store={store.Address}");
        (await host.Answers("/health/ready", HttpStatusCode.OK)).ShouldBe(HttpStatusCode.OK);
        (await host.Answers("/api/v1/orders")).ShouldBe(HttpStatusCode.Unauthorized);
        (await host.Answers("/")).ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task The_first_administrators_link_is_all_that_is_printed()
    {
        await using var empty = await TestStore.Start();
        await RealStore.MakeSchema(empty.Address);
        var (code, output, _) = await HostProcess.Run(
            "Run=first-administrator",
            $"ConnectionStrings:Store={empty.Address}",
            "Link=http://127.0.0.1:5210/"
        );
        code.ShouldBe(0);
        output.ShouldMatch("^This link .* once:\\s+http://127.0.0.1:5210/first-administrator\\?token=[0-9a-f]{64}$");
    }

    [Fact]
    public async Task A_store_with_people_gets_no_such_link()
    {
        var (code, output, _) = await HostProcess.Run(
            "Run=first-administrator",
            $"ConnectionStrings:Store={store.Address}"
        );
        code.ShouldBe(0);
        output.ShouldBe("There are people in the store already; its administrators make others. No link was made.");
    }

    [Fact]
    public async Task Verify_ends_with_1_and_names_what_is_broken()
    {
        await using var own = await TestStore.Start();
        await RealStore.MakeSchema(own.Address);
        (int Code, string Output) whole = await Verify();
        whole.ShouldBe((0, "0 histories of 0 entries verified, 0 broken."));
        await using (var store = RealStore.Open(own.Address))
            await store.Database.ExecuteSqlRawAsync(
                "INSERT INTO sites (id, short_name, name, time_zone, last_number, revision, changes_hash, figures) VALUES (gen_random_uuid(), 'mill', 'Mill', 'Etc/UTC', 0, 1, 'gone', '[]')"
            );
        (int Code, string Output) broken = await Verify();
        broken.Code.ShouldBe(1);
        broken.Output.ShouldStartWith("site mill, entry 1: Entry 1 of site mill is missing or not what was written.");
        broken.Output.ShouldEndWith("1 histories of 0 entries verified, 1 broken.");

        async Task<(int, string)> Verify()
        {
            var (code, output, _) = await HostProcess.Run("Run=verify", $"ConnectionStrings:Store={own.Address}");
            return (code, output);
        }
    }

    [Fact]
    public async Task Migrate_refuses_to_serve_a_role_that_is_not_there()
    {
        var (code, _, errors) = await HostProcess.Run(
            "Run=migrate",
            $"ConnectionStrings:Store={store.Address}",
            "Store:ServiceRole=nobody_here"
        );
        code.ShouldBe(2);
        errors.ShouldContain("the store has no such role");
    }
}
