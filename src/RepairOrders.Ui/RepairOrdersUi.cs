using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using MudBlazor.Services;
using RepairOrders.Ui.AtThePipe;
using RepairOrders.Ui.Charts;
using RepairOrders.Ui.Orders;
using RepairOrders.Ui.Papers;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui;

/// <summary>The screens: a client of the API like any other.</summary>
public static class RepairOrdersUi
{
    /// <summary>Adds the screens; <c>Api:Address</c> says where the API is, and nothing means: in this process.</summary>
    public static void AddRepairOrdersUi(this IHostApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        var services = builder.Services;
        services.TryAddSingleton(TimeProvider.System);
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddMudServices();
        services.AddCascadingAuthenticationState();
        services
            .AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme)
            .AddCookie(cookie =>
            {
                cookie.Cookie.Name = "RepairOrders";
                cookie.Cookie.HttpOnly = true;
                cookie.Cookie.SameSite = SameSiteMode.Strict;
                cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
                cookie.LoginPath = "/sign-in";
                cookie.ReturnUrlParameter = "to";
                // Cookie and token end together; see SignInPage.
                cookie.SlidingExpiration = false;
            });
        services.AddAuthorization();
        services.AddAntiforgery();
        // Alone, the screens have no store for their keys: a folder is named, and shared by several of them.
        if (builder.Configuration["Ui:Keys"] is { Length: > 0 } keys)
            services
                .AddDataProtection()
                .SetApplicationName("RepairOrders")
                .PersistKeysToFileSystem(new DirectoryInfo(keys));
        services.AddHttpContextAccessor();
        services.AddSingleton<ApiAddress>();
        services.AddHttpClient(ApiConnection.ClientName);
        services.AddScoped<ApiConnection>();
        services.AddScoped<AuthenticationStateProvider, SignInWatch>();
    }

    /// <summary>Maps the screens.</summary>
    public static void MapRepairOrdersUi(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.Use(
            (context, next) =>
            {
                if (!context.Request.Path.StartsWithSegments("/api"))
                    PageHeaders(context.Response.Headers);
                return next(context);
            }
        );
        // An address that is none gets the page that says so; the API answers for itself. A branch would not route again.
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.Use(
            (context, next) =>
            {
                if (context.Request.Path.StartsWithSegments("/api") || !HttpMethods.IsGet(context.Request.Method))
                    context.Features.Get<IStatusCodePagesFeature>()!.Enabled = false;
                return next(context);
            }
        );
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapPost("/sign-out", SignOut);
        app.MapPictures();
        Downloads.Map(app);
        app.MapPapers();
        app.MapPipeDesk();
        app.MapChartPictures();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
    }

    // MudBlazor sets element styles from code, so styles may be inline; scripts may not.
    private static void PageHeaders(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy =
            "default-src 'self'; img-src 'self' data: blob:; style-src 'self' 'unsafe-inline'; script-src 'self'; "
            + "connect-src 'self' ws: wss:; frame-ancestors 'none'; base-uri 'self'; form-action 'self'; object-src 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=()";
    }

    private static async Task<IResult> SignOut(HttpContext context, ApiConnection api)
    {
        if (context.User.FindFirstValue(ApiConnection.TokenClaim) is { } token)
            await api.SignOut(token);
        await context.SignOutAsync();
        return TypedResults.LocalRedirect("/sign-in");
    }
}
