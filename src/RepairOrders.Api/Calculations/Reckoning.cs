using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering;

namespace RepairOrders.Api.Calculations;

/// <summary>Numbers that are allowed one by one and lead together past what a number can hold.</summary>
internal sealed class Unreckonable(string where) : Exception(where);

/// <summary>
/// Asks the engine. What it refuses leads to the field on the wire; an answer with a number that is none is no answer.
/// </summary>
internal static class Reckoning
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Known = new();

    public static CalculationAnswer<T> Answer<TAsk, T>(TAsk ask, Func<TAsk, CalculationAnswer<T>> calculate)
        where TAsk : notnull
    {
        Plausible.Check([ask]);
        try
        {
            var answer = calculate(ask);
            Finite("result", answer.Result);
            return answer;
        }
        catch (ImpossibleInputException bad)
        {
            var path = PathOf(ask, bad.Field);
            throw new MalformedAsk(path, $"{path} is {bad.Value}; allowed is {bad.Allowed}.");
        }
        // What UnitsNet throws of a number too large to convert, and what reckoning with it ends in.
        catch (Exception e) when (e is Unreckonable or ArgumentException or ArithmeticException)
        {
            throw PastReckoning(ask);
        }
    }

    /// <summary>Names the number that is farthest from what is met at a pipe.</summary>
    public static MalformedAsk PastReckoning(object? ask)
    {
        var (path, value) = FarthestFromOne("", ask is null ? null : Written(ask));
        return new(
            path,
            $"{path} is {value}; with the other values it leads past what can be reckoned. Allowed are sizes that are met at a pipe."
        );
    }

    /// <summary>Where a field the engine names stands in an ask: <c>pipe.wallThicknessMm</c>.</summary>
    public static string PathOf(object ask, string field)
    {
        var head = field.Split('.', '[')[0];
        var paths = Paths("", Written(ask)).ToList();
        return paths.Contains(field) ? field
            : paths.Find(p => Leaf(p) == head) is { } exact ? exact + field[head.Length..]
            : paths.Find(p => Stem(Leaf(p)) == Stem(head)) ?? field;
    }

    private static JsonNode? Written(object ask) =>
        JsonSerializer.SerializeToNode(ask, ask.GetType(), RepairOrdersClient.Json);

    private static IEnumerable<string> Paths(string above, JsonNode? node) =>
        node is JsonObject fields
            ? fields.SelectMany(f =>
                Paths(above.Length > 0 ? $"{above}.{f.Key}" : f.Key, f.Value).Prepend(Joined(above, f.Key))
            )
            : [];

    private static string Joined(string above, string field) => above.Length > 0 ? $"{above}.{field}" : field;

    private static string Leaf(string path) => path[(path.LastIndexOf('.') + 1)..];

    // The engine reckons in MPa and N where the wire speaks of bar and kN.
    private static string Stem(string field)
    {
        foreach (var unit in (string[])["BarAbs", "Bar", "Mpa", "Kn", "KgM3", "Mm", "N"])
            if (field.EndsWith(unit, StringComparison.Ordinal))
                return field[..^unit.Length];
        return field;
    }

    private static (string Path, string Value) FarthestFromOne(string path, JsonNode? node)
    {
        var (farthest, most) = (("body", "what was sent"), -1.0);
        foreach (var (at, value) in Numbers(path, node))
        {
            var far = value == 0 ? 0 : Math.Abs(Math.Log10(Math.Abs(value)));
            if (far > most)
                (farthest, most) = ((at, value.ToString("G6", CultureInfo.InvariantCulture)), far);
        }
        return farthest;
    }

    private static IEnumerable<(string Path, double Value)> Numbers(string path, JsonNode? node) =>
        node switch
        {
            JsonObject fields => fields.SelectMany(f => Numbers(Joined(path, f.Key), f.Value)),
            JsonArray list => list.SelectMany((item, i) => Numbers($"{path}[{i}]", item)),
            JsonValue value when value.TryGetValue<double>(out var number) => [(path, number)],
            _ => [],
        };

    private static void Finite(string path, object? value)
    {
        switch (value)
        {
            case double number when !double.IsFinite(number):
                throw new Unreckonable(path);
            case null or string or double:
                break;
            case IEnumerable list:
                foreach (var item in list)
                    Finite(path, item);
                break;
            case var view when view.GetType().Assembly == typeof(CalculationAnswer<>).Assembly && view is not Enum:
                foreach (var property in Known.GetOrAdd(view.GetType(), Readable))
                    Finite($"{path}.{property.Name}", property.GetValue(view));
                break;
        }
    }

    private static PropertyInfo[] Readable(Type type) =>
        [.. type.GetProperties().Where(p => p.GetMethod is { IsStatic: false } && p.GetIndexParameters().Length == 0)];
}
