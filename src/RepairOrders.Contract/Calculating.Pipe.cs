using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>A shell that is pressed from outside, as by injection into a clamp.</summary>
/// <param name="OutsidePressureBar">Greatest pressure outside, gauge.</param>
/// <param name="LeastInsidePressureBar">Least pressure inside at that time, gauge.</param>
/// <param name="LeastWallMm">Least wall.</param>
/// <param name="ModulusMpa">Modulus of elasticity; nothing for the metal's own.</param>
/// <param name="Ovality">Ovality; nothing for the default.</param>
public sealed record CrushingToReckon(
    double OutsidePressureBar,
    double LeastInsidePressureBar,
    double LeastWallMm,
    double? ModulusMpa = null,
    double? Ovality = null
);

/// <summary>Asks whether the pipe holds together.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Defect">The defect.</param>
/// <param name="PressureBar">Pressure, gauge.</param>
/// <param name="SealDiameterMm">Diameter the pressure acts on.</param>
/// <param name="SurgeRiseBar">Rise by surge.</param>
/// <param name="OutsidePullKn">Pull from outside.</param>
/// <param name="BendingMomentNm">Bending moment from outside.</param>
/// <param name="Unrestrained">Nothing holds the ends.</param>
/// <param name="ConditionUnknown">The wall is not known.</param>
/// <param name="RepairCarriesAxialLoad">The repair carries the end load.</param>
/// <param name="Crushing">Pressure from outside; nothing where there is none.</param>
public sealed record CalculateAxialLoad(
    [property: Required] PipeToReckon Pipe,
    [property: Required] DefectToReckon Defect,
    double PressureBar,
    double SealDiameterMm,
    double SurgeRiseBar = 0,
    double OutsidePullKn = 0,
    double BendingMomentNm = 0,
    bool Unrestrained = false,
    bool ConditionUnknown = false,
    bool RepairCarriesAxialLoad = false,
    CrushingToReckon? Crushing = null
);

/// <summary>Whether a shell stands pressure from outside.</summary>
/// <param name="AllowedBar">Allowed net pressure.</param>
/// <param name="NetBar">Net pressure.</param>
/// <param name="CollapseBar">Collapse with ovality.</param>
/// <param name="ElasticBar">Elastic collapse of a round pipe.</param>
public sealed record CrushingResult(double AllowedBar, double NetBar, double CollapseBar, double ElasticBar);

/// <summary>Whether the pipe holds together.</summary>
/// <param name="EndLoadKn">End load.</param>
/// <param name="ThrustKn">Thrust of the pressure.</param>
/// <param name="CapacityKn">What the ligament holds.</param>
/// <param name="WallNeededMm">Mean wall needed for the end load.</param>
/// <param name="AssumeFullThrust">The pipe must be taken for parted.</param>
/// <param name="RestraintNeededKn">What a restraint must hold.</param>
/// <param name="Crushing">Pressure from outside; nothing where none was given.</param>
public sealed record AxialLoadResult(
    double EndLoadKn,
    double ThrustKn,
    double CapacityKn,
    double WallNeededMm,
    bool AssumeFullThrust,
    double RestraintNeededKn,
    CrushingResult? Crushing
);

/// <summary>The kind of repair in mind, as far as the decision table knows kinds.</summary>
public enum RepairInMind
{
    /// <summary>None yet, or one the table says nothing of.</summary>
    Other,

    /// <summary>Rubber and band, soft patch.</summary>
    SoftPatch,

    /// <summary>Resin tape or laminate wrap.</summary>
    Wrap,

    /// <summary>Bolted leak clamp.</summary>
    BoltedClamp,

    /// <summary>Fillet-welded patch.</summary>
    WeldedPatch,
}

