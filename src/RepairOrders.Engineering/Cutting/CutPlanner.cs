using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Cutting;

/// <summary>Cuts today's bands from coils and remnants.</summary>
public static class CutPlanner
{
    private static readonly Clause Aims = new(
        "cut plan",
        "fewest stock lengths, then fewest splices, then coils left whole, then the longest single remnant",
        Provenance.OwnRule
    );
    private static readonly Clause Bound = new("Martello, Toth, Knapsack Problems (1990)", "chapter 8");
    private static readonly Clause Given = new("given", "", Provenance.Entered);

    private static readonly string[] Cautions =
    [
        "Cut ends of band are as sharp as a blade: gloves and eye protection, and deburr every end.",
        "A coil springs open when its tie is cut: hold it down before cutting.",
        "Measure each piece before cutting; the plan rounds up, the saw does not.",
    ];

    /// <summary>Finds the best plan, or the best within the time and how far from the best it may be.</summary>
    /// <remarks>
    /// <para>Formula: lexicographic: min Σ y; then min Σ (n − 1); then min Σ y over coils; then max of one remnant. Each band in one stock length,
    /// Σ (l + k)·x ≤ (S + k)·y; a band longer than any stock in n pieces with Σ p = L + (n − 1)·s.</para>
    /// <para>Symbols: y stock length used; x bands cut from it; l, L band lengths, S stock length, k kerf, s splice overlap, p piece, mm; n pieces
    /// of a spliced band.</para>
    /// <para>Validity: lengths in whole 0.1 mm, bands rounded up and stock down; a band is spliced only where no plan cuts it whole.</para>
    /// <para>Reference: cutting stock with several stock lengths; flow model of Valério de Carvalho, Annals of Operations Research 86 (1999)
    /// 629–659; solved by CP-SAT. Bounds of Martello and Toth are shown beside it.</para>
    /// </remarks>
    /// <param name="bands">Bands to cut, 1 to 1000.</param>
    /// <param name="stock">Coils and remnants.</param>
    /// <param name="rules">Kerf, splice and remnant rules.</param>
    /// <param name="limit">The longest it may take, 0.1 to 600 s. The same work is done on any machine that is not too slow for it.</param>
    /// <returns>The plan with each aim proved or its gap, or why there is none.</returns>
    /// <exception cref="ImpossibleInputException">No bands, a length not above 0, or a value out of range.</exception>
    /// <example>Bands of 600, 500, 400 and 400 mm, coils of 1000 mm, no kerf: two coils, 600 + 400 and 500 + 400, 100 mm left, proved.</example>
    public static Calculated<CutPlan> Plan(
        IReadOnlyList<Band> bands,
        IReadOnlyList<StockLength> stock,
        CutRules rules,
        TimeSpan limit
    )
    {
        ArgumentNullException.ThrowIfNull(bands);
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentNullException.ThrowIfNull(rules);
        Require.Between("bands", bands.Count, 1, 1000);
        Require.Between("timeLimitS", limit.TotalSeconds, 0.1, 600);
        Require.Between("stock", stock.Count, 0, 1000);
        var problem = CutProblem.Of(bands, stock, rules, false);
        if (Refusal(problem) is { } refusal)
        {
            var nothing = Nothing(problem, null);
            return new(nothing, Steps(problem, nothing), [refusal], Cautions);
        }

        // Whole where there is any way; only when there is none may a band be spliced that some stock length could hold.
        var whole = Solve(problem, limit / 2);
        return whole.Result.Found ? whole : Solve(CutProblem.Of(bands, stock, rules, true), limit / 2);
    }

    private static Calculated<CutPlan> Solve(CutProblem problem, TimeSpan limit)
    {
        var first = FirstFit.Plan(problem);
        var search = new CutSearch(problem, first, limit);
        var plan = search.Run() is { } loads
            ? Print(problem, loads, search.Reached, first?.Count)
            : Nothing(problem, first?.Count);
        return new(plan, Steps(problem, plan), [.. Found(plan, search), .. Spliced(problem, plan)], Cautions);
    }

