using UnitsNet;

namespace RepairOrders.Engineering.Cutting;

/// <summary>A band to be cut.</summary>
/// <param name="Code">Whose band it is, as the plan prints it.</param>
/// <param name="Length">Cut length, with overlap and tail.</param>
public sealed record Band(string Code, Length Length);

/// <summary>Lengths of band in store that are alike.</summary>
/// <param name="Code">What the store calls them.</param>
/// <param name="Length">Length of one.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Remnant">Left over from earlier work; a coil is not.</param>
/// <param name="Available">They may be cut today: not reserved, not quarantined.</param>
public sealed record StockLength(string Code, Length Length, int Count, bool Remnant, bool Available = true);

/// <summary>How the saw and the splice work.</summary>
/// <param name="Kerf">What one cut takes away.</param>
/// <param name="SpliceOverlap">By how much two pieces of one band overlap at a splice.</param>
/// <param name="LeastPiece">The shortest piece that may be spliced; nothing for twice the overlap.</param>
/// <param name="LeastRemnant">The shortest remnant worth keeping; nothing for any.</param>
public sealed record CutRules(
    Length Kerf,
    Length SpliceOverlap,
    Length? LeastPiece = null,
    Length? LeastRemnant = null
);

/// <summary>A piece of the plan.</summary>
/// <param name="Band">The band's code.</param>
/// <param name="Part">Which part of the band, from 1.</param>
/// <param name="Parts">Of how many; more than 1 for a spliced band.</param>
/// <param name="Length">Its length, overlap included.</param>
public sealed record CutPiece(string Band, int Part, int Parts, Length Length);

/// <summary>One stock length and what is cut from it.</summary>
/// <param name="Stock">The code of the stock.</param>
/// <param name="Length">Its length.</param>
/// <param name="Remnant">It is a remnant of earlier work.</param>
/// <param name="Pieces">Pieces in the order of cutting.</param>
/// <param name="Left">What is left of it.</param>
public sealed record StockCut(string Stock, Length Length, bool Remnant, IReadOnlyList<CutPiece> Pieces, Length Left);

/// <summary>One aim of the plan, how near it came, and whether nothing better is possible.</summary>
/// <param name="Code"><c>stock-lengths</c>, <c>splices</c>, <c>coils-opened</c> or <c>longest-remnant</c>.</param>
/// <param name="Words">The aim in words.</param>
/// <param name="Value">What the plan reaches.</param>
/// <param name="Bound">What no plan can pass, with the aims before it kept.</param>
/// <param name="Unit">Unit of both: <c>-</c> or <c>mm</c>.</param>
public sealed record CutAim(string Code, string Words, double Value, double Bound, string Unit)
{
    /// <summary>Nothing better is possible.</summary>
    public bool Proven => Value == Bound;
}

/// <summary>Bounds on the number of stock lengths, to see how good a plan is without trusting the solver.</summary>
/// <param name="ByMaterial">L1: no plan needs fewer, by the sum of the lengths.</param>
/// <param name="ByLargeItems">L2 of Martello and Toth: no plan needs fewer, by bands too long to share.</param>
/// <param name="FirstFit">What first-fit-decreasing reaches; nothing where it finds no plan.</param>
public sealed record CutBounds(int ByMaterial, int ByLargeItems, int? FirstFit);

/// <summary>A cut plan.</summary>
/// <param name="Cuts">One entry for each stock length used; empty where no plan was found.</param>
/// <param name="Splices">Splices in all bands together.</param>
/// <param name="Aims">The aims in their order; each holds those before it fixed.</param>
/// <param name="Bounds">Bounds on the number of stock lengths.</param>
public sealed record CutPlan(IReadOnlyList<StockCut> Cuts, int Splices, IReadOnlyList<CutAim> Aims, CutBounds Bounds)
{
    /// <summary>A plan was found.</summary>
    public bool Found => Cuts.Count > 0;

    /// <summary>Every aim is proved the best possible.</summary>
    public bool Proven => Found && Aims.All(a => a.Proven);

    /// <summary>The longest remnant of the stock that is cut.</summary>
    public Length LongestRemnant =>
        Length.FromMillimeters(Cuts.Select(c => c.Left.Millimeters).DefaultIfEmpty(0).Max());
}
