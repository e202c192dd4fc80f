using System.Text.Json;
using System.Text.RegularExpressions;

namespace RepairOrders.Api.Wire;

/// <summary>The framework's complaints about an address or a body, in our words: field, value and what is allowed.</summary>
internal static partial class BindingFault
{
    public static IReadOnlyDictionary<string, string[]> Read(BadHttpRequestException fault)
    {
        if (Unread().Match(fault.Message) is { Success: true } unread)
        {
            // Of several parameters taken as one record the framework names the property.
            var field = JsonNamingPolicy.CamelCase.ConvertName(unread.Groups[2].Value);
            return One(
                field,
                $"{field} is \"{unread.Groups[3].Value}\"; allowed is {Allowed(unread.Groups[1].Value)}."
            );
        }
        if (Missing().Match(fault.Message) is { Success: true } missing)
            return missing.Groups[2].Value == "body"
                ? One("body", "The body is missing.")
                : One(missing.Groups[1].Value, $"{missing.Groups[1].Value} is missing.");
        return One("body", Words(fault));
    }

    public static string Words(BadHttpRequestException fault) =>
        fault.StatusCode switch
        {
            413 => "The body is larger than is taken here.",
            415 => "The body is of a kind that is not taken here; send JSON unless the address says otherwise.",
            _ => "The request cannot be read.",
        };

    private static Dictionary<string, string[]> One(string field, string message) => new() { [field] = [message] };

    private static string Allowed(string type) =>
        type.TrimEnd('?') switch
        {
            "int" => "a whole number",
            "bool" => "true or false",
            "DateOnly" => "a day such as 2026-03-14",
            "DateTimeOffset" => "a time such as 2026-03-14T06:30:00Z",
            "Guid" => "an id such as 0198c0de-7a11-7000-8000-000000000000",
            "double" => "a number",
            _ => "another value",
        };

    [GeneratedRegex("^Failed to bind parameter \"([^ ]+) ([^\"]+)\" from \"(.*)\"\\.$", RegexOptions.Singleline)]
    private static partial Regex Unread();

    [GeneratedRegex("^Required parameter \"[^ ]+ ([^\"]+)\" was not provided from (\\w+)")]
    private static partial Regex Missing();
}
