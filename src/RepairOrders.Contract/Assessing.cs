using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What is wrong with the pipe wall.</summary>
public enum DefectKind
{
    /// <summary>Wall loss spread over an area.</summary>
    GeneralThinning,

    /// <summary>A pit or a small group of pits.</summary>
    Pitting,

    /// <summary>A hole of a few millimetres.</summary>
    Pinhole,

    /// <summary>A larger hole.</summary>
    Hole,

    /// <summary>A crack or anything crack-like.</summary>
    CrackLike,

    /// <summary>A dent or gouge.</summary>
    MechanicalDamage,

    /// <summary>A leak at a weld.</summary>
    WeldDefect,

    /// <summary>A leak at a flange, thread or other joint.</summary>
    Joint,
}

/// <summary>Which face of the wall is attacked.</summary>
public enum DefectSide
{
    /// <summary>From outside.</summary>
    External,

    /// <summary>From inside.</summary>
    Internal,

    /// <summary>Not known; raises risk.</summary>
    Unknown,
}

/// <summary>What causes the damage.</summary>
public enum DefectCause
{
    /// <summary>Not known; raises risk.</summary>
    Unknown,

    /// <summary>Internal corrosion.</summary>
    InternalCorrosion,

    /// <summary>External corrosion.</summary>
    ExternalCorrosion,

    /// <summary>Corrosion under lagging.</summary>
    CorrosionUnderLagging,

    /// <summary>Erosion or cavitation.</summary>
    Erosion,

    /// <summary>Fatigue or vibration.</summary>
    Fatigue,

    /// <summary>Mechanical damage.</summary>
    MechanicalDamage,

    /// <summary>A fault of fabrication.</summary>
    Fabrication,

    /// <summary>Freezing.</summary>
    Freezing,
}

/// <summary>Who is near the pipe.</summary>
public enum PeopleNearby
{
    /// <summary>Rarely anybody.</summary>
    Rarely,

    /// <summary>A walkway.</summary>
    Walkway,

    /// <summary>A manned area.</summary>
    MannedArea,

    /// <summary>A public way.</summary>
    PublicWay,

    /// <summary>A confined space.</summary>
    ConfinedSpace,
}

/// <summary>The family a metal belongs to.</summary>
public enum MetalFamily
{
    /// <summary>Carbon steel.</summary>
    CarbonSteel,

    /// <summary>Low-alloy steel.</summary>
    LowAlloySteel,

    /// <summary>Austenitic stainless steel.</summary>
    AusteniticStainless,

    /// <summary>Ferritic or duplex stainless steel.</summary>
    OtherStainless,

    /// <summary>Copper-nickel and other copper alloys.</summary>
    CopperAlloy,

    /// <summary>Ductile iron.</summary>
    DuctileIron,

    /// <summary>Gray iron: brittle.</summary>
    GrayIron,

    /// <summary>Any other metal.</summary>
    Other,
}

/// <summary>What takes a metal outside the equations of strength: no temporary repair is made on it.</summary>
public enum MetalExclusion
{
    /// <summary>Metal colder than its least design temperature.</summary>
    BelowMinimumTemperature,

    /// <summary>Damage by hydrogen.</summary>
    HydrogenDamage,

    /// <summary>A temperature in the creep range.</summary>
    CreepRange,
}

/// <summary>Strength of the metal, given where the grade is not listed or is used hotter than its table goes.</summary>
/// <param name="Metal">Family of the metal.</param>
/// <param name="AllowableStress">Basic allowable stress at design temperature.</param>
/// <param name="YieldStrength">Specified minimum yield strength; nothing for gray iron.</param>
/// <param name="TensileStrength">Specified minimum tensile strength.</param>
/// <param name="Basis">Where the values come from: code and table, a material check.</param>
public sealed record MetalGiven(
    MetalFamily Metal,
    [property: Required, MeasuredIn("MPa", Least = 1, Greatest = 1000)] Measure AllowableStress,
    [property: MeasuredIn("MPa", Least = 10, Greatest = 2000)] Measure? YieldStrength,
    [property: MeasuredIn("MPa", Least = 10, Greatest = 2000)] Measure? TensileStrength,
    [property: Required, StringLength(500, MinimumLength = 3)] string Basis
);

