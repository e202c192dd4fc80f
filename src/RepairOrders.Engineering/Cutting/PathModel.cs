using Google.OrTools.Sat;

namespace RepairOrders.Engineering.Cutting;

/// <summary>Stock lengths as units of flow through the graph of partly cut lengths: what is alike is one variable.</summary>
internal sealed class PathModel : CutModel
{
    private readonly CutProblem problem;
    private readonly PathGraph graph;
    private readonly IntVar[] flow;
    private readonly List<(long End, int Type, IntVar Used)> ends = [];

    public PathModel(CutProblem problem, PathGraph graph)
    {
        this.problem = problem;
        this.graph = graph;
        flow = [.. graph.Arcs.Select(a => Model.NewIntVar(0, problem.Classes[a.Class].Bands.Count, ""))];
        foreach (var end in graph.Ends)
        {
            for (var t = 0; t < problem.Types.Count && problem.Types[t].Length >= end; t++)
            {
                ends.Add((end, t, Model.NewIntVar(0, problem.Types[t].Codes.Count, "")));
            }
        }

        Conserve();
        Limit();
    }

    public override LinearExpr StockLengths => LinearExpr.Sum(ends.Select(e => e.Used));

    public override LinearExpr CoilsOpened =>
        LinearExpr.Sum(ends.Where(e => !problem.Types[e.Type].Remnant).Select(e => e.Used));

    public override LinearExpr Splices => LinearExpr.Constant(0);

    public override LinearExpr KeepOneRemnant()
    {
        var remnants = ends.Select(e => (Left: problem.Left(problem.Types[e.Type], e.End), e.Used))
            .Where(r => r.Left > 0 && r.Left >= problem.LeastRemnant)
            .Select(r => (r.Left, r.Used, Kept: Model.NewBoolVar("")))
            .ToList();
        foreach (var (_, used, kept) in remnants)
        {
            Model.Add(kept <= used);
        }

        Model.Add(LinearExpr.Sum(remnants.Select(r => r.Kept)) <= 1);
        return LinearExpr.WeightedSum(remnants.Select(r => r.Kept), remnants.Select(r => r.Left));
    }

    public override void Hint(IReadOnlyList<Load> plan)
    {
        var arcs = graph.Arcs.Select((a, i) => (a, i)).ToDictionary(x => (x.a.From, x.a.Class), x => x.i);
        var onArc = new int[flow.Length];
        var atEnd = new Dictionary<(long, int), int>();
        foreach (var load in plan)
        {
            var at = 0L;
            for (var c = 0; c < load.Counts.Length; c++)
            {
                for (var n = 0; n < load.Counts[c]; n++, at += problem.Classes[c].Length)
                {
                    onArc[arcs[(at, c)]]++;
                }
            }

            atEnd[(at, load.Type)] = atEnd.GetValueOrDefault((at, load.Type)) + 1;
        }

        Model.ClearHints();
        for (var i = 0; i < flow.Length; i++)
        {
            Model.AddHint(flow[i], onArc[i]);
        }

        foreach (var (end, type, used) in ends)
        {
            Model.AddHint(used, atEnd.GetValueOrDefault((end, type)));
        }
    }

    public override IReadOnlyList<Load> Read(CpSolver solver)
    {
        var rest = flow.Select(solver.Value).ToArray();
        var out_ = graph.Arcs.Select((a, i) => (a, i)).ToLookup(x => x.a.From, x => x.i);
        var stops = ends.Select(e => (e.End, e.Type, Count: solver.Value(e.Used))).Where(e => e.Count > 0).ToList();
        var byEnd = stops
            .GroupBy(e => e.End)
            .ToDictionary(g => g.Key, g => new Queue<int>(g.SelectMany(e => Enumerable.Repeat(e.Type, (int)e.Count))));
        var loads = new List<Load>();
        for (var n = byEnd.Values.Sum(q => q.Count); n > 0; n--)
        {
            var counts = new int[problem.Classes.Count];
            var at = 0L;
            for (var next = Next(at); next >= 0; next = Next(at))
            {
                rest[next]--;
                counts[graph.Arcs[next].Class]++;
                at = graph.Arcs[next].To;
            }

            loads.Add(new(byEnd[at].Dequeue(), counts, new Dictionary<int, long>()));
        }

        return loads;

        // Flow that does not go on ends here: conservation keeps the two apart whatever the order of the walks.
        int Next(long at)
        {
            foreach (var i in out_[at])
            {
                if (rest[i] > 0)
                {
                    return i;
                }
            }

            return -1;
        }
    }

    private void Conserve()
    {
        var arcs = graph.Arcs.Select((a, i) => (a, i)).ToList();
        var into = arcs.ToLookup(x => x.a.To, x => flow[x.i]);
        var from = arcs.ToLookup(x => x.a.From, x => flow[x.i]);
        var stop = ends.ToLookup(e => e.End, e => e.Used);
        foreach (var node in graph.Ends)
        {
            Model.Add(LinearExpr.Sum(into[node]) == LinearExpr.Sum(from[node].Concat(stop[node])));
        }

        foreach (var c in arcs.GroupBy(x => x.a.Class))
        {
            Model.Add(LinearExpr.Sum(c.Select(x => flow[x.i])) == problem.Classes[c.Key].Bands.Count);
        }
    }

    private void Limit()
    {
        foreach (var type in ends.GroupBy(e => e.Type))
        {
            Model.Add(LinearExpr.Sum(type.Select(e => e.Used)) <= problem.Types[type.Key].Codes.Count);
        }
    }
}
