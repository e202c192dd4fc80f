namespace RepairOrders.Api.Wire;

internal static class Clock
{
    /// <summary>Now, in the store's own precision: it keeps microseconds, and an answer must equal the later read.</summary>
    public static DateTimeOffset Now(this TimeProvider clock)
    {
        var now = clock.GetUtcNow();
        return new DateTimeOffset(now.UtcTicks - now.UtcTicks % TimeSpan.TicksPerMicrosecond, TimeSpan.Zero);
    }
}
