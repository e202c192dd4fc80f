using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace RepairOrders.House.Tests;

/// <summary>The program as people start it: a process of its own.</summary>
internal sealed class HostProcess : IAsyncDisposable
{
    private readonly Process process;
    private readonly StringBuilder output = new();
    private readonly StringBuilder errors = new();

    private HostProcess(Process process, Uri address)
    {
        this.process = process;
        Address = address;
        process.OutputDataReceived += (_, line) => Add(output, line.Data);
        process.ErrorDataReceived += (_, line) => Add(errors, line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public Uri Address { get; }
    public string Output => Text(output);
    public string Errors => Text(errors);

    /// <summary>Starts it with settings such as <c>Run=api</c>.</summary>
    public static HostProcess Start(params string[] settings)
    {
        var address = new Uri($"http://127.0.0.1:{FreePort()}");
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = AppContext.BaseDirectory,
        };
        foreach (
            var argument in (string[])
                [
                    Path.Combine(AppContext.BaseDirectory, "RepairOrders.Host.dll"),
                    "--urls",
                    address.ToString(),
                    .. settings.Select(s => $"--{s}"),
                ]
        )
            start.ArgumentList.Add(argument);
        return new HostProcess(Process.Start(start)!, address);
    }

    /// <summary>Starts it and waits for its end.</summary>
    public static async Task<(int Code, string Output, string Errors)> Run(params string[] settings)
    {
        await using var host = Start(settings);
        await host.process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromMinutes(2)).Token);
        host.process.WaitForExit();
        return (host.process.ExitCode, host.Output, host.Errors);
    }

    /// <summary>Waits until a path answers with anything at all.</summary>
    public async Task<HttpStatusCode> Answers(string path, HttpStatusCode? wanted = null)
    {
        using var http = new HttpClient { BaseAddress = Address };
        for (var waited = Stopwatch.StartNew(); waited.Elapsed < TimeSpan.FromMinutes(2); await Task.Delay(50))
        {
            if (process.HasExited)
                throw new InvalidOperationException($"The host ended with {process.ExitCode}: {Errors} {Output}");
            try
            {
                using var answer = await http.GetAsync(new Uri(path, UriKind.Relative));
                if (wanted is null || answer.StatusCode == wanted)
                    return answer.StatusCode;
            }
            catch (HttpRequestException)
            {
                // Not there yet.
            }
        }
        throw new TimeoutException($"{path} did not answer: {Errors} {Output}");
    }

    /// <summary>SIGKILL: no chance to finish anything.</summary>
    public async Task Kill()
    {
        process.Kill();
        await process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
            await Kill();
        process.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static void Add(StringBuilder text, string? line)
    {
        lock (text)
            text.AppendLine(line);
    }

    private static string Text(StringBuilder text)
    {
        lock (text)
            return text.ToString().Trim();
    }
}
