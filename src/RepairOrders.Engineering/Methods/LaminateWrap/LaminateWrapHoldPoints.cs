namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>What must be signed while a laminate is laid.</summary>
internal static class LaminateWrapHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = Hold.InOrder(
        Hold.Point(
            "as-described",
            "Pipe and defect are as written; wall measured at both ends of the laminate; no leak, no sweat",
            Sources.HoldPointsOfWraps,
            Evidence.Statement,
            Evidence.ThicknessReadings,
            Evidence.Photo
        ),
        Hold.Point(
            "surface",
            "Surface grade, profile and freedom from salt as the qualification asks, over the whole length",
            Sources.HoldPointsOfWraps,
            Evidence.SurfaceGrade,
            Evidence.Photo
        ),
        Hold.Point(
            "climate",
            "Steel and air are a go for this resin",
            Sources.HoldPointsOfWraps,
            Evidence.ClimateReading
        ),
        Hold.Point(
            "filler",
            "Pits and hole filled flush; shape smooth; filler set",
            Sources.HoldPointsOfWraps,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "mix",
            "Resin mixed by mass; batch and start on record, each mix",
            Sources.HoldPointsOfWraps,
            Evidence.Mix
        ),
        Hold.Point(
            "layers",
            "Every ply counted, wetted out and rolled; overlap and taper as drawn; laid within pot life",
            Sources.HoldPointsOfWraps,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "cure",
            "Cure time reached at the measured temperature",
            Sources.HoldPointsOfWraps,
            Evidence.CureLog
        ),
        Hold.Point(
            "hardness",
            "Hardness at least 90 % of the qualified value; no soft edge, no hollow sound",
            Sources.HoldPointsOfWraps,
            Evidence.HardnessReading,
            Evidence.Photo
        )
    );
}
