using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using static RepairOrders.Api.Calculations.Quantities;
using Regime = RepairOrders.Engineering.Methods.Regime;

namespace RepairOrders.Api.Calculations;

internal static class MethodClaims
{
    private static readonly string[] Cautions =
    [
        "A method inside its limits is one that may be sized; whether it holds is for the sizing, and whether it may be fitted for the people who sign.",
    ];

    public static CalculationAnswer<MethodClaimsResult> Calculate(CalculateMethodClaims ask)
    {
        var (pipe, defect, service) = (ask.Pipe.Pipe(), ask.Defect.Defect(), ask.Service.Service());
        var claims = MethodCatalogue.Claims(pipe, defect, service, ask.Regime.As<Regime>());
        var sheet = new Worksheet();
        sheet.Take(ClaimFigures.Of(pipe, defect, service), [], Cautions);
        var result = new MethodClaimsResult(
            [.. claims.Select(View)],
            ask.Emergency is { } entry ? [.. Emergency(ask, entry).Select(f => f.View())] : null
        );
        return sheet.Answer(result);
    }

    private static IReadOnlyList<Finding> Emergency(CalculateMethodClaims ask, EmergencyToReckon entry) =>
        EmergencyList.Findings(
            new EmergencyEntry(
                MethodCatalogue.Find(entry.Method).Code,
                Mm(entry.LeastDiameterMm),
                Mm(entry.GreatestDiameterMm),
                Bar(entry.GreatestPressureBar),
                Celsius(entry.GreatestTemperatureC),
                entry.Fluids
            ),
            Mm(ask.Pipe.OutsideDiameterMm),
            ask.Service.Service(),
            new EmergencyFacts(
                ask.Defect.Kind.As<Engineering.Damage.DefectKind>(),
                entry.CauseUnknown,
                entry.ListedContents,
                entry.FailedBefore
            )
        );

    private static MethodClaimResult View(RankedClaim ranked) =>
        new(
            ranked.Rank,
            ranked.Claim.Method,
            ranked.Claim.Name,
            ranked.Why,
            ranked.Claim.Inside,
            ranked.Claim.Barred,
            [.. ranked.Claim.Findings.Select(f => f.View())]
        );
}
