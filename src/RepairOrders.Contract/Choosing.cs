using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>A method that was considered and not chosen.</summary>
/// <param name="Method">A method's code, or another way in words: shut down, cut the pressure.</param>
/// <param name="WhyNot">Why not.</param>
public sealed record ConsideredMethod(
    [property: Required, StringLength(60)] string Method,
    [property: Required, StringLength(1000, MinimumLength = 3)] string WhyNot
);

/// <summary>Chooses the method of the round.</summary>
/// <param name="Method">The method's code: <c>banded-patch</c>.</param>
/// <param name="Considered">Others that were considered, one at least, and why not.</param>
/// <param name="Reason">Why this one.</param>
public sealed record ChooseMethod(
    [property: Required, StringLength(60)] string Method,
    [property: Required, MaxLength(20)] IReadOnlyList<ConsideredMethod> Considered,
    [property: StringLength(2000)] string? Reason = null
);

/// <summary>
/// A second engineer signs for going past a method's limits, for the same method again on a spot where it failed, or for a design
/// entered where the service sizes. Never for an absolute limit.
/// </summary>
/// <param name="Method">The method's code.</param>
/// <param name="Basis">On what he rests it: calculation, test, published case.</param>
/// <param name="CalculationReference">Where the calculation is kept.</param>
/// <param name="EnteredDesign">The design is entered by an engineer, not sized by the service.</param>
public sealed record SignDeviation(
    [property: Required, StringLength(60)] string Method,
    [property: Required, StringLength(4000, MinimumLength = 20)] string Basis,
    [property: StringLength(200)] string? CalculationReference = null,
    bool EnteredDesign = false
);

/// <summary>What a method says of this pipe and defect.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Welded">It is welded to the pipe.</param>
/// <param name="Rank">1 for the first choice.</param>
/// <param name="Why">Why it stands there.</param>
/// <param name="Inside">Inside all its limits.</param>
/// <param name="Barred">Outside a limit that nobody may sign past.</param>
/// <param name="Findings">Every limit tested.</param>
/// <param name="Objection">Why it cannot be chosen as things stand; nothing when it can.</param>
public sealed record ClaimView(
    string Method,
    string Name,
    bool Welded,
    int Rank,
    string Why,
    bool Inside,
    bool Barred,
    IReadOnlyList<FindingView> Findings,
    ObjectionView? Objection
);

/// <summary>The body of a choice.</summary>
/// <param name="Ask">What was chosen and considered.</param>
/// <param name="Claims">What every method claimed at that moment.</param>
public sealed record SignedChoice(ChooseMethod Ask, IReadOnlyList<ClaimView> Claims);

/// <summary>The body of a deviation.</summary>
/// <param name="Ask">What was signed.</param>
/// <param name="Covers">Codes of the limits it goes past; <c>same-method-again</c> for a method that failed here, <c>entered-design</c> for one entered.</param>
public sealed record SignedDeviation(SignDeviation Ask, IReadOnlyList<string> Covers);

public sealed partial class RepairOrdersClient
{
    /// <summary>What every method claims, with the objection where it cannot be chosen.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The claims, first choice first.</returns>
    /// <exception cref="Refused">409 before the pipe is assessed.</exception>
    public Task<IReadOnlyList<ClaimView>> Claims(string number, CancellationToken stop = default) =>
        Get<IReadOnlyList<ClaimView>>($"orders/{number}/claims", stop);

    /// <summary>Chooses the method.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The method, and what else was considered.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The choice; its body is a <see cref="SignedChoice"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> Choose(string number, ChooseMethod ask, string version) =>
        Put<RecordView>($"orders/{number}/choice", ask, version);

    /// <summary>Signs a deviation as second engineer.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Method and basis.</param>
    /// <returns>The deviation; its body is a <see cref="SignedDeviation"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> Deviate(string number, SignDeviation ask) =>
        Post<RecordView>($"orders/{number}/deviations", ask);
}
