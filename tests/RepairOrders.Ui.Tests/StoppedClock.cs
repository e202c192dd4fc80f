namespace RepairOrders.Ui.Tests;

/// <summary>Always the same moment.</summary>
internal sealed class StoppedClock(DateTimeOffset at) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => at;
}
