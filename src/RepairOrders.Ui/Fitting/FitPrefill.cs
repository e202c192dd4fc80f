using RepairOrders.Contract;

namespace RepairOrders.Ui.Fitting;

/// <summary>The rows a hold point will want, so that at the pipe only figures are typed.</summary>
internal static class FitPrefill
{
    private const int Passes = 2;

    public static ReleaseHoldPoint Of(HoldPointState state, MethodDesignView? method, DateTimeOffset now)
    {
        var point = state.Point;
        var nothing = Measure.Of(0, "mm");
        return new ReleaseHoldPoint(
            point.Code,
            point.Evidence.Contains(Evidence.ThicknessReadings)
                ? [new WallRead("upstream end", nothing), new WallRead("downstream end", nothing)]
                : null,
            point.Evidence.Contains(Evidence.DiameterReadings)
                ? [new DiameterRead("horizontal", nothing), new DiameterRead("vertical", nothing)]
                : null,
            Tightening: point.Evidence.Contains(Evidence.TorqueReadings) ? Fasteners(method) : null,
            Witness: state.AsksWitness ? new WitnessCalled(default, now, Came: false) : null
        );
    }

    private static IReadOnlyList<Tightened> Fasteners(MethodDesignView? method)
    {
        var count = (int)(method?["clampBoltCount"] ?? method?["bandCount"] * (method?["fastenersPerBand"] ?? 1) ?? 1);
        return
        [
            .. from pass in Enumerable.Range(1, Passes)
            from fastener in Enumerable.Range(1, count)
            select new Tightened(fastener, pass),
        ];
    }
}
