using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection.Extensions;
using RepairOrders.Api;
using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>
/// Loads the demo: the API runs in this process on a clock that walks from 400 days ago to today, and the cast does the work over
/// REST. There is no other way to set a clock, so the demo can never be inconsistent.
/// </summary>
internal static class DemoMode
{
    public static async Task Run(WebApplicationBuilder builder)
    {
        using var walk = new Walk(DateTimeOffset.UtcNow);
        builder.Services.Replace(ServiceDescriptor.Singleton<TimeProvider>(walk));
        // A year of sign-ins in a minute, all from this process.
        builder.Configuration["Limits:SignInTriesPerMinute"] = "100000";
        builder.Configuration["Limits:CallsPerMinute"] = "100000";
        // A password is slow to prove, by intent: once each for the whole walk.
        builder.Configuration["Limits:SessionHours"] = "20000";
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        await using var app = builder.Build();
        app.UseExceptionHandler();
        app.UseAuthentication();
        app.UseAuthorization();
        app.MapRepairOrdersApi();
        await app.StartAsync();
        var address = app
            .Services.GetRequiredService<IServer>()
            .Features.Get<IServerAddressesFeature>()!
            .Addresses.First();
        var crew = new Crew(new Uri(address), walk);

        var token =
            await app.Services.OfferFirstAdministratorAsync()
            ?? throw new InvalidOperationException(
                "The store has people already; the demo is loaded into an empty store only."
            );
        await Mill.Build(crew, token);
        if (builder.Configuration["Demo:Stories"] is not "none")
            await Stories.Tell(crew, walk);
        await crew.SignOut();
        if (builder.Configuration["Demo:SignIns"] is { Length: > 0 } file)
            await WriteSignIns(crew, file);
        await app.StopAsync();
    }

    private static async Task WriteSignIns(Crew crew, string file)
    {
        var lines = Crew
            .Members.Where(m => m.Name != "nils")
            .Select(m => $"  {m.Name, -8} {crew.Passwords[m.Name]}   {m.Does, -40} {m.FullName}");
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        await using var writer = new StreamWriter(file, options);
        await writer.WriteLineAsync(string.Join(Environment.NewLine, lines));
    }
}
