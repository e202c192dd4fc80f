using RepairOrders.Api.People;

namespace RepairOrders.Api.Wire;

internal static class NeedsExtensions
{
    /// <summary>Names what an endpoint needs; who has it stands in <see cref="RoleRules"/>.</summary>
    public static RouteHandlerBuilder Needs(this RouteHandlerBuilder route, Permission permission) =>
        route
            .WithMetadata(permission)
            .AddEndpointFilter(
                async (context, next) =>
                    context.HttpContext.Items[typeof(Person)] is Person person && RoleRules.May(person, permission)
                        ? await next(context)
                        : Refusals.Problem(
                            403,
                            "role",
                            $"Your roles do not allow this. It takes: {string.Join(", ", RoleRules.RolesFor(permission).Select(r => Orders.Words.Of(r)))}."
                        )
            );
}