/// <summary>Where a wall was read.</summary>
public enum ReadingPlace
{
    /// <summary>At the defect.</summary>
    AtDefect,

    /// <summary>Beside it, where seal and bands bear.</summary>
    Beside,
}

/// <summary>A wall reading. It carries the instrument, so that a reading can be doubted later.</summary>
/// <param name="Where">At the defect or beside it.</param>
/// <param name="Spot">The spot in words, the same words at each visit: <c>4 o'clock</c>.</param>
/// <param name="Wall">The wall read.</param>
/// <param name="On">The day it was read.</param>
/// <param name="Instrument">Serial number of the instrument; its calibration is read from the list of instruments.</param>
public sealed record ThicknessReading(
    ReadingPlace Where,
    [property: Required, StringLength(60)] string Spot,
    [property: Required, MeasuredIn("mm", Least = 0, Greatest = 200)] Measure Wall,
    DateOnly On,
    [property: Required, StringLength(60)] string Instrument
);

/// <summary>A survey of the thinned area: walls read on a grid. It gives the river-bottom profile, and with it the strength.</summary>
/// <param name="Readings">The walls left, a row a line, cells parted by tabs, semicolons or commas; blank where none was read.</param>
/// <param name="Unit">Their unit.</param>
/// <param name="Rows">Which way a row runs.</param>
/// <param name="AxialSpacing">Distance between readings along the pipe.</param>
/// <param name="CircumferentialSpacing">Distance between readings round the pipe, on its surface.</param>
/// <param name="FirstClockHours">Clock position of the first line of readings, looking with the flow; the next follow the clock.</param>
/// <param name="On">The day it was read.</param>
/// <param name="Instrument">Serial number of the instrument.</param>
public sealed record WallSurvey(
    [property: Required, StringLength(20000, MinimumLength = 3)] string Readings,
    GridUnit Unit,
    GridRows Rows,
    [property: Required, MeasuredIn("mm", Least = 0.1, Greatest = 10000)] Measure AxialSpacing,
    [property: Required, MeasuredIn("mm", Least = 0.1, Greatest = 10000)] Measure CircumferentialSpacing,
    [property: Range(0, 12)] double FirstClockHours,
    DateOnly On,
    [property: Required, StringLength(60)] string Instrument
);

/// <summary>The defect as measured.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Side">Which face is attacked; unknown is legal and raises risk.</param>
/// <param name="Cause">Why; unknown is legal and raises risk.</param>
/// <param name="ThroughWall">It goes through the wall.</param>
/// <param name="AxialLength">Extent along the pipe.</param>
/// <param name="CircumferentialLength">Extent round the pipe, on its surface.</param>
/// <param name="HoleDiameter">Equivalent diameter of the hole, where it is through.</param>
/// <param name="ClockHours">Clock position of its centre looking with the flow.</param>
/// <param name="Growing">Growth has been seen or is expected within the repair's life.</param>
public sealed record DefectMeasured(
    DefectKind Kind,
    DefectSide Side,
    DefectCause Cause,
    bool ThroughWall,
    [property: Required, MeasuredIn("mm", Least = 0, Greatest = 100000)] Measure AxialLength,
    [property: Required, MeasuredIn("mm", Least = 0, Greatest = 20000)] Measure CircumferentialLength,
    [property: MeasuredIn("mm", Least = 0.1, Greatest = 2000)] Measure? HoleDiameter,
    [property: Range(0, 12)] double ClockHours,
    bool Growing
);

