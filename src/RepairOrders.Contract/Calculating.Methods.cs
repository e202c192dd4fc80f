using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>The rules a pipe stands under beside those of the method.</summary>
public enum Regime
{
    /// <summary>Process or utility pipe of a plant.</summary>
    Plant,

    /// <summary>Pipe of a classed ship.</summary>
    Ship,

    /// <summary>Nuclear pipe of class 1 to 3.</summary>
    Nuclear,
}

/// <summary>An entry of the emergency list, and what is known in the first minutes.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="LeastDiameterMm">Smallest outside diameter.</param>
/// <param name="GreatestDiameterMm">Largest outside diameter.</param>
/// <param name="GreatestPressureBar">Greatest pressure, gauge.</param>
/// <param name="GreatestTemperatureC">Greatest temperature.</param>
/// <param name="Fluids">The fluids it is for.</param>
/// <param name="CauseUnknown">Nobody knows why it leaks.</param>
/// <param name="ListedContents">Contents of the worst list.</param>
/// <param name="FailedBefore">A repair on this spot has failed before.</param>
public sealed record EmergencyToReckon(
    [property: Required, StringLength(60)] string Method,
    double LeastDiameterMm,
    double GreatestDiameterMm,
    double GreatestPressureBar,
    double GreatestTemperatureC,
    [property: Required, MaxLength(100)] IReadOnlyList<string> Fluids,
    bool CauseUnknown = false,
    bool ListedContents = false,
    bool FailedBefore = false
);

/// <summary>Asks what every method claims.</summary>
/// <param name="Pipe">The pipe; a wall of 0 stands for one not known.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Service">The service.</param>
/// <param name="Regime">The rules the pipe stands under beside those of the method.</param>
/// <param name="Emergency">An entry of the emergency list to put it to; nothing where that is not asked.</param>
public sealed record CalculateMethodClaims(
    [property: Required] PipeToReckon Pipe,
    [property: Required] DefectToReckon Defect,
    [property: Required] ServiceToReckon Service,
    Regime Regime = Regime.Plant,
    EmergencyToReckon? Emergency = null
);

/// <summary>What a method claims.</summary>
/// <param name="Rank">1 for the first choice.</param>
/// <param name="Method">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Why">Why it stands there.</param>
/// <param name="Inside">Inside all its limits.</param>
/// <param name="Barred">Outside a limit nobody may sign past.</param>
/// <param name="Findings">Every limit tested.</param>
public sealed record MethodClaimResult(
    int Rank,
    string Method,
    string Name,
    string Why,
    bool Inside,
    bool Barred,
    IReadOnlyList<FindingView> Findings
);

/// <summary>What every method claims.</summary>
/// <param name="Claims">The claims, first choice first.</param>
/// <param name="Emergency">Limits of the emergency entry; nothing where none was given.</param>
public sealed record MethodClaimsResult(IReadOnlyList<MethodClaimResult> Claims, IReadOnlyList<FindingView>? Emergency);

/// <summary>Asks a method how big a repair must be. The subject is the method's code.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Service">The service.</param>
/// <param name="Inputs">Values of the method's inputs by code; one left out takes its default, where it has one.</param>
public sealed record CalculateMethod(
    [property: Required] PipeToReckon Pipe,
    [property: Required] DefectToReckon Defect,
    [property: Required] ServiceToReckon Service,
    [property: MaxLength(100)] IReadOnlyDictionary<string, double>? Inputs = null
);

/// <summary>How big a repair must be.</summary>
/// <param name="Method">The method's code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Holds">Every limit holds.</param>
/// <param name="PressureHeldBar">Pressure it holds, gauge; nothing where it seals only.</param>
/// <param name="Dimensions">Named sizes; the unit stands in each.</param>
/// <param name="Materials">Bill of material.</param>
/// <param name="HoldPoints">Hold points in the order of the work.</param>
/// <param name="SetForLoadH">Time at the reference temperature until it may be tested.</param>
/// <param name="FullHardnessH">Time at the reference temperature until fully hard.</param>
/// <param name="CureReferenceTemperatureC">The temperature both are stated at.</param>
/// <param name="DesignLifeDays">Time the design is good for; nothing where it states none.</param>
/// <param name="LeastWallMm">Least wall the design relies on.</param>
/// <param name="CarriesAxialLoad">The repair itself holds the pipe together.</param>
/// <param name="Series">Curves of its charts.</param>
public sealed record MethodResult(
    string Method,
    string Name,
    bool Holds,
    double? PressureHeldBar,
    IReadOnlyList<DimensionView> Dimensions,
    IReadOnlyList<MaterialNeedView> Materials,
    IReadOnlyList<HoldPointView> HoldPoints,
    double SetForLoadH,
    double FullHardnessH,
    double CureReferenceTemperatureC,
    double? DesignLifeDays,
    double LeastWallMm,
    bool CarriesAxialLoad,
    IReadOnlyList<SeriesView> Series
);
