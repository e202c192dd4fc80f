using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using GridRows = RepairOrders.Engineering.Strength.GridRows;
using GridUnit = RepairOrders.Engineering.Strength.GridUnit;

namespace RepairOrders.Api.Assessing;

/// <summary>The survey of an assessment as the engine's grid.</summary>
internal static class Surveys
{
    /// <exception cref="MalformedAsk">A cell is no wall, or the rows are not of one length.</exception>
    public static WallLossGrid? Of(RecordAssessment ask)
    {
        if (ask.Survey is not { } survey)
            return null;
        var layout = new GridLayout(
            Length.FromMillimeters(survey.AxialSpacing.Value),
            Length.FromMillimeters(survey.CircumferentialSpacing.Value),
            survey.Unit.As<GridUnit>(),
            survey.Rows.As<GridRows>()
        );
        try
        {
            return WallLossGrid.Read(survey.Readings, layout);
        }
        catch (ImpossibleInputException bad)
        {
            throw new MalformedAsk("survey.readings", $"survey.readings: {bad.Message}");
        }
    }

    /// <summary>The thinnest wall of the survey; nothing where there is none.</summary>
    public static Length? Thinnest(RecordAssessment ask) => Of(ask)?.Statistics().Least.Wall;

    /// <summary>The walls read now, the survey's thinnest among them.</summary>
    public static IReadOnlyList<ThicknessReading> AllReadings(this RecordAssessment ask) =>
        ask.Survey is { } survey && Thinnest(ask) is { } least
            ?
            [
                .. ask.Readings,
                new(
                    ReadingPlace.AtDefect,
                    "survey, thinnest",
                    Measure.Of(least.Millimeters, "mm"),
                    survey.On,
                    survey.Instrument
                ),
            ]
            : ask.Readings;
}
