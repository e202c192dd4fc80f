using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Asks for a session.</summary>
/// <param name="Name">The sign-in name.</param>
/// <param name="Password">The password.</param>
/// <param name="Device">The device, in words the person knows it by, for his list of sign-ins.</param>
public sealed record SignIn(
    [property: Required, StringLength(100)] string Name,
    [property: Required, StringLength(200)] string Password,
    [property: StringLength(100)] string? Device = null
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
/// <param name="PasswordChangeOwed">He signed in with a one-time password: nothing else is open to him until he has set his own.</param>
/// <param name="HasShortCode">He can sign on somebody else's device.</param>
public sealed record MeView(
    Guid Id,
    string Name,
    string FullName,
    IReadOnlyList<Role> Roles,
    IReadOnlyList<string> Sites,
    IReadOnlyList<string> Permissions,
    bool PasswordChangeOwed = false,
    bool HasShortCode = false
);

/// <summary>Sets a password of one's own. Every other sign-in of the person ends.</summary>
/// <param name="Current">The password so far.</param>
/// <param name="Password">The new one: at least 12 characters, 5 of them different, without the sign-in name.</param>
public sealed record ChangePassword(
    [property: Required, StringLength(200)] string Current,
    [property: Required, StringLength(200, MinimumLength = 12)] string Password
);

/// <summary>Sets the code a person signs with on somebody else's device.</summary>
/// <param name="Password">His password.</param>
/// <param name="Code">Six digits, neither all the same nor in a row.</param>
public sealed record SetShortCode(
    [property: Required, StringLength(200)] string Password,
    [property: Required, RegularExpression("^[0-9]{6}$")] string Code
);

/// <summary>Asks, on the device of whoever is signed in, for a token that signs as another person on one order.</summary>
/// <param name="Name">The sign-in name of the person who is going to sign.</param>
/// <param name="Code">His six digits.</param>
/// <param name="Order">The order's number.</param>
public sealed record SignHere(
    [property: Required, StringLength(100)] string Name,
    [property: Required, RegularExpression("^[0-9]{6}$")] string Code,
    [property: Required, StringLength(40)] string Order
);

/// <summary>A token that speaks for the person on one order, for a few minutes.</summary>
/// <param name="Token">Opaque bearer token.</param>
/// <param name="Until">When it ends.</param>
/// <param name="Order">The only order it is good for.</param>
/// <param name="Me">Who it speaks for.</param>
public sealed record SigningTokenView(string Token, DateTimeOffset Until, string Order, MeView Me);

/// <summary>One sign-in.</summary>
/// <param name="Id">The sign-in.</param>
/// <param name="Since">When it began.</param>
/// <param name="Until">When it ends or would have ended.</param>
/// <param name="RevokedAt">When it was ended before that.</param>
/// <param name="Device">The device, as the person called it.</param>
/// <param name="Address">The network address it came from.</param>
/// <param name="Order">For a signature on somebody else's device: the only order it is good for.</param>
/// <param name="Current">It is the one this call came with.</param>
public sealed record SignInView(
    Guid Id,
    DateTimeOffset Since,
    DateTimeOffset Until,
    DateTimeOffset? RevokedAt,
    string? Device,
    string? Address,
    string? Order,
    bool Current
);

/// <summary>Makes the first administrator of an empty store, with the one-time token its host printed.</summary>
/// <param name="Token">The token.</param>
/// <param name="Name">Sign-in name: small letters, digits, dot and hyphen.</param>
/// <param name="FullName">Name as it is printed under signatures.</param>
/// <param name="Password">The password: at least 12 characters, 5 of them different, without the sign-in name.</param>
public sealed record MakeFirstAdministrator(
    [property: Required, StringLength(64)] string Token,
    [property: Required, StringLength(40, MinimumLength = 2), RegularExpression(AddPerson.NamePattern)] string Name,
    [property: Required, StringLength(100, MinimumLength = 2)] string FullName,
    [property: Required, StringLength(200, MinimumLength = 12)] string Password
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

    /// <summary>Sets a password of one's own.</summary>
    /// <param name="ask">The old and the new.</param>
    /// <returns>When it is done.</returns>
    /// <exception cref="Refused">400 with the field when either does not do.</exception>
    public Task ChangePassword(ChangePassword ask) =>
        Ask<Nothing>(HttpMethod.Put, "session/password", ask, null, NewKey(), CancellationToken.None);

    /// <summary>Sets one's short code.</summary>
    /// <param name="ask">Password and code.</param>
    /// <returns>When it is done.</returns>
    /// <exception cref="Refused">400 with the field when either does not do.</exception>
    public Task SetShortCode(SetShortCode ask) =>
        Ask<Nothing>(HttpMethod.Put, "session/short-code", ask, null, NewKey(), CancellationToken.None);

    /// <summary>A token with which another person signs one order on this device. Give it to a client of its own.</summary>
    /// <param name="ask">Who, his code and the order.</param>
    /// <returns>The token.</returns>
    /// <exception cref="Refused">401 when name or code is wrong or the code is used up; 404 when he may not see the order.</exception>
    public Task<SigningTokenView> SignHere(SignHere ask) => Post<SigningTokenView>("session/short-code", ask);

    /// <summary>One's own sign-ins of the last 30 days, latest first.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The sign-ins.</returns>
    public Task<IReadOnlyList<SignInView>> SignIns(CancellationToken stop = default) =>
        Get<IReadOnlyList<SignInView>>("session/sign-ins", stop);

    /// <summary>Ends one of one's own sign-ins.</summary>
    /// <param name="id">The sign-in.</param>
    /// <returns>When it is done.</returns>
    public Task EndSignIn(Guid id) =>
        Ask<Nothing>(HttpMethod.Delete, $"session/sign-ins/{id}", null, null, NewKey(), CancellationToken.None);

    /// <summary>Makes the first administrator of an empty store.</summary>
    /// <param name="ask">The one-time token and who he is.</param>
    /// <returns>The person; sign in next.</returns>
    /// <exception cref="Refused">401 when the token is wrong, used or too old.</exception>
    public Task<MeView> MakeFirstAdministrator(MakeFirstAdministrator ask) => Post<MeView>("first-administrator", ask);
}
