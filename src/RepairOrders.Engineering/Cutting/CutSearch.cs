using System.Diagnostics;
using System.Globalization;
using Google.OrTools.Sat;

namespace RepairOrders.Engineering.Cutting;

/// <summary>One aim after the other; each is held at what it reached while the next is sought.</summary>
internal sealed class CutSearch
{
    // What is left of the time goes to the aim at hand, save this share for those after it.
    private const double Share = 0.7;

    // A longer remnant is worth no more of anybody's time.
    private const double MostForRemnant = 2;

    private readonly Stopwatch watch = Stopwatch.StartNew();
    private readonly TimeSpan limit;
    private readonly CutProblem problem;
    private readonly CutModel model;
    private readonly List<CutAim> reached = [];
    private IReadOnlyList<Load>? best;
    private double work;

    public CutSearch(CutProblem problem, IReadOnlyList<Load>? first, TimeSpan limit)
    {
        this.problem = problem;
        this.limit = limit;
        best = first;
        var pieces = problem.LongBands.Sum(b => 2 * (int)problem.LeastSplices(b) + 2);
        model = CutModel.Of(problem, first?.Count ?? problem.Lengths.Count + pieces);
        // The solver counts its own work, the same on every machine: that ends the search. The clock only guards against a
        // machine too slow to do that work in the time.
        work = limit.TotalSeconds / 2;
    }

    public IReadOnlyList<CutAim> Reached => reached;

    public bool Impossible { get; private set; }

    public bool StoppedByClock { get; private set; }

    public IReadOnlyList<Load>? Run()
    {
        FewestStockLengths();
        if (best is not null)
        {
            FewestSplices();
            FewestCoils(best);
            LongestRemnant(best);
        }

        return best;
    }

    private void FewestStockLengths()
    {
        Try(FullestFirst.Plan(problem, Units(_ => true).Take(best?.Count ?? problem.Lengths.Count)), Used);
        var fewest = Math.Max(
            LowerBounds.ByMaterial(problem.Material, problem.Stock)!.Value,
            LowerBounds.ByLargeItems(problem.Lengths, problem.Longest)
        );
        Least("stock-lengths", "Stock lengths used", model.StockLengths, Used, fewest);
    }

    private void FewestSplices()
    {
        if (problem.LongBands.Count > 0)
        {
            Least("splices", "Splices", model.Splices, Splices, problem.LongBands.Sum(problem.LeastSplices));
        }
    }

    private void FewestCoils(IReadOnlyList<Load> plan)
    {
        var remnants = Units(t => t.Remnant).Take(plan.Count).ToList();
        var coils = Units(t => !t.Remnant).Take(plan.Count).ToList();
        if (remnants.Count == 0 || coils.Count == 0)
        {
            return;
        }

        for (var n = Math.Max(0, plan.Count - remnants.Count); n < Coils(plan); n++)
        {
            var chosen = remnants.Take(plan.Count - n).Concat(coils.Take(n)).OrderByDescending(t => t).ToList();
            if (FullestFirst.Plan(problem, chosen) is { } fuller && fuller.Count == plan.Count)
            {
                best = fuller;
                break;
            }
        }

        Least("coils-opened", "Coils opened", model.CoilsOpened, Coils, Math.Max(0, plan.Count - remnants.Count));
    }

    private void LongestRemnant(IReadOnlyList<Load> plan)
    {
        var types = (best ?? plan).Select(l => l.Type).OrderByDescending(t => t).ToList();
        foreach (var last in types.Distinct())
        {
            // All but one of a kind first, that one at the end.
            var order = types.ToList();
            order.Remove(last);
            Try(FullestFirst.Plan(problem, order.Append(last)), l => l.Count == types.Count ? -Kept(l) : long.MaxValue);
        }

        var bound = Over(plan.Count, Coils(best!));
        if (Kept(best!) < bound)
        {
            model.Model.Maximize(model.KeepOneRemnant());
            bound = Math.Min(bound, Solve(Math.Min(work, MostForRemnant), l => -Kept(l)) ?? bound);
        }

        var value = Kept(best!);
        reached.Add(new("longest-remnant", "Longest remnant, mm", value / 10.0, Math.Max(bound, value) / 10.0, "mm"));
    }

    // What is over altogether can at best be over in one place.
    private long Over(int lengths, long coils)
    {
        var stock = Units(t => !t.Remnant).Take((int)coils).Concat(Units(t => t.Remnant).Take(lengths - (int)coils));
        return Math.Max(0, stock.Sum(t => problem.Types[t].Length) - problem.Material.Sum() - problem.Kerf);
    }

    private void Try(IReadOnlyList<Load>? plan, Func<IReadOnlyList<Load>, long> worth)
    {
        if (plan is not null && (best is null || worth(plan) < worth(best)))
        {
            best = plan;
        }
    }

    private void Least(string code, string words, LinearExpr aim, Func<IReadOnlyList<Load>, long> worth, long floor)
    {
        var bound = floor;
        if (best is null || worth(best) > floor)
        {
            model.Model.Add(aim >= floor);
            model.Model.Minimize(aim);
            bound = Math.Max(floor, Solve(work * Share, worth) ?? floor);
        }

        if (best is not null)
        {
            var value = worth(best);
            reached.Add(new(code, words, value, Math.Min(bound, value), "-"));
            model.Model.Add(aim == value);
        }
    }

    // The best bound on the aim; nothing where the solver has none.
    private long? Solve(double most, Func<IReadOnlyList<Load>, long> worth)
    {
        var seconds = (limit - watch.Elapsed).TotalSeconds;
        if (most <= 0 || seconds <= 0)
        {
            StoppedByClock |= seconds <= 0;
            return null;
        }

        if (best is not null)
        {
            model.Hint(best);
        }

        using var solver = new CpSolver();
        solver.StringParameters = string.Create(
            CultureInfo.InvariantCulture,
            $"num_workers:1,random_seed:1,linearization_level:2,max_deterministic_time:{most},max_time_in_seconds:{seconds}"
        );
        var status = solver.Solve(model.Model);
        work -= solver.Response?.DeterministicTime ?? most;
        Impossible |= best is null && status == CpSolverStatus.Infeasible;
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
        {
            Try(model.Read(solver), worth);
        }

        StoppedByClock |= status != CpSolverStatus.Optimal && solver.WallTime() >= seconds;
        return status is CpSolverStatus.Infeasible or CpSolverStatus.ModelInvalid
            ? null
            : (long)Math.Round(solver.BestObjectiveBound);
    }

    private IEnumerable<int> Units(Func<StockType, bool> wanted) =>
        problem.Types.SelectMany((t, i) => wanted(t) ? Enumerable.Repeat(i, t.Codes.Count) : []);

    private static long Used(IReadOnlyList<Load> plan) => plan.Count;

    private long Splices(IReadOnlyList<Load> plan) => plan.Sum(l => l.Pieces.Count) - problem.LongBands.Count;

    private long Coils(IReadOnlyList<Load> plan) => plan.Count(l => !problem.Types[l.Type].Remnant);

    private long Kept(IReadOnlyList<Load> plan)
    {
        var longest = plan.Max(Left);
        return longest < problem.LeastRemnant ? 0 : longest;
    }

    private long Left(Load load)
    {
        var cut = load.Counts.Select((n, c) => n * problem.Classes[c].Length).Sum();
        return problem.Left(problem.Types[load.Type], cut + load.Pieces.Values.Sum(l => l + problem.Kerf));
    }
}