/// <summary>What a leak would do here.</summary>
/// <param name="People">Who is near.</param>
/// <param name="IsolableWithinTenMinutes">The escape can be shut off within ten minutes.</param>
/// <param name="EscapableInventory">What could get out between the isolation points.</param>
/// <param name="DrainsToWater">Over or beside water, drained to a river, or without a bund.</param>
/// <param name="ListedContents">HF, dry HCl, chlorine, phosgene, or gas with 3 % H2S by weight and more.</param>
/// <param name="LiquefiedFlammableGas">Liquefied flammable gas.</param>
/// <param name="StrongAcidOrAlkali">Strong acid or alkali.</param>
public sealed record LeakConsequences(
    PeopleNearby People,
    bool IsolableWithinTenMinutes,
    [property: Required, MeasuredIn("kg", Least = 0, Greatest = 1e9)] Measure EscapableInventory,
    bool DrainsToWater,
    bool ListedContents = false,
    bool LiquefiedFlammableGas = false,
    bool StrongAcidOrAlkali = false
);

/// <summary>Facts of a line that is not in the line list.</summary>
/// <param name="Dn">Nominal size DN.</param>
/// <param name="OutsideDiameter">Outside diameter; measured girth over π.</param>
/// <param name="NominalWall">Wall as ordered.</param>
/// <param name="Grade">Specification and grade, <c>ASTM A106 B</c>.</param>
/// <param name="State">Liquid, flashing, gas or steam.</param>
/// <param name="Category">Fluid service category.</param>
/// <param name="FluidGroup">1 (hazardous) or 2.</param>
/// <param name="InspectionClass">1 to 4.</param>
/// <param name="Flammable">It burns.</param>
/// <param name="Toxic">It poisons.</param>
/// <param name="AutoIgnition">Auto-ignition temperature, where it burns.</param>
/// <param name="DesignPressure">Gauge pressure of design.</param>
/// <param name="DesignTemperature">Temperature of design.</param>
/// <param name="SafetyCritical">The line's duty protects people.</param>
/// <param name="Potable">Drinking water.</param>
/// <param name="YearInstalled">Year the pipe went in, where known.</param>
public sealed record LineFactsGiven(
    [property: Range(6, 3000)] int Dn,
    [property: Required, MeasuredIn("mm", Least = 5, Greatest = 3000)] Measure OutsideDiameter,
    [property: Required, MeasuredIn("mm", Least = 0.3, Greatest = 200)] Measure NominalWall,
    [property: Required, StringLength(60)] string Grade,
    FluidState State,
    ServiceCategory Category,
    [property: Range(1, 2)] int FluidGroup,
    [property: Range(1, 4)] int InspectionClass,
    bool Flammable,
    bool Toxic,
    [property: MeasuredIn("°C", Least = 0, Greatest = 1000)] Measure? AutoIgnition,
    [property: Required, MeasuredIn("bar", Least = 0, Greatest = 1000)] Measure DesignPressure,
    [property: Required, MeasuredIn("°C", Least = -200, Greatest = 900)] Measure DesignTemperature,
    bool SafetyCritical = false,
    bool Potable = false,
    [property: Range(1850, 2200)] int? YearInstalled = null
);

