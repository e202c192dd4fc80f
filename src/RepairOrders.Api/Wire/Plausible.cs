using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using RepairOrders.Contract;

namespace RepairOrders.Api.Wire;

/// <summary>
/// What can be meant: nothing missing that must be there, years 1900 to 2150, numbers that are finite. Reckoning with anything
/// else ends in a fault.
/// </summary>
internal static class Plausible
{
    private static readonly ConcurrentDictionary<Type, Field[]> Known = new();

    private sealed record Field(string Name, PropertyInfo Property, bool MayBeNothing);

    public static void Check(IEnumerable<object?> arguments)
    {
        foreach (var argument in arguments)
            if (argument is DateOnly or DateTimeOffset || argument?.GetType().Assembly == typeof(Measure).Assembly)
                Check("", argument);
    }

    private static void Check(string path, object? value)
    {
        switch (value)
        {
            case null or string or Measure:
                break;
            case DateOnly { Year: < 1900 or > 2150 } or DateTimeOffset { Year: < 1900 or > 2150 }:
                throw new MalformedAsk(path, $"{path} is {value:yyyy-MM-dd}; allowed are the years 1900 to 2150.");
            case double number when !double.IsFinite(number):
                throw new MalformedAsk(path, $"{path} is not a number that can be meant.");
            case IEnumerable list:
                var i = 0;
                foreach (var item in list)
                    Check($"{path}[{i++}]", item ?? throw Missing($"{path}[{i - 1}]"));
                break;
            default:
                if (value.GetType().Assembly == typeof(Measure).Assembly && !value.GetType().IsEnum)
                    foreach (var field in Known.GetOrAdd(value.GetType(), Fields))
                        Check(path, field, field.Property.GetValue(value));
                break;
        }
    }

    private static void Check(string above, Field field, object? value)
    {
        var path = above.Length > 0 ? $"{above}.{field.Name}" : field.Name;
        if (value is null && !field.MayBeNothing)
            throw Missing(path);
        Check(path, value);
    }

    private static MalformedAsk Missing(string path) => new(path, $"{path} is missing.");

    private static Field[] Fields(Type type)
    {
        var nullability = new NullabilityInfoContext();
        return
        [
            .. type.GetProperties()
                .Where(p => p.GetMethod is { IsStatic: false } && p.GetIndexParameters().Length == 0)
                .Select(p => new Field(
                    System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(p.Name),
                    p,
                    nullability.Create(p).ReadState != NullabilityState.NotNull
                )),
        ];
    }
}
