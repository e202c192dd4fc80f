using System.Text.Json;
using Microsoft.AspNetCore.Mvc;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>The filter of the register as an address spells it: the list, the CSV and the paper take the same.</summary>
/// <remarks>Nothing validates parameters that are taken as one record: <see cref="Filter"/> does.</remarks>
internal sealed record AskedRegister(
    [property: FromQuery(Name = "search")] string? Search = null,
    [property: FromQuery(Name = "site")] string? Site = null,
    [property: FromQuery(Name = "stage")] string[]? Stage = null,
    [property: FromQuery(Name = "class")] string? Class = null,
    [property: FromQuery(Name = "flag")] string? Flag = null,
    [property: FromQuery(Name = "sort")] string? Sort = null,
    [property: FromQuery(Name = "live")] bool Live = false
)
{
    /// <summary>The filter, each word read.</summary>
    /// <exception cref="MalformedAsk">A word that means nothing.</exception>
    public RegisterFilter Filter() =>
        new(
            Search,
            Site,
            [.. (Stage ?? []).Select(s => Word<Stage>("stage", s))],
            Class is null ? null : Word<RiskClass>("class", Class),
            Flag,
            Sort is null ? RegisterSort.Newest : Word<RegisterSort>("sort", Sort),
            Live
        );

    // As the wire spells them: a number is no word, though the framework would read one.
    private static T Word<T>(string field, string given)
        where T : struct, Enum
    {
        var words = Enum.GetValues<T>()
            .ToDictionary(
                v => JsonSerializer.SerializeToElement(v, RepairOrdersClient.Json).GetString()!,
                StringComparer.OrdinalIgnoreCase
            );
        return words.TryGetValue(given, out var word)
            ? word
            : throw new MalformedAsk(
                field,
                $"{field} is \"{given}\"; allowed is one of {string.Join(", ", words.Keys)}."
            );
    }
}
