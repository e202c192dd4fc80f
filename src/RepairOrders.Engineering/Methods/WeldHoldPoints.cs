namespace RepairOrders.Engineering.Methods;

/// <summary>Hold points of everything that is welded to a pipe.</summary>
internal static class WeldHoldPoints
{
    /// <summary>The points, with what fit-up means for the part.</summary>
    public static IReadOnlyList<HoldPoint> For(string fitUp, params HoldPoint[] more) =>
        Hold.InOrder([.. Before, FitUp(fitUp), .. Weld, .. more]);

    private static HoldPoint[] Before =>
        [
            Hold.Point(
                "as-described",
                "Pipe and defect are as written; wall measured wherever a weld goes; no crack found",
                Sources.HoldPointsOfClamps,
                Evidence.Statement,
                Evidence.ThicknessReadings,
                Evidence.Photo
            ),
            Hold.Point(
                "diameter",
                "Diameter and ovality measured where the part fits",
                Sources.HoldPointsOfClamps,
                Evidence.DiameterReadings
            ),
            Hold.Point(
                "weld-preparation",
                "Bright metal; edges and corners as drawn",
                Sources.Own,
                Evidence.SurfaceGrade,
                Evidence.Photo
            ),
        ];

    private static HoldPoint FitUp(string words) =>
        Hold.Point("fit-up", words, Sources.HoldPointsOfClamps, Evidence.Statement, Evidence.Photo);

    private static HoldPoint[] Weld =>
        [
            Hold.Point(
                "preheat",
                "Procedure, welder and consumables as qualified; preheat reached",
                Sources.Own,
                Evidence.Statement,
                Evidence.CureLog
            ),
            Hold.Point(
                "weld-examination",
                "Welds complete and examined as the procedure asks; report on record",
                Sources.Own,
                Evidence.Statement,
                Evidence.Photo
            ),
        ];
}
