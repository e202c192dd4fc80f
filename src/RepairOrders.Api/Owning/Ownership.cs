using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Owning;

/// <summary>Whether somebody can go back and sign a look.</summary>
internal static class Ownership
{
    public static readonly Role[] Roles = [Role.Supervisor, Role.Technician, Role.IntegrityEngineer, Role.Manager];

    /// <summary>Why he can no longer; nothing while he can. The day is that of UTC, so that a list can ask for it as a date.</summary>
    public static string? Lost(Person owner, string site, DateTimeOffset at) =>
        owner.Disabled ? $"{owner.FullName} can no longer sign in"
        : owner.AuthorityUntil < DateOnly.FromDateTime(at.UtcDateTime)
            ? $"the authority of {owner.FullName} ended on {owner.AuthorityUntil:yyyy-MM-dd}"
        : !owner.MaySee(site) ? $"{owner.FullName} no longer works at the site"
        : !owner.Roles.Exists(r => Roles.Contains(r)) ? $"{owner.FullName} has no role that can sign a look"
        : null;
}
