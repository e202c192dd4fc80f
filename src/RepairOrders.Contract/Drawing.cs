namespace RepairOrders.Contract;

public sealed partial class RepairOrdersClient
{
    /// <summary>The drawing to scale, from the order's own numbers.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>SVG; shapes of a part of the bill of material carry its word as <c>data-part</c>.</returns>
    /// <exception cref="Refused">404 when there is no such order, or nothing is known to draw by.</exception>
    public async Task<string> Drawing(string number, CancellationToken stop = default)
    {
        using var response = await Send(HttpMethod.Get, $"orders/{number}/drawing.svg", null, null, null, stop)
            .ConfigureAwait(false);
        return await response.Content.ReadAsStringAsync(stop).ConfigureAwait(false);
    }
}
