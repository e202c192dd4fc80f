using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Ways out of the procedure beside its end.</summary>
public enum ExitKind
{
    /// <summary>Back to the requester, with a list of what is missing.</summary>
    Returned,

    /// <summary>Not suitable for a temporary repair: shut down or replace.</summary>
    Refused,

    /// <summary>Not wanted any more, with nothing on the pipe.</summary>
    Withdrawn,

    /// <summary>A newer order is in service on the same spot.</summary>
    Superseded,

    /// <summary>The line is isolated: looks and ladder rest, the end date stands.</summary>
    LineOutOfService,
}

/// <summary>In which capacity an exit is signed.</summary>
public enum ExitCapacity
{
    /// <summary>As integrity engineer.</summary>
    Engineer,

    /// <summary>As operations in charge.</summary>
    OperationsInCharge,

    /// <summary>As supervisor.</summary>
    Supervisor,

    /// <summary>As the one who asked for the repair.</summary>
    Requester,
}

/// <summary>Takes an order out of the procedure.</summary>
/// <param name="Kind">Which way.</param>
/// <param name="As">The capacity signed in.</param>
/// <param name="Why">Why.</param>
/// <param name="Missing">Returned: what is missing, one thing an entry.</param>
/// <param name="OtherOrder">Superseded: the newer order. Withdrawn with a leak left: the order that takes it over.</param>
/// <param name="LeakStopped">Withdrawn: how the leak was stopped, where there was one and no other order takes it over.</param>
/// <param name="IsolationReference">Line out of service: the isolation certificate.</param>
/// <param name="Blinded">Line out of service: blinded, not valved off only.</param>
public sealed record ExitOrder(
    ExitKind Kind,
    ExitCapacity As,
    [property: Required, StringLength(2000, MinimumLength = 5)] string Why,
    [property: MaxLength(50)] IReadOnlyList<string>? Missing = null,
    [property: StringLength(40)] string? OtherOrder = null,
    [property: StringLength(1000)] string? LeakStopped = null,
    [property: StringLength(100)] string? IsolationReference = null,
    bool Blinded = false
);

/// <summary>The second signature an exit needs: operations in charge under a refusal, the other of two under a line out of service.</summary>
/// <param name="Exit">The exit.</param>
/// <param name="As">The capacity signed in.</param>
/// <param name="Remark">What the signer wants on record.</param>
public sealed record SignExit(Guid Exit, ExitCapacity As, [property: StringLength(1000)] string? Remark = null);

/// <summary>Puts a line back into service: operations in charge, after a fresh assessment.</summary>
/// <param name="Checked">What was looked at before the line was opened: leaks, bands, limits.</param>
public sealed record ReturnToService([property: Required, StringLength(1000, MinimumLength = 5)] string Checked);

public sealed partial class RepairOrdersClient
{
    /// <summary>Takes an order out of the procedure.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Which way, and why.</param>
    /// <returns>The exit.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> Exit(string number, ExitOrder ask) => Post<RecordView>($"orders/{number}/exits", ask);

    /// <summary>Gives the second signature an exit needs.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The exit, and the capacity.</param>
    /// <returns>The signature.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> SignExit(string number, SignExit ask) =>
        Post<RecordView>($"orders/{number}/exit-signatures", ask);

    /// <summary>Puts the line back into service.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What was checked.</param>
    /// <returns>The return to service.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ReturnToService(string number, ReturnToService ask) =>
        Post<RecordView>($"orders/{number}/service-returns", ask);

    /// <summary>Sends a returned request again, with what was missing.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The request, complete.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The request.</returns>
    /// <exception cref="Refused">409 with the objection, 412 when the order changed since.</exception>
    public Task<RecordView> RequestAgain(string number, RequestRepair ask, string version) =>
        Put<RecordView>($"orders/{number}/request", ask, version);
}
