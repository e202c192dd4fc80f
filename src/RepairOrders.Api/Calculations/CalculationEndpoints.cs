using RepairOrders.Api.Calculations.Survey;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using static RepairOrders.Api.Calculations.Reckoning;

namespace RepairOrders.Api.Calculations;

/// <summary>The engine over the wire, on one page: each subject can be asked without an order, and nothing of it is kept.</summary>
internal static class CalculationEndpoints
{
    public static void MapCalculations(this IEndpointRouteBuilder api)
    {
        var c = api.MapGroup("/calculations");
        c.MapPost("/wall-thickness", (CalculateWallThickness ask) => Answer(ask, WallThickness.Calculate))
            .Reckons("Wall a pipe needs, and the pressure a measured wall holds");
        c.MapPost("/remaining-strength", (CalculateRemainingStrength ask) => Answer(ask, RemainingStrength.Calculate))
            .Reckons("Strength of a pipe with metal loss, by every method that applies");
        c.MapSurvey();
        c.MapPost("/wall-loss-grid", (CalculateWallLossGrid ask) => Answer(ask, WallLossGrid.Calculate))
            .Reckons("Profiles, pits, strength and heat map of a grid of wall readings");
        c.MapPost("/remaining-life", (CalculateRemainingLife ask) => Answer(ask, RemainingLife.Calculate))
            .Reckons("Corrosion rates and remaining life");
        c.MapPost("/outliving", (CalculateOutliving ask) => Answer(ask, Outliving.Calculate))
            .Reckons("Probability that a wall falls short before a date");
        c.MapPost("/revisit-plan", (CalculateRevisitPlan ask) => Answer(ask, RevisitPlan.Calculate))
            .Reckons("When a repair must be looked at");
        c.MapPost("/axial-load", (CalculateAxialLoad ask) => Answer(ask, AxialLoad.Calculate))
            .Reckons("Whether the pipe holds together, and stands pressure from outside");
        c.MapPost("/through-wall", (CalculateThroughWall ask) => Answer(ask, ThroughWall.Calculate))
            .Reckons("Hole class, critical length, and whether a temporary repair is acceptable");
        c.MapPost("/leak-rate", (CalculateLeakRate ask) => Answer(ask, LeakRate.Calculate))
            .Reckons("What comes out of a hole, and what it costs a year");
        c.MapPost("/risk-class", (CalculateRiskClass ask) => Answer(ask, RiskOfRepair.Calculate))
            .Reckons("Risk class of a repair, and the carried risk of a section");
        c.MapPost("/method-claims", (CalculateMethodClaims ask) => Answer(ask, MethodClaims.Calculate))
            .Reckons("What every method claims, ranked");
        foreach (var method in MethodCatalogue.All)
        {
            c.MapPost($"/{method.Code}", (CalculateMethod ask) => Answer(ask, a => Methods.Calculate(method, a)))
                .Reckons($"Size: {method.Name}");
            c.MapGet($"/{method.Code}/inputs", () => Methods.Inputs(method)).Reckons($"Inputs: {method.Name}");
        }
        c.MapPost("/cure", (CalculateCure ask) => Answer(ask, Cure.Calculate))
            .Reckons("When a resin may be loaded and is hard, and how long the mix is usable");
        c.MapPost("/surface-climate", (CalculateSurfaceClimate ask) => Answer(ask, SurfaceClimate.Calculate))
            .Reckons("Whether a surface may be coated now, and when");
        c.MapPost("/tightening", (CalculateTightening ask) => Answer(ask, Tightening.Calculate))
            .Reckons("Preload, torque window and passes");
        c.MapPost("/pressure-test", (CalculatePressureTest ask) => Answer(ask, PressureTest.Calculate))
            .Reckons("The test of a repair, its steps and its danger");
        c.MapPost("/cut-plan", (CalculateCutPlan ask) => Answer(ask, CutPlan.Calculate))
            .Reckons("The best plan to cut bands from stock");

        api.MapGet("/pipe-sizes/of-girth", (double girthMm) => Answer(new Girth(girthMm), PipeTables.OfGirth))
            .Reckons("Listed diameters near a measured girth");
        api.MapGet(
                "/pipe-grades/allowable-stress",
                (string grade, double temperatureC) => Answer(new GradeAt(grade, temperatureC), PipeTables.Allowable)
            )
            .Reckons("Allowable stress of a grade at a temperature");
    }

    private static void Reckons(this RouteHandlerBuilder route, string summary) =>
        route.Needs(Permission.Calculate).WithSummary(summary);
}
