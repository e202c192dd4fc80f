namespace RepairOrders.Ui.Parts;

/// <summary>What kind of source a value or a limit rests on, where that is less than a published one.</summary>
internal static class Provenance
{
    /// <summary>"from memory", "default" or "own rule"; nothing for a published source or what was entered.</summary>
    public static string? Of(string source) =>
        source.Contains("from memory", StringComparison.OrdinalIgnoreCase) ? "from memory"
        : source.Contains("default", StringComparison.OrdinalIgnoreCase) ? "default"
        : source.Contains("own rule", StringComparison.OrdinalIgnoreCase) ? "own rule"
        : null;
}
