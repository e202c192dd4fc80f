using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>A pit, or several that count as one.</summary>
/// <param name="From">Where it begins along the pipe, from the first station.</param>
/// <param name="AxialLength">Its extent along the pipe, one spacing for a single reading.</param>
/// <param name="Around">Where it begins round the pipe, from the first place.</param>
/// <param name="CircumferentialLength">Its extent round the pipe, one spacing for a single reading.</param>
/// <param name="Depth">Greatest depth.</param>
/// <param name="Pits">How many separate pits are in it.</param>
public sealed record PitGroup(
    Length From,
    Length AxialLength,
    Length Around,
    Length CircumferentialLength,
    Length Depth,
    int Pits
);

public sealed partial class WallLossGrid
{
    private const double PitShare = 0.10;
    private const double Interaction = 3;

    /// <summary>Finds the pits, deeper than a tenth of the wall, and joins those that stand closer than three walls.</summary>
    /// <remarks>
    /// Two pits count as one where the sound metal between them is under 3 t both along and round the pipe, by ASME B31G-2009
    /// (from memory). A pit reaches half a spacing past its outermost readings. A grid that goes all the way round is joined
    /// across its edge.
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter.</param>
    /// <param name="referenceWall">Full wall from which the depth counts.</param>
    /// <returns>The groups, deepest first.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    public IReadOnlyList<PitGroup> Pits(Length outsideDiameter, Length referenceWall)
    {
        var (D, t) = Shell.Of(outsideDiameter, referenceWall, "referenceWallMm");
        var round = Places * Layout.CircumferentialSpacing.Millimeters >= 0.98 * Math.PI * D;
        var groups = Boxes(t, round);
        Join(groups, Interaction * t, round);
        return [.. groups.Select(Shown).OrderByDescending(g => g.Depth.Millimeters).ThenBy(g => g.From.Millimeters)];
    }

    // Readings that touch, corners too, are one pit.
    private List<Box> Boxes(double t, bool round)
    {
        var boxes = new List<Box>();
        var seen = new bool[Stations, Places];
        foreach (var cell in Read())
        {
            if (!seen[cell.Station, cell.Place] && IsPit(cell, t))
            {
                boxes.Add(Flood(cell, t, round, seen));
            }
        }
        return boxes;
    }

    private bool IsPit((int Station, int Place) cell, double t) => t - wall[cell.Station, cell.Place] > PitShare * t;

    // Places are counted on from the first cell, so that a pit across the edge of a full ring stays in one piece.
    private Box Flood((int Station, int Place) start, double t, bool round, bool[,] seen)
    {
        var box = new Box(start.Station, start.Station, start.Place, start.Place, 0, 1);
        var next = new Stack<(int Station, int Place)>([start]);
        seen[start.Station, start.Place] = true;
        while (next.TryPop(out var cell))
        {
            var place = Wrapped(cell.Place);
            box = box.With(cell.Station, cell.Place, t - wall[cell.Station, place]);
            foreach (var (s, p) in Neighbours(cell, round))
            {
                if (!seen[s, Wrapped(p)] && IsPit((s, Wrapped(p)), t))
                {
                    seen[s, Wrapped(p)] = true;
                    next.Push((s, p));
                }
            }
        }
        return box;
    }

    private IEnumerable<(int Station, int Place)> Neighbours((int Station, int Place) cell, bool round)
    {
        for (var s = Math.Max(0, cell.Station - 1); s <= Math.Min(Stations - 1, cell.Station + 1); s++)
        {
            for (var p = cell.Place - 1; p <= cell.Place + 1; p++)
            {
                if (round || (p >= 0 && p < Places))
                {
                    yield return (s, p);
                }
            }
        }
    }

    private int Wrapped(int place) => ((place % Places) + Places) % Places;

    private void Join(List<Box> boxes, double reach, bool round)
    {
        for (var i = 0; i < boxes.Count; i++)
        {
            var j = boxes.FindIndex(i + 1, other => Interact(boxes[i], other, reach, round));
            if (j < 0)
            {
                continue;
            }
            boxes[i] = boxes[i].Joined(Nearest(boxes[i], boxes[j], round));
            boxes.RemoveAt(j);
            i = -1; // the larger box may now reach one that it passed by
        }
    }

    private bool Interact(Box one, Box other, double reach, bool round)
    {
        var near = Nearest(one, other, round);
        var along =
            Gap(one.FirstStation, one.LastStation, other.FirstStation, other.LastStation)
            * Layout.AxialSpacing.Millimeters;
        var around =
            Gap(one.FirstPlace, one.LastPlace, near.FirstPlace, near.LastPlace)
            * Layout.CircumferentialSpacing.Millimeters;
        return along < reach && around < reach;
    }

    // On a full ring the other box is also one turn away on either side.
    private Box Nearest(Box one, Box other, bool round) =>
        round
            ? new[] { other, other.Turned(Places), other.Turned(-Places) }.MinBy(b =>
                Gap(one.FirstPlace, one.LastPlace, b.FirstPlace, b.LastPlace)
            )
            : other;

    private static double Gap(int first, int last, int otherFirst, int otherLast) =>
        Math.Max(0, Math.Max(otherFirst - last, first - otherLast) - 1);

    private PitGroup Shown(Box box)
    {
        var (axial, around) = (Layout.AxialSpacing.Millimeters, Layout.CircumferentialSpacing.Millimeters);
        return new(
            Length.FromMillimeters(box.FirstStation * axial),
            Length.FromMillimeters((box.LastStation - box.FirstStation + 1) * axial),
            Length.FromMillimeters(Wrapped(box.FirstPlace) * around),
            Length.FromMillimeters(Math.Min(Places, box.LastPlace - box.FirstPlace + 1) * around),
            Length.FromMillimeters(box.Depth),
            box.Pits
        );
    }

    private readonly record struct Box(
        int FirstStation,
        int LastStation,
        int FirstPlace,
        int LastPlace,
        double Depth,
        int Pits
    )
    {
        public Box With(int station, int place, double depth) =>
            new(
                Math.Min(FirstStation, station),
                Math.Max(LastStation, station),
                Math.Min(FirstPlace, place),
                Math.Max(LastPlace, place),
                Math.Max(Depth, depth),
                Pits
            );

        public Box Joined(Box other) =>
            With(other.FirstStation, other.FirstPlace, other.Depth)
                .With(other.LastStation, other.LastPlace, other.Depth) with
            {
                Pits = Pits + other.Pits,
            };

        public Box Turned(int places) => this with { FirstPlace = FirstPlace + places, LastPlace = LastPlace + places };
    }
}
