using System.Security.Claims;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Session;

/// <summary>Files a person fetches with his browser: the token is the cookie's, so the screens hand the API's answer on.</summary>
internal static class Downloads
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/register.csv", Register).RequireAuthorization();
        app.MapGet("/lines/template.csv", LineTemplate).RequireAuthorization();
    }

    private static async Task<IResult> Register(
        HttpContext context,
        ApiConnection api,
        TimeProvider clock,
        CancellationToken stop,
        string? search = null,
        string? site = null,
        Stage[]? stage = null,
        RiskClass? @class = null,
        string? flag = null,
        RegisterSort sort = RegisterSort.Newest,
        bool live = false
    )
    {
        var filter = new RegisterFilter(search, site, stage, @class, flag, sort, live);
        return await Handed(async () =>
            TypedResults.Stream(
                await Client(context, api).RegisterCsv(filter, stop),
                "text/csv; charset=utf-8",
                $"register-{clock.GetUtcNow():yyyy-MM-ddTHHmmZ}.csv"
            )
        );
    }

    private static Task<IResult> LineTemplate(HttpContext context, ApiConnection api, CancellationToken stop) =>
        Handed(async () =>
            TypedResults.File(
                System.Text.Encoding.UTF8.GetBytes(await Client(context, api).LineTemplate(stop)),
                "text/csv; charset=utf-8",
                "lines.csv"
            )
        );

    private static RepairOrdersClient Client(HttpContext context, ApiConnection api) =>
        api.With(context.User.FindFirstValue(ApiConnection.TokenClaim));

    private static async Task<IResult> Handed(Func<Task<IResult>> read)
    {
        try
        {
            return await read();
        }
        catch (Refused no)
        {
            return TypedResults.Problem(no.Message, statusCode: no.Status);
        }
    }
}
