using RepairOrders.Contract;

namespace RepairOrders.Api.People;

/// <summary>A sign-in: the token is stored hashed, expires and can be revoked.</summary>
internal sealed class Session
{
    /// <summary>A shift and a little more, so that nobody signs in twice at the pipe.</summary>
    public static readonly TimeSpan Length = TimeSpan.FromHours(12);

    /// <summary>Long enough to read and sign one sheet on somebody else's device.</summary>
    public static readonly TimeSpan SigningLength = TimeSpan.FromMinutes(5);

    public Guid Id { get; init; } = Guid.CreateVersion7();
    public string TokenHash { get; init; } = "";
    public Guid PersonId { get; init; }
    public Person Person { get; init; } = null!;
    public DateTimeOffset Since { get; init; }
    public DateTimeOffset Until { get; init; }
    public DateTimeOffset? RevokedAt { get; set; }
    public string? Device { get; init; }
    public string? Address { get; init; }

    /// <summary>For a signature on somebody else's device: the only order it is good for, and whose device it is.</summary>
    public string? OrderNumber { get; init; }
    public Guid? OnDeviceOf { get; init; }

    public SignInView View(Session? current) =>
        new(Id, Since, Until, RevokedAt, Device, Address, OrderNumber, Id == current?.Id);

    /// <summary>Binds the call's own sign-in to an endpoint's argument.</summary>
    public static ValueTask<Session?> BindAsync(HttpContext context) =>
        ValueTask.FromResult(context.Items[typeof(Session)] as Session);
}
