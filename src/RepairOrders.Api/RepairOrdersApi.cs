using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api;

/// <summary>The service: procedure, store and REST. The only door to the store.</summary>
public static class RepairOrdersApi
{
    /// <summary>Adds what the API needs; the store's address is the connection string <c>Store</c>.</summary>
    public static void AddRepairOrdersApi(this IHostApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        var services = builder.Services;
        var store =
            builder.Configuration.GetConnectionString("Store")
            ?? throw new InvalidOperationException(
                "ConnectionStrings:Store is not set. It says where the PostgreSQL store is."
            );
        services.TryAddSingleton(TimeProvider.System);
        services.AddDbContext<RepairStore>(options => Configure(options, store));
        services
            .AddIdentityCore<Person>(options =>
            {
                options.Password.RequiredLength = 12;
                options.Password.RequireNonAlphanumeric = false;
                options.Password.RequireUppercase = false;
                options.Password.RequireDigit = false;
                options.Lockout.MaxFailedAccessAttempts = 5;
                options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
            })
            .AddEntityFrameworkStores<RepairStore>();
        services.AddDataProtection().SetApplicationName("RepairOrders").PersistKeysToDbContext<RepairStore>();
        services
            .AddAuthentication()
            .AddScheme<AuthenticationSchemeOptions, BearerSignIn>(BearerSignIn.SchemeName, null);
        services
            .AddAuthorizationBuilder()
            .AddPolicy(
                BearerSignIn.SchemeName,
                policy => policy.AddAuthenticationSchemes(BearerSignIn.SchemeName).RequireAuthenticatedUser()
            );
        services.AddLimits();
        services.AddProblemDetails(options => options.CustomizeProblemDetails = Refusals.InOurWords);
        services.AddExceptionHandler<Refusals>();
        services.ConfigureHttpJsonOptions(options => RepairOrdersClient.Written(options.SerializerOptions));
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddValidation();
        services.AddOpenApi();
        services.AddHealthChecks().AddDbContextCheck<RepairStore>("store", tags: ["ready"]);
    }

    /// <summary>Maps the API; needs routing, authentication and authorisation to run before it.</summary>
    public static void MapRepairOrdersApi(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseRateLimiter();
        // JSON is buffered so that a repeat with the same key can be told from another write with the same key.
        app.Use(
            (context, next) =>
            {
                if (context.Request.HasJsonContentType())
                    context.Request.EnableBuffering();
                return next(context);
            }
        );
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = c => c.Tags.Contains("ready") });
        app.MapOpenApi("/openapi/{documentName}.json");
        Routes.Map(app);
    }

    /// <summary>Brings the store's schema up to date. A mode of its own, not a habit at start: two starting at once would race.</summary>
    public static async Task MigrateRepairOrdersAsync(this IServiceProvider services)
    {
        await using var scope = services.CreateAsyncScope();
        var store = scope.ServiceProvider.GetRequiredService<RepairStore>();
        await store.Database.MigrateAsync();
    }

    internal static void Configure(DbContextOptionsBuilder options, string store) =>
        options.UseNpgsql(store).UseSnakeCaseNamingConvention();
}
