namespace RepairOrders.Engineering.Methods;

/// <summary>A size a design may carry: its stable code, its words and its unit.</summary>
/// <param name="Code">The name on the wire, camelCase with the unit at its end.</param>
/// <param name="Words">What it is.</param>
/// <param name="Unit">The unit as printed.</param>
public sealed record DimensionKind(string Code, string Words, string Unit)
{
    internal Dimension Of(double value) => new(Code, Words, value, Unit);
}

/// <summary>
/// Every size a design may carry, in one place. Drawings and papers are made from these codes alone; a code once given keeps
/// its meaning. Sizes along the pipe end in Length, round the pipe in Arc, radially in Thickness.
/// </summary>
public static class DimensionKinds
{
    /// <summary>Plate, along the pipe.</summary>
    public static readonly DimensionKind PlateLength = new("plateLengthMm", "plate along the pipe", "mm");

    /// <summary>Plate blank round the pipe, at mid-thickness.</summary>
    public static readonly DimensionKind PlateArc = new("plateArcMm", "plate blank round the pipe", "mm");

    /// <summary>Half-angle of the plate at the pipe's axis; 180 for a full circle.</summary>
    public static readonly DimensionKind PlateHalfAngle = new("plateHalfAngleDeg", "half-angle of the plate", "°");

    /// <summary>Plate thickness.</summary>
    public static readonly DimensionKind PlateThickness = new("plateThicknessMm", "plate thickness", "mm");

    /// <summary>Gap of a split full-circle plate as fitted; 0 for an arc.</summary>
    public static readonly DimensionKind PlateGap = new(
        "plateGapMm",
        "gap of the split plate, away from the defect",
        "mm"
    );

    /// <summary>1 where the plate goes all round, 0 for an arc.</summary>
    public static readonly DimensionKind FullCircle = new(
        "fullCircle",
        "plate all round the pipe (1) or an arc (0)",
        "-"
    );

    /// <summary>Putty under the plate, as applied.</summary>
    public static readonly DimensionKind PuttyThickness = new("puttyThicknessMm", "putty as applied", "mm");

    /// <summary>Putty with waste.</summary>
    public static readonly DimensionKind PuttyVolume = new("puttyVolumeCm3", "putty, waste included", "cm³");

    /// <summary>Putty with waste.</summary>
    public static readonly DimensionKind PuttyMass = new("puttyMassG", "putty, waste included", "g");

    /// <summary>Bands on the plate.</summary>
    public static readonly DimensionKind BandCount = new("bandCount", "bands", "-");

    /// <summary>Bands needed by the load, whether they fit or not.</summary>
    public static readonly DimensionKind BandsNeeded = new("bandsNeeded", "bands the load needs", "-");

    /// <summary>Bands that fit on the plate.</summary>
    public static readonly DimensionKind BandsThatFit = new("bandsThatFit", "bands that fit on the plate", "-");

    /// <summary>Band width.</summary>
    public static readonly DimensionKind BandWidth = new("bandWidthMm", "band width", "mm");

    /// <summary>Band thickness.</summary>
    public static readonly DimensionKind BandThickness = new("bandThicknessMm", "band thickness", "mm");

    /// <summary>Pitch of the bands, centre to centre.</summary>
    public static readonly DimensionKind BandPitch = new("bandPitchMm", "pitch of the bands", "mm");

    /// <summary>Plate beyond the edge of the last band.</summary>
    public static readonly DimensionKind PlateOverhang = new("plateOverhangMm", "plate beyond the last band", "mm");

    /// <summary>Turns of one band round the pipe.</summary>
    public static readonly DimensionKind Wraps = new("wraps", "turns of each band", "-");

    /// <summary>Length each piece of band is cut to.</summary>
    public static readonly DimensionKind BandPieceLength = new("bandPieceLengthMm", "each piece of band, cut", "mm");

    /// <summary>Pieces of one band.</summary>
    public static readonly DimensionKind PiecesPerBand = new("piecesPerBand", "pieces of each band", "-");

    /// <summary>Fasteners of one band, splices included.</summary>
    public static readonly DimensionKind FastenersPerBand = new("fastenersPerBand", "fasteners of each band", "-");

    /// <summary>Angle from the middle of the plate to the nearest tightened fastener.</summary>
    public static readonly DimensionKind FastenerAngle = new(
        "fastenerAngleDeg",
        "middle of the plate to the nearest fastener",
        "°"
    );

    /// <summary>Nominal diameter of screw or bolt.</summary>
    public static readonly DimensionKind BoltDiameter = new("boltDiameterMm", "screw or bolt", "mm");

    /// <summary>Torque to set.</summary>
    public static readonly DimensionKind Torque = new("torqueNm", "torque on each screw or bolt", "N m");

    /// <summary>Least torque that surely gives the tension needed.</summary>
    public static readonly DimensionKind TorqueLeast = new("torqueLeastNm", "least torque", "N m");

    /// <summary>Greatest torque that surely keeps the tension allowed.</summary>
    public static readonly DimensionKind TorqueMost = new("torqueMostNm", "greatest torque", "N m");

    /// <summary>High estimate of the tension of a band.</summary>
    public static readonly DimensionKind TensionHigh = new("bandTensionHighN", "band tension, high estimate", "N");

