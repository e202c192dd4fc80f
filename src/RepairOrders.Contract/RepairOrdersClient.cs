using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RepairOrders.Contract;

/// <summary>
/// The typed client of the REST interface. Each step's file adds its own methods. The client is cheap; the token belongs to the
/// person it speaks for.
/// </summary>
/// <param name="http">A client whose base address is the service's root.</param>
public sealed partial class RepairOrdersClient(HttpClient http)
{
    /// <summary>How the wire is written: camelCase, words for choices, nothing for absent values.</summary>
    public static readonly JsonSerializerOptions Json = Written(new(JsonSerializerDefaults.Web));

    /// <summary>Sets serializer options to the way the wire is written.</summary>
    /// <param name="options">The options to set.</param>
    /// <returns>The same options.</returns>
    public static JsonSerializerOptions Written(JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        // A risk class is a letter and stays a capital. A choice is a word, never its number.
        options.Converters.Add(new JsonStringEnumConverter<RiskClass>(null, allowIntegerValues: false));
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        return options;
    }

    /// <summary>The bearer token of the person the client speaks for; nothing before sign-in.</summary>
    public string? Token { get; set; }

    /// <summary>
    /// The idempotency key of the next write that is given none of its own; it goes with one write. A form that is sent again sends
    /// the same key, and is done once.
    /// </summary>
    public string? NextKey { get; set; }

    private const string Root = "api/v1/";

    private Task<T> Get<T>(string path, CancellationToken stop) => Ask<T>(HttpMethod.Get, path, null, null, null, stop);

    // A write is never cancelled half-way: the key makes a repeat safe, so a caller that lost the answer may ask again.
    private Task<T> Post<T>(string path, object? body, string? key = null) =>
        Ask<T>(HttpMethod.Post, path, body, null, key ?? NewKey(), CancellationToken.None);

    private Task<T> Put<T>(string path, object body, string version, string? key = null) =>
        Ask<T>(HttpMethod.Put, path, body, version, key ?? NewKey(), CancellationToken.None);

    private Task<T> Delete<T>(string path, string why, string version, string? key = null) =>
        Ask<T>(
            HttpMethod.Delete,
            $"{path}?why={Uri.EscapeDataString(why)}",
            null,
            version,
            key ?? NewKey(),
            CancellationToken.None
        );

    private string NewKey()
    {
        var key = NextKey ?? Guid.CreateVersion7().ToString("N");
        NextKey = null;
        return key;
    }

    private async Task<T> Ask<T>(
        HttpMethod method,
        string path,
        object? body,
        string? version,
        string? key,
        CancellationToken stop
    )
    {
        using var response = await Send(method, path, body, version, key, stop).ConfigureAwait(false);
        if (typeof(T) == typeof(Nothing) || response.StatusCode == HttpStatusCode.NoContent)
            return default!;
        return (await response.Content.ReadFromJsonAsync<T>(Json, stop).ConfigureAwait(false))!;
    }

    private async Task<HttpResponseMessage> Send(
        HttpMethod method,
        string path,
        object? body,
        string? version,
        string? key,
        CancellationToken stop
    )
    {
        using var request = new HttpRequestMessage(method, Root + path);
        if (Token is not null)
            request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", Token);
        if (version is not null)
            request.Headers.TryAddWithoutValidation("If-Match", $"\"{version}\"");
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);
        if (body is not null)
            request.Content = body as HttpContent ?? JsonContent.Create(body, body.GetType(), null, Json);
        var response = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop)
            .ConfigureAwait(false);
        if (response.IsSuccessStatusCode)
            return response;
        using (response)
            throw await Refusal(response).ConfigureAwait(false);
    }

    private static async Task<Refused> Refusal(HttpResponseMessage response)
    {
        var status = (int)response.StatusCode;
        var fields = new Dictionary<string, string[]>();
        string? sentence = null;
        string? code = null;
        string? clears = null;
        string? traceId = null;
        try
        {
            using var problem = JsonDocument.Parse(await response.Content.ReadAsStringAsync().ConfigureAwait(false));
            var root = problem.RootElement;
            sentence = Text(root, "detail") ?? Text(root, "title");
            code = Text(root, "code");
            clears = Text(root, "clears");
            traceId = Text(root, "traceId");
            if (root.TryGetProperty("errors", out var errors) && errors.ValueKind == JsonValueKind.Object)
                foreach (var field in errors.EnumerateObject())
                    fields[field.Name] = [.. field.Value.EnumerateArray().Select(m => m.GetString() ?? "")];
        }
        catch (JsonException)
        {
            // An answer that is not ours (a balancer's page): the status alone has to do.
        }
        return new Refused(status, code ?? $"http-{status}", sentence ?? Words(status), clears, fields, traceId);
    }

    private static string? Text(JsonElement root, string name) =>
        root.ValueKind == JsonValueKind.Object
        && root.TryGetProperty(name, out var value)
        && value.ValueKind == JsonValueKind.String
            ? value.GetString()
            : null;

    private static string Words(int status) =>
        status switch
        {
            401 => "Your sign-in has ended. Sign in again.",
            403 => "Your roles do not allow this.",
            404 => "There is no such thing, or you may not see it.",
            412 => "Somebody changed this since you opened it.",
            429 => "Too many requests. Wait a moment and try again.",
            503 => "The store is away at the moment. Nothing was saved; try again shortly.",
            _ => $"The service answered {status}.",
        };
}

/// <summary>An answer without content.</summary>
public sealed record Nothing;
