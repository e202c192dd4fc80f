using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

/// <summary>Who may make whom what. Nobody gives what he has not: an administrator keeps the people of his own sites only.</summary>
internal static class PersonRules
{
    /// <summary>Fields that cannot be as asked, whoever asks.</summary>
    public static IEnumerable<(string Field, string Sentence)> Problems(PersonDetails ask, Person by)
    {
        foreach (var site in ask.Sites.Where(s => !by.MaySee(s)))
            yield return (
                "sites",
                $"sites names \"{site}\"; allowed are those you may see: {string.Join(", ", by.Sites)}."
            );
        if (ask.Sites.Count == 0 && !ask.Roles.Contains(Role.Administrator))
            yield return ("sites", "sites is empty; everybody but an administrator has at least one.");
        foreach (var kind in ask.Competences.Select(c => c.Kind).Where(k => !Competences.All.Contains(k)))
            yield return (
                "competences",
                $"competences names \"{kind}\"; allowed is one of {string.Join(", ", Competences.All)}."
            );
        foreach (var twice in ask.Competences.GroupBy(c => c.Kind).Where(g => g.Count() > 1))
            yield return ("competences", $"competences names {twice.Key} twice; give the later day only.");
    }

    /// <summary>Why an administrator may not make this change; nothing when he may.</summary>
    /// <param name="person">The person as he is.</param>
    /// <param name="ask">As he is to be.</param>
    /// <param name="by">The administrator.</param>
    /// <param name="sitesOfOthers">Sites that other enabled administrators see.</param>
    public static Objection? Objection(
        Person person,
        PersonDetails ask,
        Person by,
        IReadOnlyCollection<string> sitesOfOthers
    )
    {
        if (Wider(person, by) is { } wider)
            return wider;
        var stays = !ask.Disabled && ask.Roles.Contains(Role.Administrator);
        if (person.Id == by.Id && !stays)
            return new Objection(
                "own-access",
                "You would shut yourself out. Another administrator has to do that.",
                "another administrator"
            );
        var left =
            person.Is(Role.Administrator) && !person.Disabled
                ? person.Sites.Where(s => !(stays && ask.Sites.Contains(s)) && !sitesOfOthers.Contains(s)).ToList()
                : [];
        return left.Count > 0
            ? new Objection(
                "last-administrator",
                $"Nobody else administers {string.Join(", ", left)}. Make another administrator there first.",
                "administrator"
            )
            : null;
    }

    /// <summary>The objection to touching somebody who sees more sites than the administrator does.</summary>
    public static Objection? Wider(Person person, Person by) =>
        person.Sites.All(by.MaySee)
            ? null
            : new Objection(
                "wider-sites",
                $"{person.FullName} also works at sites you may not see. An administrator who sees all of them has to make the change.",
                "administrator of all the person's sites"
            );
}
