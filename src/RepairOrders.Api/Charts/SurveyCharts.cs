using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts;

/// <summary>A survey of the wall as its two charts.</summary>
internal static class SurveyCharts
{
    /// <param name="survey">The survey.</param>
    /// <param name="firstClock">Clock position of its first line; nothing numbers the lines instead.</param>
    /// <param name="outside">Outside diameter, mm.</param>
    /// <param name="nominal">Wall as ordered, mm.</param>
    /// <param name="required">Required wall, mm.</param>
    public static Chart Grid(WallLossGrid survey, double firstClock, double outside, double nominal, double? required)
    {
        var hour = survey.Layout.CircumferentialSpacing.Millimeters / (Math.PI * outside) * 12;
        var (places, stations) = (Enumerable.Range(0, survey.Places).ToList(), Enumerable.Range(0, survey.Stations));
        return ThicknessGrid.Of(
            [.. stations.Select(s => Number(s * survey.Layout.AxialSpacing.Millimeters))],
            [.. places.Select(p => OnTheDial(firstClock + p * hour))],
            [.. places.Select(p => (IReadOnlyList<double?>)[.. stations.Select(s => survey[s, p]?.Millimeters)])],
            nominal,
            required
        );
    }

    /// <param name="survey">The survey.</param>
    /// <param name="outside">Outside diameter, mm.</param>
    /// <param name="sound">Wall from which the depth counts, mm.</param>
    public static Chart RiverBottom(WallLossGrid survey, double outside, double sound)
    {
        var profile = survey.AlongThePipe(Length.FromMillimeters(sound));
        return Profiles.Of(
            profile.PositionsMm.ToArray(),
            [.. profile.DepthsMm.ToArray().Select(d => Math.Min(d, sound))],
            outside,
            sound
        );
    }

    // The dial begins again after 12 o'clock.
    private static double OnTheDial(double hours) => hours % 12 < 0.05 ? 12 : hours % 12;
}
