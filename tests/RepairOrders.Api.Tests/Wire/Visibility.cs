using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Wire;

public sealed partial class Visibility(Workshop workshop)
{
    // Asks every address that can be read for things of one site, as people of another, who hold every role.
    [Fact]
    public async Task Nothing_of_a_site_is_read_by_people_of_another()
    {
        var (here, there) = (await workshop.Scene(), await workshop.Scene());
        var order = await AnOrder.Issued(here);
        var photo = await here.Photograph(order, PhotoOf.Assessment);
        var method = await Emergency.Listed(here);
        var sheet = await here.Mara.Order(order);
        var line = (await here.Ada.Lines(site: here.Site)).Rows[0];
        Guid[] things =
        [
            line.Id,
            sheet.Records[0].Id,
            here.IdOf("tove"),
            photo.Id,
            method,
            (await here.Signe.StockItems(here.Site)).Rows[0].Id,
            (await here.Signe.Bins(here.Site))[0].Id,
            (await here.Signe.Instruments(here.Site)).Rows[0].Id,
            (await here.Signe.PickList(order)).Out[0].Batch,
        ];
        await workshop.InStore(async store =>
        {
            var stranger = store.Users.Single(p => p.Id == there.IdOf("mara"));
            stranger.Roles = [.. Enum.GetValues<Role>()];
            await store.SaveChangesAsync();
        });
        var telltale = new Regex($@"\b{here.Site}\b|{string.Join('|', things)}", RegexOptions.IgnoreCase);
        using var http = workshop.Http(there.Clock);
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", there.Mara.Token);
        var leaks = new List<string>();
        var read = 0;
        foreach (var pattern in Readable())
        {
            foreach (var guid in things)
            {
                var path = Parameter()
                    .Replace(
                        pattern,
                        p =>
                            p.Groups[1].Value switch
                            {
                                "number" => order,
                                "site" => here.Site,
                                "name" => $"tove.{here.Site}",
                                _ when p.Value.Contains(":guid", StringComparison.Ordinal) => guid.ToString(),
                                _ when p.Value.Contains(":int", StringComparison.Ordinal) => "1",
                                _ => line.Number,
                            }
                    );
                using var answer = await http.GetAsync($"{path}?site={here.Site}&limit=200");
                if (answer.StatusCode == HttpStatusCode.BadRequest)
                {
                    using var bare = await http.GetAsync(path);
                    await Look(bare, path);
                }
                await Look(answer, path);
            }
        }
        leaks.ShouldBeEmpty();
        read.ShouldBeGreaterThan(10);

        async Task Look(HttpResponseMessage answer, string path)
        {
            if ((int)answer.StatusCode >= 500)
                leaks.Add($"{path} answered {(int)answer.StatusCode}");
            if (!answer.IsSuccessStatusCode)
                return;
            read++;
            if (telltale.Match(await answer.Content.ReadAsStringAsync()) is { Success: true } told)
                leaks.Add($"{path} tells {told.Value}");
        }
    }

    private IEnumerable<string> Readable() =>
        workshop
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<Api.Wire.Need>() is not null)
            .Where(e => e.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods.Contains("GET") == true)
            .Select(e => "/" + e.RoutePattern.RawText!.Trim('/'));

    [GeneratedRegex(@"\{\*{0,2}(\w+)[^}]*\}")]
    private static partial Regex Parameter();
}
