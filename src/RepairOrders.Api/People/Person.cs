using Microsoft.AspNetCore.Identity;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

/// <summary>Somebody who signs in: his roles, the sites he may see, and what he is competent to do until when.</summary>
internal sealed class Person : IdentityUser<Guid>
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

    public bool Is(Role role) => Roles.Contains(role);

    public bool MaySee(string site) => Sites.Contains(site);

    public bool IsCompetent(string competence, DateOnly on) =>
        Competences.Any(c => c.Kind == competence && c.ValidUntil >= on);

    public bool HasAuthority(DateOnly on) => !Disabled && (AuthorityUntil is null || AuthorityUntil >= on);

    /// <summary>Binds the signed-in person to an endpoint's argument.</summary>
    public static ValueTask<Person?> BindAsync(HttpContext context) =>
        ValueTask.FromResult(context.Items[typeof(Person)] as Person);
}

/// <summary>A competence with its expiry: <c>inspector</c>, <c>operations-in-charge</c>, or a method's code.</summary>
internal sealed record Competence(string Kind, DateOnly ValidUntil)
{
    public const string Inspector = "inspector";
    public const string OperationsInCharge = "operations-in-charge";
}

/// <summary>A sign-in: the token is stored hashed, expires and can be revoked.</summary>
internal sealed class Session
{
    public string TokenHash { get; init; } = "";
    public Guid PersonId { get; init; }
    public Person Person { get; init; } = null!;
    public DateTimeOffset Since { get; init; }
    public DateTimeOffset Until { get; init; }
    public DateTimeOffset? RevokedAt { get; set; }
}
