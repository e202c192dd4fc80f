using System.ComponentModel.DataAnnotations.Schema;
using Microsoft.AspNetCore.Identity;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

/// <summary>Somebody who signs in: his roles, the sites he may see, and what he is competent to do until when.</summary>
internal sealed class Person : IdentityUser<Guid>, IKept
{
    public Person() => Id = Guid.CreateVersion7();

    /// <summary>As it is printed under a signature.</summary>
    public string FullName { get; set; } = "";
    public List<Role> Roles { get; set; } = [];

    /// <summary>Short names of the sites he may see.</summary>
    public List<string> Sites { get; set; } = [];
    public List<Competence> Competences { get; set; } = [];
    public bool Disabled { get; set; }

    /// <summary>For an outside signer: what he may sign for, and until when. Nothing for staff.</summary>
    public string? OutsideScope { get; set; }
    public DateOnly? AuthorityUntil { get; set; }

    /// <summary>Set while the password is one an administrator gave: it must be changed, and ends unused then.</summary>
    public DateTimeOffset? OneTimePasswordUntil { get; set; }

    /// <summary>The code for signing on somebody else's device, hashed; nothing when none is set or it was tried too often.</summary>
    public string? ShortCodeHash { get; set; }
    public int ShortCodeTries { get; set; }

    /// <summary>Whose device he signs on, for the call at hand: he was let in there by his short code.</summary>
    [NotMapped]
    public string? OnDeviceOf { get; set; }

    public string Kind => "person";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";

    public bool PasswordChangeOwed => OneTimePasswordUntil is not null;

    public bool Is(Role role) => Roles.Contains(role);

    public bool MaySee(string site) => Sites.Contains(site);

    public bool IsCompetent(string competence, DateOnly on) =>
        Competences.Any(c => c.Kind == competence && c.ValidUntil >= on);

    public bool HasAuthority(DateOnly on) => !Disabled && (AuthorityUntil is null || AuthorityUntil >= on);

    /// <summary>Whether he is let in at all. An authority's last day is over when it is over everywhere; what he signs is judged by the site's own day.</summary>
    public bool IsLetIn(DateTimeOffset at) => HasAuthority(DateOnly.FromDateTime(at.UtcDateTime).AddDays(-1));

    /// <summary>Binds the signed-in person to an endpoint's argument.</summary>
    public static ValueTask<Person?> BindAsync(HttpContext context) =>
        ValueTask.FromResult(context.Items[typeof(Person)] as Person);
}

/// <summary>A competence with its expiry: <c>inspector</c>, <c>operations-in-charge</c>, or a method's code.</summary>
internal sealed record Competence(string Kind, DateOnly ValidUntil)
{
    public const string Inspector = Contract.Competences.Inspector;
    public const string OperationsInCharge = Contract.Competences.OperationsInCharge;
}
