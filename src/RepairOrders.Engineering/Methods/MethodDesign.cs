namespace RepairOrders.Engineering.Methods;

/// <summary>A named size of a design.</summary>
/// <param name="Code">The name on the wire, camelCase with the unit at its end.</param>
/// <param name="Words">What it is.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as printed.</param>
public sealed record Dimension(string Code, string Words, double Value, string Unit);

/// <summary>A curve of a chart.</summary>
/// <param name="Code">Lower-case words joined by hyphens.</param>
/// <param name="Words">What the curve shows.</param>
/// <param name="Across">What runs across, with its unit.</param>
/// <param name="Up">What runs up, with its unit.</param>
/// <param name="Points">The points, in order.</param>
public sealed record Series(string Code, string Words, string Across, string Up, IReadOnlyList<Point> Points);

/// <summary>A point of a curve.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Up.</param>
public sealed record Point(double X, double Y);

/// <summary>What a method sizes: dimensions, bill of material, hold points, cautions and the working that leads to them.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="Dimensions">Named sizes; the drawing is made from them.</param>
/// <param name="PressureHeldBar">The gauge pressure the repair is sized to hold, bar; nothing where the method seals only.</param>
/// <param name="Materials">The bill of material.</param>
/// <param name="HoldPoints">Hold points in the order of the work.</param>
/// <param name="Cautions">What can hurt somebody at this work.</param>
/// <param name="Working">The hand calculation.</param>
/// <param name="Findings">Limits met and not met; one <see cref="Severity.Fail"/> means the design may not be used.</param>
/// <param name="SetForLoadHours">Hours at <paramref name="CureReferenceC"/> until it may be tested; 0 for a method without cure.</param>
/// <param name="FullHardnessHours">Hours at <paramref name="CureReferenceC"/> until fully hard; 0 for a method without cure.</param>
/// <param name="CureReferenceC">The temperature both times are stated at, °C.</param>
/// <param name="DesignLifeDays">Days the design is good for; nothing where the method gives none.</param>
/// <param name="LeastWallMm">The least wall the design relies on, mm.</param>
/// <param name="CarriesAxialLoad">Whether the repair itself holds the pipe together.</param>
public sealed record MethodDesign(
    string Method,
    IReadOnlyList<Dimension> Dimensions,
    double? PressureHeldBar,
    IReadOnlyList<MaterialNeed> Materials,
    IReadOnlyList<HoldPoint> HoldPoints,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<Finding> Findings,
    double SetForLoadHours,
    double FullHardnessHours,
    double CureReferenceC,
    double? DesignLifeDays,
    double LeastWallMm,
    bool CarriesAxialLoad
)
{
    /// <summary>Data of the design's charts, such as the pressure round the arc; empty where it has none.</summary>
    public IReadOnlyList<Series> Series { get; init; } = [];

    /// <summary>Whether every limit holds.</summary>
    public bool Holds => Findings.All(f => f.Severity != Severity.Fail);

    /// <summary>A dimension by its code.</summary>
    /// <param name="code">The code.</param>
    /// <returns>The value in the dimension's unit; nothing where the design has no such dimension.</returns>
    public double? this[string code] => Dimensions.FirstOrDefault(d => d.Code == code)?.Value;
}
