using System.Net;
using System.Text;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace RepairOrders.Api.Tests.Wire;

/// <summary>Where a call comes from decides whose limit of tries it uses up: only this machine and named proxies are believed.</summary>
public sealed class Addresses(Workshop workshop)
{
    private static readonly byte[] Ask = Encoding.UTF8.GetBytes("""{"name":"nobody","password":"not the right one"}""");

    [Fact]
    public async Task A_caller_that_makes_up_addresses_gets_no_more_tries() =>
        (await Tries("203.0.113.9", 21)).ShouldBe([.. Enumerable.Repeat(401, 20), 429]);

    [Fact]
    public async Task The_screens_on_this_machine_are_believed_and_each_browser_has_its_own_tries() =>
        (await Tries("127.0.0.1", 21)).ShouldAllBe(status => status == 401);

    private async Task<IReadOnlyList<int>> Tries(string from, int count)
    {
        var server = (TestServer)workshop.Services.GetRequiredService<IServer>();
        var answers = new List<int>();
        for (var n = 1; n <= count; n++)
        {
            var browser = $"198.51.100.{n}";
            var answer = await server.SendAsync(call =>
            {
                call.Connection.RemoteIpAddress = IPAddress.Parse(from);
                call.Request.Method = "POST";
                call.Request.Path = "/api/v1/session";
                call.Request.ContentType = "application/json";
                call.Request.Headers["X-Forwarded-For"] = browser;
                call.Request.ContentLength = Ask.Length;
                call.Features.Set<IHttpRequestBodyDetectionFeature>(new HasBody());
                call.Request.Body = new MemoryStream(Ask);
            });
            answers.Add(answer.Response.StatusCode);
        }
        return answers;
    }

    private sealed class HasBody : IHttpRequestBodyDetectionFeature
    {
        public bool CanHaveBody => true;
    }
}
