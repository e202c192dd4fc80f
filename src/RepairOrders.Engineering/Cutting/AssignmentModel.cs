using Google.OrTools.Sat;

namespace RepairOrders.Engineering.Cutting;

/// <summary>
/// Bands against stock lengths one by one. A band longer than any stock has at most one piece from each: two could be one, with
/// an overlap less.
/// </summary>
internal sealed class AssignmentModel : CutModel
{
    private readonly CutProblem problem;
    private readonly int[] units;
    private readonly BoolVar[] used;
    private readonly IntVar[,] counts;
    private readonly IntVar[,] lengths;
    private readonly BoolVar[,] pieces;

    public AssignmentModel(CutProblem problem, int atMost)
    {
        this.problem = problem;
        units = [.. problem.Types.SelectMany((t, i) => Enumerable.Repeat(i, Math.Min(t.Codes.Count, atMost)))];
        used = [.. units.Select(_ => Model.NewBoolVar(""))];
        counts = new IntVar[problem.Classes.Count, units.Length];
        lengths = new IntVar[problem.LongBands.Count, units.Length];
        pieces = new BoolVar[problem.LongBands.Count, units.Length];
        CutEveryBand();
        SpliceLongBands();
        FillNoFurther();
    }

    public override LinearExpr StockLengths => LinearExpr.Sum(used);

    public override LinearExpr CoilsOpened => LinearExpr.Sum(used.Where((_, u) => !problem.Types[units[u]].Remnant));

    public override LinearExpr Splices => LinearExpr.Sum(pieces.Cast<BoolVar>()) - problem.LongBands.Count;

    public override LinearExpr KeepOneRemnant()
    {
        var remnant = Model.NewIntVar(0, problem.Longest, "");
        var kept = units.Select(_ => Model.NewBoolVar("")).ToArray();
        for (var u = 0; u < units.Length; u++)
        {
            var type = problem.Types[units[u]];
            Model.AddImplication(kept[u], used[u]);
            Model.Add(remnant + LoadOf(u) <= type.Length - problem.Kerf).OnlyEnforceIf(kept[u]);
        }

        var any = LinearExpr.Sum(kept);
        Model.Add(any <= 1);
        Model.Add(remnant <= problem.Longest * any);
        Model.Add(remnant >= problem.LeastRemnant * any);
        return remnant;
    }

    public override void Hint(IReadOnlyList<Load> plan)
    {
        Model.ClearHints();
        var byType = plan.GroupBy(l => l.Type)
            .ToDictionary(g => g.Key, g => new Queue<Load>(g.OrderByDescending(Total)));
        for (var u = 0; u < units.Length; u++)
        {
            var load = byType.GetValueOrDefault(units[u]) is { Count: > 0 } queue ? queue.Dequeue() : null;
            Model.AddHint(used[u], load is null ? 0 : 1);
            for (var c = 0; c < problem.Classes.Count; c++)
            {
                Model.AddHint(counts[c, u], load?.Counts[c] ?? 0);
            }

            for (var j = 0; j < problem.LongBands.Count; j++)
            {
                var length = load?.Pieces.GetValueOrDefault(j) ?? 0;
                Model.AddHint(lengths[j, u], length);
                Model.AddHint(pieces[j, u], length > 0 ? 1 : 0);
            }
        }
    }

    public override IReadOnlyList<Load> Read(CpSolver solver) =>
        [
            .. Enumerable
                .Range(0, units.Length)
                .Where(u => solver.BooleanValue(used[u]))
                .Select(u => new Load(
                    units[u],
                    [.. Enumerable.Range(0, problem.Classes.Count).Select(c => (int)solver.Value(counts[c, u]))],
                    Enumerable
                        .Range(0, problem.LongBands.Count)
                        .Where(j => solver.BooleanValue(pieces[j, u]))
                        .ToDictionary(j => j, j => solver.Value(lengths[j, u]))
                )),
        ];

    private long Total(Load load) =>
        load.Counts.Select((n, c) => n * problem.Classes[c].Length).Sum()
        + load.Pieces.Values.Sum(l => l + problem.Kerf);

    private void CutEveryBand()
    {
        for (var c = 0; c < problem.Classes.Count; c++)
        {
            var (length, bands) = problem.Classes[c];
            for (var u = 0; u < units.Length; u++)
            {
                var most = Math.Min(bands.Count, problem.Types[units[u]].Length / length);
                counts[c, u] = Model.NewIntVar(0, most, "");
            }

            Model.Add(LinearExpr.Sum(Row(counts, c)) == bands.Count);
        }
    }

    private void SpliceLongBands()
    {
        for (var j = 0; j < problem.LongBands.Count; j++)
        {
            for (var u = 0; u < units.Length; u++)
            {
                lengths[j, u] = Model.NewIntVar(0, problem.Types[units[u]].Length, "");
                pieces[j, u] = Model.NewBoolVar("");
                Model.Add(lengths[j, u] >= problem.LeastPiece * pieces[j, u]);
                Model.Add(lengths[j, u] <= problem.Types[units[u]].Length * pieces[j, u]);
            }

            var splices = LinearExpr.Sum(Row(pieces, j)) - 1;
            Model.Add(LinearExpr.Sum(Row(lengths, j)) == problem.LongBands[j].Length + problem.Overlap * splices);
            Model.Add(splices >= problem.LeastSplices(problem.LongBands[j]));
        }
    }

    private void FillNoFurther()
    {
        for (var u = 0; u < units.Length; u++)
        {
            Model.Add(LoadOf(u) <= problem.Types[units[u]].Length * used[u]);
            if (u > 0 && units[u] == units[u - 1])
            {
                Model.Add(LoadOf(u) <= LoadOf(u - 1));
            }
        }
    }

    private LinearExpr LoadOf(int u)
    {
        var sum = LinearExpr.WeightedSum(Column(counts, u), problem.Classes.Select(c => c.Length));
        return problem.LongBands.Count == 0
            ? sum
            : sum + LinearExpr.Sum(Column(lengths, u)) + problem.Kerf * LinearExpr.Sum(Column(pieces, u));
    }

    private static IEnumerable<T> Row<T>(T[,] table, int row) =>
        Enumerable.Range(0, table.GetLength(1)).Select(i => table[row, i]);

    private static IEnumerable<T> Column<T>(T[,] table, int column) =>
        Enumerable.Range(0, table.GetLength(0)).Select(i => table[i, column]);
}
