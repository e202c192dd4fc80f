using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;

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
                options.Password.RequireLowercase = false;
                options.Password.RequireDigit = false;
                options.Password.RequiredUniqueChars = 5;
            })
            .AddEntityFrameworkStores<RepairStore>();
        services.AddScoped<Passwords>();
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
        services.AddLimits(builder.Configuration);
        services.Configure<KestrelServerOptions>(options => options.AddServerHeader = false);
        services.AddProblemDetails(options => options.CustomizeProblemDetails = Refusals.InOurWords);
        services.AddExceptionHandler<Refusals>();
        services.ConfigureHttpJsonOptions(options => StrictAsks.Set(options.SerializerOptions));
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddValidation();
        services.AddApiDocument();
        services.AddHealthChecks().AddDbContextCheck<RepairStore>("store", tags: ["ready"]);
    }

    /// <summary>Maps the API; needs routing, authentication and authorisation to run before it.</summary>
    public static void MapRepairOrdersApi(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.UseWhen(c => c.Request.Path.StartsWithSegments("/api"), api => api.UseStatusCodePages());
        app.Use(
            (context, next) =>
            {
                if (context.Request.Path.StartsWithSegments("/api"))
                {
                    context.Response.Headers.XContentTypeOptions = "nosniff";
                    context.Response.Headers.CacheControl = "no-store";
                }
                return next(context);
            }
        );
        app.UseRateLimiter();
        app.Use(Door.Check);
        app.Use(Bodies.Check);
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = c => c.Tags.Contains("ready") });
        app.MapApiDocument();
        Routes.Map(app);
    }

    /// <summary>
    /// Brings the store's schema up to date, then sets what the role <c>Store:ServiceRole</c> may do in it. A mode of its own, not
    /// a habit at start: two starting at once would race, and the service's role may not change the schema.
    /// </summary>
    public static async Task MigrateRepairOrdersAsync(this IServiceProvider services)
    {
        await using var scope = services.CreateAsyncScope();
        var store = scope.ServiceProvider.GetRequiredService<RepairStore>();
        await store.Database.MigrateAsync();
        await Indexes.Create(store);
        if (services.GetRequiredService<IConfiguration>()["Store:ServiceRole"] is { Length: > 0 } role)
            await Grants.Apply(store, role);
    }

    /// <summary>Verifies every history in the store and writes which entry is broken.</summary>
    /// <returns>Whether all verify.</returns>
    public static async Task<bool> VerifyRepairOrdersAsync(this IServiceProvider services, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        await using var scope = services.CreateAsyncScope();
        return await Verification.Report(scope.ServiceProvider.GetRequiredService<RepairStore>(), output);
    }

    /// <summary>A one-time token that makes the first administrator; nothing when the store has people already.</summary>
    public static async Task<string?> OfferFirstAdministratorAsync(this IServiceProvider services)
    {
        await using var scope = services.CreateAsyncScope();
        return await FirstAdministrator.Offer(
            scope.ServiceProvider.GetRequiredService<RepairStore>(),
            scope.ServiceProvider.GetRequiredService<TimeProvider>().Now()
        );
    }

    internal static void Configure(DbContextOptionsBuilder options, string store) =>
        options.UseNpgsql(store).UseSnakeCaseNamingConvention();
}
