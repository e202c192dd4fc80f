using Microsoft.EntityFrameworkCore;
using RepairOrders.Api.People;
using RepairOrders.Api.Tests.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.People;

public sealed class FirstAdministratorOverHttp(Workshop workshop)
{
    private const string Password = "seven herons at low tide";

    [Fact]
    public async Task The_link_makes_one_administrator_who_sets_the_works_up()
    {
        await using var own = await OwnStore.Make(workshop);
        var token = await Offer(own);
        var client = own.Client();
        var ask = new MakeFirstAdministrator(token, "ada", "Ada Mensah", Password);
        (await client.MakeFirstAdministrator(ask)).Roles.ShouldBe([Role.Administrator]);
        var again = await Should.ThrowAsync<Refused>(() => client.MakeFirstAdministrator(ask with { Name = "eve" }));
        (again.Status, again.Code).ShouldBe((401, "token-failed"));

        await client.SignIn(new SignIn("ada", Password));
        await client.AddSite(new AddSite("mill", new SiteDetails("Board mill", "Europe/Oslo", [])));
        (await client.Me()).Sites.ShouldBe(["mill"]);
        var details = new PersonDetails("Mara Lindqvist", [Role.Supervisor], ["mill"], []);
        (await client.AddPerson(new AddPerson("mara", details))).Name.ShouldBe("mara");
        (await client.VerifyChanges()).ShouldSatisfyAllConditions(
            v => v.Broken.ShouldBeEmpty(),
            v => v.Chains.ShouldBe(3)
        );
        await using var store = own.Open();
        (await FirstAdministrator.Offer(store, DateTimeOffset.UtcNow)).ShouldBeNull();
    }

    [Fact]
    public async Task A_wrong_an_old_and_a_replaced_link_make_nobody()
    {
        await using var own = await OwnStore.Make(workshop);
        var replaced = await Offer(own);
        var old = await Offer(own, DateTimeOffset.UtcNow.AddHours(-25));
        var client = own.Client();
        foreach (var token in new[] { "guessed", replaced, old })
        {
            var ask = new MakeFirstAdministrator(token, "eve", "Eve Nobody", Password);
            (await Should.ThrowAsync<Refused>(() => client.MakeFirstAdministrator(ask))).Status.ShouldBe(401);
        }
        await using var store = own.Open();
        (await store.Users.CountAsync()).ShouldBe(0);
    }

    [Fact]
    public async Task A_weak_password_leaves_the_link_good()
    {
        await using var own = await OwnStore.Make(workshop);
        var client = own.Client();
        var ask = new MakeFirstAdministrator(await Offer(own), "ada", "Ada Mensah", "aaaaaaaaaaaaaaaa");
        (await Should.ThrowAsync<Refused>(() => client.MakeFirstAdministrator(ask))).Status.ShouldBe(400);
        (await client.MakeFirstAdministrator(ask with { Password = Password })).Name.ShouldBe("ada");
    }

    private static async Task<string> Offer(OwnStore own, DateTimeOffset? at = null)
    {
        await using var store = own.Open();
        return (await FirstAdministrator.Offer(store, at ?? DateTimeOffset.UtcNow))!;
    }
}
