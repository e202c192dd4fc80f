using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Kinds of competence a person may hold.</summary>
public static class Competences
{
    /// <summary>May witness and make the inspector's entries.</summary>
    public const string Inspector = "inspector";

    /// <summary>In charge of the running plant: limits, isolation, acceptance, made safe.</summary>
    public const string OperationsInCharge = "operations-in-charge";

    /// <summary>Every kind: the two above, and fitting by each method.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        Inspector,
        OperationsInCharge,
        "banded-patch",
        "laminate-wrap",
        "bolted-clamp",
        "welded-patch",
        "welded-sleeve",
        "plug",
        "section-replacement",
    ];
}

/// <summary>A competence and the last day it is valid.</summary>
/// <param name="Kind">One of <see cref="Competences.All"/>.</param>
/// <param name="ValidUntil">Last day.</param>
public sealed record HeldCompetence([property: Required, StringLength(40)] string Kind, DateOnly ValidUntil);

/// <summary>What an outside signer may sign for, and until when.</summary>
/// <param name="Scope">In words, as it stands in the letter that gives the authority.</param>
/// <param name="Until">Last day.</param>
public sealed record OutsideAuthority(
    [property: Required, StringLength(300, MinimumLength = 3)] string Scope,
    DateOnly Until
);

/// <summary>What is kept of a person.</summary>
/// <param name="FullName">Name as it is printed under signatures.</param>
/// <param name="Roles">Roles, at least one.</param>
/// <param name="Sites">Short names of the sites he may see.</param>
/// <param name="Competences">Competences with their last day.</param>
/// <param name="Outside">For an outside signer: scope and last day. Nothing for staff.</param>
/// <param name="Disabled">He may not sign in; what he signed stays.</param>
public sealed record PersonDetails(
    [property: Required, StringLength(100, MinimumLength = 2)] string FullName,
    [property: Required, Length(1, 7)] IReadOnlyList<Role> Roles,
    [property: Required, MaxLength(200)] IReadOnlyList<string> Sites,
    [property: Required, MaxLength(50)] IReadOnlyList<HeldCompetence> Competences,
    [property: Display(Name = "Outside signer")] OutsideAuthority? Outside = null,
    bool Disabled = false
);

/// <summary>Adds a person. He can sign in once a one-time password is set.</summary>
/// <param name="Name">Sign-in name: small letters, digits, dot and hyphen; never changed.</param>
/// <param name="Details">What is kept of him.</param>
public sealed record AddPerson(
    [property: Required, StringLength(40, MinimumLength = 2), RegularExpression(AddPerson.NamePattern)] string Name,
    [property: Display(Name = "Who he is and what he may"), Required] PersonDetails Details
)
{
    /// <summary>Small letters, digits, dot and hyphen, a letter first.</summary>
    public const string NamePattern = "^[a-z][a-z0-9.-]*$";
}

/// <summary>A password that is good for one sign-in, after which the person must set his own.</summary>
/// <param name="Password">At least 12 characters, 5 of them different, without the sign-in name.</param>
public sealed record SetOneTimePassword([property: Required, StringLength(200, MinimumLength = 12)] string Password);

/// <summary>A person as an administrator sees him.</summary>
/// <param name="Id">The person.</param>
/// <param name="Name">Sign-in name.</param>
/// <param name="Details">What is kept of him.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
/// <param name="HasPassword">A password is set.</param>
/// <param name="PasswordChangeOwed">The password is a one-time one.</param>
/// <param name="LockedUntil">Locked after wrong passwords until then.</param>
/// <param name="LastSignIn">When he signed in last.</param>
public sealed record PersonView(
    Guid Id,
    string Name,
    PersonDetails Details,
    string Version,
    bool HasPassword,
    bool PasswordChangeOwed,
    DateTimeOffset? LockedUntil,
    DateTimeOffset? LastSignIn
);

/// <summary>A person in a list to choose from.</summary>
/// <param name="Id">The person.</param>
/// <param name="Name">Sign-in name.</param>
/// <param name="FullName">Name as it is printed under signatures.</param>
/// <param name="Roles">Roles.</param>
/// <param name="Sites">Those of his sites the caller may see too.</param>
/// <param name="Competences">Competences with their last day.</param>
/// <param name="Outside">For an outside signer: scope and last day.</param>
/// <param name="Disabled">He may not sign in.</param>
public sealed record PersonRow(
    Guid Id,
    string Name,
    string FullName,
    IReadOnlyList<Role> Roles,
    IReadOnlyList<string> Sites,
    IReadOnlyList<HeldCompetence> Competences,
    OutsideAuthority? Outside,
    bool Disabled
);

/// <summary>A page of people.</summary>
/// <param name="Rows">The people, by name.</param>
/// <param name="Next">The key to ask for what follows; nothing at the end.</param>
public sealed record PeopleView(IReadOnlyList<PersonRow> Rows, string? Next);

/// <summary>One change of something administrators keep.</summary>
/// <param name="Line">Its number, from 1.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="What">What was done.</param>
/// <param name="Why">The reason, where one was given.</param>
/// <param name="Old">What it was before, as JSON text.</param>
/// <param name="New">What it is since, as JSON text.</param>
/// <param name="Hash">SHA-256 of this entry chained to the one before, hex.</param>
public sealed record ChangeView(
    int Line,
    DateTimeOffset At,
    string By,
    string What,
    string? Why,
    string? Old,
    string? New,
    string Hash
);

