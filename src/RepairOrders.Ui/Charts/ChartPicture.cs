using System.Security.Claims;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RepairOrders.Contract;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.Charts;

/// <summary>One chart alone, to print or to keep.</summary>
internal static class ChartPicture
{
    public static void MapChartPictures(this IEndpointRouteBuilder app) =>
        app.MapGet("/orders/{number}/charts/{code}.svg", One).RequireAuthorization();

    private static async Task<IResult> One(string number, string code, HttpContext http, ApiConnection api)
    {
        try
        {
            var charts = await api.With(http.User.FindFirstValue(ApiConnection.TokenClaim))
                .Charts(number, http.RequestAborted);
            return charts.FirstOrDefault(c => c.Code == code) is { } chart
                ? TypedResults.Text(chart.Svg, "image/svg+xml")
                : TypedResults.NotFound();
        }
        catch (Refused no)
        {
            return TypedResults.Text(no.Message, "text/plain; charset=utf-8", statusCode: no.Status);
        }
    }
}
