using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using RepairOrders.Contract;

namespace RepairOrders.Api.Wire;

/// <summary>
/// What is wrong in a JSON body, as field, value and what is allowed. The serializer's own messages name types and byte
/// positions that nobody typed; messages of our own converters are sentences already.
/// </summary>
internal static partial class JsonFault
{
    public static Task<IReadOnlyDictionary<string, string[]>> Read(JsonException fault, HttpRequest request) =>
        Read(fault, request.Body, request.HttpContext.RequestAborted);

    /// <summary>The same of JSON that is not a whole body; the stream can be read again.</summary>
    public static async Task<IReadOnlyDictionary<string, string[]>> Read(
        JsonException fault,
        Stream json,
        CancellationToken stop
    )
    {
        var path = Path(fault);
        var message = fault.Message.Split(" Path: ")[0].TrimEnd();
        if (
            message.StartsWith("is ", StringComparison.Ordinal)
            || message.StartsWith("allowed ", StringComparison.Ordinal)
        )
            return One(path, $"{Named(path)} {message}");
        if (Missing().Match(message) is { Success: true } missing)
            return Words()
                .Matches(missing.Groups[1].Value)
                .Select(m => Below(path, m.Groups[1].Value))
                .ToDictionary(field => field, field => new[] { $"{field} is missing." });
        if (Unknown().Match(message) is { Success: true } unknown)
            return One(
                Below(Parent(path, unknown.Groups[1].Value), unknown.Groups[1].Value),
                $"{unknown.Groups[1].Value} is no field of this ask{Fields(unknown.Groups[2].Value)}."
            );
        if (Twice().Match(message) is { Success: true } twice)
            return One(
                Below(Parent(path, twice.Groups[1].Value), twice.Groups[1].Value),
                $"{twice.Groups[1].Value} is given twice."
            );
        if (Null().Match(message) is { Success: true } isNull)
            return One(
                path.Length > 0 ? path : isNull.Groups[1].Value,
                $"{(path.Length > 0 ? path : isNull.Groups[1].Value)} is missing."
            );
        if (message.Contains("maximum configured depth", StringComparison.Ordinal))
            return One("body", $"The body is nested deeper than {StrictAsks.Deepest} levels.");
        if (Kind().Match(message) is { Success: true } kind)
            return One(
                path.Length > 0 ? path : "body",
                $"{Named(path)} {await Given(json, fault.Path, stop)}; allowed is {Allowed(Leaf(kind.Groups[1].Value, path))}."
            );
        return One("body", "The body is not JSON.");
    }

    private static Dictionary<string, string[]> One(string field, string message) =>
        new() { [field.Length > 0 ? field : "body"] = [message] };

    private static string Path(JsonException fault) =>
        fault.Path is { Length: > 2 } path && path.StartsWith("$.", StringComparison.Ordinal) ? path[2..] : "";

    private static string Named(string path) => path.Length > 0 ? path : "The body";

    private static string Below(string path, string field) => path.Length > 0 ? $"{path}.{field}" : field;

    // The serializer may or may not have stepped into the field it complains of.
    private static string Parent(string path, string field) =>
        path == field ? ""
        : path.EndsWith("." + field, StringComparison.Ordinal) ? path[..^(field.Length + 1)]
        : path;

    private static string Fields(string type) =>
        typeof(RepairOrdersClient).Assembly.GetType(type) is { } known
            ? "; allowed are "
                + string.Join(", ", known.GetProperties().Select(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name)))
            : "";

    // The serializer names the type that holds the field, or the field's own.
    private static Type? Leaf(string type, string path)
    {
        if (Contracted().Match(type) is not { Success: true } contracted)
            return Type.GetType(type);
        var holder = typeof(RepairOrdersClient).Assembly.GetType(contracted.Value);
        var last = path.Split('.')[^1];
        var property = holder?.GetProperty(
            last.Split('[')[0],
            BindingFlags.IgnoreCase | BindingFlags.Public | BindingFlags.Instance
        );
        var own = property?.PropertyType ?? holder;
        return last.EndsWith(']') && own?.IsGenericType == true ? own.GetGenericArguments()[0] : own;
    }

    private static string Allowed(Type? type)
    {
        type = type is null ? null : Nullable.GetUnderlyingType(type) ?? type;
        return type switch
        {
            null => "another value",
            { IsEnum: true } => "one of " + string.Join(", ", Enum.GetValues(type).Cast<object>().Select(Wired)),
            _ when type == typeof(string) => "text",
            _ when type == typeof(bool) => "true or false",
            _ when type == typeof(int) || type == typeof(long) => "a whole number",
            _ when type == typeof(double) || type == typeof(decimal) => "a number",
            _ when type == typeof(DateOnly) => "a day such as 2026-03-14",
            _ when type == typeof(DateTimeOffset) => "a time such as 2026-03-14T06:30:00Z",
            _ when type == typeof(Guid) => "an id such as 0198c0de-7a11-7000-8000-000000000000",
            _ when type.IsAssignableTo(typeof(System.Collections.IEnumerable)) => "a list",
            _ => "an object",
        };
    }

    private static string Wired(object choice) =>
        JsonSerializer.Serialize(choice, choice.GetType(), RepairOrdersClient.Json).Trim('"');

    private static async Task<string> Given(Stream json, string? path, CancellationToken stop)
    {
        try
        {
            json.Position = 0;
            using var body = await JsonDocument.ParseAsync(json, default, stop);
            var at = body.RootElement;
            foreach (Match step in Steps().Matches(path ?? ""))
                at = step.Groups[2].Success
                    ? at[int.Parse(step.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture)]
                    : at.GetProperty(step.Groups[1].Value);
            var text = at.ToString();
            return at.ValueKind switch
            {
                JsonValueKind.Object => "is an object",
                JsonValueKind.Array => "is a list",
                JsonValueKind.Null => "is nothing",
                _ => $"is \"{(text.Length > 60 ? text[..60] + "…" : text)}\"",
            };
        }
        catch (Exception e)
            when (e
                    is JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or IndexOutOfRangeException
                        or NotSupportedException
            )
        {
            return "cannot be read";
        }
    }

    [GeneratedRegex("missing required properties including: (.*)$")]
    private static partial Regex Missing();

    [GeneratedRegex("'([^']+)'")]
    private static partial Regex Words();

    [GeneratedRegex("^The JSON property '(.*)' could not be mapped to any .NET member contained in type '([^']*)'")]
    private static partial Regex Unknown();

    [GeneratedRegex("^Duplicate property '([^']*)'")]
    private static partial Regex Twice();

    [GeneratedRegex("'([^']*)' on type '[^']*' doesn't allow (?:setting )?null values")]
    private static partial Regex Null();

    [GeneratedRegex("could not be converted to ([^ ]+?)\\.?$")]
    private static partial Regex Kind();

    [GeneratedRegex(@"RepairOrders\.Contract\.\w+")]
    private static partial Regex Contracted();

    [GeneratedRegex(@"\.([^.\[\]]+)|\[(\d+)\]")]
    private static partial Regex Steps();
}
