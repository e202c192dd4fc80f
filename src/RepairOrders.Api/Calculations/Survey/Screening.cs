using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering;
using RepairOrders.Engineering.Strength;

namespace RepairOrders.Api.Calculations.Survey;

/// <summary>Judges one row; whatever is wrong with it is its answer, and the survey goes on.</summary>
internal static class Screening
{
    private const int MostPoints = 5000;

    public static async ValueTask<SurveyedDefect> Of(ISurveyRow row)
    {
        CalculateRemainingStrength? ask = null;
        try
        {
            ask = await row.Ask();
            if (ask.Profile?.Count > MostPoints)
                throw new BadRow("profile", $"profile has {ask.Profile.Count} points; allowed are up to {MostPoints}.");
            Plausible.Check([ask]);
            var screened = View(row.Number, Engineering.Strength.RemainingStrength.Screen(RemainingStrength.Case(ask)));
            // Where no method answers, the whole calculation says which value is at fault.
            if (screened.SafePressureBar is null)
                _ = Reckoning.Answer(ask, RemainingStrength.Calculate);
            return screened;
        }
        catch (ImpossibleInputException bad)
        {
            var path = ask is null ? bad.Field : Reckoning.PathOf(ask, bad.Field);
            return Problem(row, path, $"{path} is {bad.Value}; allowed is {bad.Allowed}.", bad.Value);
        }
        catch (BadRow bad)
        {
            return Problem(row, bad.Field, bad.Message);
        }
        catch (MalformedAsk bad)
        {
            return Problem(row, bad.Fields.First().Key, bad.Fields.First().Value[0]);
        }
        catch (Exception e) when (e is ArgumentException or ArithmeticException or Unreckonable)
        {
            var bad = Reckoning.PastReckoning(ask);
            return Problem(row, bad.Fields.First().Key, bad.Fields.First().Value[0]);
        }
    }

    private static SurveyedDefect Problem(ISurveyRow row, string field, string sentence, string? value = null) =>
        new(row.Number, Problem: new SurveyProblem(field, row.Value(field) ?? value, sentence));

    private static SurveyedDefect View(int row, ScreenedStrength s) =>
        s.Error is { } bad
            ? throw bad
            : new(
                row,
                s.Governs,
                Finite(s.SafePressure?.Bars),
                Finite(s.EstimatedRepairFactor),
                Finite(s.Original?.Bars),
                Finite(s.Modified?.Bars),
                Finite(s.Effective?.Bars),
                Finite(s.Corroded?.Bars),
                Finite(s.ThinArea?.Bars),
                Finite(s.EffectiveLength?.Millimeters)
            );

    private static double? Finite(double? value) =>
        value is { } v && !double.IsFinite(v) ? throw new Unreckonable("result") : value;
}
