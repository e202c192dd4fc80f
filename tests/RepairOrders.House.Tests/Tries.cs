using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;

namespace RepairOrders.House.Tests;

/// <summary>Everybody's sign-in goes through the screens; each browser has a limit of tries of its own all the same.</summary>
public sealed partial class Tries(RealStore store)
{
    [Fact]
    public async Task Wrong_passwords_from_one_browser_keep_nobody_else_out()
    {
        await using var host = HostProcess.Start("Run=both", $"ConnectionStrings:Store={store.Address}");
        await host.Answers("/health/ready", HttpStatusCode.OK);
        using var one = Browser(host.Address, "127.0.0.2");
        for (var tries = 0; tries < 20; tries++)
            (await SignIn(one)).ShouldContain("Name or password is wrong");
        (await SignIn(one)).ShouldContain("Too many requests");
        using var other = Browser(host.Address, "127.0.0.3");
        (await SignIn(other)).ShouldContain("Name or password is wrong");
    }

    private static async Task<string> SignIn(HttpClient browser)
    {
        var page = await browser.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        using var form = new FormUrlEncodedContent(
            new Dictionary<string, string>
            {
                ["_handler"] = "sign-in",
                ["__RequestVerificationToken"] = Token().Match(page).Groups[1].Value,
                ["Ask.Name"] = "nobody",
                ["Ask.Password"] = "not the right one",
            }
        );
        using var answer = await browser.PostAsync(new Uri("/sign-in", UriKind.Relative), form);
        return await answer.Content.ReadAsStringAsync();
    }

    // A browser with an address of its own on this machine.
    private static HttpClient Browser(Uri host, string from) =>
        new(
            new SocketsHttpHandler
            {
                ConnectCallback = async (context, stop) =>
                {
                    var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
                    socket.Bind(new IPEndPoint(IPAddress.Parse(from), 0));
                    await socket.ConnectAsync(context.DnsEndPoint, stop);
                    return new NetworkStream(socket, ownsSocket: true);
                },
            }
        )
        {
            BaseAddress = host,
        };

    [GeneratedRegex(""""name="__RequestVerificationToken" value="([^"]+)"""")]
    private static partial Regex Token();
}
