using System.Security.Claims;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RepairOrders.Contract;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.Papers;

/// <summary>Papers for the browser, which carries a cookie where the API asks for a token.</summary>
internal static class PaperDownload
{
    public static void MapPapers(this IEndpointRouteBuilder app)
    {
        app.MapGet("/orders/{number}/papers/{kind}.pdf", OfOrder).RequireAuthorization();
        app.MapGet("/papers/register.pdf", Register).RequireAuthorization();
    }

    private static Task<IResult> OfOrder(
        string number,
        string kind,
        HttpContext context,
        ApiConnection api,
        string size = "a4"
    ) =>
        Inline(
            context,
            $"{number}-{kind}.pdf",
            () =>
                Client(context, api)
                    .Paper(
                        number,
                        kind,
                        size,
                        $"{context.Request.Scheme}://{context.Request.Host}",
                        context.RequestAborted
                    )
        );

    private static Task<IResult> Register(HttpContext context, ApiConnection api, string size = "a4") =>
        Inline(
            context,
            "register.pdf",
            () => Client(context, api).RegisterPaper(new RegisterFilter(), size, context.RequestAborted)
        );

    private static RepairOrdersClient Client(HttpContext context, ApiConnection api) =>
        api.With(context.User.FindFirstValue(ApiConnection.TokenClaim));

    private static async Task<IResult> Inline(HttpContext context, string name, Func<Task<byte[]>> paper)
    {
        try
        {
            var pdf = await paper();
            context.Response.Headers.ContentDisposition = $"inline; filename=\"{name}\"";
            return TypedResults.Bytes(pdf, "application/pdf");
        }
        catch (Refused no)
        {
            return TypedResults.Text(no.Message, "text/plain; charset=utf-8", statusCode: no.Status);
        }
    }
}
