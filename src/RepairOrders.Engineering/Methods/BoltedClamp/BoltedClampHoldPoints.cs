namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>What must be signed while a bolted clamp is fitted.</summary>
internal static class BoltedClampHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = Hold.InOrder(
        Hold.Point(
            "as-described",
            "Pipe and defect are as written; wall measured under both end seals and between them",
            Sources.LeakClamps,
            Evidence.Statement,
            Evidence.ThicknessReadings,
            Evidence.Photo
        ),
        Hold.Point(
            "diameter",
            "Diameter in two directions at each seal; ovality within what the seal takes up",
            Sources.LeakClamps,
            Evidence.DiameterReadings
        ),
        Hold.Point(
            "seal-bands",
            "Pipe smooth and clean where the seals bear; weld caps dressed or clear",
            Sources.HoldPointsOfClamps,
            Evidence.SurfaceGrade,
            Evidence.Photo
        ),
        Hold.Point(
            "fit-up",
            "Halves meet without force; gap even; seals whole and of the batch issued",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "torque",
            "Bolts tightened crosswise in passes, with the lubricant named",
            Sources.HoldPointsOfClamps,
            Evidence.TorqueReadings
        ),
        Hold.Point(
            "restraint",
            "Restraint fitted where the sheet asks; weight of the clamp supported",
            Sources.LeakClamps,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "as-left",
            "Sealant, where injected, within the pressure and volume shown; cured where it cures; bolts marked",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.Photo
        )
    );
}
