namespace RepairOrders.Engineering.Cutting;

/// <summary>First-fit-decreasing: a plan at once, never far from the best, and the solver's first guess.</summary>
internal static class FirstFit
{
    /// <summary>A plan that opens the longest stock first; nothing where it runs out.</summary>
    public static IReadOnlyList<Load>? Plan(CutProblem problem)
    {
        var shelf = new Shelf(problem);
        // Splices last: they take any length, the others do not.
        return PlaceAll(problem, shelf) && Enumerable.Range(0, problem.LongBands.Count).All(shelf.Splice)
            ? shelf.Loads
            : null;
    }

    private static bool PlaceAll(CutProblem problem, Shelf shelf)
    {
        for (var c = 0; c < problem.Classes.Count; c++)
        {
            for (var n = 0; n < problem.Classes[c].Bands.Count; n++)
            {
                if (!shelf.Place(c))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private sealed class Shelf(CutProblem problem)
    {
        private readonly int[] left = [.. problem.Types.Select(t => t.Codes.Count)];
        private readonly List<(int Type, long Room, int[] Counts, Dictionary<int, long> Pieces)> open = [];

        public IReadOnlyList<Load> Loads => [.. open.Select(o => new Load(o.Type, o.Counts, o.Pieces))];

        public bool Place(int c)
        {
            var length = problem.Classes[c].Length;
            var i = open.FindIndex(o => o.Room >= length);
            if (i < 0 && (i = Open()) < 0 || open[i].Room < length)
            {
                return false;
            }

            open[i].Counts[c]++;
            open[i] = open[i] with { Room = open[i].Room - length };
            return true;
        }

        public bool Splice(int j)
        {
            var need = problem.LongBands[j].Length;
            while (need > 0)
            {
                var i = RoomFor(j, need);
                var room = i < 0 ? 0 : open[i].Room - problem.Kerf;
                var piece = Math.Min(need, room);
                // The rest must be long enough to be a piece of its own.
                if (need > piece && need - piece + problem.Overlap < problem.LeastPiece)
                {
                    piece = need + problem.Overlap - problem.LeastPiece;
                }

                if (piece < need && (piece < problem.LeastPiece || piece <= problem.Overlap))
                {
                    return false;
                }

                open[i].Pieces[j] = piece;
                open[i] = open[i] with { Room = open[i].Room - piece - problem.Kerf };
                need -= piece == need ? piece : piece - problem.Overlap;
            }

            return true;
        }

        // Where it fits in one piece; else a fresh length; else the roomiest of those that hold no piece of this band yet.
        private int RoomFor(int j, long need)
        {
            var i = open.FindIndex(o => o.Room >= need + problem.Kerf && !o.Pieces.ContainsKey(j));
            if (i >= 0 || (i = Open()) >= 0)
            {
                return i;
            }

            var free = open.Where(o => !o.Pieces.ContainsKey(j)).ToList();
            return free.Count == 0 ? -1 : open.IndexOf(free.MaxBy(o => o.Room));
        }

        private int Open()
        {
            var type = Array.FindIndex(left, n => n > 0);
            if (type < 0)
            {
                return -1;
            }

            left[type]--;
            open.Add((type, problem.Types[type].Length, new int[problem.Classes.Count], []));
            return open.Count - 1;
        }
    }
}
