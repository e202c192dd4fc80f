using System.Runtime.CompilerServices;
using System.Text.Json.Nodes;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Tests.Calculations;

/// <summary>One real case for each subject, kept as the JSON that is sent; the fuzz starts from the same.</summary>
internal static class Case
{
    public static readonly IReadOnlyList<string> Subjects =
    [
        "wall-thickness",
        "remaining-strength",
        "wall-loss-grid",
        "remaining-life",
        "outliving",
        "axial-load",
        "through-wall",
        "leak-rate",
        "risk-class",
        "method-claims",
        .. MethodCatalogue.All.Select(m => m.Code),
        "cure",
        "surface-climate",
        "tightening",
        "pressure-test",
        "cut-plan",
        "revisit-plan",
    ];

    public static JsonObject Of(string subject) => JsonNode.Parse(File.ReadAllText(Path(subject)))!.AsObject();

    private static string Path(string subject, [CallerFilePath] string own = "") =>
        System.IO.Path.Combine(System.IO.Path.GetDirectoryName(own)!, "Cases", subject + ".json");
}