/// <summary>Asks what class of hole it is, how long a flaw may be, and whether any temporary repair is acceptable.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Service">The service.</param>
/// <param name="FlawLengthMm">Length of the flaw.</param>
/// <param name="ThinnestAlongLineMm">Thinnest wall along its line.</param>
/// <param name="FlowStressMpa">Flow stress.</param>
/// <param name="StructuralMinimumMm">Structural minimum wall.</param>
/// <param name="GrowthByNextVisitMm">Growth until the next visit.</param>
/// <param name="Repair">The kind of repair in mind.</param>
/// <param name="GrowthExcluded">It is proved that a crack will not grow.</param>
/// <param name="BelowMinimumTemperature">Metal colder than its least design temperature.</param>
/// <param name="HydrogenDamage">Damage by hydrogen.</param>
/// <param name="CreepRange">In the creep range.</param>
/// <param name="AxialStrengthSuffices">The wall bears the end load; nothing where not checked.</param>
/// <param name="RestraintDesigned">A restraint is designed that bears the end load.</param>
/// <param name="WallMappedEachSideMm">Length of wall mapped on each side.</param>
/// <param name="NuclearClass">Nuclear class, 1 to 3; 0 for none.</param>
/// <param name="WrittenRelief">The regulator's written relief is there.</param>
/// <param name="MarineClass">Marine piping class, 1 to 3; 0 on land.</param>
/// <param name="GasTransmission">Gas transmission under pipeline law.</param>
/// <param name="FireRated">The soft patch or wrap has a fire rating.</param>
/// <param name="PatchThicknessMm">Thickness of the welded patch.</param>
/// <param name="PatchSizeMm">Longest side of the welded patch.</param>
/// <param name="PatchCornersRounded">The welded patch has rounded corners.</param>
public sealed record CalculateThroughWall(
    [property: Required] PipeToReckon Pipe,
    [property: Required] DefectToReckon Defect,
    [property: Required] ServiceToReckon Service,
    double FlawLengthMm,
    double ThinnestAlongLineMm,
    double FlowStressMpa,
    double StructuralMinimumMm,
    double GrowthByNextVisitMm = 0,
    RepairInMind Repair = RepairInMind.Other,
    bool GrowthExcluded = false,
    bool BelowMinimumTemperature = false,
    bool HydrogenDamage = false,
    bool CreepRange = false,
    bool? AxialStrengthSuffices = null,
    bool RestraintDesigned = false,
    double WallMappedEachSideMm = 0,
    int NuclearClass = 0,
    bool WrittenRelief = false,
    int MarineClass = 0,
    bool GasTransmission = false,
    bool FireRated = false,
    double PatchThicknessMm = 0,
    double PatchSizeMm = 0,
    bool PatchCornersRounded = false
);

/// <summary>The class of a hole in one scheme.</summary>
/// <param name="Scheme">The scheme.</param>
/// <param name="Code">The class.</param>
/// <param name="Words">The class in words, with its band.</param>
/// <param name="Source">Where the band comes from.</param>
public sealed record HoleClassResult(string Scheme, string Code, string Words, string Source);

/// <summary>Whether a temporary repair may be made.</summary>
public enum RepairVerdict
{
    /// <summary>Nothing in the table speaks against it.</summary>
    Ok,

    /// <summary>An engineer decides.</summary>
    Engineer,

    /// <summary>None is acceptable.</summary>
    Stop,
}

/// <summary>A rule of the decision table that applies.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Condition">When it applies.</param>
/// <param name="Verdict">What it says.</param>
/// <param name="Reason">Why.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record DecisionReason(string Code, string Condition, RepairVerdict Verdict, string Reason, string Source);

/// <summary>A wall that is through, or nearly.</summary>
/// <param name="HoleClasses">The hole's class in each scheme; none without a hole.</param>
/// <param name="CriticalLengthMm">Length at which the flaw runs; nothing where there is none.</param>
/// <param name="LengthMm">Length at the next visit.</param>
/// <param name="HoopStressMpa">Hoop stress in the thinnest wall.</param>
/// <param name="ShareOfYield">Its share of the yield strength; nothing where that is not known.</param>
/// <param name="Verdict">Whether a temporary repair is acceptable.</param>
/// <param name="Reasons">The rules that apply.</param>
public sealed record ThroughWallResult(
    IReadOnlyList<HoleClassResult> HoleClasses,
    double? CriticalLengthMm,
    double LengthMm,
    double HoopStressMpa,
    double? ShareOfYield,
    RepairVerdict Verdict,
    IReadOnlyList<DecisionReason> Reasons
);

