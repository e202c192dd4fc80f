using RepairOrders.Api.Orders;
using RepairOrders.Api.People;

namespace RepairOrders.Api.Wire;

internal static class NeedsExtensions
{
    /// <summary>Names what an endpoint needs; who has it stands in <see cref="RoleRules"/>, and <see cref="Door"/> asks.</summary>
    public static RouteHandlerBuilder Needs(this RouteHandlerBuilder route, Permission permission) =>
        route.WithMetadata(new Need(permission));

    /// <summary>The write carries a secret: it runs in its transaction, but neither answer nor body is remembered under a key.</summary>
    public static RouteHandlerBuilder KeepsNoAnswer(this RouteHandlerBuilder route) =>
        route.WithMetadata(new NoAnswerKept());
}

/// <summary>What an endpoint needs.</summary>
internal sealed record Need(Permission Permission);

internal sealed record NoAnswerKept;

/// <summary>
/// Asks who may come in, before anything of the call is read. An endpoint of the API that names no permission is shut, unless
/// it is open to nobody in particular on purpose.
/// </summary>
internal static class Door
{
    public static Task Check(HttpContext context, RequestDelegate next) =>
        Refusal(context) is { } refusal ? refusal.ExecuteAsync(context) : next(context);

    private static IResult? Refusal(HttpContext context)
    {
        if (
            !context.Request.Path.StartsWithSegments("/api/v1")
            || context.GetEndpoint() is not RouteEndpoint endpoint
            || endpoint.Metadata.GetMetadata<Microsoft.AspNetCore.Authorization.IAllowAnonymous>() is not null
        )
            return null;
        if (endpoint.Metadata.GetMetadata<Need>()?.Permission is not { } needed)
            return Refusals.Problem(403, "shut", "This address is shut.");
        if (context.Items[typeof(Person)] is not Person person)
            return Refusals.Problem(401, "not-signed-in", "You are not signed in. Sign in first.");
        if (RoleRules.Objection(person, needed) is { } no)
            return Refusals.Problem(403, no.Code, no.Sentence, no.Clears);
        if (person.PasswordChangeOwed && needed is not (Permission.SeeOneself or Permission.ChangeOwnPassword))
            return Refusals.Problem(
                403,
                "password-change-owed",
                "You signed in with a one-time password. Set a password of your own first."
            );
        return
            (context.Items[typeof(Session)] as Session)?.OrderNumber is { } only
            && needed != Permission.SeeOneself
            && context.GetRouteValue("number") as string != only
            ? Refusals.Problem(403, "one-order-only", $"This token signs on order {only} and nowhere else.")
            : null;
    }
}
