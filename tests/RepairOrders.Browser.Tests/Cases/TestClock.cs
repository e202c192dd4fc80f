using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.IO.MemoryMappedFiles;
using System.Reflection;
using System.Runtime.Loader;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using RepairOrders.Browser.Tests.Cases;

[assembly: HostingStartup(typeof(LaterStart))]

/// <summary>
/// Run by the runtime before the service's own program, in the service's process: the program finds this assembly by name then, and
/// takes the clock from it. The service itself has no way to set a clock.
/// </summary>
[SuppressMessage("Design", "CA1050", Justification = "The runtime looks for this name outside every namespace.")]
internal static class StartupHook
{
    public static void Initialize()
    {
        var folder = Path.GetDirectoryName(typeof(StartupHook).Assembly.Location)!;
        AssemblyLoadContext.Default.Resolving += (context, name) =>
            Path.Combine(folder, name.Name + ".dll") is var file && File.Exists(file)
                ? context.LoadFromAssemblyPath(file)
                : null;
    }
}

namespace RepairOrders.Browser.Tests.Cases
{
    /// <summary>Gives the service its clock.</summary>
    public sealed class LaterStart : IHostingStartup
    {
        public void Configure(IWebHostBuilder builder) =>
            builder.ConfigureServices(services => services.AddSingleton<TimeProvider>(LaterClock.Given()));
    }

    /// <summary>The time of day, and a lead over it that a test moves while the service runs.</summary>
    public sealed class LaterClock : TimeProvider, IDisposable
    {
        private const string Named = "REPAIRORDERS_TEST_CLOCK";
        private static readonly TimeZoneInfo Oslo = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");
        private readonly MemoryMappedFile file;
        private readonly MemoryMappedViewAccessor lead;
        private readonly string path;

        private LaterClock(string path)
        {
            this.path = path;
            file = MemoryMappedFile.CreateFromFile(path, FileMode.OpenOrCreate, null, sizeof(long));
            lead = file.CreateViewAccessor();
        }

        /// <summary>A clock of one's own, at the time of day.</summary>
        public static LaterClock Make() =>
            new(Path.Combine(Path.GetTempPath(), $"repairorders-clock-{Guid.NewGuid():N}"));

        /// <summary>The clock this process was started with.</summary>
        public static LaterClock Given() => new(Environment.GetEnvironmentVariable(Named)!);

        /// <summary>What a process of the service is started with to run on this clock.</summary>
        public string[] Settings =>
            [
                $"{Named}={path}",
                $"DOTNET_STARTUP_HOOKS={Assembly.GetExecutingAssembly().Location}",
                $"ASPNETCORE_HOSTINGSTARTUPASSEMBLIES={Assembly.GetExecutingAssembly().GetName().Name}",
            ];

        public override DateTimeOffset GetUtcNow() => base.GetUtcNow().AddTicks(lead.ReadInt64(0));

        public DateTimeOffset Now => GetUtcNow();

        /// <summary>The day at the mill.</summary>
        public DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Now, Oslo).DateTime);

        public void Pass(TimeSpan time) => lead.Write(0, lead.ReadInt64(0) + time.Ticks);

        /// <summary>A moment as it is typed: to the minute, on the clock of the mill.</summary>
        public static string Typed(DateTimeOffset at) =>
            TimeZoneInfo.ConvertTime(at, Oslo).ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);

        public void Dispose()
        {
            lead.Dispose();
            file.Dispose();
            File.Delete(path);
        }
    }
}
