using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

internal static class RegisterEndpoints
{
    public const int MostRows = 200;

    public static void MapRegister(this IEndpointRouteBuilder orders)
    {
        orders.MapGet("/", Read).Needs(Permission.ReadRegister).WithSummary("The register, a page at a time");
        orders
            .MapGet("/waiting", Waiting)
            .Needs(Permission.ReadRegister)
            .WithSummary("The orders that wait for you, the longest waiting first");
        orders
            .MapGet("/shift", Shift)
            .Needs(Permission.ReadRegister)
            .WithSummary("What one shift hands to the next: fits with go or no-go, and interim limits in force");
    }

    public static void MapRegisterExport(this IEndpointRouteBuilder api) =>
        api.MapGet("/orders.csv", Export)
            .Needs(Permission.ReadRegister)
            .Produces(StatusCodes.Status200OK, contentType: "text/csv")
            .WithSummary("The register as CSV, with the filters of the list");

    private static Task<RegisterView> Read(
        Person by,
        RepairStore store,
        TimeProvider clock,
        [AsParameters] AskedRegister asked,
        CancellationToken stop,
        string? after = null,
        [Range(1, MostRows)] int limit = 50,
        bool count = false
    ) => RegisterQuery.Read(store, asked.Filter(), after, limit, count, by, clock.Now(), stop);

    private static Task<WaitingView> Waiting(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    ) => WaitingQuery.Read(by, store, clock.Now(), stop);

    private static Task<ShiftView> Shift(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        bool limits = true
    ) => ShiftQuery.Read(by, store, limits, clock.Now(), stop);

    private static Microsoft.AspNetCore.Http.HttpResults.PushStreamHttpResult Export(
        Person by,
        RepairStore store,
        TimeProvider clock,
        [AsParameters] AskedRegister asked,
        CancellationToken stop
    )
    {
        var at = clock.Now();
        var filter = asked.Filter();
        // A filter that cannot be read is refused before the first line is out.
        _ = store.Orders.Asked(store, filter, by, at);
        return TypedResults.Stream(
            to => RegisterCsv.Write(RegisterQuery.All(store, filter, by, at, stop), to, stop),
            "text/csv; charset=utf-8",
            $"register-{at:yyyy-MM-dd}.csv"
        );
    }
}
