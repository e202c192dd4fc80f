namespace RepairOrders.Engineering.Cutting;

/// <summary>
/// Fills one stock length after the other as full as it will go, and leaves what is over in the last: seldom far from the longest
/// single remnant. After the minimum-bin-slack idea of Gupta and Ho, Production Planning and Control 10 (1999) 598–603.
/// </summary>
internal static class FullestFirst
{
    // One table entry for each tenth of a millimetre; beyond 200 m the table costs more than it is worth.
    private const long LongestTable = 2_000_000;

    /// <summary>A plan that cuts the given stock types in this order, one length of each entry.</summary>
    /// <returns>The plan, without stock that stayed whole; nothing where bands are left over or it does not apply.</returns>
    public static IReadOnlyList<Load>? Plan(CutProblem problem, IEnumerable<int> types)
    {
        if (problem.LongBands.Count > 0)
        {
            return null;
        }

        var left = problem.Classes.Select(c => c.Bands.Count).ToArray();
        var loads = new List<Load>();
        foreach (var type in types)
        {
            if (Fill(problem, problem.Types[type].Length, left) is not { } counts)
            {
                return null;
            }

            if (counts.Sum() > 0)
            {
                loads.Add(new(type, counts, new Dictionary<int, long>()));
            }

            for (var c = 0; c < left.Length; c++)
            {
                left[c] -= counts[c];
            }
        }

        return left.Sum() == 0 ? loads : null;
    }

    private static int[]? Fill(CutProblem problem, long length, int[] left)
    {
        if (left.Select((n, c) => n * problem.Classes[c].Length).Sum() <= length)
        {
            return [.. left];
        }

        return length > LongestTable ? null : Fullest(problem, (int)length, left);
    }

    // Sums that can be reached, the longer bands first, so that the short ones are left to fill the next.
    private static int[] Fullest(CutProblem problem, int length, int[] left)
    {
        var last = new short[length + 1];
        var times = new int[length + 1];
        Array.Fill(last, (short)-1);
        last[0] = short.MaxValue;
        for (short c = 0; c < left.Length; c++)
        {
            Array.Clear(times);
            var l = (int)Math.Min(problem.Classes[c].Length, int.MaxValue);
            for (var sum = l; left[c] > 0 && sum <= length; sum++)
            {
                if (last[sum] < 0 && last[sum - l] >= 0 && times[sum - l] < left[c])
                {
                    last[sum] = c;
                    times[sum] = times[sum - l] + 1;
                }
            }
        }

        var counts = new int[left.Length];
        var at = Array.FindLastIndex(last, c => c >= 0);
        while (at > 0)
        {
            counts[last[at]]++;
            at -= (int)problem.Classes[last[at]].Length;
        }

        return counts;
    }
}
