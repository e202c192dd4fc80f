namespace RepairOrders.Engineering.Methods.Plug;

/// <summary>What must be signed while a plug is fitted.</summary>
internal static class PlugHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = Hold.InOrder(
        Hold.Point(
            "as-described",
            "Pipe and hole are as written; wall measured round the hole over two hole diameters",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.ThicknessReadings,
            Evidence.Photo
        ),
        Hold.Point(
            "drilled",
            "Hole drilled to sound metal and tapped; threads counted",
            Sources.PuttyManual,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point("torque", "Plug home with its sealant, torque on record", Sources.Own, Evidence.TorqueReadings),
        Hold.Point(
            "as-left",
            "Plug secured mechanically and flush, flow not blocked",
            Sources.PuttyManual,
            Evidence.Statement,
            Evidence.Photo
        )
    );
}
