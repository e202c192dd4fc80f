using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Store;

internal static class VerificationEndpoints
{
    public static void MapVerification(this IEndpointRouteBuilder api)
    {
        api.MapGet(
                "/journals/verification",
                (
                    Person by,
                    RepairStore store,
                    CancellationToken stop,
                    string? after = null,
                    [Range(1, Keys.MostRows)] int limit = Keys.MostRows
                ) => Verification.Journals(store, by, Keys.Read(after), limit, stop)
            )
            .Needs(Permission.VerifyHistory)
            .WithSummary("Verify the journals of your sites' orders, a page at a time");
        api.MapGet(
                "/changes/verification",
                (Person by, RepairStore store, CancellationToken stop) => Verification.Changes(store, by, stop)
            )
            .Needs(Permission.VerifyHistory)
            .WithSummary("Verify the changes of your sites' people, lines and of the sites themselves");
    }
}
