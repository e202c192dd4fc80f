namespace RepairOrders.Engineering.Methods.Replacement;

/// <summary>What must be signed while a section is replaced.</summary>
internal static class ReplacementHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = Hold.InOrder(
        Hold.Point(
            "proved-dead",
            "Line proved dead at the pipe before the first cut; gauge reading on record",
            Sources.Own,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "as-described",
            "Wall measured at both cuts; sound, and thick enough to weld on",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.ThicknessReadings
        ),
        Hold.Point(
            "material",
            "New pipe and fittings are of the grade and wall written; certificates on record",
            Sources.NewPipeTest,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "fit-up",
            "Ends bevelled and aligned; supports take the weight; nothing is pulled together by force",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.DiameterReadings
        ),
        Hold.Point(
            "weld-examination",
            "Welds or joints complete and examined as for a new line",
            Sources.NewPipeTest,
            Evidence.Statement,
            Evidence.Photo
        )
    );
}
