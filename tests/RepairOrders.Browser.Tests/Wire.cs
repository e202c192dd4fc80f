using System.Net;
using System.Net.Sockets;

namespace RepairOrders.Browser.Tests;

/// <summary>A wire between browser and service that can be cut: what is emulated in the browser leaves an open socket open.</summary>
internal sealed class Wire : IDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly List<TcpClient> ends = [];
    private readonly Uri service;
    private volatile bool cut;

    public Wire(Uri service)
    {
        this.service = service;
        listener.Start();
        _ = Accept();
    }

    public Uri Address => new($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");

    /// <summary>Ends every connection and takes no other.</summary>
    public void Cut()
    {
        cut = true;
        lock (ends)
        {
            ends.ForEach(e => e.Dispose());
            ends.Clear();
        }
    }

    public void Mend() => cut = false;

    public void Dispose()
    {
        Cut();
        listener.Dispose();
    }

    private async Task Accept()
    {
        try
        {
            while (true)
                _ = Join(await listener.AcceptTcpClientAsync());
        }
        catch (Exception e) when (e is ObjectDisposedException or SocketException)
        {
            // The test is over.
        }
    }

    private async Task Join(TcpClient browser)
    {
        using var near = browser;
        if (cut)
            return;
        using var far = new TcpClient();
        lock (ends)
            ends.AddRange([near, far]);
        try
        {
            await far.ConnectAsync(IPAddress.Loopback, service.Port);
            await Task.WhenAny(
                near.GetStream().CopyToAsync(far.GetStream()),
                far.GetStream().CopyToAsync(near.GetStream())
            );
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or SocketException)
        {
            // Cut.
        }
    }
}
