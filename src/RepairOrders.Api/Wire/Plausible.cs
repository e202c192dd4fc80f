using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using RepairOrders.Contract;

namespace RepairOrders.Api.Wire;

/// <summary>Days, times and numbers that can be meant: years 1900 to 2150, nothing infinite. Reckoning with others ends in a fault.</summary>
internal static class Plausible
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Known = new();

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
                    Check($"{path}[{i++}]", item);
                break;
            default:
                if (value.GetType().Assembly == typeof(Measure).Assembly && !value.GetType().IsEnum)
                    foreach (var property in Known.GetOrAdd(value.GetType(), t => t.GetProperties()))
                        Check(Below(path, property.Name), property.GetValue(value));
                break;
        }
    }

    private static string Below(string path, string name)
    {
        var field = System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(name);
        return path.Length > 0 ? $"{path}.{field}" : field;
    }
}
