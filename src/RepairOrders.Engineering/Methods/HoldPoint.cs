namespace RepairOrders.Engineering.Methods;

/// <summary>Whether work may go on without the signature.</summary>
public enum HoldKind
{
    /// <summary>Work may not pass until it is signed.</summary>
    Hold,

    /// <summary>A named person is called; work may go on when he does not come and that is recorded.</summary>
    Witness,
}

/// <summary>What must be there before a hold point can be signed.</summary>
public enum Evidence
{
    /// <summary>The signer's statement that it is so.</summary>
    Statement,

    /// <summary>Wall readings with instrument serial and calibration.</summary>
    ThicknessReadings,

    /// <summary>Girth or diameter readings.</summary>
    DiameterReadings,

    /// <summary>Surface grade and profile.</summary>
    SurfaceGrade,

    /// <summary>A climate reading that says go.</summary>
    ClimateReading,

    /// <summary>A mix with ratio, batch and start.</summary>
    Mix,

    /// <summary>Torque readings for each fastener and pass.</summary>
    TorqueReadings,

    /// <summary>A hardness reading.</summary>
    HardnessReading,

    /// <summary>A temperature log or reading for the cure.</summary>
    CureLog,

    /// <summary>A photograph.</summary>
    Photo,
}

/// <summary>A point in the fitting that work may not pass unsigned.</summary>
/// <param name="Code">Lower-case words joined by hyphens: <c>surface</c>, <c>climate</c>, <c>mix</c>, <c>torque</c>.</param>
/// <param name="Title">What is true when it is signed, as a short sentence.</param>
/// <param name="Kind">Hold or witness.</param>
/// <param name="ReleasedBy">Who signs: <c>technician</c>, <c>inspector</c>, <c>supervisor</c>.</param>
/// <param name="Evidence">What must be on record before it can be signed.</param>
/// <param name="After">Codes of the hold points that come first.</param>
/// <param name="Source">Where the hold point comes from.</param>
public sealed record HoldPoint(
    string Code,
    string Title,
    HoldKind Kind,
    string ReleasedBy,
    IReadOnlyList<Evidence> Evidence,
    IReadOnlyList<string> After,
    Clause Source
);
