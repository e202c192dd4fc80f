using System.Globalization;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

internal static class PersonViews
{
    public static MeView Me(this Person person) =>
        new(
            person.Id,
            person.UserName!,
            person.FullName,
            person.Roles,
            person.Sites,
            [.. RoleRules.PermissionsOf(person).Select(p => p.ToString())],
            person.PasswordChangeOwed,
            person.ShortCodeHash is not null
        );

    public static PersonDetails Details(this Person person) =>
        new(
            person.FullName,
            [.. person.Roles],
            [.. person.Sites],
            [.. person.Competences.Select(c => new HeldCompetence(c.Kind, c.ValidUntil))],
            person.Outside(),
            person.Disabled
        );

    public static OutsideAuthority? Outside(this Person person) =>
        person is { OutsideScope: { } scope, AuthorityUntil: { } until } ? new(scope, until) : null;

    public static PersonView View(this Person person, DateTimeOffset? lastSignIn, DateTimeOffset at) =>
        new(
            person.Id,
            person.UserName!,
            person.Details(),
            person.Revision.ToString(CultureInfo.InvariantCulture),
            person.PasswordHash is not null,
            person.PasswordChangeOwed,
            person.LockoutEnd > at ? person.LockoutEnd : null,
            lastSignIn
        );

    public static void Take(this Person person, PersonDetails details)
    {
        person.FullName = details.FullName.Trim();
        person.Roles = [.. details.Roles.Distinct().Order()];
        person.Sites = [.. details.Sites.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        person.Competences = [.. details.Competences.Select(c => new Competence(c.Kind, c.ValidUntil))];
        person.OutsideScope = details.Outside?.Scope;
        person.AuthorityUntil = details.Outside?.Until;
        person.Disabled = details.Disabled;
    }
}