    /// <summary>Low estimate of the tension of a band.</summary>
    public static readonly DimensionKind TensionLow = new("bandTensionLowN", "band tension, low estimate", "N");

    /// <summary>Pressure under a band at the fastener, high estimate.</summary>
    public static readonly DimensionKind ContactPressure = new("contactPressureMpa", "pressure under the band", "MPa");

    /// <summary>Laminate thickness as laid.</summary>
    public static readonly DimensionKind LaminateThickness = new("laminateThicknessMm", "laminate thickness", "mm");

    /// <summary>Laminate along the pipe, tapers included.</summary>
    public static readonly DimensionKind LaminateLength = new("laminateLengthMm", "laminate along the pipe", "mm");

    /// <summary>Laminate beyond the damage on each side at full thickness.</summary>
    public static readonly DimensionKind Overlap = new("overlapMm", "overlap beyond the damage, each side", "mm");

    /// <summary>Taper at each end.</summary>
    public static readonly DimensionKind Taper = new("taperMm", "taper at each end", "mm");

    /// <summary>Plies.</summary>
    public static readonly DimensionKind Plies = new("plies", "plies", "-");

    /// <summary>1 for a laminate sized over a hole, 0 for one that reinforces.</summary>
    public static readonly DimensionKind ThroughWallDesign = new(
        "throughWallDesign",
        "sized over a hole (1) or not (0)",
        "-"
    );

    /// <summary>Clamp along the pipe.</summary>
    public static readonly DimensionKind ClampLength = new("clampLengthMm", "clamp along the pipe", "mm");

    /// <summary>Clamp shell thickness.</summary>
    public static readonly DimensionKind ClampThickness = new("clampThicknessMm", "clamp shell thickness", "mm");

    /// <summary>Distance between the end seals, centre to centre.</summary>
    public static readonly DimensionKind SealLength = new("sealLengthMm", "between the end seals", "mm");

    /// <summary>Diameter the seals bear on.</summary>
    public static readonly DimensionKind SealDiameter = new("sealDiameterMm", "seal diameter", "mm");

    /// <summary>Seal width.</summary>
    public static readonly DimensionKind SealWidth = new("sealWidthMm", "seal width", "mm");

    /// <summary>Bolts of a clamp, both sides.</summary>
    public static readonly DimensionKind ClampBoltCount = new("clampBoltCount", "clamp bolts", "-");

    /// <summary>1 where tie rods or grips hold the pipe together.</summary>
    public static readonly DimensionKind Restraint = new("restraint", "restraint fitted (1) or none (0)", "-");

    /// <summary>End load the restraint must hold.</summary>
    public static readonly DimensionKind RestraintLoad = new("restraintLoadKn", "end load on the restraint", "kN");

    /// <summary>Mass of the repair on the pipe.</summary>
    public static readonly DimensionKind RepairMass = new("repairMassKg", "mass on the pipe", "kg");

    /// <summary>Welded patch along the pipe.</summary>
    public static readonly DimensionKind PatchLength = new("patchLengthMm", "patch along the pipe", "mm");

    /// <summary>Welded patch round the pipe.</summary>
    public static readonly DimensionKind PatchWidth = new("patchWidthMm", "patch round the pipe", "mm");

    /// <summary>Welded patch thickness.</summary>
    public static readonly DimensionKind PatchThickness = new("patchThicknessMm", "patch thickness", "mm");

    /// <summary>Radius of the patch's corners.</summary>
    public static readonly DimensionKind CornerRadius = new("cornerRadiusMm", "radius of the corners", "mm");

    /// <summary>Leg of the fillet weld.</summary>
    public static readonly DimensionKind FilletLeg = new("filletLegMm", "leg of the fillet weld", "mm");

    /// <summary>Sleeve along the pipe.</summary>
    public static readonly DimensionKind SleeveLength = new("sleeveLengthMm", "sleeve along the pipe", "mm");

    /// <summary>Sleeve thickness.</summary>
    public static readonly DimensionKind SleeveThickness = new("sleeveThicknessMm", "sleeve thickness", "mm");

    /// <summary>1 where the sleeve's ends are welded to the pipe (type B), 0 where they are not (type A).</summary>
    public static readonly DimensionKind EndsWelded = new(
        "endsWelded",
        "ends welded (1, type B) or not (0, type A)",
        "-"
    );

    /// <summary>Plug diameter.</summary>
    public static readonly DimensionKind PlugDiameter = new("plugDiameterMm", "plug", "mm");

    /// <summary>Thread engaged in the wall.</summary>
    public static readonly DimensionKind PlugEngagement = new("plugEngagementMm", "thread engaged in the wall", "mm");

    /// <summary>New pipe along the line.</summary>
    public static readonly DimensionKind SpoolLength = new("spoolLengthMm", "new pipe along the line", "mm");

    /// <summary>Wall of the new pipe.</summary>
    public static readonly DimensionKind SpoolWall = new("spoolWallMm", "wall of the new pipe", "mm");

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<DimensionKind> All { get; } =
    [
        .. typeof(DimensionKinds)
            .GetFields()
            .Where(f => f.FieldType == typeof(DimensionKind))
            .Select(f => (DimensionKind)f.GetValue(null)!),
    ];
}
