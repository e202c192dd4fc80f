namespace RepairOrders.Engineering.Cutting;

/// <summary>Bounds on how few stock lengths can do. Lengths are whole numbers of one unit, 0.1 mm in a cut plan.</summary>
public static class LowerBounds
{
    /// <summary>Fewest stock lengths by material: the longest ones that together hold the sum.</summary>
    /// <remarks>
    /// <para>Formula: L1 = least k with S1 + … + Sk ≥ Σ l, stock in falling order; ⌈Σ l/S⌉ for one stock length.</para>
    /// <para>Symbols: l lengths to be cut, with kerf; S stock lengths, with one kerf each.</para>
    /// <para>Validity: any mixture of stock.</para>
    /// <para>Reference: Martello, Toth, Knapsack Problems (1990), chapter 8.</para>
    /// </remarks>
    /// <param name="lengths">Lengths to be cut.</param>
    /// <param name="stock">Every stock length there is.</param>
    /// <returns>Fewest stock lengths; nothing where all of it is too little.</returns>
    /// <example>50 lengths that sum to 2436 from 100: 25.</example>
    public static int? ByMaterial(IEnumerable<long> lengths, IEnumerable<long> stock)
    {
        var need = lengths.Sum();
        var k = 0;
        foreach (var S in stock.OrderDescending())
        {
            if (need <= 0)
            {
                break;
            }

            need -= S;
            k++;
        }

        return need <= 0 ? k : null;
    }

    /// <summary>Fewest stock lengths by lengths too long to share one: the bound L2 of Martello and Toth.</summary>
    /// <remarks>
    /// <para>Formula: L2 = max over a ≤ S/2 of |J1| + |J2| + max(0, ⌈(Σ J3 − (|J2|·S − Σ J2))/S⌉); J1: l &gt; S − a, J2: S − a ≥ l &gt; S/2, J3: S/2 ≥ l ≥ a.</para>
    /// <para>Symbols: l lengths to be cut, with kerf; S stock length, with one kerf; a a trial length.</para>
    /// <para>Validity: one stock length. With mixed stock the longest gives a true, weaker bound.</para>
    /// <para>Reference: Martello, Toth, Discrete Applied Mathematics 28 (1990) 59–70.</para>
    /// </remarks>
    /// <param name="lengths">Lengths to be cut, none longer than <paramref name="longest"/>.</param>
    /// <param name="longest">The longest stock length.</param>
    /// <returns>Fewest stock lengths.</returns>
    /// <example>60, 60, 50, 50, 40 from 100: the two of 60 and, since only one 40 fits beside them, one more for the 50s: 3.</example>
    public static int ByLargeItems(IReadOnlyCollection<long> lengths, long longest)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        return lengths.Where(l => 2 * l <= longest).Append(0).Distinct().Max(a => At(a, lengths, longest));
    }

    private static int At(long a, IReadOnlyCollection<long> lengths, long S)
    {
        var alone = lengths.Count(l => l > S - a);
        var large = lengths.Where(l => l <= S - a && 2 * l > S).ToList();
        var small = lengths.Where(l => 2 * l <= S && l >= a).Sum();
        var over = small - (large.Count * S - large.Sum());
        return alone + large.Count + (int)Math.Max(0, (over + S - 1) / S);
    }
}
