using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>A wall of a size, by its schedule or weight.</summary>
/// <param name="Schedule">As printed: <c>40</c>, <c>10S</c>, <c>STD</c>, <c>XXS</c>.</param>
/// <param name="Wall">Nominal wall.</param>
public sealed record ScheduleWall(string Schedule, Length Wall);

/// <summary>One pipe size with all its listed walls. A wall that is not here is not listed; none is ever interpolated.</summary>
/// <param name="Nps">Nominal pipe size as printed: <c>2-1/2</c>. It is a label; it is not the diameter below NPS 14.</param>
/// <param name="Dn">Nominal diameter DN, a label too.</param>
/// <param name="OutsideDiameter">Outside diameter of ASME B36.10M.</param>
/// <param name="StainlessOutsideDiameter">Outside diameter of ASME B36.19M; nothing where the size is not listed there.</param>
/// <param name="EnOutsideDiameter">Outside diameter of EN 10220; nothing where the size is not listed there.</param>
/// <param name="EnSeries">Series of EN 10220, 1 to 3.</param>
/// <param name="Walls">The listed walls.</param>
public sealed record PipeSize(
    string Nps,
    int Dn,
    Length OutsideDiameter,
    Length? StainlessOutsideDiameter,
    Length? EnOutsideDiameter,
    int? EnSeries,
    IReadOnlyList<ScheduleWall> Walls
)
{
    /// <summary>Finds a wall by schedule.</summary>
    /// <param name="schedule">Schedule or weight, in either case, with or without <c>Sch</c>.</param>
    /// <returns>The wall; nothing where the combination is not listed.</returns>
    public ScheduleWall? Wall(string schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        var wanted = schedule.Trim().ToUpperInvariant().Replace("SCH", "", StringComparison.Ordinal).Trim(' ', '.');
        return Walls.FirstOrDefault(w => w.Schedule == wanted);
    }
}

/// <summary>An outside diameter of one family of pipe.</summary>
/// <param name="Family">The standard or family: <c>ISO 2531 / EN 545 ductile iron</c>.</param>
/// <param name="Size">The size as the family labels it.</param>
/// <param name="OutsideDiameter">Outside diameter.</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record FamilyDiameter(string Family, string Size, Length OutsideDiameter, Clause Source);

/// <summary>A listed diameter near a measured one.</summary>
/// <param name="Listed">The listed diameter.</param>
/// <param name="Difference">Measured less listed.</param>
public sealed record DiameterMatch(FamilyDiameter Listed, Length Difference);
