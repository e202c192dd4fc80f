using System.Text.Json;

namespace RepairOrders.Api.Tests.Calculations;

/// <summary>What an answer promises, whatever was asked.</summary>
internal static class Promises
{
    public static string? Broken(string subject, string ask, int status, string text)
    {
        if (status is not (200 or 400))
            return $"{status} {text}";
        if (status == 400)
            return null;
        if (IsNoNumber(text))
            return "a number that is none\n" + Near(text);
        using var answer = JsonDocument.Parse(text);
        using var asked = JsonDocument.Parse(ask);
        return Validity.Broken(subject, new Told(asked.RootElement, answer.RootElement)).FirstOrDefault();
    }

    public static bool IsNoNumber(string text) =>
        Array.Exists(["NaN", "Infinity", "∞"], word => text.Contains(word, StringComparison.Ordinal));

    private static string Near(string text)
    {
        var at = text.IndexOfAny(['∞']);
        at = at >= 0 ? at : text.IndexOf("NaN", StringComparison.Ordinal);
        at = at >= 0 ? at : text.IndexOf("Infinity", StringComparison.Ordinal);
        return text[Math.Max(0, at - 200)..Math.Min(text.Length, at + 100)];
    }
}

/// <summary>An ask and its answer, read by path.</summary>
internal sealed class Told(JsonElement ask, JsonElement answer)
{
    private readonly List<JsonElement> findings = [.. answer.GetProperty("findings").EnumerateArray()];

    public JsonElement Ask => ask;

    public JsonElement Result { get; } = answer.GetProperty("result");

    /// <summary>A number of the result; nothing where it has none.</summary>
    public double? this[string path] => Number(Result, path);

    /// <summary>A number that was asked; nothing where none was given.</summary>
    public double? Asked(string path) => Number(ask, path);

    public string? Word(string path) =>
        At(ask, path) is { ValueKind: JsonValueKind.String } word ? word.GetString() : null;

    public bool Flag(string path) => At(ask, path) is { ValueKind: JsonValueKind.True };

    public bool Given(string path) => At(ask, path) is { ValueKind: not JsonValueKind.Null };

    public bool Yes(string path) => At(Result, path) is { ValueKind: JsonValueKind.True };

    /// <summary>A finding of this code that is no pass.</summary>
    public bool Said(string code) => Said(findings, code);

    public bool Fails => Fail(findings);

    public static bool Said(IEnumerable<JsonElement> findings, string code) =>
        findings.Any(f => f.GetProperty("code").GetString() == code && f.GetProperty("severity").GetString() != "pass");

    public static bool Fail(IEnumerable<JsonElement> findings) =>
        findings.Any(f => f.GetProperty("severity").GetString() == "fail");

    public static double? Number(JsonElement from, string path) =>
        At(from, path) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : null;

    private static JsonElement? At(JsonElement from, string path)
    {
        JsonElement? at = from;
        foreach (var step in path.Split('.'))
            at =
                at is { ValueKind: JsonValueKind.Object } element && element.TryGetProperty(step, out var next)
                    ? next
                    : null;
        return at;
    }
}
