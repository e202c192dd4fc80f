using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

public sealed partial class RoleMatrix(Workshop workshop)
{
    // Open on purpose: nobody is signed in yet.
    private static readonly string[] Open = ["POST /api/v1/session", "POST /api/v1/first-administrator"];

    private static readonly Dictionary<Role, string> One = new()
    {
        [Role.Supervisor] = "mara",
        [Role.Technician] = "tove",
        [Role.Storekeeper] = "signe",
        [Role.IntegrityEngineer] = "ines",
        [Role.Manager] = "henrik",
        [Role.Administrator] = "ada",
        [Role.Reader] = "rune",
    };

    [Fact]
    public Task Who_may_what_is_the_approved_table()
    {
        var roles = Enum.GetValues<Role>();
        var table = new StringBuilder();
        table.AppendLine($"{"", -28}{string.Concat(roles.Select(r => $"{Words.Of(r), -20}"))}".TrimEnd());
        foreach (var permission in Enum.GetValues<Permission>())
            table.AppendLine(
                $"{Words.Of(permission), -28}{string.Concat(roles.Select(r => $"{(RoleRules.RolesFor(permission).Contains(r) ? "yes" : "-"), -20}"))}".TrimEnd()
            );
        return table.ToString().ShouldBeApproved("RoleMatrix.approved.txt");
    }

    [Fact]
    public void Every_permission_is_somebodys()
    {
        foreach (var permission in Enum.GetValues<Permission>())
            RoleRules.RolesFor(permission).ShouldNotBeEmpty();
    }

    [Fact]
    public void Every_endpoint_names_its_permission_or_is_open_on_purpose() =>
        Doors().Where(d => d.Need is null).Select(d => d.Name).ShouldBe(Open, ignoreOrder: true);

    [Fact]
    public async Task Every_endpoint_lets_in_whom_the_table_names_and_nobody_else()
    {
        var scene = await workshop.Scene();
        var order = (await scene.Tove.Request(Cast.Weep(scene.Site))).Title.Number;
        var doors = Doors().Where(d => d.Need is not null).ToList();
        var tokens = await Tokens(scene, doors.Count);
        using var http = workshop.Http(scene.Clock);
        var wrong = new ConcurrentBag<string>();
        await Parallel.ForAsync(
            0,
            doors.Count,
            async (i, _) =>
            {
                var door = doors[i];
                if (await Knock(http, door, order, null) is not HttpStatusCode.Unauthorized and var open)
                    wrong.Add($"{door.Name} answers nobody with {(int)open}");
                foreach (var role in Enum.GetValues<Role>())
                {
                    var status = await Knock(http, door, order, tokens[role][i]);
                    var letIn = status is not (HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden);
                    if (letIn != RoleRules.RolesFor(door.Need!.Value).Contains(role) || (int)status >= 500)
                        wrong.Add($"{door.Name} answers a {Words.Of(role)} with {(int)status}");
                }
            }
        );
        wrong.ShouldBeEmpty();
    }

    // A token for each call: one of them signs out.
    private async Task<Dictionary<Role, string[]>> Tokens(Scene scene, int count)
    {
        var tokens = One.Keys.ToDictionary(
            r => r,
            _ => Enumerable.Range(0, count).Select(_ => BearerSignIn.NewToken()).ToArray()
        );
        await workshop.InStore(async store =>
        {
            foreach (var (role, mine) in tokens)
                store.Sessions.AddRange(
                    mine.Select(token => new Session
                    {
                        TokenHash = BearerSignIn.Hash(token),
                        PersonId = scene.IdOf(One[role]),
                        Since = scene.Clock.Now,
                        Until = scene.Clock.Now.AddHours(1),
                    })
                );
            await store.SaveChangesAsync();
        });
        return tokens;
    }

    // Without an idempotency key, so that no write is done by the way.
    private static async Task<HttpStatusCode> Knock(HttpClient http, DoorOfApi door, string order, string? token)
    {
        var path = Parameter()
            .Replace(
                door.Pattern,
                p =>
                    p.Groups[1].Value == "number" ? order
                    : p.Value.Contains(":guid", StringComparison.Ordinal) ? Guid.CreateVersion7().ToString()
                    : p.Value.Contains(":int", StringComparison.Ordinal) ? "1"
                    : "nobody"
            );
        using var call = new HttpRequestMessage(new HttpMethod(door.Method), path);
        if (token is not null)
            call.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        if (door.Method is not "GET")
            call.Content = new StringContent("{}", Encoding.UTF8, door.Takes);
        using var answer = await http.SendAsync(call, HttpCompletionOption.ResponseHeadersRead);
        return answer.StatusCode;
    }

    private IEnumerable<DoorOfApi> Doors() =>
        workshop
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.RoutePattern.RawText?.TrimStart('/').StartsWith("api/v1", StringComparison.Ordinal) == true)
            .SelectMany(e =>
                (e.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? ["GET"]).Select(method => new DoorOfApi(
                    method,
                    "/" + e.RoutePattern.RawText!.Trim('/'),
                    e.Metadata.GetMetadata<Need>()?.Permission,
                    e.Metadata.GetMetadata<IAcceptsMetadata>()?.ContentTypes[0] ?? "application/json"
                ))
            );

    private sealed record DoorOfApi(string Method, string Pattern, Permission? Need, string Takes)
    {
        public string Name => $"{Method} {Pattern}";
    }

    [GeneratedRegex(@"\{\*{0,2}(\w+)[^}]*\}")]
    private static partial Regex Parameter();
}
