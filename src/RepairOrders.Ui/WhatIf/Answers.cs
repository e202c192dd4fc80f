using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.WhatIf;

/// <summary>A calculation's result without what stands elsewhere on the page: curves in the charts, the working in its own place.</summary>
internal static class Answers
{
    private static readonly HashSet<string> Elsewhere =
    [
        "series",
        "heatMap",
        "along",
        "round",
        "curve",
        "hours",
        "working",
        "findings",
        "method",
        "name",
    ];

    public static JsonElement Plain(JsonElement result) =>
        JsonSerializer.SerializeToElement(Pruned(JsonNode.Parse(result.GetRawText())));

    /// <summary>The first figure of a result, in words; nothing where it holds none.</summary>
    public static string? Key(IEnumerable<Readable> fields) =>
        fields
            .Select(f =>
                f.Text is { } text ? $"{f.Label} {text}"
                : f.Inside is { } inside ? Key(inside)
                : null
            )
            .FirstOrDefault(k => k is not null);

    /// <summary>What a method holds.</summary>
    public static string Key(MethodResult method) =>
        method.PressureHeldBar is { } bar ? $"Holds {Show.Figure(bar)} bar" : "Holds no pressure, seals only";

    private static JsonNode? Pruned(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject fields:
                foreach (
                    var name in fields
                        .Select(f => f.Key)
                        .Where(k => Elsewhere.Contains(k) && fields[k] is not JsonValue || k is "method")
                        .ToList()
                )
                    fields.Remove(name);
                foreach (var field in fields)
                    Pruned(field.Value);
                break;
            case JsonArray rows:
                foreach (var row in rows)
                    Pruned(row);
                break;
        }
        return node;
    }
}
