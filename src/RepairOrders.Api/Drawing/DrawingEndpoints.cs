using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Drawing;

internal static class DrawingEndpoints
{
    public static void MapDrawing(this IEndpointRouteBuilder orders) =>
        orders
            .MapGet("/{number}/drawing.svg", Drawing)
            .Needs(Permission.ReadOrder)
            .WithSummary("The drawing to scale, from the order's own numbers");

    private static async Task<ContentHttpResult> Drawing(
        string number,
        Person by,
        RepairStore store,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        var subject =
            Subject.Of(order)
            ?? throw new NotHere(
                $"There is nothing to draw of {number} yet: the line is not in the line list and no assessment gives its size."
            );
        return TypedResults.Content(OrderPicture.Of(subject).Svg(), "image/svg+xml");
    }
}
