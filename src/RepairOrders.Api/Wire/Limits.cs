using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;

namespace RepairOrders.Api.Wire;

/// <summary>Rates, stated in one place.</summary>
internal static class Limits
{
    public const string SignIn = "sign-in";
    public const int SignInTriesPerMinute = 20;
    public const int CallsPerMinute = 1200;

    public static void AddLimits(this IServiceCollection services) =>
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
            options.AddPolicy(SignIn, context => PerMinute("sign-in " + Address(context), SignInTriesPerMinute));
            options.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
                context.Request.Path.StartsWithSegments("/api")
                    ? PerMinute(People.BearerSignIn.TokenOf(context.Request) ?? Address(context), CallsPerMinute)
                    : RateLimitPartition.GetNoLimiter("")
            );
        });

    private static RateLimitPartition<string> PerMinute(string whom, int calls) =>
        RateLimitPartition.GetFixedWindowLimiter(
            whom,
            _ => new FixedWindowRateLimiterOptions { PermitLimit = calls, Window = TimeSpan.FromMinutes(1) }
        );

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "local";
}
