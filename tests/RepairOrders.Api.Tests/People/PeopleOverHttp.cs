using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.People;

public sealed class PeopleOverHttp(Workshop workshop)
{
    [Fact]
    public async Task An_administrator_adds_a_person_who_signs_in_and_works()
    {
        var scene = await workshop.Scene();
        var added = await scene.Ada.AddPerson(new AddPerson(scene.NameOf("ivar"), Ivar(scene)));
        (added.HasPassword, added.Version).ShouldBe((false, "1"));
        var ivar = await scene.SignIn("ivar");
        (await ivar.Request(Cast.Weep(scene.Site))).Records.Single().By.ShouldBe("Ivar Holm");
        var seen = await scene.Ada.Person(added.Name);
        seen.LastSignIn.ShouldBe(scene.Clock.Now);
        seen.Details.Competences.Single().ShouldBe(new HeldCompetence("banded-patch", new DateOnly(2027, 6, 30)));
    }

    [Fact]
    public async Task Every_change_is_on_record_with_old_and_new_and_verifies()
    {
        var scene = await workshop.Scene();
        var name = scene.NameOf("ivar");
        var added = await scene.Ada.AddPerson(new AddPerson(name, Ivar(scene)));
        var wider = added.Details with { Roles = [Role.Technician, Role.Supervisor] };
        await scene.Ada.ChangePerson(name, wider, added.Version);
        await scene.Ada.SetOneTimePassword(name, new SetOneTimePassword("one time and no more"));
        var changes = await scene.Ada.PersonChanges(name);
        changes.Select(c => c.What).ShouldBe(["person added", "person changed", "one-time password set"]);
        changes.ShouldAllBe(c => c.By == "Ada Mensah" && c.At == scene.Clock.Now);
        changes[1].Old!.ShouldNotContain("supervisor");
        changes[1].New!.ShouldContain("supervisor");
        changes.ShouldAllBe(c => !$"{c.Old}{c.New}".Contains("one time", StringComparison.Ordinal));
        (await scene.Rune.VerifyChanges()).Broken.ShouldBeEmpty();
    }

    [Fact]
    public async Task Two_administrators_changing_one_person_do_not_overwrite_each_other()
    {
        var scene = await workshop.Scene();
        var seen = await scene.Ada.Person(scene.NameOf("tove"));
        await scene.Ada.ChangePerson(seen.Name, seen.Details with { FullName = "Tove A. Aune" }, seen.Version);
        var late = seen.Details with { FullName = "Tove Berg" };
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.ChangePerson(seen.Name, late, seen.Version));
        (no.Status, no.Code).ShouldBe((412, "stale"));
        (await scene.Ada.Person(seen.Name)).Details.FullName.ShouldBe("Tove A. Aune");
    }

    [Fact]
    public async Task A_taken_name_is_refused()
    {
        var scene = await workshop.Scene();
        var ask = new AddPerson(scene.NameOf("tove"), Ivar(scene));
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.AddPerson(ask));
        (no.Status, no.Code).ShouldBe((409, "name-taken"));
    }

    [Fact]
    public async Task What_cannot_be_is_refused_by_field()
    {
        var scene = await workshop.Scene();
        var details = Ivar(scene) with { Sites = ["elsewhere"], Competences = [new("diver", new(2027, 1, 1))] };
        var no = await Should.ThrowAsync<Refused>(() =>
            scene.Ada.AddPerson(new AddPerson(scene.NameOf("ivar"), details))
        );
        no.Fields.Keys.ShouldBe(["details.sites", "details.competences"], ignoreOrder: true);
        var shout = new AddPerson("IVAR!", Ivar(scene));
        (await Should.ThrowAsync<Refused>(() => scene.Ada.AddPerson(shout))).Fields.Keys.ShouldBe(["name"]);
        var noRole = new AddPerson(scene.NameOf("ivar"), Ivar(scene) with { Roles = [] });
        (await Should.ThrowAsync<Refused>(() => scene.Ada.AddPerson(noRole))).Status.ShouldBe(400);
    }

    [Fact]
    public async Task The_last_administrator_stays_and_none_shuts_himself_out()
    {
        var scene = await workshop.Scene();
        var ada = await scene.Ada.Person(scene.NameOf("ada"));
        var own = await Should.ThrowAsync<Refused>(() =>
            scene.Ada.ChangePerson(ada.Name, ada.Details with { Disabled = true }, ada.Version)
        );
        (own.Status, own.Code).ShouldBe((409, "own-access"));
        var last = await Should.ThrowAsync<Refused>(() =>
            scene.Ada.ChangePerson(ada.Name, ada.Details with { Sites = [] }, ada.Version)
        );
        (last.Status, last.Code).ShouldBe((409, "last-administrator"));
    }

    [Fact]
    public async Task Nobody_resets_the_password_of_one_who_sees_more_sites()
    {
        var (here, there) = (await workshop.Scene(), await workshop.Scene());
        await workshop.InStore(async store =>
        {
            var pavel = store.Users.Single(p => p.Id == here.IdOf("pavel"));
            pavel.Sites = [here.Site, there.Site];
            await store.SaveChangesAsync();
        });
        var name = here.NameOf("pavel");
        foreach (
            var touch in new Func<Task>[]
            {
                () => here.Ada.SetOneTimePassword(name, new SetOneTimePassword("one time and no more")),
                () => here.Ada.EndSignInsOf(name),
                async () => await here.Ada.ChangePerson(name, Ivar(here), (await here.Ada.Person(name)).Version),
            }
        )
            (await Should.ThrowAsync<Refused>(touch)).Code.ShouldBe("wider-sites");
    }

    [Fact]
    public async Task People_are_found_by_name_role_and_competence_a_page_at_a_time()
    {
        var scene = await workshop.Scene();
        var all = new List<string>();
        string? after = null;
        do
        {
            var page = await scene.Tove.People(after: after, limit: 3);
            all.AddRange(page.Rows.Select(p => p.FullName));
            after = page.Next;
        } while (after is not null);
        all.ShouldBe(Cast.People.Select(p => p.FullName).Order(StringComparer.Ordinal));
        (await scene.Tove.People(search: "dahl")).Rows.Single().FullName.ShouldBe("Signe Dahl");
        (await scene.Tove.People(search: "%")).Rows.ShouldBeEmpty();
        (await scene.Tove.People(role: Role.IntegrityEngineer)).Rows.Count.ShouldBe(2);
        var inspectors = await scene.Tove.People(competence: Competences.Inspector, site: scene.Site);
        inspectors.Rows.Select(p => p.FullName).ShouldBe(["Pavel Horak", "Vera Sand"]);
        scene.Clock.PassDays(5 * 366);
        (await scene.Tove.People(competence: Competences.Inspector)).Rows.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_disabled_person_is_listed_only_when_asked_for()
    {
        var scene = await workshop.Scene();
        var anton = await scene.Ada.Person(scene.NameOf("anton"));
        await scene.Ada.ChangePerson(anton.Name, anton.Details with { Disabled = true }, anton.Version);
        (await scene.Mara.People(search: "Anton")).Rows.ShouldBeEmpty();
        (await scene.Mara.People(search: "Anton", disabled: true)).Rows.Single().Disabled.ShouldBeTrue();
    }

    private static PersonDetails Ivar(Scene scene) =>
        new(
            "Ivar Holm",
            [Role.Technician],
            [scene.Site],
            [new HeldCompetence("banded-patch", new DateOnly(2027, 6, 30))]
        );
}
