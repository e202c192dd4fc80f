using System.Security.Claims;
using System.Text.Json;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using RepairOrders.Contract;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.AtThePipe;

/// <summary>What the page at the pipe sends: one entry, under the key it was entered with, however often the signal breaks.</summary>
/// <param name="What">What it is; nothing for a mix that is scrapped.</param>
/// <param name="Of">The mix or proof it is about.</param>
/// <param name="Key">Its idempotency key.</param>
/// <param name="Ask">The ask as typed.</param>
/// <param name="Signer">Sign-in name of another person who signs; nothing where the one signed in does.</param>
/// <param name="Code">That person's six digits.</param>
/// <param name="Why">Why the mix is scrapped.</param>
/// <param name="Version">The version of the order that was on the screen.</param>
internal sealed record PipeEntry(
    PipeAsk? What,
    Guid? Of,
    string Key,
    JsonElement Ask,
    string? Signer = null,
    string? Code = null,
    string? Why = null,
    string? Version = null
);

/// <summary>
/// The page's own door: same origin, the cookie's token, the antiforgery token of the page. No circuit stands behind it, so a cut
/// takes nothing with it; every rule is the API's.
/// </summary>
internal static class PipeDesk
{
    public static void MapPipeDesk(this IEndpointRouteBuilder app)
    {
        var pipe = app.MapGroup("/pipe/{number}").RequireAuthorization();
        pipe.MapGet("/now", Now);
        pipe.MapGet("/climate", Climate);
        pipe.MapPost("/sign", Sign);
        pipe.MapPost("/photos", Photo);
    }

    // Tells that there is signal, what time it is, and whether somebody else signed.
    private static Task<IResult> Now(string number, HttpContext http, ApiConnection api) =>
        Answered(
            http,
            async () =>
            {
                var pipe = await Client(http, api).AtThePipe(number, http.RequestAborted);
                return Json(new { now = pipe.ReadAt, version = pipe.Version });
            }
        );

    private static Task<IResult> Climate(
        string number,
        HttpContext http,
        ApiConnection api,
        string air = "",
        string humidity = "",
        string steel = ""
    ) =>
        Answered(
            http,
            async () =>
                Json(
                    ClimateWords.Of(
                        await Client(http, api).ClimateAsTyped(number, air, humidity, steel, http.RequestAborted)
                    )
                )
        );

    private static Task<IResult> Sign(string number, HttpContext http, ApiConnection api, IAntiforgery forgery) =>
        Answered(
            http,
            async () =>
            {
                await forgery.ValidateRequestAsync(http);
                var entry =
                    await JsonSerializer.DeserializeAsync<PipeEntry>(
                        http.Request.Body,
                        RepairOrdersClient.Json,
                        http.RequestAborted
                    ) ?? throw new JsonException();
                var own = Client(http, api);
                if (entry.Signer is not { Length: > 0 } signer)
                    await Send(own, number, entry);
                else
                    await SendAs(signer, entry.Code ?? "", own, api, number, entry);
                return Json(new { });
            }
        );

    // The other person's token is used for this one signature and given up at once.
    private static async Task SendAs(
        string signer,
        string code,
        RepairOrdersClient own,
        ApiConnection api,
        string number,
        PipeEntry entry
    )
    {
        var token = (await own.SignHere(new SignHere(signer, code, number))).Token;
        try
        {
            await Send(api.With(token), number, entry);
        }
        finally
        {
            await api.SignOut(token);
        }
    }

    private static Task Send(RepairOrdersClient client, string number, PipeEntry entry) =>
        entry.What is { } what
            ? client.SignAtThePipe(number, what, entry.Of, entry.Ask, entry.Key)
            : client.VoidMix(number, entry.Of ?? Guid.Empty, entry.Why ?? "", entry.Version ?? "0", entry.Key);

    private static Task<IResult> Photo(
        string number,
        HttpContext http,
        ApiConnection api,
        IAntiforgery forgery,
        string of,
        string key,
        string? subject = null
    ) =>
        Answered(
            http,
            async () =>
            {
                await forgery.ValidateRequestAsync(http);
                if (!Enum.TryParse<PhotoOf>(of, ignoreCase: true, out var what))
                    throw new JsonException();
                await Client(http, api).AddPhoto(number, http.Request.Body, what, subject, null, key);
                return Json(new { });
            }
        );

    private static RepairOrdersClient Client(HttpContext http, ApiConnection api) =>
        api.With(http.User.FindFirstValue(ApiConnection.TokenClaim));

    private static async Task<IResult> Answered(HttpContext http, Func<Task<IResult>> read)
    {
        http.Response.Headers.CacheControl = "no-store";
        try
        {
            return await read();
        }
        catch (Refused no)
        {
            // 401 is for the one signed in; a wrong code is a refusal like another.
            var status = no.Code == "code-failed" ? 409 : no.Status;
            return Said(status, no.Code, no.Message, no.Clears, no.Fields);
        }
        catch (AntiforgeryValidationException)
        {
            return Said(400, "page-too-old", "The page was too old for this. It is read again; send it once more.");
        }
        catch (JsonException)
        {
            return Said(400, "malformed", "The page sent something that cannot be read. Open it again.");
        }
        catch (HttpRequestException)
        {
            return Said(503, "service-away", "The service does not answer at the moment.");
        }
    }

    private static JsonHttpResult<Trouble> Said(
        int status,
        string code,
        string sentence,
        string? clears = null,
        IReadOnlyDictionary<string, string[]>? errors = null
    ) => TypedResults.Json(new Trouble(code, sentence, clears, errors), RepairOrdersClient.Json, statusCode: status);

    private sealed record Trouble(
        string Code,
        string Sentence,
        string? Clears,
        IReadOnlyDictionary<string, string[]>? Errors
    );

    // In one process with the API the host's own way of writing is the API's way of reading asks, which is stricter.
    private static JsonHttpResult<T> Json<T>(T value) => TypedResults.Json(value, RepairOrdersClient.Json);
}
