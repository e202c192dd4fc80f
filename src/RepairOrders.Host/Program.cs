using System.Data.Common;
using RepairOrders.Api;
using RepairOrders.Host;
using RepairOrders.Host.Demo;
using RepairOrders.Ui;
using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

try
{
    var builder = WebApplication.CreateBuilder(args);
    var mode = RunModes.Read(builder.Configuration);
    // What does one thing and ends prints its answer; its log must not stand between.
    LogEventLevel? aside = mode.Serves() ? null : LogEventLevel.Verbose;
    builder.Services.AddSerilog(log =>
        log.ReadFrom.Configuration(builder.Configuration)
            .Enrich.FromLogContext()
            .WriteTo.Console(new CompactJsonFormatter(), standardErrorFromLevel: aside)
    );

    builder.AddProxies();
    builder.Services.AddProblemDetails();
    if (mode != RunMode.Ui)
        builder.AddRepairOrdersApi();
    if (mode is RunMode.Ui or RunMode.Both)
        builder.AddRepairOrdersUi();

    if (mode == RunMode.Demo)
    {
        await DemoMode.Run(builder);
        return 0;
    }

    await using var app = builder.Build();
    switch (mode)
    {
        case RunMode.Migrate:
            await app.Services.MigrateRepairOrdersAsync();
            return 0;
        case RunMode.FirstAdministrator:
            var token = await app.Services.OfferFirstAdministratorAsync();
            Console.WriteLine(FirstLink.Words(app.Configuration["Link"], token));
            return 0;
        case RunMode.Verify:
            return await app.Services.VerifyRepairOrdersAsync(Console.Out) ? 0 : 1;
    }

    app.UseForwardedHeaders();
    app.UseExceptionHandler();
    app.UseAuthentication();
    app.UseAuthorization();
    if (mode != RunMode.Ui)
        app.MapRepairOrdersApi();
    if (mode is RunMode.Ui or RunMode.Both)
        app.MapRepairOrdersUi();
    await app.RunAsync();
    return 0;
}
catch (Exception e) when (e is InvalidOperationException or DbException or IOException)
{
    // A wrong setting, a store that is away, a port that is taken: whoever starts the program needs the sentence.
    await Console.Error.WriteLineAsync((e.InnerException as DbException ?? e).Message);
    return 2;
}

/// <summary>Named so that tests can start the program.</summary>
public partial class Program;
