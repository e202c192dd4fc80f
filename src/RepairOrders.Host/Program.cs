using RepairOrders.Api;
using RepairOrders.Host;
using RepairOrders.Host.Demo;
using RepairOrders.Ui;
using Serilog;
using Serilog.Formatting.Compact;

var builder = WebApplication.CreateBuilder(args);
var mode = RunModes.Read(builder.Configuration);
builder.Services.AddSerilog(log =>
    log.ReadFrom.Configuration(builder.Configuration)
        .Enrich.FromLogContext()
        .WriteTo.Console(new CompactJsonFormatter())
);

if (mode != RunMode.Ui)
    builder.AddRepairOrdersApi();
if (mode is RunMode.Ui or RunMode.Both)
    builder.AddRepairOrdersUi();

if (mode == RunMode.Demo)
{
    await DemoMode.Run(builder);
    return;
}

var app = builder.Build();
if (mode == RunMode.Migrate)
{
    await app.Services.MigrateRepairOrdersAsync();
    return;
}

app.UseExceptionHandler();
app.UseAuthentication();
app.UseAuthorization();
if (mode != RunMode.Ui)
    app.MapRepairOrdersApi();
if (mode is RunMode.Ui or RunMode.Both)
    app.MapRepairOrdersUi();
await app.RunAsync();

/// <summary>Named so that tests can start the program.</summary>
public partial class Program;