/// <summary>What leaks.</summary>
public enum LeakFluid
{
    /// <summary>Fresh water; its properties are reckoned.</summary>
    FreshWater,

    /// <summary>Sea water; its properties are reckoned.</summary>
    SeaWater,

    /// <summary>Another liquid; its density is given.</summary>
    OtherLiquid,

    /// <summary>Air.</summary>
    Air,

    /// <summary>Another gas; molar mass and heat ratio are given.</summary>
    OtherGas,

    /// <summary>Dry saturated steam.</summary>
    Steam,
}

/// <summary>What a leak rate is wanted for. It decides which way is safe.</summary>
public enum LeakPurpose
{
    /// <summary>Exposure, cloud, flooding: never too small.</summary>
    Exposure,

    /// <summary>Loss and cost: the likely value.</summary>
    Cost,
}

/// <summary>What a price is for.</summary>
public enum PricedBy
{
    /// <summary>A tonne.</summary>
    Tonne,

    /// <summary>A cubic metre.</summary>
    CubicMetre,
}

/// <summary>Asks what comes out of a hole.</summary>
/// <param name="Fluid">What leaks.</param>
/// <param name="Purpose">What the rate is for.</param>
/// <param name="InsidePressureBar">Pressure inside, gauge.</param>
/// <param name="HoleDiameterMm">Diameter of a round hole; this or the area.</param>
/// <param name="HoleAreaMm2">Area of the hole; this or the diameter.</param>
/// <param name="TemperatureC">Temperature inside; needed for water, sea water, air and other gas.</param>
/// <param name="OutsidePressureBar">Pressure outside, gauge; nothing for open air.</param>
/// <param name="AtmosphereBarAbs">Atmospheric pressure; nothing for 1.01325 bar.</param>
/// <param name="DischargeCoefficient">Discharge coefficient; nothing for the purpose's default.</param>
/// <param name="HoursAYear">Hours a year under pressure; nothing for 8760.</param>
/// <param name="Price">Price of the fluid; nothing where no cost is wanted.</param>
/// <param name="PricedBy">What the price is for.</param>
/// <param name="DensityKgM3">Density of another liquid.</param>
/// <param name="ViscosityMpaS">Its viscosity; nothing where not known.</param>
/// <param name="VapourPressureBarAbs">Its vapour pressure; nothing where not known.</param>
/// <param name="MolarMassGMol">Molar mass of another gas.</param>
/// <param name="HeatRatio">Its ratio of specific heats.</param>
/// <param name="Compressibility">Its compressibility.</param>
public sealed record CalculateLeakRate(
    LeakFluid Fluid,
    LeakPurpose Purpose,
    double InsidePressureBar,
    double? HoleDiameterMm = null,
    double? HoleAreaMm2 = null,
    double? TemperatureC = null,
    double? OutsidePressureBar = null,
    double? AtmosphereBarAbs = null,
    double? DischargeCoefficient = null,
    double? HoursAYear = null,
    double? Price = null,
    PricedBy PricedBy = PricedBy.Tonne,
    double? DensityKgM3 = null,
    double? ViscosityMpaS = null,
    double? VapourPressureBarAbs = null,
    double? MolarMassGMol = null,
    double? HeatRatio = null,
    double Compressibility = 1
);

/// <summary>What comes out of a hole.</summary>
/// <param name="MassFlowKgH">Mass flow.</param>
/// <param name="VolumeFlowLMin">Volume flow: of a gas, free gas; of steam, the water it was.</param>
/// <param name="MassAYearT">Mass a year, tonnes.</param>
/// <param name="VolumeAYearM3">Volume a year.</param>
/// <param name="CostAYear">Cost a year, in the currency of the price; nothing where none was given.</param>
/// <param name="DischargeCoefficient">The coefficient used.</param>
/// <param name="Choked">It leaves at the speed of sound.</param>
public sealed record LeakRateResult(
    double MassFlowKgH,
    double VolumeFlowLMin,
    double MassAYearT,
    double VolumeAYearM3,
    double? CostAYear,
    double DischargeCoefficient,
    bool Choked
);