/// <summary>A chain of entries that does not verify.</summary>
/// <param name="Kind">What it is the history of: order, person, site or line.</param>
/// <param name="Name">Which one.</param>
/// <param name="Line">The first entry that does not verify.</param>
/// <param name="What">What is wrong, in a sentence.</param>
public sealed record BrokenChainView(string Kind, string Name, int Line, string What);

/// <summary>The outcome of verifying chains of entries.</summary>
/// <param name="Chains">Chains looked at.</param>
/// <param name="Entries">Entries looked at.</param>
/// <param name="Broken">Those that do not verify; none as a rule.</param>
/// <param name="Next">The key to go on from; nothing at the end.</param>
public sealed record VerificationView(int Chains, int Entries, IReadOnlyList<BrokenChainView> Broken, string? Next);

public sealed partial class RepairOrdersClient
{
    /// <summary>People at the caller's sites, by name.</summary>
    /// <param name="search">Part of a name.</param>
    /// <param name="site">A site's short name.</param>
    /// <param name="role">A role he must hold.</param>
    /// <param name="competence">A competence he must hold today.</param>
    /// <param name="disabled">Disabled people too.</param>
    /// <param name="after">The key of the page before.</param>
    /// <param name="limit">Rows wanted, at most 200.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The page.</returns>
    public Task<PeopleView> People(
        string? search = null,
        string? site = null,
        Role? role = null,
        string? competence = null,
        bool disabled = false,
        string? after = null,
        int limit = 50,
        CancellationToken stop = default
    ) =>
        Get<PeopleView>(
            Asked(
                "people",
                ("search", search),
                ("site", site),
                ("role", role is { } r ? Word(r) : null),
                ("competence", competence),
                ("disabled", disabled ? "true" : null),
                ("after", after),
                ("limit", limit)
            ),
            stop
        );

    /// <summary>A person, for administrators.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The person.</returns>
    public Task<PersonView> Person(string name, CancellationToken stop = default) =>
        Get<PersonView>($"people/{Part(name)}", stop);

    /// <summary>Adds a person.</summary>
    /// <param name="ask">Who he is.</param>
    /// <returns>The person.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the name is taken.</exception>
    public Task<PersonView> AddPerson(AddPerson ask) => Post<PersonView>("people", ask);

    /// <summary>Changes what is kept of a person.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <param name="details">All of it.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The person.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection, 412 when it changed since.</exception>
    public Task<PersonView> ChangePerson(string name, PersonDetails details, string version) =>
        Put<PersonView>($"people/{Part(name)}", details, version);

    /// <summary>Sets a one-time password; every sign-in of the person ends.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <param name="ask">The password.</param>
    /// <returns>When it is done.</returns>
    public Task SetOneTimePassword(string name, SetOneTimePassword ask) =>
        Ask<Nothing>(HttpMethod.Put, $"people/{Part(name)}/password", ask, null, NewKey(), CancellationToken.None);

    /// <summary>A person's sign-ins of the last 30 days, latest first, for administrators.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The sign-ins.</returns>
    public Task<IReadOnlyList<SignInView>> SignInsOf(string name, CancellationToken stop = default) =>
        Get<IReadOnlyList<SignInView>>($"people/{Part(name)}/sign-ins", stop);

    /// <summary>Ends every sign-in of a person.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <returns>When it is done.</returns>
    public Task EndSignInsOf(string name) =>
        Ask<Nothing>(HttpMethod.Delete, $"people/{Part(name)}/sign-ins", null, null, NewKey(), CancellationToken.None);

    /// <summary>Clears a person's short code; he sets it again himself.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <returns>When it is done.</returns>
    public Task ClearShortCodeOf(string name) =>
        Ask<Nothing>(
            HttpMethod.Delete,
            $"people/{Part(name)}/short-code",
            null,
            null,
            NewKey(),
            CancellationToken.None
        );

    /// <summary>The changes of a person, oldest first.</summary>
    /// <param name="name">Sign-in name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The changes.</returns>
    public Task<IReadOnlyList<ChangeView>> PersonChanges(string name, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChangeView>>($"people/{Part(name)}/changes", stop);

    /// <summary>Verifies the journals of a page of orders, oldest first.</summary>
    /// <param name="after">The key of the page before.</param>
    /// <param name="limit">Orders wanted, at most 200.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The outcome.</returns>
    public Task<VerificationView> VerifyJournals(
        string? after = null,
        int limit = 200,
        CancellationToken stop = default
    ) => Get<VerificationView>(Asked("journals/verification", ("after", after), ("limit", limit)), stop);

    /// <summary>Verifies the changes of people, sites and lines.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The outcome.</returns>
    public Task<VerificationView> VerifyChanges(CancellationToken stop = default) =>
        Get<VerificationView>("changes/verification", stop);

    private static string Part(string word) => Uri.EscapeDataString(word);

    private static string Asked(string path, params (string Name, object? Value)[] parts) =>
        string.Concat(
            parts
                .Where(p => p.Value is not null)
                .Select((p, i) => $"{(i == 0 ? path + "?" : "&")}{p.Name}={Part($"{p.Value}")}")
                .DefaultIfEmpty(path)
        );
}
