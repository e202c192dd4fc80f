using System.Text.Json;

namespace RepairOrders.Api.Wire;

/// <summary>What lists are asked with: the key to go on from, words to search for, choices.</summary>
internal static class Keys
{
    public const int MostRows = 200;

    /// <summary>The key a page before gave as next; nothing for the first page.</summary>
    /// <exception cref="MalformedAsk">It is none.</exception>
    public static Guid? Read(string? after) =>
        after is null ? null
        : Guid.TryParse(after, out var key) ? key
        : throw new MalformedAsk("after", $"after is \"{after}\"; allowed is the key a page before gave as next.");

    /// <summary>A search word as a pattern that matches it anywhere, its own wildcards taken literally.</summary>
    public static string Like(string search) =>
        $"%{search.Trim().Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal)}%";

    /// <summary>A choice by its word on the wire.</summary>
    /// <exception cref="MalformedAsk">There is no such word.</exception>
    public static T? Word<T>(string field, string? given)
        where T : struct, Enum =>
        given is null ? null
        : Enum.GetValues<T>().Where(v => Wired(v) == given).Select(v => (T?)v).FirstOrDefault() is { } word ? word
        : throw new MalformedAsk(
            field,
            $"{field} is \"{given}\"; allowed is one of {string.Join(", ", Enum.GetValues<T>().Select(Wired))}."
        );

    private static string Wired<T>(T choice)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(choice.ToString());
}
