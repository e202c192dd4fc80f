using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>A part of a site, with the sections of its lines.</summary>
/// <param name="Name">The area's name.</param>
/// <param name="Sections">Names of the sections in it: parts of lines that can be isolated.</param>
/// <param name="Supervisor">Sign-in name of the supervisor to whom looks fall whose owner can no longer sign.</param>
public sealed record AreaDetails(
    [property: Required, StringLength(60, MinimumLength = 1)] string Name,
    [property: Required, MaxLength(500)] IReadOnlyList<string> Sections,
    [property: StringLength(40)] string? Supervisor = null
);

/// <summary>What is kept of a site.</summary>
/// <param name="Name">The site's name.</param>
/// <param name="TimeZone">Its time zone, such as <c>Europe/Oslo</c>: due days are days there.</param>
/// <param name="Areas">Its areas.</param>
public sealed record SiteDetails(
    [property: Required, StringLength(100, MinimumLength = 2)] string Name,
    [property: Required, StringLength(60)] string TimeZone,
    [property: Required, MaxLength(200)] IReadOnlyList<AreaDetails> Areas
);

/// <summary>Adds a site; who adds it may see it.</summary>
/// <param name="ShortName">The first part of its orders' numbers: small letters and digits, a letter first; never changed.</param>
/// <param name="Details">What is kept of it.</param>
public sealed record AddSite(
    [property: Required, StringLength(20, MinimumLength = 2), RegularExpression("^[a-z][a-z0-9]*$")] string ShortName,
    [property: Display(Name = "The site"), Required] SiteDetails Details
);

/// <summary>A site.</summary>
/// <param name="Id">The site.</param>
/// <param name="ShortName">The first part of its orders' numbers.</param>
/// <param name="Details">What is kept of it.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
public sealed record SiteView(Guid Id, string ShortName, SiteDetails Details, string Version);

public sealed partial class RepairOrdersClient
{
    /// <summary>The sites the caller may see.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The sites, by short name.</returns>
    public Task<IReadOnlyList<SiteView>> Sites(CancellationToken stop = default) =>
        Get<IReadOnlyList<SiteView>>("sites", stop);

    /// <summary>A site.</summary>
    /// <param name="shortName">Its short name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The site.</returns>
    public Task<SiteView> Site(string shortName, CancellationToken stop = default) =>
        Get<SiteView>($"sites/{Part(shortName)}", stop);

    /// <summary>Adds a site.</summary>
    /// <param name="ask">The site.</param>
    /// <returns>The site.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the short name is taken.</exception>
    public Task<SiteView> AddSite(AddSite ask) => Post<SiteView>("sites", ask);

    /// <summary>Changes what is kept of a site.</summary>
    /// <param name="shortName">Its short name.</param>
    /// <param name="details">All of it.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The site.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection, 412 when it changed since.</exception>
    public Task<SiteView> ChangeSite(string shortName, SiteDetails details, string version) =>
        Put<SiteView>($"sites/{Part(shortName)}", details, version);

    /// <summary>The changes of a site, oldest first.</summary>
    /// <param name="shortName">Its short name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The changes.</returns>
    public Task<IReadOnlyList<ChangeView>> SiteChanges(string shortName, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChangeView>>($"sites/{Part(shortName)}/changes", stop);
}