    private static Finding? Refusal(CutProblem problem)
    {
        if (problem.Types.Count == 0)
        {
            return new(
                "no-stock",
                Severity.Fail,
                "No stock is available to cut from.",
                0,
                1,
                "-",
                Given,
                LimitKind.Absolute
            );
        }

        if (
            problem.LongBands.Count > 0
            && problem.Longest - problem.Kerf <= Math.Max(problem.Overlap, problem.LeastPiece)
        )
        {
            return new(
                "no-splice-possible",
                Severity.Fail,
                Text(
                    $"Band {problem.LongBands[0].Code} is longer than any stock, and the longest stock, {Mm(problem.Longest - problem.Kerf)} mm, is too short to splice with {Mm(problem.Overlap)} mm overlap."
                ),
                Mm(problem.Longest - problem.Kerf),
                Mm(problem.Overlap),
                "mm",
                Given,
                LimitKind.Absolute
            );
        }

        var (need, have) = (problem.Material.Sum(), problem.Stock.Sum());
        return need <= have
            ? null
            : new(
                "not-enough-stock",
                Severity.Fail,
                Text(
                    $"The bands need {Mm(need)} mm with kerfs and splices, the stock holds {Mm(have)} mm: {Mm(need - have)} mm short."
                ),
                Mm(have),
                Mm(need),
                "mm",
                Given,
                LimitKind.Absolute
            );
    }

    private static IEnumerable<Finding> Found(CutPlan plan, CutSearch search)
    {
        if (!plan.Found)
        {
            yield return search.Impossible
                ? new(
                    "no-plan-exists",
                    Severity.Fail,
                    "The material would do, but no way of cutting fits: order another stock length.",
                    null,
                    null,
                    null,
                    Aims,
                    LimitKind.Absolute
                )
                : new(
                    "no-plan-found",
                    Severity.Fail,
                    "No plan was found in the time; give it longer, or cut in two lots.",
                    null,
                    null,
                    null,
                    Aims
                );
        }

        foreach (var aim in plan.Aims)
        {
            yield return aim.Proven
                ? new(
                    aim.Code + "-proved",
                    Severity.Pass,
                    Text($"{aim.Words}: {aim.Value:0.#}, proved the best possible."),
                    aim.Value,
                    aim.Bound,
                    aim.Unit,
                    Aims
                )
                : new(
                    aim.Code + "-gap",
                    Severity.Watch,
                    Text(
                        $"{aim.Words}: {aim.Value:0.#}; no plan can pass {aim.Bound:0.#}, so it may be {Math.Abs(aim.Value - aim.Bound):0.#} from the best."
                    ),
                    aim.Value,
                    aim.Bound,
                    aim.Unit,
                    Aims
                );
        }

        if (search.StoppedByClock)
        {
            yield return new(
                "stopped-by-clock",
                Severity.Watch,
                "The clock stopped the search before its work was done: another run may end with another plan of the same worth or better.",
                null,
                null,
                null,
                Aims
            );
        }
    }

    private static IEnumerable<Finding> Spliced(CutProblem problem, CutPlan plan)
    {
        var spliced = plan.Cuts.SelectMany(c => c.Pieces).Where(p => p.Parts > 1).Select(p => p.Band).ToHashSet();
        foreach (var band in problem.LongBands.Where(b => spliced.Contains(b.Code)))
        {
            var why = band.Length + problem.Kerf > problem.Longest ? "longer than any stock" : "cut whole in no plan";
            yield return new(
                "band-spliced",
                Severity.Watch,
                Text(
                    $"Band {band.Code}, {Mm(band.Length)} mm, is {why} and is spliced; each splice is one more fastener."
                ),
                Mm(band.Length),
                Mm(problem.Longest - problem.Kerf),
                "mm",
                Aims
            );
        }
    }

