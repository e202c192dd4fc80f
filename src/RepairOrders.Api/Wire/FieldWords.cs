using System.Text.Json;
using System.Text.RegularExpressions;

namespace RepairOrders.Api.Wire;

/// <summary>The annotations' messages as sentences that name the field as the wire spells it.</summary>
internal static partial class FieldWords
{
    public static string Of(string path, string message)
    {
        if (Required().IsMatch(message))
            return $"{path} is missing.";
        if (Length().Match(message) is { Success: true } length)
            return $"{path} is too long or too short; allowed are {length.Groups[1].Value} to {length.Groups[2].Value} characters.";
        if (Longest().Match(message) is { Success: true } longest)
            return $"{path} is too long; allowed are at most {longest.Groups[1].Value} characters.";
        if (Range().Match(message) is { Success: true } range)
            return $"{path} is out of range; allowed is {range.Groups[1].Value} to {range.Groups[2].Value}.";
        if (Pattern().Match(message) is { Success: true } pattern)
            return $"{path} has a form that is not taken; allowed is {pattern.Groups[1].Value}.";
        return message;
    }

    public static string Wired(string path) =>
        string.Join('.', path.Split('.').Select(JsonNamingPolicy.CamelCase.ConvertName));

    [GeneratedRegex("^The .+ field is required\\.$")]
    private static partial Regex Required();

    [GeneratedRegex("must be a string with a minimum length of (\\d+) and a maximum length of (\\d+)\\.$")]
    private static partial Regex Length();

    [GeneratedRegex(
        "must be a string (?:with a maximum length of|or array type with a maximum length of) '?(\\d+)'?\\.$"
    )]
    private static partial Regex Longest();

    [GeneratedRegex("^The field .+ must be between (.+) and (.+)\\.$")]
    private static partial Regex Range();

    [GeneratedRegex("must match the regular expression '(.+)'\\.$")]
    private static partial Regex Pattern();
}
