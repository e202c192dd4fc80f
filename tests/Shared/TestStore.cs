using System.Diagnostics;
using DotNet.Testcontainers.Builders;
using Npgsql;
using Testcontainers.PostgreSql;

namespace RepairOrders.Tests;

/// <summary>
/// A real PostgreSQL for tests: <c>REPAIRORDERS_TEST_STORE</c> if set, else a container where an engine answers, else a private
/// cluster from the machine's own binaries. One database a run, dropped at the end.
/// </summary>
public sealed class TestStore : IAsyncDisposable
{
    private readonly string database = $"t_{Guid.NewGuid():N}";
    private string server = "";
    private PostgreSqlContainer? container;
    private PrivateCluster? cluster;

    /// <summary>The connection string of the run's own database.</summary>
    public string Address => new NpgsqlConnectionStringBuilder(server) { Database = database }.ConnectionString;

    public static async Task<TestStore> Start()
    {
        var store = new TestStore();
        await store.Open();
        return store;
    }

    private async Task Open()
    {
        if (Environment.GetEnvironmentVariable("REPAIRORDERS_TEST_STORE") is { Length: > 0 } given)
        {
            server = given;
        }
        else
        {
            try
            {
                container = new PostgreSqlBuilder("postgres:15-alpine").Build();
                await container.StartAsync();
                server = container.GetConnectionString();
            }
            catch (DockerUnavailableException)
            {
                container = null;
                cluster = PrivateCluster.Start();
                server = cluster.Address;
            }
        }
        await Run($"CREATE DATABASE {database}");
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await Run($"DROP DATABASE IF EXISTS {database} WITH (FORCE)");
        if (container is not null)
            await container.DisposeAsync();
        cluster?.Dispose();
    }

    private async Task Run(string sql)
    {
        await using var connection = new NpgsqlConnection(server);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }
}

/// <summary>A throw-away cluster on a socket of its own. PostgreSQL refuses to run as root, so root hands over to the user postgres.</summary>
internal sealed class PrivateCluster : IDisposable
{
    private readonly string folder;
    private readonly string binaries;

    private PrivateCluster(string folder, string binaries)
    {
        this.folder = folder;
        this.binaries = binaries;
    }

    public string Address =>
        $"Host={folder};Username=postgres;Database=postgres;Maximum Pool Size=60;Include Error Detail=true";

    public static PrivateCluster Start()
    {
        var binaries = Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").OrderDescending().Select(d => d + "/bin").FirstOrDefault()
            : null;
        if (binaries is null)
            throw new InvalidOperationException(
                "No test store: set REPAIRORDERS_TEST_STORE, start a container engine, or install PostgreSQL (apt-get install postgresql)."
            );
        var folder = Directory.CreateTempSubdirectory("repairorders-test-store-").FullName;
        var cluster = new PrivateCluster(folder, binaries);
        if (Root)
            Shell("/", "chown", "postgres:postgres", folder);
        cluster.Pg(
            "initdb",
            "-D",
            folder + "/data",
            "-U",
            "postgres",
            "--auth=trust",
            "--encoding=UTF8",
            "--locale=C.UTF-8"
        );
        // No durability: what a test writes is gone with the test.
        cluster.Pg(
            "pg_ctl",
            "-D",
            folder + "/data",
            "-w",
            "-l",
            folder + "/log",
            "-o",
            $"-c listen_addresses='' -c unix_socket_directories={folder} -c max_connections=200 -c fsync=off -c synchronous_commit=off -c full_page_writes=off",
            "start"
        );
        return cluster;
    }

    public void Dispose()
    {
        Pg("pg_ctl", "-D", folder + "/data", "-w", "-m", "immediate", "stop");
        Shell("/", "rm", "-rf", folder);
    }

    private static bool Root => Environment.UserName == "root";

    private void Pg(string program, params string[] arguments)
    {
        string[] call = [binaries + "/" + program, .. arguments];
        if (Root)
            call =
            [
                "setpriv",
                "--reuid=postgres",
                "--regid=postgres",
                "--clear-groups",
                "--",
                "env",
                "-i",
                "PATH=/usr/bin:/bin",
                "HOME=" + folder,
                "LC_ALL=C.UTF-8",
                .. call,
            ];
        Shell(folder, call[0], call[1..]);
    }

    private static void Shell(string folder, string program, params string[] arguments)
    {
        // The server keeps what it inherits, so its output goes nowhere: a pipe would never close.
        var start = new ProcessStartInfo("/bin/sh") { WorkingDirectory = folder, UseShellExecute = false };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add("exec \"$0\" \"$@\" </dev/null >/dev/null 2>&1");
        start.ArgumentList.Add(program);
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException(
                $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}."
            );
    }
}
