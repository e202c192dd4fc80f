using RepairOrders.Api.Charts.Reckoned;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Charts;

internal static class ChartsEndpoints
{
    public static void MapCharts(this IEndpointRouteBuilder orders) =>
        orders
            .MapGet("/{number}/charts", Read)
            .Needs(Permission.ReadOrder)
            .WithSummary("The charts the order has the data for, each with its table");

    /// <summary>Drawings and charts of the calculations that need no order: what the what-if pages show.</summary>
    public static void MapCalculationCharts(this IEndpointRouteBuilder api)
    {
        var c = api.MapGroup("/calculations");
        c.Charts<CalculateWallThickness>("wall-thickness", PipeCharts.Of);
        c.Charts<CalculateRemainingStrength>("remaining-strength", PipeCharts.Of);
        c.Charts<CalculateWallLossGrid>("wall-loss-grid", PipeCharts.Of);
        c.Charts<CalculateAxialLoad>("axial-load", PipeCharts.Of);
        c.Charts<CalculateThroughWall>("through-wall", PipeCharts.Of);
        c.Charts<CalculateMethodClaims>("method-claims", PipeCharts.Of);
        foreach (var method in MethodCatalogue.All)
            c.Charts<CalculateMethod>(method.Code, ask => PipeCharts.Of(method, ask));
        c.Charts<CalculateRemainingLife>("remaining-life", LifeCharts.Of);
        c.Charts<CalculateOutliving>("outliving", LifeCharts.Of);
        c.Charts<CalculateRevisitPlan>("revisit-plan", LifeCharts.Of);
        c.Charts<CalculateRiskClass>("risk-class", LifeCharts.Of);
        c.Charts<CalculateLeakRate>("leak-rate", WorkCharts.Of);
        c.Charts<CalculateCure>("cure", WorkCharts.Of);
        c.Charts<CalculateSurfaceClimate>("surface-climate", WorkCharts.Of);
        c.Charts<CalculateTightening>("tightening", WorkCharts.Of);
        c.Charts<CalculatePressureTest>("pressure-test", WorkCharts.Of);
        c.Charts<CalculateCutPlan>("cut-plan", WorkCharts.Of);
    }

    private static void Charts<TAsk>(
        this IEndpointRouteBuilder calculations,
        string subject,
        Func<TAsk, IEnumerable<Chart?>> charts
    )
        where TAsk : notnull =>
        calculations
            .MapPost($"/{subject}/charts", (TAsk ask) => Drawn(ask, charts))
            .Needs(Permission.Calculate)
            .WithSummary($"Drawing and charts of {subject}, each with its table");

    private static IReadOnlyList<ChartView> Drawn<TAsk>(TAsk ask, Func<TAsk, IEnumerable<Chart?>> charts)
        where TAsk : notnull =>
        Calculations
            .Reckoning.Answer(
                ask,
                a => new CalculationAnswer<IReadOnlyList<ChartView>>(
                    [.. charts(a).OfType<Chart>().Select(c => c.View())],
                    [],
                    [],
                    []
                )
            )
            .Result;

    private static async Task<IReadOnlyList<ChartView>> Read(
        string number,
        Person by,
        RepairStore store,
        CancellationToken stop
    ) => [.. OrderCharts.Of(await store.Order(number, by, null, stop)).Select(c => c.View())];
}
