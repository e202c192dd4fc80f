using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>One wall reading at one place.</summary>
/// <param name="On">Day of the reading.</param>
/// <param name="Wall">Wall read; zero where the wall is through.</param>
/// <param name="Place">The spot measured; only readings of one spot give a rate.</param>
/// <param name="Instrument">Kind of probe; a change of probe is told.</param>
/// <param name="IsAverage">An average over an area; of no use where the damage is pitting.</param>
public sealed record WallReading(DateOnly On, Length Wall, string Place, string Instrument, bool IsAverage = false);

/// <summary>What is known of a wall over time.</summary>
/// <param name="Readings">Readings in any order; at least one.</param>
/// <param name="NominalWall">Wall as ordered.</param>
/// <param name="Commissioned">Day the pipe began to corrode; nothing where it is not known.</param>
/// <param name="Pitting">The damage is pitting: averages are left out.</param>
/// <param name="ThroughWall">The spot has leaked through.</param>
/// <param name="Floor">Least rate to reckon with; nothing takes <see cref="CorrosionRate.DefaultFloor"/>.</param>
public sealed record WallHistory(
    IReadOnlyList<WallReading> Readings,
    Length NominalWall,
    DateOnly? Commissioned,
    bool Pitting,
    bool ThroughWall,
    Speed? Floor = null
);

/// <summary>What a rate rests on.</summary>
public enum RateBasis
{
    /// <summary>Nothing measured gives a rate.</summary>
    Unknown,

    /// <summary>First reading to last.</summary>
    LongTerm,

    /// <summary>Last reading but one to last.</summary>
    ShortTerm,

    /// <summary>Whole nominal wall over the pipe's age, since it leaked through.</summary>
    ThroughWall,

    /// <summary>The floor: what was measured is less.</summary>
    Floor,
}

/// <summary>Corrosion rates of one spot and the one to reckon with.</summary>
/// <param name="Place">The spot.</param>
/// <param name="Actual">Last wall read there.</param>
/// <param name="ActualOn">Day of that reading.</param>
/// <param name="LongTerm">Long-term rate as measured, which may be negative; nothing where it cannot be had.</param>
/// <param name="ShortTerm">Short-term rate as measured, which may be negative; nothing where it cannot be had.</param>
/// <param name="Governing">The rate to reckon with, never below the floor; nothing where no rate can be had.</param>
/// <param name="Basis">What the governing rate rests on.</param>
public sealed record CorrosionRates(
    string Place,
    Length Actual,
    DateOnly ActualOn,
    Speed? LongTerm,
    Speed? ShortTerm,
    Speed? Governing,
    RateBasis Basis
);
