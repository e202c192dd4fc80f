namespace RepairOrders.Contract;

public sealed partial class RepairOrdersClient
{
    /// <summary>A paper of an order as PDF.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="kind">Which: <c>job-sheet</c>, <c>calculation-sheet</c>, <c>tag</c>, <c>pick-list</c>, <c>close-out</c>.</param>
    /// <param name="size">Size of the paper, <c>a4</c> or <c>letter</c>.</param>
    /// <param name="address">Where people open the screens, for the code on the tag; nothing takes the service's own.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The bytes of the PDF.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see, 409 when the order is not so far yet.</exception>
    public Task<byte[]> Paper(
        string number,
        string kind,
        string size = "a4",
        string? address = null,
        CancellationToken stop = default
    ) =>
        Bytes(
            $"orders/{number}/papers/{Uri.EscapeDataString(kind)}.pdf?size={Uri.EscapeDataString(size)}"
                + (address is null ? "" : $"&address={Uri.EscapeDataString(address)}"),
            stop
        );

    /// <summary>An extract of the register as PDF.</summary>
    /// <param name="filter">What is wanted.</param>
    /// <param name="size">Size of the paper, <c>a4</c> or <c>letter</c>.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The bytes of the PDF.</returns>
    public Task<byte[]> RegisterPaper(RegisterFilter filter, string size = "a4", CancellationToken stop = default) =>
        Bytes($"papers/register.pdf?{Query(filter)}&size={Uri.EscapeDataString(size)}", stop);

    private async Task<byte[]> Bytes(string path, CancellationToken stop)
    {
        using var response = await Send(HttpMethod.Get, path, null, null, null, stop).ConfigureAwait(false);
        return await response.Content.ReadAsByteArrayAsync(stop).ConfigureAwait(false);
    }
}