    private static Working Steps(CutProblem problem, CutPlan plan)
    {
        var working = new Working();
        if (problem.Types.Count == 0)
        {
            return working;
        }

        working.Given("Σl", "lengths to cut, with kerf and splices", Mm(problem.Material.Sum()), "mm", Given);
        working.Given("ΣS", "stock that is available", Mm(problem.Stock.Sum()), "mm", Given);
        working.Given("S", "longest stock, with one kerf", Mm(problem.Longest), "mm", Given);
        working.Step(
            "L1",
            "fewest stock lengths by material",
            "least k with S1 + … + Sk ≥ Σl",
            $"Σl = {Mm(problem.Material.Sum())}",
            plan.Bounds.ByMaterial,
            "-",
            Bound
        );
        working.Step(
            "L2",
            "fewest stock lengths by large bands",
            "bound of Martello and Toth",
            $"S = {Mm(problem.Longest)}",
            plan.Bounds.ByLargeItems,
            "-",
            Bound
        );

        if (plan.Bounds.FirstFit is { } reached)
        {
            working.Step(
                "FFD",
                "first fit, the longest first",
                "first-fit-decreasing",
                $"{problem.Lengths.Count} bands",
                reached,
                "-",
                Bound
            );
        }

        foreach (var cut in plan.Cuts)
        {
            var pieces = string.Join(" + ", cut.Pieces.Select(p => Text($"{p.Length.Millimeters:0.#}")));
            var kerfs = Text($"{cut.Pieces.Count} × {Mm(problem.Kerf):0.#}");
            working.Step(
                "r",
                "left of " + cut.Stock,
                "S − Σp − n·k",
                $"{cut.Length.Millimeters:0.#} − ({pieces}) − {kerfs}",
                cut.Left.Millimeters,
                "mm",
                Aims
            );
        }

        return working;
    }

    private static CutPlan Nothing(CutProblem problem, int? first) => new([], 0, [], BoundsOf(problem, first));

    private static CutBounds BoundsOf(CutProblem problem, int? first) =>
        new(
            problem.Types.Count == 0 ? 0 : LowerBounds.ByMaterial(problem.Material, problem.Stock) ?? 0,
            problem.Types.Count == 0 ? 0 : LowerBounds.ByLargeItems(problem.Lengths, problem.Longest),
            first
        );

    private static CutPlan Print(CutProblem problem, IReadOnlyList<Load> loads, IReadOnlyList<CutAim> aims, int? first)
    {
        var bands = problem.Classes.Select(c => new Queue<string>(c.Bands)).ToArray();
        var codes = problem.Types.Select(t => new Queue<string>(t.Codes)).ToArray();
        var parts = problem.LongBands.Select((_, j) => loads.Count(l => l.Pieces.ContainsKey(j))).ToArray();
        var part = new int[parts.Length];
        var cuts = new List<StockCut>();
        foreach (var load in loads.OrderBy(l => l.Type))
        {
            var type = problem.Types[load.Type];
            List<CutPiece> pieces =
            [
                .. load
                    .Pieces.OrderBy(p => p.Key)
                    .Select(p => new CutPiece(
                        problem.LongBands[p.Key].Code,
                        ++part[p.Key],
                        parts[p.Key],
                        Millimetres(p.Value)
                    )),
            ];
            for (var c = 0; c < load.Counts.Length; c++)
            {
                for (var n = 0; n < load.Counts[c]; n++)
                {
                    pieces.Add(new(bands[c].Dequeue(), 1, 1, Millimetres(problem.Classes[c].Length - problem.Kerf)));
                }
            }

            var total = pieces.Sum(p => (long)Math.Round(p.Length.Millimeters * 10) + problem.Kerf);
            var left = Millimetres(problem.Left(type, total));
            cuts.Add(
                new(codes[load.Type].Dequeue(), Millimetres(type.Length - problem.Kerf), type.Remnant, pieces, left)
            );
        }

        return new(cuts, parts.Sum(n => n - 1), aims, BoundsOf(problem, first));
    }

    private static double Mm(long tenths) => tenths / 10.0;

    private static Length Millimetres(long tenths) => Length.FromMillimeters(tenths / 10.0);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