/// <summary>Judges the pipe.</summary>
/// <param name="Readings">Walls read now, at the defect and beside it; empty only with a reason.</param>
/// <param name="NotMeasuredWhy">Why no wall could be read.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Consequences">What a leak would do here.</param>
/// <param name="EarlierReadings">Earlier walls of the same spots; they give the rate.</param>
/// <param name="CorrosionRate">A rate to reckon with where readings give none or a greater one is feared.</param>
/// <param name="RateBasis">Where that rate comes from.</param>
/// <param name="OutsideAxialLoad">Axial load from outside: weight, expansion, reaction.</param>
/// <param name="OutsideBending">Bending moment from outside, N m.</param>
/// <param name="OutsideLoadsNote">What was looked at: growth, span, branch, support.</param>
/// <param name="Cyclic">Marked vibration, cyclic duty or hammer.</param>
/// <param name="QualityFactor">Longitudinal joint quality factor, where it is known from papers.</param>
/// <param name="Metal">Strength of the metal, where the grade is not listed.</param>
/// <param name="StructuralMinimum">An engineer's structural minimum, where the table has none.</param>
/// <param name="Line">Facts of a line that is not in the line list; nothing for a listed one.</param>
/// <param name="Remark">What the next reader should know.</param>
/// <param name="SurgeRise">Pressure rise by surge or hammer; nothing where none can come.</param>
/// <param name="Unrestrained">Nothing else holds the line together: expansion joint, coupling, dead leg, open end.</param>
/// <param name="WallMappedEachSide">Length of wall mapped on each side of the defect.</param>
/// <param name="GrowthExcludedBy">The proof that a crack will not grow; nothing where there is none.</param>
/// <param name="Exclusions">What takes the metal outside the equations.</param>
/// <param name="DistanceToDiscontinuity">Distance to the nearest nozzle, elbow, support or flange, where known.</param>
/// <param name="Survey">Walls read on a grid over the thinned area; nothing where only spots were read.</param>
public sealed record RecordAssessment(
    [property: Required, MaxLength(400)] IReadOnlyList<ThicknessReading> Readings,
    [property: StringLength(2000)] string? NotMeasuredWhy,
    [property: Required] DefectMeasured Defect,
    [property: Required] LeakConsequences Consequences,
    [property: MaxLength(400)] IReadOnlyList<ThicknessReading>? EarlierReadings = null,
    [property: MeasuredIn("mm/y", Least = 0, Greatest = 100)] Measure? CorrosionRate = null,
    [property: StringLength(500)] string? RateBasis = null,
    [property: MeasuredIn("kN", Least = 0, Greatest = 100000)] Measure? OutsideAxialLoad = null,
    [property: MeasuredIn("N m", Least = 0, Greatest = 1e9)] Measure? OutsideBending = null,
    [property: StringLength(1000)] string? OutsideLoadsNote = null,
    bool Cyclic = false,
    [property: Range(0.5, 1)] double? QualityFactor = null,
    MetalGiven? Metal = null,
    [property: MeasuredIn("mm", Least = 0, Greatest = 200)] Measure? StructuralMinimum = null,
    LineFactsGiven? Line = null,
    [property: StringLength(2000)] string? Remark = null,
    [property: MeasuredIn("bar", Least = 0, Greatest = 1000)] Measure? SurgeRise = null,
    bool Unrestrained = false,
    [property: MeasuredIn("mm", Least = 0, Greatest = 100000)] Measure? WallMappedEachSide = null,
    [property: StringLength(1000)] string? GrowthExcludedBy = null,
    [property: MaxLength(3)] IReadOnlyList<MetalExclusion>? Exclusions = null,
    [property: MeasuredIn("mm", Least = 0, Greatest = 100000)] Measure? DistanceToDiscontinuity = null,
    WallSurvey? Survey = null
);

/// <summary>What the service made of an assessment, kept with it.</summary>
/// <param name="Facts">The facts it was reckoned with.</param>
/// <param name="RequiredWallMm">Required wall; nothing where an engineer must still give a structural minimum.</param>
/// <param name="ThinnestMm">Thinnest wall at the defect; 0 where it is through, nothing where it was not measured.</param>
/// <param name="SoundWallMm">Thinnest wall beside the defect; nothing where it was not measured.</param>
/// <param name="SafePressureBar">Safe pressure of the metal loss, the lowest of the methods that count; nothing where it is through or no pressure is credited.</param>
/// <param name="AxialShort">The pipe does not carry its end load, or must be taken as parted: a restraint is needed.</param>
/// <param name="EndLoadKn">End load the pipe must carry.</param>
/// <param name="RateMmPerYear">Rate to reckon with.</param>
/// <param name="RemainingLifeDays">Days until the thinnest wall is down to the required one.</param>
/// <param name="LeakRate">Leak rate in words, where it is through.</param>
/// <param name="EarlierLeaks">Earlier leaks on the line within 24 months.</param>
/// <param name="Risk">Class before a method is chosen.</param>
/// <param name="Calculations">All calculations with working and findings.</param>
/// <param name="NoTemporaryRepair">Why no temporary repair is acceptable here, whatever restraint is designed; empty where one may be.</param>
public sealed record Judgement(
    FactsView Facts,
    double? RequiredWallMm,
    double? ThinnestMm,
    double? SoundWallMm,
    double? SafePressureBar,
    bool? AxialShort,
    double? EndLoadKn,
    double? RateMmPerYear,
    double? RemainingLifeDays,
    string? LeakRate,
    int EarlierLeaks,
    RiskView Risk,
    IReadOnlyList<CalculationView> Calculations,
    IReadOnlyList<string>? NoTemporaryRepair = null
);

