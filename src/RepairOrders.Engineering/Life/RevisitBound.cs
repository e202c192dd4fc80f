using RepairOrders.Engineering.Methods;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Life;

/// <summary>A term that bounds the time to the next revisit.</summary>
/// <param name="Code">One of <see cref="RevisitBound.Codes"/>.</param>
/// <param name="Value">The term as computed or entered, before it is halved; nothing where it is not known.</param>
/// <param name="Applies">Whether it applies to this repair at all.</param>
public sealed record RevisitTerm(string Code, Duration? Value, bool Applies = true)
{
    /// <summary>A term that does not apply: no seals to outgrow, no outage planned.</summary>
    /// <param name="code">One of <see cref="RevisitBound.Codes"/>.</param>
    /// <returns>The term.</returns>
    public static RevisitTerm NotApplicable(string code) => new(code, null, false);
}

/// <summary>A term as it bounds.</summary>
/// <param name="Code">The term's code.</param>
/// <param name="Words">The term in words.</param>
/// <param name="Value">The bound it sets.</param>
/// <param name="IsDefault">It was not known, and the default of 90 days stands for it.</param>
public sealed record BoundTerm(string Code, string Words, Duration Value, bool IsDefault);

/// <summary>The longest time to the next revisit, and what sets it.</summary>
/// <param name="Value">The time.</param>
/// <param name="Governing">The term that sets it.</param>
/// <param name="Terms">All terms that apply, shortest first.</param>
public sealed record RevisitBound(Duration Value, BoundTerm Governing, IReadOnlyList<BoundTerm> Terms)
{
    /// <summary>What stands for a term that nobody entered: three months, as for thickness checks of leaking Class 3 pipe.</summary>
    public const double DefaultDays = 90;

    private static readonly Clause Rule = new("bound on the next revisit", "", Provenance.OwnRule);
    private static readonly Clause Default = new(
        "US NRC Generic Letter 90-05, three-monthly thickness checks",
        "",
        Provenance.FromMemory
    );

    private static readonly (string Code, string Words, double Share)[] Rows =
    [
        ("remaining-life", "half the remaining life", 0.5),
        ("depth-life", "half the time until the wall is short for the end load", 0.5),
        ("length-life", "half the time until the defect reaches the seals", 0.5),
        ("hole-life", "half the time until the hole outgrows its patch", 0.5),
        ("class-maximum", "class maximum", 1),
        ("design-life", "design life of the repair", 1),
        ("next-outage", "next outage", 1),
        ("monitoring", "monitoring interval", 1),
    ];

    /// <summary>The codes of the terms, in the order of the rule.</summary>
    public static IReadOnlyList<string> Codes { get; } = [.. Rows.Select(r => r.Code)];

    /// <summary>Longest time to the next revisit: the least of the terms, never past the approval.</summary>
    /// <remarks>
    /// <para>Formula: next = min(RL/2, T_d/2, T_L/2, T_h/2, class maximum, design life, next outage, monitoring interval), never above what is left of the approval.</para>
    /// <para>Symbols: RL remaining life beside and beneath the repair with the local rate; T_d, T_L, T_h see <see cref="DefectGrowth"/>; all in one unit.</para>
    /// <para>Validity: a term that applies and is not known counts as 90 days and is told.</para>
    /// <para>Reference: own rule; the default after US NRC Generic Letter 90-05 (from memory).</para>
    /// </remarks>
    /// <param name="terms">The terms; a code that is left out counts as not known.</param>
    /// <param name="approvedLeft">Time until the expiry written in the approval.</param>
    /// <returns>The bound, what governs, and findings.</returns>
    /// <exception cref="ImpossibleInputException">A term is negative, twice there, or not one of <see cref="Codes"/>.</exception>
    /// <example>RL 3.0 y, class 5 y, design life 2.0 y, outage in 1.2 y, the others not applicable: 1.2 y.</example>
    public static Calculated<RevisitBound> Of(IReadOnlyList<RevisitTerm> terms, Duration approvedLeft)
    {
        ArgumentNullException.ThrowIfNull(terms);
        var left = Require.Between("approvedDaysLeft", approvedLeft.Days, 0, 1e9);
        var given = ByCode(terms);
        var bounds = Rows.Select(row => Bound(row, given.GetValueOrDefault(row.Code)))
            .OfType<BoundTerm>()
            .Append(new("approval", "expiry of the approval", Duration.FromDays(left), false))
            .OrderBy(t => t.Value.Days)
            .ToList();
        var least = bounds[0];
        var working = new Working();
        foreach (var bound in bounds)
        {
            Note(working, bound);
        }
        working.Step(
            "next",
            "longest time to the next revisit",
            "the least of them",
            $"min({string.Join(", ", bounds.Select(b => Invariant($"{b.Value.Days:G5}")))})",
            least.Value.Days,
            "d",
            Rule
        );
        return new(new(least.Value, least, bounds), [.. working], [.. Findings(bounds)], []);
    }

    private static void Note(Working working, BoundTerm bound)
    {
        var source = bound.IsDefault ? Default : Rule;
        var halved = !bound.IsDefault && Array.Exists(Rows, r => r.Code == bound.Code && r.Share < 1);
        if (halved)
            working.Step("T/2", bound.Words, "T/2", $"{2 * bound.Value.Days}/2", bound.Value.Days, "d", source);
        else
            working.Given("T", bound.Words, bound.Value.Days, "d", source);
    }

    private static Dictionary<string, RevisitTerm> ByCode(IReadOnlyList<RevisitTerm> terms)
    {
        var given = new Dictionary<string, RevisitTerm>(StringComparer.Ordinal);
        foreach (var term in terms)
        {
            if (!Codes.Contains(term.Code) || !given.TryAdd(term.Code, term))
            {
                throw new ImpossibleInputException("terms.code", term.Code, $"each once: {string.Join(", ", Codes)}");
            }
        }
        return given;
    }

    private static BoundTerm? Bound((string Code, string Words, double Share) row, RevisitTerm? term) =>
        term switch
        {
            { Applies: false } => null,
            { Value: { } value } => new(
                row.Code,
                row.Words,
                Duration.FromDays(Require.Between($"terms.{row.Code}", value.Days, 0, 1e9) * row.Share),
                false
            ),
            _ => new(row.Code, $"{row.Words}, not known", Duration.FromDays(DefaultDays), true),
        };

    private static IEnumerable<Finding> Findings(List<BoundTerm> bounds)
    {
        foreach (var bound in bounds.Where(b => b.IsDefault))
        {
            yield return new(
                "revisit-default",
                Severity.Watch,
                Invariant($"{bound.Words}: {DefaultDays:F0} days stand for it until it is entered."),
                null,
                DefaultDays,
                "d",
                Default
            );
        }
        if (bounds.Find(b => b is { Code: "remaining-life", IsDefault: false }) is { Value.Days: < 30 } half)
        {
            yield return new(
                "half-life-under-30-days",
                Severity.Fail,
                Invariant(
                    $"Half the remaining life is {half.Value.Days:F0} days: under 30 days a repair is not a plan. Escalate."
                ),
                half.Value.Days,
                30,
                "d",
                Rule
            );
        }
    }
}