/// <summary>Strength of the repair, as the likelihood counts it.</summary>
public enum StrengthOfRepair
{
    /// <summary>No method is chosen yet.</summary>
    NotChosen,

    /// <summary>As strong as the pipe.</summary>
    FullStrength,

    /// <summary>Engineered.</summary>
    Engineered,

    /// <summary>Engineered over damage that goes on.</summary>
    EngineeredOverActiveDamage,

    /// <summary>It seals only.</summary>
    SealOnly,
}

/// <summary>What time has done to a repair in service.</summary>
/// <param name="MissedLooks">Looks in a row that were due and not made.</param>
/// <param name="LifeUsed">Share of the approved life gone.</param>
/// <param name="PastEndDate">The end date has passed.</param>
/// <param name="RecordScorePercent">Share of the readings on record; nothing where not scored.</param>
/// <param name="ReinjectionsSince">Re-injections since the class was signed.</param>
/// <param name="EarlierLeaksSince">Leaks on the line since then.</param>
public sealed record AgeingToReckon(
    int MissedLooks,
    double LifeUsed,
    bool PastEndDate = false,
    double? RecordScorePercent = null,
    int ReinjectionsSince = 0,
    int EarlierLeaksSince = 0
);

/// <summary>Asks for the risk class of a repair.</summary>
/// <param name="Service">The service.</param>
/// <param name="Defect">The defect.</param>
/// <param name="NominalSizeDn">Nominal size.</param>
/// <param name="People">Who may be near.</param>
/// <param name="EscapableInventoryKg">What can escape.</param>
/// <param name="IsolableWithinTenMinutes">It can be shut off within ten minutes.</param>
/// <param name="RequiredWallMm">Wall needed.</param>
/// <param name="WallMeasured">The wall was measured.</param>
/// <param name="Repair">Strength of the repair.</param>
/// <param name="ListedContents">Contents of the worst list.</param>
/// <param name="LiquefiedFlammableGas">A liquefied flammable gas.</param>
/// <param name="StrongAcidOrAlkali">A strong acid or alkali.</param>
/// <param name="ShipClassOne">Class I piping of a ship.</param>
/// <param name="DrainsToWater">It drains to open water.</param>
/// <param name="EarlierLeaks">Earlier leaks on the line.</param>
/// <param name="Reinjections">Re-injections.</param>
/// <param name="RecordScorePercent">Share of the readings on record; nothing where not scored.</param>
/// <param name="LiveRepairsOnSection">Live repairs on the section, this one counted.</param>
/// <param name="NoPermanentFixReference">Nothing is planned that ends it.</param>
/// <param name="Ageing">For the class of today; nothing for that at signing.</param>
/// <param name="SectionClasses">Classes of the live repairs of a section, to sum its risk.</param>
public sealed record CalculateRiskClass(
    [property: Required] ServiceToReckon Service,
    [property: Required] DefectToReckon Defect,
    int NominalSizeDn,
    PeopleNearby People,
    double EscapableInventoryKg,
    bool IsolableWithinTenMinutes,
    double RequiredWallMm,
    bool WallMeasured,
    StrengthOfRepair Repair,
    bool ListedContents = false,
    bool LiquefiedFlammableGas = false,
    bool StrongAcidOrAlkali = false,
    bool ShipClassOne = false,
    bool DrainsToWater = false,
    int EarlierLeaks = 0,
    int Reinjections = 0,
    double? RecordScorePercent = null,
    int LiveRepairsOnSection = 1,
    bool NoPermanentFixReference = false,
    AgeingToReckon? Ageing = null,
    [property: MaxLength(1000)] IReadOnlyList<RiskClass>? SectionClasses = null
);

/// <summary>The risk class of a repair.</summary>
/// <param name="AsSigned">As it is signed.</param>
/// <param name="Today">With its age; nothing where none was given.</param>
/// <param name="SectionSum">Carried risk of the section; nothing where no classes were given.</param>
public sealed record RiskClassResult(RiskView AsSigned, RiskView? Today, int? SectionSum);
