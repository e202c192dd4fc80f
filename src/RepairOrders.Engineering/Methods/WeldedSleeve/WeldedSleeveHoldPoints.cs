namespace RepairOrders.Engineering.Methods.WeldedSleeve;

/// <summary>What must be signed while a sleeve is welded.</summary>
internal static class WeldedSleeveHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = WeldHoldPoints.For(
        "Halves drawn tight, gap within the procedure; filler set where used; vent open where it must be",
        Hold.Point(
            "restraint",
            "Weight of the sleeve supported",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.Photo
        )
    );
}
