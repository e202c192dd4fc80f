namespace RepairOrders.Api.Papers;

/// <summary>The papers of an order: one line a paper.</summary>
internal static class PaperCatalogue
{
    /// <summary>Papers made from the sheaf alone.</summary>
    public static IReadOnlyDictionary<string, Func<OrderFacts, PaperSize, byte[]>> OfSheaf { get; } =
        new Dictionary<string, Func<OrderFacts, PaperSize, byte[]>>
        {
            ["job-sheet"] = JobSheet.Of,
            ["calculation-sheet"] = CalculationSheet.Of,
            ["tag"] = Tag.Of,
            ["close-out"] = CloseOutCertificate.Of,
        };

    /// <summary>Made from the stores' books too.</summary>
    public const string PickList = "pick-list";

    public static IReadOnlyList<string> All { get; } = [.. OfSheaf.Keys, PickList];
}
