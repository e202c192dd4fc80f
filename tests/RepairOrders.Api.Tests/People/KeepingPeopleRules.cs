using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.People;

public sealed class KeepingPeopleRules
{
    private static readonly Person Ada = Someone("ada", ["mill"], Role.Administrator);
    private static readonly Person Tove = Someone("tove", ["mill"], Role.Technician);

    [Fact]
    public void An_administrator_changes_the_people_of_his_sites() =>
        PersonRules.Objection(Tove, Tove.Details() with { FullName = "Tove Aune" }, Ada, []).ShouldBeNull();

    [Fact]
    public void Nobody_changes_a_person_who_sees_more_sites_than_he_does() =>
        PersonRules
            .Objection(Someone("pavel", ["mill", "yard"], Role.IntegrityEngineer), Tove.Details(), Ada, [])!
            .Code.ShouldBe("wider-sites");

    [Fact]
    public void An_administrator_does_not_shut_himself_out()
    {
        PersonRules.Objection(Ada, Ada.Details() with { Disabled = true }, Ada, ["mill"])!.Code.ShouldBe("own-access");
        PersonRules
            .Objection(Ada, Ada.Details() with { Roles = [Role.Reader] }, Ada, ["mill"])!
            .Code.ShouldBe("own-access");
    }

    [Fact]
    public void The_last_administrator_of_a_site_stays()
    {
        var second = Someone("bo", ["mill"], Role.Administrator);
        var disabled = second.Details() with { Disabled = true };
        PersonRules.Objection(second, disabled, Ada, ["mill"]).ShouldBeNull();
        PersonRules.Objection(second, disabled, Ada, [])!.Code.ShouldBe("last-administrator");
        PersonRules.Objection(Ada, Ada.Details() with { Sites = [] }, Ada, [])!.Code.ShouldBe("last-administrator");
    }

    [Fact]
    public void Nobody_gives_a_site_he_does_not_see() =>
        PersonRules
            .Problems(Tove.Details() with { Sites = ["mill", "yard"] }, Ada)
            .Single()
            .Sentence.ShouldBe("sites names \"yard\"; allowed are those you may see: mill.");

    [Fact]
    public void Competences_are_known_ones_each_once()
    {
        var day = new DateOnly(2027, 1, 1);
        var ask = Tove.Details() with { Competences = [new("diver", day), new("plug", day), new("plug", day)] };
        PersonRules.Problems(ask, Ada).Select(p => p.Field).ShouldBe(["competences", "competences"]);
    }

    [Fact]
    public void Everybody_but_an_administrator_has_a_site()
    {
        PersonRules.Problems(Tove.Details() with { Sites = [] }, Ada).ShouldNotBeEmpty();
        PersonRules.Problems(Ada.Details() with { Sites = [] }, Ada).ShouldBeEmpty();
    }

    private static Person Someone(string name, string[] sites, params Role[] roles) =>
        new()
        {
            UserName = name,
            FullName = name,
            Sites = [.. sites],
            Roles = [.. roles],
        };
}
