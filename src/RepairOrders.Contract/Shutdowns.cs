using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Puts a shutdown on the list.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Area">The area that stops; nothing for the whole site.</param>
/// <param name="Start">The first day.</param>
public sealed record AddShutdown(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(100, MinimumLength = 3)] string Name,
    [property: StringLength(100)] string? Area,
    DateOnly Start
);

/// <summary>
/// Moves a shutdown. Brought forward, it moves the end dates that lean on it in; put off, it moves none: the answer lists the
/// orders that lose out.
/// </summary>
/// <param name="Start">The new first day.</param>
/// <param name="Why">The reason.</param>
public sealed record MoveShutdown(
    DateOnly Start,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Why
);

/// <summary>The body of an end date that moved in with a shutdown.</summary>
/// <param name="Shutdown">The shutdown's name.</param>
/// <param name="Start">Its new first day.</param>
/// <param name="From">The end date before.</param>
/// <param name="To">The end date after.</param>
public sealed record SignedEndMovedIn(string Shutdown, DateOnly Start, DateOnly From, DateOnly To);

/// <summary>One move of a shutdown.</summary>
/// <param name="From">The first day before.</param>
/// <param name="To">The first day after.</param>
/// <param name="Why">The reason.</param>
/// <param name="By">Who moved it.</param>
/// <param name="At">When.</param>
public sealed record ShutdownMoveView(DateOnly From, DateOnly To, string Why, string By, DateTimeOffset At);

/// <summary>An order whose permanent fix waits for a shutdown, or whose end date moved in with it.</summary>
/// <param name="Number">The order's number.</param>
/// <param name="Line">The line's number.</param>
/// <param name="ClassToday">The class as it reads now.</param>
/// <param name="Stage">Where it stands.</param>
/// <param name="EndDate">The end date.</param>
/// <param name="LosesOut">The end date comes before the shutdown: it needs an extension or another way out.</param>
/// <param name="DaysShort">Days between end date and shutdown where it loses out.</param>
/// <param name="Owner">Who goes back to look.</param>
/// <param name="PermanentFix">Reference of the permanent fix.</param>
public sealed record LeaningOrder(
    string Number,
    string? Line,
    RiskClass? ClassToday,
    Stage Stage,
    DateOnly? EndDate,
    bool LosesOut,
    int? DaysShort,
    string? Owner,
    string? PermanentFix
);

/// <summary>A shutdown, its moves, and who leans on it.</summary>
/// <param name="Id">The shutdown.</param>
/// <param name="Site">The site's short name.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Area">The area that stops; nothing for the whole site.</param>
/// <param name="Start">The first day.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
/// <param name="Moves">Its moves, oldest first.</param>
/// <param name="Leaning">Live orders that lean on it, those that lose out first, gravest class first.</param>
public sealed record ShutdownView(
    Guid Id,
    string Site,
    string Name,
    string? Area,
    DateOnly Start,
    string Version,
    IReadOnlyList<ShutdownMoveView> Moves,
    IReadOnlyList<LeaningOrder> Leaning
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Shutdowns of the caller's sites, earliest first.</summary>
    /// <param name="site">A site's short name; nothing for all.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The shutdowns with the orders that lean on each.</returns>
    public Task<IReadOnlyList<ShutdownView>> Shutdowns(string? site = null, CancellationToken stop = default) =>
        Get<IReadOnlyList<ShutdownView>>(
            site is null ? "shutdowns" : $"shutdowns?site={Uri.EscapeDataString(site)}",
            stop
        );

    /// <summary>One shutdown.</summary>
    /// <param name="id">The shutdown.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The shutdown with the orders that lean on it.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see.</exception>
    public Task<ShutdownView> Shutdown(Guid id, CancellationToken stop = default) =>
        Get<ShutdownView>($"shutdowns/{id}", stop);

    /// <summary>Puts a shutdown on the list.</summary>
    /// <param name="ask">Site, name, area and first day.</param>
    /// <returns>The shutdown.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the site has one of that name.</exception>
    public Task<ShutdownView> AddShutdown(AddShutdown ask) => Post<ShutdownView>("shutdowns", ask);

    /// <summary>Moves a shutdown.</summary>
    /// <param name="id">The shutdown.</param>
    /// <param name="ask">The new first day and the reason.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The shutdown with the orders that lean on it.</returns>
    /// <exception cref="Refused">409 with the objection, 412 when it was moved since.</exception>
    public Task<ShutdownView> MoveShutdown(Guid id, MoveShutdown ask, string version) =>
        Put<ShutdownView>($"shutdowns/{id}", ask, version);
}
