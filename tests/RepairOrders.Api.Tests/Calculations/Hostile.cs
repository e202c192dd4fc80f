using System.Text.Json;
using System.Text.Json.Nodes;

namespace RepairOrders.Api.Tests.Calculations;

/// <summary>The real case of a subject with some of its values made hostile; the same seed makes the same ask.</summary>
internal static class Hostile
{
    public static readonly JsonSerializerOptions AsWritten = new()
    {
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly double[] Numbers =
    [
        0,
        -0.0,
        -1,
        1,
        1e308,
        -1e308,
        double.Epsilon,
        1e-300,
        1e-9,
        1e300,
        1e15,
        1e6,
        -273.15,
        0.999999999,
        85.0000001,
        1e-5,
    ];

    private static readonly string[] Words =
    [
        "carbonSteel",
        "grayIron",
        "austeniticStainless",
        "ductileIron",
        "other",
        "internal",
        "external",
        "unknown",
        "gas",
        "steam",
        "liquid",
        "flashingLiquid",
        "m",
        "d",
        "highPressure",
        "normal",
        "crackLike",
        "generalThinning",
        "hole",
        "joint",
        "fatigue",
        "erosion",
        "b311",
        "b314",
        "b318",
        "barlow",
        "exposure",
        "cost",
        "otherLiquid",
        "otherGas",
        "freshWater",
        "seaWater",
        "nuclear",
        "ship",
        "A",
        "D",
        "pneumatic",
        "servicePressure",
        "powerPneumatic",
        "inch",
        "roundThePipe",
        "x",
        "",
        "2026-02-30",
        "1900-01-01",
        "2149-12-31",
        "2026-03-02",
        "2026-03-02T05:00:00Z",
        "1e5,-1\n1,1",
        "banded-patch",
    ];

    /// <summary>A number nobody means, or one that is merely far off.</summary>
    public static double Number(int seed)
    {
        var random = new Random(seed);
        return random.Next(2) == 0
            ? Numbers[random.Next(Numbers.Length)]
            : (random.NextDouble() - 0.2) * Math.Pow(10, random.Next(-3, 6));
    }

    public static JsonObject Ask(string subject, int seed)
    {
        var random = new Random(seed);
        var ask = Case.Of(subject);
        Tame(subject, ask);
        var leaves = Leaves(ask).ToList();
        if (random.Next(3) == 0)
            foreach (var leaf in leaves.Where(_ => random.Next(3) == 0))
                Stretch(leaf, random);
        var count = random.Next(1, 5);
        for (var n = 0; n < count; n++)
            Spoil(leaves[random.Next(leaves.Count)], random);
        if (ask.ContainsKey("samples"))
            ask["samples"] = random.Next(4) == 0 ? 999 : 1000;
        if (ask.ContainsKey("timeLimitS"))
            ask["timeLimitS"] = 0.1;
        return ask;
    }

    private static void Tame(string subject, JsonObject ask)
    {
        if (subject == "outliving")
            ask["samples"] = 1000;
        if (subject == "cut-plan")
            ask["timeLimitS"] = 0.1;
        if (subject == "remaining-strength")
            ask["profile"] = JsonNode.Parse(
                """[{"positionMm":0,"depthMm":0},{"positionMm":70,"depthMm":1.97},{"positionMm":140,"depthMm":0}]"""
            );
    }

    private static IEnumerable<(JsonNode Holder, string? Name, int Index)> Leaves(JsonNode node)
    {
        if (node is JsonObject fields)
            foreach (var (name, value) in fields.ToList())
            {
                yield return (node, name, 0);
                if (value is JsonObject or JsonArray)
                    foreach (var leaf in Leaves(value))
                        yield return leaf;
            }
        else if (node is JsonArray list)
            for (var i = 0; i < list.Count; i++)
            {
                yield return (node, null, i);
                if (list[i] is JsonObject or JsonArray)
                    foreach (var leaf in Leaves(list[i]!))
                        yield return leaf;
            }
    }

    private static JsonNode? Value((JsonNode Holder, string? Name, int Index) at) =>
        at.Name is { } name ? at.Holder.AsObject()[name]
        : at.Index < at.Holder.AsArray().Count ? at.Holder.AsArray()[at.Index]
        : null;

    private static void Set((JsonNode Holder, string? Name, int Index) at, JsonNode? value)
    {
        if (at.Name is { } name)
            at.Holder.AsObject()[name] = value;
        else if (at.Index < at.Holder.AsArray().Count)
            at.Holder.AsArray()[at.Index] = value;
    }

    // Absurd but finite: the same pipe a thousand times smaller or larger.
    private static void Stretch((JsonNode Holder, string? Name, int Index) at, Random random)
    {
        if (Value(at) is JsonValue value && value.TryGetValue<double>(out var number))
            Set(
                at,
                Math.Floor(number) == number && random.Next(2) == 0
                    ? JsonValue.Create((long)Math.Clamp(number * random.Next(0, 5), -1e9, 1e9))
                    : JsonValue.Create(number * Math.Pow(10, random.NextDouble() * 6 - 3))
            );
    }

    private static void Spoil((JsonNode Holder, string? Name, int Index) at, Random random)
    {
        var value = Value(at);
        switch (value)
        {
            case JsonValue number when number.TryGetValue<double>(out _) && random.Next(8) > 0:
                Set(at, JsonValue.Create(Numbers[random.Next(Numbers.Length)]));
                break;
            case JsonValue flag when flag.TryGetValue<bool>(out var on) && random.Next(8) > 0:
                Set(at, JsonValue.Create(!on));
                break;
            case JsonValue word when word.TryGetValue<string>(out _) && random.Next(8) > 0:
                Set(at, JsonValue.Create(Words[random.Next(Words.Length)]));
                break;
            case JsonArray { Count: > 0 } list when random.Next(2) == 0:
                var first = list[random.Next(list.Count)];
                for (var n = random.Next(1, 300); n > 0; n--)
                    list.Add(first?.DeepClone());
                break;
            default:
                Set(
                    at,
                    random.Next(6) switch
                    {
                        0 => null,
                        1 => JsonValue.Create("x"),
                        2 => JsonValue.Create(true),
                        3 => new JsonArray(),
                        4 => new JsonObject(),
                        _ => JsonValue.Create(17),
                    }
                );
                break;
        }
    }
}
