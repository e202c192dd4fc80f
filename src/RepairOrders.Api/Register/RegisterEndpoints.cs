using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

internal static class RegisterEndpoints
{
    public const int MostRows = 200;

    public static void MapRegister(this IEndpointRouteBuilder orders) =>
        orders.MapGet("/", Read).Needs(Permission.ReadRegister).WithSummary("The register, a page at a time");

    private static Task<RegisterView> Read(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        string? search = null,
        string? site = null,
        string[]? stage = null,
        [AllowedValues("A", "B", "C", "D", null)] string? @class = null,
        string? flag = null,
        string? sort = null,
        bool live = false,
        string? after = null,
        [Range(1, MostRows)] int limit = 50,
        bool count = false
    )
    {
        var filter = new RegisterFilter(
            search,
            site,
            [.. (stage ?? []).Select(s => Word<Stage>("stage", s))],
            @class is null ? null : Word<RiskClass>("class", @class),
            flag,
            sort is null ? RegisterSort.Newest : Word<RegisterSort>("sort", sort),
            live
        );
        return RegisterQuery.Read(store, filter, after, limit, count, by, clock.Now(), stop);
    }

    private static T Word<T>(string field, string given)
        where T : struct, Enum =>
        Enum.TryParse<T>(given, ignoreCase: true, out var word)
            ? word
            : throw new MalformedAsk(
                field,
                $"{field} is \"{given}\"; allowed is one of {string.Join(", ", Enum.GetNames<T>().Select(System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName))}."
            );
}
