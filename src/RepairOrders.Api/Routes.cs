using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.AtThePipe;
using RepairOrders.Api.Calculations;
using RepairOrders.Api.Charts;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Closing;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Exiting;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Lines;
using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.OrderSheets;
using RepairOrders.Api.Owning;
using RepairOrders.Api.Papers;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Register;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Shutdowns;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api;

/// <summary>The API on one page, in the order of the procedure.</summary>
internal static class Routes
{
    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api/v1").RequireAuthorization(BearerSignIn.SchemeName);

        api.MapSession();
        FirstAdministrator.Map(api);

        var kept = api.MapGroup("").AddEndpointFilter<Writes>();
        kept.MapPeople();
        kept.MapSites();
        kept.MapFigures();
        kept.MapLines();
        kept.MapVerification();
        api.MapStock();
        api.MapInstruments();
        api.MapCalculations();
        api.MapCalculationCharts();

        var orders = api.MapGroup("/orders").AddEndpointFilter<Writes>();
        orders.MapRegister();
        orders.MapRequesting();
        orders.MapAssessing();
        orders.MapChoosing();
        orders.MapSizing();
        orders.MapApproving();
        orders.MapIssuing();
        orders.MapReadying();
        orders.MapFitting();
        orders.MapAtThePipe();
        orders.MapProving();
        orders.MapConsenting();
        orders.MapExiting();
        orders.MapRevisiting();
        orders.MapExtending();
        orders.MapFailing();
        orders.MapRemoving();
        orders.MapMakingPermanent();
        orders.MapClosing();
        orders.MapOwning();
        orders.MapReviewing();
        orders.MapOrderSheets();
        orders.MapDrawing();
        orders.MapCharts();
        orders.MapPapers();

        api.MapRegisterExport();
        api.MapRegisterPaper();
        api.MapReviews();

        api.MapShutdowns();
        api.MapEmergencyMethods();
    }
}
