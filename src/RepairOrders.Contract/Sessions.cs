using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Asks for a session.</summary>
/// <param name="Name">The sign-in name.</param>
/// <param name="Password">The password.</param>
public sealed record SignIn(
    [property: Required, StringLength(100)] string Name,
    [property: Required, StringLength(200)] string Password
);

/// <summary>A session: the token is shown once and kept by the caller.</summary>
/// <param name="Token">Opaque bearer token.</param>
/// <param name="Until">When it ends.</param>
/// <param name="Me">Who it speaks for.</param>
public sealed record SessionView(string Token, DateTimeOffset Until, MeView Me);

/// <summary>The person signed in, and what his roles allow.</summary>
/// <param name="Id">The person.</param>
/// <param name="Name">Sign-in name.</param>
/// <param name="FullName">Name as it is printed under signatures.</param>
/// <param name="Roles">Roles.</param>
/// <param name="Sites">Sites he may see, by short name.</param>
/// <param name="Permissions">What his roles allow at all; an order may still refuse.</param>
public sealed record MeView(
    Guid Id,
    string Name,
    string FullName,
    IReadOnlyList<Role> Roles,
    IReadOnlyList<string> Sites,
    IReadOnlyList<string> Permissions
);

/// <summary>Roles a person may hold.</summary>
public enum Role
{
    /// <summary>Raises and approves, readies, asks for extensions, closes.</summary>
    Supervisor,

    /// <summary>Fits, tests, revisits, removes.</summary>
    Technician,

    /// <summary>Issues material.</summary>
    Storekeeper,

    /// <summary>Assesses, chooses, sizes, approves, reviews.</summary>
    IntegrityEngineer,

    /// <summary>Shares in class A and late extensions.</summary>
    Manager,

    /// <summary>People, sites, catalogues, keys.</summary>
    Administrator,

    /// <summary>Reads and exports.</summary>
    Reader,
}

public sealed partial class RepairOrdersClient
{
    /// <summary>Signs in and keeps the token for the next calls.</summary>
    /// <param name="ask">Name and password.</param>
    /// <returns>The session.</returns>
    /// <exception cref="Refused">401 when name or password is wrong or the person is locked out; 429 after too many tries.</exception>
    public async Task<SessionView> SignIn(SignIn ask)
    {
        var session = await Post<SessionView>("session", ask).ConfigureAwait(false);
        Token = session.Token;
        return session;
    }

    /// <summary>Who the token speaks for.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The person.</returns>
    public Task<MeView> Me(CancellationToken stop = default) => Get<MeView>("session", stop);

    /// <summary>Revokes the token.</summary>
    /// <returns>When it is done.</returns>
    public async Task SignOut()
    {
        await Ask<Nothing>(HttpMethod.Delete, "session", null, null, NewKey(), CancellationToken.None)
            .ConfigureAwait(false);
        Token = null;
    }
}