/// <summary>The facts of pipe and service a step was reckoned with. Gauge pressures.</summary>
/// <param name="Dn">Nominal size.</param>
/// <param name="OutsideDiameterMm">Outside diameter.</param>
/// <param name="NominalWallMm">Nominal wall.</param>
/// <param name="Grade">Grade as listed.</param>
/// <param name="Metal">Family of the metal.</param>
/// <param name="AllowableStressMpa">Allowable stress at design temperature.</param>
/// <param name="QualityFactor">Joint quality factor.</param>
/// <param name="Fluid">What flows.</param>
/// <param name="State">Its state.</param>
/// <param name="Category">Service category.</param>
/// <param name="FluidGroup">Fluid group.</param>
/// <param name="InspectionClass">Inspection class.</param>
/// <param name="Flammable">It burns.</param>
/// <param name="Toxic">It poisons.</param>
/// <param name="AboveAutoIgnition">At or above its auto-ignition temperature.</param>
/// <param name="OperatingPressureBar">Operating pressure.</param>
/// <param name="DesignPressureBar">Design pressure.</param>
/// <param name="OperatingTemperatureC">Operating temperature.</param>
/// <param name="DesignTemperatureC">Design temperature.</param>
/// <param name="SafetyCritical">The line's duty protects people.</param>
/// <param name="Potable">Drinking water.</param>
public sealed record FactsView(
    int Dn,
    double OutsideDiameterMm,
    double NominalWallMm,
    string Grade,
    MetalFamily Metal,
    double AllowableStressMpa,
    double QualityFactor,
    string Fluid,
    FluidState State,
    ServiceCategory Category,
    int FluidGroup,
    int InspectionClass,
    bool Flammable,
    bool Toxic,
    bool AboveAutoIgnition,
    double OperatingPressureBar,
    double DesignPressureBar,
    double OperatingTemperatureC,
    double DesignTemperatureC,
    bool SafetyCritical,
    bool Potable
);

/// <summary>The body of an assessment: what was asked and what was made of it.</summary>
/// <param name="Ask">What was entered.</param>
/// <param name="Judgement">What the service reckoned.</param>
/// <param name="Instruments">The instruments used, with their calibration.</param>
public sealed record SignedAssessment(
    RecordAssessment Ask,
    Judgement Judgement,
    IReadOnlyList<InstrumentUsed> Instruments
);

/// <summary>An instrument as it was when it was used.</summary>
/// <param name="Serial">Its serial number.</param>
/// <param name="CalibrationDue">Last day its calibration was good for.</param>
public sealed record InstrumentUsed(string Serial, DateOnly CalibrationDue);

public sealed partial class RepairOrdersClient
{
    /// <summary>Signs the assessment of the round.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Readings, defect and surroundings.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The assessment; its body is a <see cref="SignedAssessment"/>.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection, 412 when the order changed since.</exception>
    public Task<RecordView> Assess(string number, RecordAssessment ask, string version) =>
        Put<RecordView>($"orders/{number}/assessment", ask, version);
}
