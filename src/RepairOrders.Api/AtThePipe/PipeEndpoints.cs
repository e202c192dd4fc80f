using RepairOrders.Api.Fitting;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.AtThePipe;

/// <summary>What is read at the pipe. What is signed there goes to the steps themselves.</summary>
internal static class PipeEndpoints
{
    public static void MapAtThePipe(this IEndpointRouteBuilder orders)
    {
        orders
            .MapGet("/{number}/pipe", PipeQuery.Read)
            .Needs(Permission.ReadOrder)
            .WithSummary("The order as whoever stands at the pipe needs it");
        orders
            .MapGet("/{number}/pipe/climate", Climate)
            .Needs(Permission.ReadOrder)
            .WithSummary("What a climate would say, while it is being typed; nothing is recorded");
    }

    // The same rule on the same materials as a reading that is signed.
    private static async Task<SignedClimate> Climate(
        string number,
        Person by,
        RepairStore store,
        CancellationToken stop,
        string? air = null,
        string? humidity = null,
        string? steel = null
    )
    {
        var order = await store.Order(number, by, null, stop);
        var ask = new RecordClimate(
            Typed("air", air, "°C", -60, 80),
            Typed("humidity", humidity, "%", 1, 100).Value,
            Typed("steel", steel, "°C", -60, 300),
            ""
        );
        return ClimateReading.Sign(ask, await FittingEndpoints.Materials(store, order));
    }

    private static Measure Typed(string field, string? text, string unit, double least, double greatest) =>
        Measure.TryRead(text, unit, out var measure) && measure!.Value >= least && measure.Value <= greatest
            ? measure
            : throw new MalformedAsk(
                field,
                FormattableString.Invariant($"{field} is \"{text}\"; allowed is {least} to {greatest} {unit}.")
            );
}
