using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Readying;

/// <summary>Who may fit, witness and accept.</summary>
internal static class Crew
{
    /// <summary>A technician with authority, and competent in the method where one is given.</summary>
    public static bool MayFit(Person person, string? method, DateOnly on) =>
        person.Is(Role.Technician) && person.HasAuthority(on) && (method is null || person.IsCompetent(method, on));

    public static bool IsInspector(Person person, DateOnly on) =>
        person.HasAuthority(on) && person.IsCompetent(Competence.Inspector, on);

    public static bool IsOperationsInCharge(Person person, DateOnly on) =>
        person.HasAuthority(on) && person.IsCompetent(Competence.OperationsInCharge, on);

    /// <summary>He is named as a fitter in this round, or signed a step of the fitting.</summary>
    public static bool Fitted(RepairOrder order, Guid person) =>
        order
            .InRound<Readiness>()
            .Where(r => r.Asked.Ask.For == ReadinessFor.Fit)
            .Any(r => r.Asked.Fitters.Any(f => f.Id == person));

    public static Task<Person?> PersonOf(this RepairStore store, string site, Guid id) =>
        store.Users.SingleOrDefaultAsync(p => p.Id == id && p.Sites.Contains(site), CancellationToken.None);
}
