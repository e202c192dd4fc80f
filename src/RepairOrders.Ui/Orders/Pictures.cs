using System.Security.Claims;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RepairOrders.Contract;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.Orders;

/// <summary>Photographs for the browser: it holds a cookie, the API asks for a token, so the screens fetch and hand on.</summary>
internal static class Pictures
{
    public static string Small(string number, string photo) => $"/orders/{number}/photos/{photo}/small";

    public static string Whole(string number, string photo) => $"/orders/{number}/photos/{photo}";

    public static void MapPictures(this IEndpointRouteBuilder app)
    {
        app.MapGet("/orders/{number}/photos/{photo:guid}/small", SmallOne).RequireAuthorization();
        app.MapGet("/orders/{number}/photos/{photo:guid}", WholeOne).RequireAuthorization();
    }

    private static async Task<IResult> SmallOne(string number, Guid photo, HttpContext http, ApiConnection api)
    {
        try
        {
            var bytes = await Client(http, api).Thumbnail(number, photo, http.RequestAborted);
            return Kept(http, TypedResults.Bytes(bytes, "image/jpeg"));
        }
        catch (Refused no)
        {
            return TypedResults.StatusCode(no.Status);
        }
    }

    private static async Task<IResult> WholeOne(string number, Guid photo, HttpContext http, ApiConnection api)
    {
        try
        {
            var answer = await Client(http, api).Photo(number, photo, stop: http.RequestAborted);
            http.Response.RegisterForDispose(answer);
            var type = answer.Content.Headers.ContentType?.ToString() ?? "image/jpeg";
            return Kept(http, TypedResults.Stream(await answer.Content.ReadAsStreamAsync(http.RequestAborted), type));
        }
        catch (Refused no)
        {
            return TypedResults.StatusCode(no.Status);
        }
    }

    private static RepairOrdersClient Client(HttpContext http, ApiConnection api) =>
        api.With(http.User.FindFirstValue(ApiConnection.TokenClaim));

    // A photograph never changes under its identity; a browser may keep it, nobody between may.
    private static IResult Kept(HttpContext http, IResult picture)
    {
        http.Response.Headers.CacheControl = "private, max-age=86400, immutable";
        return picture;
    }
}
