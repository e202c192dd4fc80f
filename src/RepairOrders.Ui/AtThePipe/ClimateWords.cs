using RepairOrders.Contract;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.AtThePipe;

/// <summary>What a climate says of one material, in words.</summary>
/// <param name="Go">It may be mixed and applied.</param>
/// <param name="Verdict"><c>go</c> or <c>no-go</c>, and for what.</param>
/// <param name="Why">The limit that is broken, or the least margin left.</param>
public sealed record ClimateLine(bool Go, string Verdict, string Why);

/// <summary>Go or no-go in words, the same while it is typed and once it is signed.</summary>
/// <param name="Dew">Dew point and margin.</param>
/// <param name="Lines">Each material's.</param>
public sealed record ClimateWords(string Dew, IReadOnlyList<ClimateLine> Lines)
{
    public static ClimateWords Of(SignedClimate climate) =>
        new(
            $"Dew point {Show.Figure(Math.Round(climate.DewPointC, 1))} °C, pipe {Margin(climate.MarginK)}. Dry steel needs {Show.Figure(Math.Round(climate.LeastSteelC, 1))} °C.",
            [
                .. climate.Verdicts.Select(v => new ClimateLine(
                    v.Go,
                    $"{(v.Go ? "go" : "no-go")}: {v.Words}",
                    v.Findings.FirstOrDefault(f =>
                        f.Severity == (v.Go ? FindingSeverity.Watch : FindingSeverity.Fail)
                    )?.Words
                        ?? ""
                )),
            ]
        );

    private static string Margin(double kelvins) =>
        $"{Show.Figure(Math.Abs(Math.Round(kelvins, 1)))} °C {(kelvins < 0 ? "below" : "above")} it";
}
