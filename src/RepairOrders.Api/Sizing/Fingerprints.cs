using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sizing;

/// <summary>
/// SHA-256 over the whole design, keys sorted, its own fingerprint left out: what the approvers sign. Anybody can reckon it
/// again from the record's body.
/// </summary>
internal static class Fingerprints
{
    public static SignedDesign Sealed(SignedDesign design) => design with { Fingerprint = Of(design) };

    public static string Of(SignedDesign design)
    {
        var body = JsonSerializer.SerializeToNode(design with { Fingerprint = "" }, RepairOrdersClient.Json)!;
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Sorted(body)!.ToJsonString())));
    }

    private static JsonNode? Sorted(JsonNode? node) =>
        node switch
        {
            JsonObject map => new JsonObject(
                map.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => KeyValuePair.Create(p.Key, Sorted(p.Value)))
            ),
            JsonArray list => new JsonArray([.. list.Select(Sorted)]),
            _ => node?.DeepClone(),
        };
}
