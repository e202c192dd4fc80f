using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>A claim at its place among the others, and why it stands there.</summary>
/// <param name="Rank">1 for the first.</param>
/// <param name="Claim">The claim.</param>
/// <param name="Why">Why it stands there, as a sentence.</param>
public sealed record RankedClaim(int Rank, Claim Claim, string Why);

/// <summary>The kinds of repair, one line a method, in the order of preference: what restores most of the pipe comes first.</summary>
public static class MethodCatalogue
{
    private static readonly (IRepairMethod Method, string Restores)[] Entries =
    [
        (new Replacement.Replacement(), "replaces the pipe: the first choice wherever the line can be taken out"),
        (new WeldedSleeve.WeldedSleeve(), "carries pressure, and with welded ends the end load"),
        (new LaminateWrap.LaminateWrap(), "carries hoop and end load while resin and bond last"),
        (new BoltedClamp.BoltedClamp(), "holds pressure; end load only with a restraint"),
        (new WeldedPatch.WeldedPatch(), "covers a pit; the pipe must carry the rest"),
        (new BandedPatch.BandedPatch(), "seals only; the pipe must carry the rest"),
        (new Plug.Plug(), "stops one small hole; a patch goes over it"),
    ];

    /// <summary>All methods, in the order of preference.</summary>
    public static IReadOnlyList<IRepairMethod> All { get; } = [.. Entries.Select(e => e.Method)];

    /// <summary>A method by its code.</summary>
    /// <param name="code">The code on the wire: <c>banded-patch</c>.</param>
    /// <returns>The method.</returns>
    /// <exception cref="ImpossibleInputException">No method has this code.</exception>
    public static IRepairMethod Find(string code) =>
        All.FirstOrDefault(m => m.Code == code)
        ?? throw new ImpossibleInputException("method", code, string.Join(", ", All.Select(m => m.Code)));

    /// <summary>Asks every method what it claims. Those inside their limits come first, then those a deviation could admit, then the barred.</summary>
    /// <param name="pipe">The pipe; a nominal wall of 0 stands for one not known.</param>
    /// <param name="defect">The defect; a wall of 0 stands for one not measured.</param>
    /// <param name="service">The service; an empty fluid stands for one not known.</param>
    /// <param name="regime">The rules the pipe stands under beside those of the method; their findings are added to every claim.</param>
    /// <returns>A claim of each method, ranked, with the reason of its place.</returns>
    /// <exception cref="ImpossibleInputException">A value no pipe can have.</exception>
    public static IReadOnlyList<RankedClaim> Claims(
        Pipe pipe,
        Defect defect,
        Service service,
        Regime regime = Regime.Plant
    ) =>
        [
            .. Entries
                .Select((e, order) => (Claim: Under(regime, e.Method, pipe, defect, service), e.Restores, Order: order))
                .OrderBy(c => Standing(c.Claim))
                .ThenBy(c => c.Order)
                .Select((c, i) => new RankedClaim(i + 1, c.Claim, $"{Words(c.Claim)}; {c.Restores}.")),
        ];

    private static Claim Under(Regime regime, IRepairMethod method, Pipe pipe, Defect defect, Service service)
    {
        var claim = method.Claims(pipe, defect, service);
        return claim with { Findings = [.. claim.Findings, .. RegimeLimits.Of(regime, pipe, defect, service)] };
    }

    private static int Standing(Claim claim) =>
        claim.Barred ? 2
        : claim.Inside ? 0
        : 1;

    private static string Words(Claim claim)
    {
        var failed = claim.Findings.Where(f => f.Severity == Severity.Fail).Select(f => f.Code).ToList();
        return claim.Barred ? $"Barred ({string.Join(", ", failed)})"
            : claim.Inside ? "Inside its limits"
            : $"Only with a signed deviation ({string.Join(", ", failed)})";
    }
}
