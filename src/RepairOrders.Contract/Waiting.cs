namespace RepairOrders.Contract;

/// <summary>An order that waits for the caller, with what he needs to see before he opens it.</summary>
/// <param name="Row">Its row of the register.</param>
/// <param name="Action">What is waited for.</param>
/// <param name="Since">When the last record was signed: since then it waits.</param>
/// <param name="Duty">Operating pressure and temperature as entered.</param>
/// <param name="Defect">The assessment in one line; nothing before there is one.</param>
public sealed record WaitingOrder(
    RegisterRow Row,
    ActionView Action,
    DateTimeOffset Since,
    string Duty,
    string? Defect
);

/// <summary>Everything that waits for the caller, the longest waiting first.</summary>
/// <param name="Rows">The orders.</param>
/// <param name="Cut">There is more open work than was looked at.</param>
/// <param name="ReadAt">When this was read.</param>
public sealed record WaitingView(IReadOnlyList<WaitingOrder> Rows, bool Cut, DateTimeOffset ReadAt);

public sealed partial class RepairOrdersClient
{
    /// <summary>The orders that wait for the caller.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The list.</returns>
    public Task<WaitingView> Waiting(CancellationToken stop = default) => Get<WaitingView>("orders/waiting", stop);
}
