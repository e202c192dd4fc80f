using System.Globalization;
using UnitsNet;

namespace RepairOrders.Engineering.Cutting;

// Bands of one length are one class, stock of one length and kind is one type: what is alike must not be told apart, or the
// solver tries every order of it. All lengths are whole tenths of a millimetre with a kerf added to every band and every stock,
// because the last cut of a stock length needs none.
internal sealed class CutProblem
{
    private CutProblem(
        IReadOnlyList<BandClass> classes,
        IReadOnlyList<LongBand> longBands,
        IReadOnlyList<StockType> types
    )
    {
        Classes = classes;
        LongBands = longBands;
        Types = types;
    }

    /// <summary>Bands that fit a stock length, the longest first.</summary>
    public IReadOnlyList<BandClass> Classes { get; }

    /// <summary>Bands that may be spliced: those longer than any stock or, where nothing else will do, any that can be.</summary>
    public IReadOnlyList<LongBand> LongBands { get; }

    /// <summary>Available stock, the longest first.</summary>
    public IReadOnlyList<StockType> Types { get; }

    public long Kerf { get; private init; }

    public long Overlap { get; private init; }

    public long LeastPiece { get; private init; }

    public long LeastRemnant { get; private init; }

    public long Longest => Types[0].Length;

    public IReadOnlyCollection<long> Lengths =>
        [.. Classes.SelectMany(c => Enumerable.Repeat(c.Length, c.Bands.Count))];

    /// <summary>Lengths that are cut at the least, each spliced band as one with its splices and their kerfs.</summary>
    public IEnumerable<long> Material =>
        Lengths.Concat(LongBands.Select(b => b.Length + LeastSplices(b) * (Overlap + Kerf) + Kerf));

    public IEnumerable<long> Stock => Types.SelectMany(t => Enumerable.Repeat(t.Length, t.Codes.Count));

    public long Left(StockType type, long load) => Math.Max(0, type.Length - load - Kerf);

    public long LeastSplices(LongBand band)
    {
        var longest = Longest - Kerf;
        return band.Length <= longest ? 0 : (band.Length - Overlap + (longest - Overlap) - 1) / (longest - Overlap) - 1;
    }

    public static CutProblem Of(
        IReadOnlyList<Band> bands,
        IReadOnlyList<StockLength> stock,
        CutRules rules,
        bool spliceAny
    )
    {
        var kerf = Tenths("kerfMm", rules.Kerf, 0, 100);
        var overlap = Tenths("spliceOverlapMm", rules.SpliceOverlap, 0, 10_000);
        var types = stock
            .Select((s, i) => (s, i))
            .Where(x => x.s.Available)
            .SelectMany(x =>
                Enumerable.Repeat((x.s.Code, x.s.Remnant, Length: Floor(x.s, x.i) + kerf), Count(x.s, x.i))
            )
            .GroupBy(u => (u.Length, u.Remnant))
            .OrderByDescending(g => g.Key.Length)
            .ThenByDescending(g => g.Key.Remnant)
            .Select(g => new StockType(g.Key.Length, g.Key.Remnant, [.. g.Select(u => u.Code)]))
            .ToList();
        var longest = types.Count == 0 ? 0 : types[0].Length;
        var least = rules.LeastPiece is { } p ? Tenths("leastPieceMm", p, 0, 1e6) : 2 * overlap;
        var cut = bands.Select((b, i) => (b.Code, Length: Ceiling(b, i))).ToLookup(b => Splice(b.Length));
        var classes = cut[false]
            .GroupBy(b => b.Length)
            .OrderByDescending(g => g.Key)
            .Select(g => new BandClass(g.Key + kerf, [.. g.Select(b => b.Code)]))
            .ToList();
        var longBands = cut[true].Select(b => new LongBand(b.Code, b.Length)).ToList();
        bool Splice(long length) => length + kerf > longest || (spliceAny && length >= 2 * least - overlap);
        return new(classes, longBands, types)
        {
            Kerf = kerf,
            Overlap = overlap,
            LeastPiece = least,
            LeastRemnant = rules.LeastRemnant is { } r ? Tenths("leastRemnantMm", r, 0, 1e6) : 0,
        };
    }

    private static long Ceiling(Band band, int i)
    {
        var mm = band.Length.Millimeters;
        var field = string.Create(CultureInfo.InvariantCulture, $"bands[{i}].lengthMm");
        Require.Positive(field, mm);
        // A millionth of a millimetre is rounding, not length.
        return (long)Math.Ceiling(Require.Between(field, mm, 0, 1e6) * 10 - 1e-5);
    }

    private static long Floor(StockLength stock, int i)
    {
        var field = string.Create(CultureInfo.InvariantCulture, $"stock[{i}].lengthMm");
        Require.Positive(field, stock.Length.Millimeters);
        return (long)Math.Floor(Require.Between(field, stock.Length.Millimeters, 0, 1e7) * 10 + 1e-5);
    }

    private static int Count(StockLength stock, int i) =>
        (int)Require.Between(string.Create(CultureInfo.InvariantCulture, $"stock[{i}].count"), stock.Count, 0, 1000);

    private static long Tenths(string field, Length length, double least, double greatest) =>
        (long)Math.Ceiling(Require.Between(field, length.Millimeters, least, greatest) * 10 - 1e-5);
}

internal sealed record BandClass(long Length, IReadOnlyList<string> Bands);

internal sealed record LongBand(string Code, long Length);

internal sealed record StockType(long Length, bool Remnant, IReadOnlyList<string> Codes);

/// <summary>What is cut from one stock length: bands of each class, and pieces of long bands (band index to length without kerf).</summary>
internal sealed record Load(int Type, int[] Counts, IReadOnlyDictionary<int, long> Pieces);
