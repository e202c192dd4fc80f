namespace RepairOrders.Engineering.Cutting;

/// <summary>
/// Every way to fill a stock length, as paths from 0 through the lengths cut so far, the longer bands first. After Valério de
/// Carvalho, Annals of Operations Research 86 (1999) 629–659.
/// </summary>
internal sealed class PathGraph
{
    // Beyond this the solver spends its time building; plans that large have many bands to a stock length and are easy anyway.
    private const int MostArcs = 40_000;

    private PathGraph(List<(long From, long To, int Class)> arcs, List<long> ends)
    {
        Arcs = arcs;
        Ends = ends;
    }

    public IReadOnlyList<(long From, long To, int Class)> Arcs { get; }

    public IReadOnlyList<long> Ends { get; }

    /// <summary>The graph; nothing where it grows too large.</summary>
    public static PathGraph? Of(CutProblem problem)
    {
        var reached = new SortedSet<long> { 0 };
        var arcs = new List<(long, long, int)>();
        for (var c = 0; c < problem.Classes.Count; c++)
        {
            var starts = new HashSet<long>();
            var from = reached.ToList();
            for (var n = 0; n < problem.Classes[c].Bands.Count && from.Count > 0; n++)
            {
                from = Extend(problem, c, from, starts, arcs);
                if (arcs.Count + reached.Count * problem.Types.Count > MostArcs)
                {
                    return null;
                }
            }

            reached.UnionWith(starts.Select(s => s + problem.Classes[c].Length).Where(s => s <= problem.Longest));
        }

        reached.Remove(0);
        return new(arcs, [.. reached]);
    }

    private static List<long> Extend(
        CutProblem problem,
        int c,
        List<long> from,
        HashSet<long> starts,
        List<(long, long, int)> arcs
    )
    {
        var next = new List<long>();
        foreach (var start in from)
        {
            var end = start + problem.Classes[c].Length;
            if (starts.Add(start) && end <= problem.Longest)
            {
                arcs.Add((start, end, c));
                next.Add(end);
            }
        }

        return next;
    }
}
