using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.Extensions.Configuration;

namespace RepairOrders.Api.Wire;

/// <summary>Rates, stated in one place.</summary>
internal static class Limits
{
    public const string SignIn = "sign-in";
    public const string ShortCode = "short-code";
    public const int SignInTriesPerMinute = 20;
    public const int ShortCodeTriesPerMinute = 10;
    public const int CallsPerMinute = 1200;

    public static void AddLimits(this IServiceCollection services, IConfiguration settings) =>
        services.AddRateLimiter(options =>
        {
            options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            options.OnRejected = async (rejected, stop) =>
            {
                rejected.HttpContext.Response.Headers.RetryAfter = "60";
                await Refusals
                    .Problem(429, "too-many-requests", "Too many requests. Wait a minute and try again.")
                    .ExecuteAsync(rejected.HttpContext);
            };
            var tries = settings.GetValue("Limits:SignInTriesPerMinute", SignInTriesPerMinute);
            var calls = settings.GetValue("Limits:CallsPerMinute", CallsPerMinute);
            options.AddPolicy(SignIn, context => PerMinute("sign-in " + Address(context), tries));
            options.AddPolicy(
                ShortCode,
                context => PerMinute("short code " + Caller(context), ShortCodeTriesPerMinute)
            );
            options.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
                context.Request.Path.StartsWithSegments("/api")
                    ? PerMinute(Caller(context), calls)
                    : RateLimitPartition.GetNoLimiter("")
            );
        });

    private static RateLimitPartition<string> PerMinute(string whom, int calls) =>
        RateLimitPartition.GetFixedWindowLimiter(
            whom,
            _ => new FixedWindowRateLimiterOptions { PermitLimit = calls, Window = TimeSpan.FromMinutes(1) }
        );

    /// <summary>Where a call comes from; behind the screens or a proxy, what that one tells.</summary>
    public static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "local";

    // A token that speaks for nobody counts for the address it comes from, or a new one each time would pass every limit.
    private static string Caller(HttpContext context) =>
        (context.Items[typeof(People.Session)] as People.Session)?.Id.ToString() ?? Address(context);
}
