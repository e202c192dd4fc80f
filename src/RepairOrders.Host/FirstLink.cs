namespace RepairOrders.Host;

/// <summary>What the mode <c>first-administrator</c> prints.</summary>
internal static class FirstLink
{
    /// <summary>The link under the service's address; a sentence when there are people already.</summary>
    public static string Words(string? address, string? token) =>
        token is null
            ? "There are people in the store already; its administrators make others. No link was made."
            : $"This link makes the first administrator. It is good for 24 hours, and once:\n{address?.TrimEnd('/')}/first-administrator?token={token}";
}
