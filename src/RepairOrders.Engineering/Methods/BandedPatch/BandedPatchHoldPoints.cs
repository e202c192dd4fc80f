namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>What must be signed while a banded patch is fitted.</summary>
internal static class BandedPatchHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = Hold.InOrder(
        Hold.Point(
            "as-described",
            "Pipe and defect are as written; wall measured at both ends of the plate and under every band",
            Sources.HoldPointsOfClamps,
            Evidence.Statement,
            Evidence.ThicknessReadings,
            Evidence.Photo
        ),
        Hold.Point(
            "diameter",
            "Girth and ovality measured where the plate and the bands go",
            Sources.LeakClamps,
            Evidence.DiameterReadings
        ),
        Hold.Point(
            "surface",
            "Surface at least St 2 with a profile near 60 µm, clean over the whole plate and the band edges",
            Clause.CommonPractice,
            Evidence.SurfaceGrade,
            Evidence.Photo
        ),
        Hold.Point("climate", "Steel and air are a go for this material", Sources.Own, Evidence.ClimateReading),
        Hold.Point(
            "mix",
            "Putty kneaded to one colour, at least 5 minutes, warm and stiffening; batch and start on record",
            Clause.CommonPractice,
            Evidence.Mix
        ),
        Hold.Point(
            "plate",
            "Plate and bands in their final place before the putty gels; gap open and away from the defect",
            Sources.Own,
            Evidence.Statement,
            Evidence.Photo
        ),
        Hold.Point(
            "torque",
            "Bands tightened from the middle outward, in passes, with the lubricant named",
            Sources.HoldPointsOfClamps,
            Evidence.TorqueReadings
        ),
        Hold.Point(
            "cure",
            "Set for load at the measured temperature, and hard",
            Sources.HoldPointsOfWraps,
            Evidence.CureLog,
            Evidence.HardnessReading
        ),
        Hold.Point(
            "as-left",
            "Bands, gap and edges as drawn; fasteners marked, tails cut and covered",
            Sources.Own,
            Evidence.Statement,
            Evidence.Photo
        )
    );
}
