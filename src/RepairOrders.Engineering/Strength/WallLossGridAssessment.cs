using RepairOrders.Engineering.Methods;
using UnitsNet;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

/// <summary>Loss by place, to colour a map with.</summary>
/// <param name="Stations">Stations along the pipe.</param>
/// <param name="Places">Places round the pipe.</param>
/// <param name="AxialSpacing">Distance between stations.</param>
/// <param name="CircumferentialSpacing">Distance between places.</param>
/// <param name="LossPercent">Loss in per cent of the reference wall, place by place round the pipe, each with all its stations; nothing where it was not read.</param>
public sealed record HeatMap(
    int Stations,
    int Places,
    Length AxialSpacing,
    Length CircumferentialSpacing,
    IReadOnlyList<double?> LossPercent
);

/// <summary>All that is drawn from a grid.</summary>
/// <param name="Statistics">Counts, least, mean and variation.</param>
/// <param name="Along">River-bottom profile along the pipe, from sound metal to sound metal.</param>
/// <param name="Round">River-bottom profile round the pipe.</param>
/// <param name="Pits">Pits and groups of pits, deepest first.</param>
/// <param name="Strength">Remaining strength by every method.</param>
/// <param name="General">General metal loss; nothing where no duty was given.</param>
/// <param name="Map">Loss by place.</param>
public sealed record GridAssessment(
    GridStatistics Statistics,
    RiverBottom Along,
    RiverBottom Round,
    IReadOnlyList<PitGroup> Pits,
    StrengthComparison Strength,
    GeneralLoss? General,
    HeatMap Map
);

public sealed partial class WallLossGrid
{
    private static readonly Clause Blank = new("blank cells of a grid are not taken for sound", "", Provenance.OwnRule);

    /// <summary>Judges a grid: profiles, pits, averages and remaining strength.</summary>
    /// <remarks>
    /// <para>Formula: depth of a station = reference wall − least reading of its ring; then <see cref="RemainingStrength.Compare"/> and <see cref="GeneralMetalLoss.Assess"/>.</para>
    /// <para>Symbols: those of the formulae.</para>
    /// <para>Validity: those of the formulae. The profile is cut one station past the outermost ones deeper than a tenth of the wall; where none is, it is left whole.</para>
    /// <para>Reference: ASME B31G-2012, 2.3; API 579-1, Parts 4 and 5 (from memory).</para>
    /// </remarks>
    /// <param name="strengthCase">Pipe, pressure, factors; of its loss only reference wall and side count, the rest is the grid's.</param>
    /// <param name="duty">For the required wall, where general metal loss is to be judged.</param>
    /// <returns>The judgement; its working is that of the method that governs.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>3 rings of 5 stations at 25 mm, wall 10 mm, least readings 10, 8, 5, 7, 10 mm: profile 0, 2, 5, 3, 0 mm over 100 mm.</example>
    public Calculated<GridAssessment> Assess(StrengthCase strengthCase, WallDuty? duty = null)
    {
        ArgumentNullException.ThrowIfNull(strengthCase);
        var loss = strengthCase.Loss;
        var (pipe, reference) = (strengthCase.Pipe, loss.ReferenceWall);
        var along = Affected(AlongThePipe(reference), reference.Millimeters);
        var round = Affected(RoundThePipe(reference), reference.Millimeters);
        var measured = new MetalLoss(reference, along.Deepest, along.Span, round.Span, loss.Side, along);
        var strength = RemainingStrength.Compare(strengthCase with { Loss = measured });
        var statistics = Statistics();
        var general = duty is null ? null : GeneralMetalLoss.Assess(pipe, duty, Thinned(strengthCase, along));
        var result = new GridAssessment(
            statistics,
            along,
            round,
            Pits(pipe.OutsideDiameter, reference),
            strength.Result,
            general?.Result,
            Map(reference.Millimeters)
        );
        IReadOnlyList<Finding> findings =
        [
            .. Doubts(statistics, pipe.NominalWall.Millimeters),
            .. strength.Findings,
            .. general?.Findings ?? [],
        ];
        return new(result, strength.Working, findings, strength.Cautions);
    }

    private static RiverBottom Affected(RiverBottom profile, double t)
    {
        var d = profile.DepthsMm.ToArray();
        var first = Array.FindIndex(d, depth => depth > PitShare * t);
        if (first < 0)
        {
            return profile;
        }
        var last = Math.Min(d.Length - 1, Array.FindLastIndex(d, depth => depth > PitShare * t) + 1);
        first = Math.Max(0, first - 1);
        return RiverBottom.Of(profile.PositionsMm[first..(last + 1)], profile.DepthsMm[first..(last + 1)]);
    }

    private ThinnedWall Thinned(StrengthCase strengthCase, RiverBottom along) =>
        new(
            [.. Read().Select(c => wall[c.Station, c.Place])],
            strengthCase.Loss.ReferenceWall,
            strengthCase.Plant?.FutureLoss ?? Length.Zero,
            strengthCase.Loss.Side,
            along
        );

    private HeatMap Map(double t)
    {
        var loss =
            from place in Enumerable.Range(0, Places)
            from station in Enumerable.Range(0, Stations)
            let w = wall[station, place]
            select double.IsNaN(w) ? (double?)null : 100 * Math.Max(0, t - w) / t;
        return new(Stations, Places, Layout.AxialSpacing, Layout.CircumferentialSpacing, [.. loss]);
    }

    private IEnumerable<Finding> Doubts(GridStatistics statistics, double nominal)
    {
        if (statistics.Missing > 0)
        {
            yield return new(
                "grid-cells-blank",
                Severity.Watch,
                $"{statistics.Missing} of {wall.Length} cells were not read; a pit may lie in one.",
                statistics.Missing,
                0,
                "cells",
                Blank
            );
        }
        var thick = Read().Count(c => wall[c.Station, c.Place] > 1.25 * nominal);
        if (thick > 0)
        {
            var (station, place) = Read().MaxBy(c => wall[c.Station, c.Place]);
            var (row, column) = Layout.Rows == GridRows.AlongThePipe ? (place, station) : (station, place);
            yield return new(
                "grid-reading-implausible",
                Severity.Fail,
                Text(
                    $"{thick} readings are more than 1.25 × nominal, the greatest {wall[station, place]:0.00} mm in row {row + 1} column {column + 1}: take them again."
                ),
                wall[station, place],
                1.25 * nominal,
                "mm",
                Reading,
                LimitKind.Absolute
            );
        }
    }
}
