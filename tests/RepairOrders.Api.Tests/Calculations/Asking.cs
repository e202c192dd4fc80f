using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Calculations;

internal sealed record Heard(HttpStatusCode Status, string Text)
{
    public JsonElement Json => JsonDocument.Parse(Text).RootElement;

    public JsonElement Result => Json.GetProperty("result");

    public string[] Fields => [.. Json.GetProperty("errors").EnumerateObject().Select(e => e.Name)];

    public string Sentence(string field) => Json.GetProperty("errors").GetProperty(field)[0].GetString()!;

    public double Number(string path) => At(path).GetDouble();

    public JsonElement At(string path) => path.Split('.').Aggregate(Result, (at, name) => at.GetProperty(name));
}

internal static class Asking
{
    public static Task<Heard> Calculate(this Scene scene, string subject, JsonNode ask) =>
        scene.Send($"calculations/{subject}", ask.ToJsonString(), "application/json");

    public static async Task<Heard> Send(this Scene scene, string path, string body, string kind, bool get = false)
    {
        using var http = scene.Workshop.Http(scene.Clock);
        http.Timeout = TimeSpan.FromMinutes(5);
        using var call = new HttpRequestMessage(get ? HttpMethod.Get : HttpMethod.Post, "api/v1/" + path);
        call.Headers.Authorization = new AuthenticationHeaderValue("Bearer", scene.Rune.Token);
        if (!get)
        {
            call.Content = new StringContent(body, Encoding.UTF8);
            call.Content.Headers.ContentType = new MediaTypeHeaderValue(kind);
        }
        using var answer = await http.SendAsync(call);
        return new(answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }
}
