using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>A temperature at a time.</summary>
/// <param name="At">When.</param>
/// <param name="TemperatureC">The temperature.</param>
public sealed record TemperatureAt(DateTimeOffset At, double TemperatureC);

/// <summary>A mix whose pot life is asked.</summary>
/// <param name="ReferenceTemperatureC">The temperature the times are stated at.</param>
/// <param name="PotLifeH">Time in the pot.</param>
/// <param name="MixTemperatureC">Temperature of the mix.</param>
/// <param name="MixedAt">When it was mixed.</param>
/// <param name="OpenTimeH">Open time once spread; nothing where not stated.</param>
/// <param name="TestedGreatestC">Hottest the times were tested at; nothing for the reference.</param>
public sealed record PotLifeToReckon(
    double ReferenceTemperatureC,
    double PotLifeH,
    double MixTemperatureC,
    DateTimeOffset MixedAt,
    double? OpenTimeH = null,
    double? TestedGreatestC = null
);

/// <summary>Asks how a cure goes: at a steady temperature, over a log, and how long the mix is usable.</summary>
/// <param name="ReferenceTemperatureC">The temperature the times are stated at.</param>
/// <param name="SetForLoadH">Time there until it may be loaded.</param>
/// <param name="FullHardnessH">Time there until fully hard.</param>
/// <param name="LeastTemperatureC">Below it nothing cures.</param>
/// <param name="TestedLeastC">Coldest the times were tested at; nothing for the reference.</param>
/// <param name="TestedGreatestC">Hottest the times were tested at; nothing for the reference.</param>
/// <param name="Q10Below">Ratio of rates for ten kelvin below the reference; both or none.</param>
/// <param name="Q10Above">Ratio of rates for ten kelvin above the reference; both or none.</param>
/// <param name="ActivationEnergyKjMol">Activation energy, for the law of Arrhenius instead.</param>
/// <param name="TemperatureC">A steady temperature; this, a log or a mix.</param>
/// <param name="Log">Temperatures as read, in the order of time.</param>
/// <param name="Forecast">Temperatures as forecast, after the log.</param>
/// <param name="PotLife">A mix whose pot life is asked.</param>
public sealed record CalculateCure(
    double ReferenceTemperatureC,
    double SetForLoadH,
    double FullHardnessH,
    double LeastTemperatureC,
    double? TestedLeastC = null,
    double? TestedGreatestC = null,
    double? Q10Below = null,
    double? Q10Above = null,
    double? ActivationEnergyKjMol = null,
    double? TemperatureC = null,
    [property: MaxLength(5000)] IReadOnlyList<TemperatureAt>? Log = null,
    [property: MaxLength(5000)] IReadOnlyList<TemperatureAt>? Forecast = null,
    PotLifeToReckon? PotLife = null
);

/// <summary>Times at one steady temperature.</summary>
/// <param name="Factor">Rate against the reference; 0 where nothing cures.</param>
/// <param name="SetForLoadH">Time until it may be loaded; nothing where it never sets.</param>
/// <param name="FullHardnessH">Time until fully hard; nothing where it never is.</param>
public sealed record CureTimesResult(double Factor, double? SetForLoadH, double? FullHardnessH);

/// <summary>How far a cure has come.</summary>
/// <param name="EquivalentTimeH">Equivalent time at the reference.</param>
/// <param name="SetForLoad">It may be loaded.</param>
/// <param name="FullyHard">It is fully hard.</param>
/// <param name="LeftToLoadTimeH">Time left until it may be loaded; nothing where it never would.</param>
/// <param name="LeftToHardnessTimeH">Time left until fully hard; nothing where it never would.</param>
/// <param name="ReadyForLoadAt">When it may be loaded; nothing where the log and forecast do not reach it.</param>
/// <param name="FullyHardAt">When it is fully hard; nothing where they do not reach it.</param>
public sealed record CureProgressResult(
    double EquivalentTimeH,
    bool SetForLoad,
    bool FullyHard,
    double? LeftToLoadTimeH,
    double? LeftToHardnessTimeH,
    DateTimeOffset? ReadyForLoadAt,
    DateTimeOffset? FullyHardAt
);

/// <summary>How long a mix is usable.</summary>
/// <param name="InPotTimeH">Time in the pot.</param>
/// <param name="OpenTimeH">Open time; nothing where not stated.</param>
/// <param name="UsableUntil">Until when.</param>
/// <param name="PlaceBy">By when the parts must be together; nothing where no open time is stated.</param>
public sealed record WorkingTimeResult(
    double InPotTimeH,
    double? OpenTimeH,
    DateTimeOffset UsableUntil,
    DateTimeOffset? PlaceBy
);

/// <summary>How a cure goes.</summary>
/// <param name="Times">At the steady temperature; nothing where none was given.</param>
/// <param name="Progress">Over the log; nothing where none was given.</param>
/// <param name="WorkingTime">Of the mix; nothing where none was given.</param>
public sealed record CureResult(CureTimesResult? Times, CureProgressResult? Progress, WorkingTimeResult? WorkingTime);

/// <summary>One hour of a weather forecast.</summary>
/// <param name="At">When it holds.</param>
/// <param name="AirTemperatureC">Air.</param>
/// <param name="RelativeHumidityPercent">Relative humidity.</param>
/// <param name="SteelTemperatureC">Steel; nothing to take it from the air.</param>
public sealed record ForecastHour(
    DateTimeOffset At,
    double AirTemperatureC,
    double RelativeHumidityPercent,
    double? SteelTemperatureC = null
);

/// <summary>Asks whether a surface may be coated now, and when.</summary>
/// <param name="AirTemperatureC">Air.</param>
/// <param name="RelativeHumidityPercent">Relative humidity.</param>
/// <param name="SteelTemperatureC">Steel.</param>
/// <param name="LeastTemperatureC">Coldest steel the material is stated for.</param>
/// <param name="GreatestTemperatureC">Hottest steel the material is stated for.</param>
/// <param name="ForWetSurfaces">The material is stated for wet surfaces.</param>
/// <param name="Forecast">Hours to come, in the order of time.</param>
/// <param name="WorkH">How long the work takes; needed with a forecast.</param>
public sealed record CalculateSurfaceClimate(
    double AirTemperatureC,
    double RelativeHumidityPercent,
    double SteelTemperatureC,
    double LeastTemperatureC,
    double GreatestTemperatureC,
    bool ForWetSurfaces = false,
    [property: MaxLength(2000)] IReadOnlyList<ForecastHour>? Forecast = null,
    double? WorkH = null
);

/// <summary>What the gate says of one hour.</summary>
/// <param name="At">When.</param>
/// <param name="SteelTemperatureC">The steel temperature put in.</param>
/// <param name="Go">Go.</param>
/// <param name="DewPointTemperatureC">Dew point.</param>
/// <param name="MarginK">Steel above condensation.</param>
/// <param name="Why">Why not; empty when it is a go.</param>
public sealed record ClimateHour(
    DateTimeOffset At,
    double SteelTemperatureC,
    bool Go,
    double DewPointTemperatureC,
    double MarginK,
    string Why
);

/// <summary>A run of hours in which the work may be done.</summary>
/// <param name="From">From.</param>
/// <param name="To">To.</param>
/// <param name="LeastMarginK">Least margin in it.</param>
public sealed record ClimateWindowResult(DateTimeOffset From, DateTimeOffset To, double LeastMarginK);

/// <summary>Whether a surface may be coated.</summary>
/// <param name="Go">Go now.</param>
/// <param name="DewPointTemperatureC">Dew point.</param>
/// <param name="CondensationTemperatureC">Where water or ice begins to settle.</param>
/// <param name="MarginK">Steel above that.</param>
/// <param name="LeastSteelTemperatureC">Coldest steel that is a go.</param>
/// <param name="Sweating">The steel sweats.</param>
/// <param name="Hours">The forecast, hour by hour; nothing without one.</param>
/// <param name="Windows">Runs of hours that are a go; nothing without a forecast.</param>
/// <param name="FirstLongEnough">The first that is long enough; nothing where none is.</param>
public sealed record SurfaceClimateResult(
    bool Go,
    double DewPointTemperatureC,
    double CondensationTemperatureC,
    double MarginK,
    double LeastSteelTemperatureC,
    bool Sweating,
    IReadOnlyList<ClimateHour>? Hours,
    IReadOnlyList<ClimateWindowResult>? Windows,
    ClimateWindowResult? FirstLongEnough
);

/// <summary>Asks for preload, torque window and passes.</summary>
/// <param name="TorqueNm">Torque that is set.</param>
/// <param name="BoltDiameterMm">Nominal diameter.</param>
/// <param name="NutFactorLow">Least nut factor of the lubricant in hand.</param>
/// <param name="NutFactorHigh">Greatest nut factor.</param>
/// <param name="PreloadNeededKn">Preload needed at least.</param>
/// <param name="PreloadAllowedKn">Preload allowed at most.</param>
/// <param name="Screws">Screws in the joint.</param>
public sealed record CalculateTightening(
    double TorqueNm,
    double BoltDiameterMm,
    double NutFactorLow,
    double NutFactorHigh,
    double PreloadNeededKn,
    double PreloadAllowedKn,
    int Screws
);

/// <summary>One pass over all screws.</summary>
/// <param name="TorqueNm">Its torque.</param>
/// <param name="Sequence">Screw numbers in order.</param>
/// <param name="Words">In words.</param>
public sealed record TighteningPassResult(double TorqueNm, IReadOnlyList<int> Sequence, string Words);

/// <summary>Preload, torque window and passes.</summary>
/// <param name="PreloadLowKn">Low estimate of the preload of one screw.</param>
/// <param name="PreloadHighKn">High estimate.</param>
/// <param name="TorqueLeastNm">Least torque that surely gives the preload needed.</param>
/// <param name="TorqueMostNm">Greatest torque that surely keeps the preload allowed.</param>
/// <param name="Passes">The passes.</param>
public sealed record TighteningResult(
    double PreloadLowKn,
    double PreloadHighKn,
    double TorqueLeastNm,
    double TorqueMostNm,
    IReadOnlyList<TighteningPassResult> Passes
);

/// <summary>The test that is planned.</summary>
public enum PlannedTest
{
    /// <summary>Leak test at service pressure, in stages.</summary>
    ServicePressure,

    /// <summary>Hydrostatic, ASME B31.3.</summary>
    Hydrostatic,

    /// <summary>Pneumatic, ASME B31.3.</summary>
    Pneumatic,

    /// <summary>Hydrostatic, ASME B31.1.</summary>
    PowerHydrostatic,

    /// <summary>Pneumatic, ASME B31.1.</summary>
    PowerPneumatic,

    /// <summary>Initial service leak test, ASME B31.3.</summary>
    InitialService,

    /// <summary>Sensitive leak test, ASME B31.3.</summary>
    SensitiveLeak,
}

/// <summary>Asks for the test of a repair.</summary>
/// <param name="Kind">The test.</param>
/// <param name="DesignPressureBar">Design pressure, gauge.</param>
/// <param name="OperatingPressureBar">Pressure in operation, gauge.</param>
/// <param name="StressAtTestMpa">Allowable stress at test temperature.</param>
/// <param name="StressAtDesignMpa">Allowable stress at design temperature.</param>
/// <param name="OutsideDiameterMm">Outside diameter.</param>
/// <param name="RemainingWallMm">Least wall that bears the test pressure.</param>
/// <param name="ServiceCategory">Fluid service category.</param>
/// <param name="GasInside">Gas or steam is inside during the test.</param>
/// <param name="YieldStrengthMpa">Yield strength at test temperature; nothing for a metal without one.</param>
/// <param name="PipeHoldsBar">Safe pressure of the damaged pipe, gauge; nothing where not assessed.</param>
/// <param name="RepairRatingBar">Greatest pressure the repair is sized for, gauge; nothing where it has none.</param>
/// <param name="WeakestComponentBar">Greatest test pressure of any other part, gauge; nothing where none is known.</param>
/// <param name="VolumeM3">Volume under pressure; needed where gas is inside.</param>
public sealed record CalculatePressureTest(
    PlannedTest Kind,
    double DesignPressureBar,
    double OperatingPressureBar,
    double StressAtTestMpa,
    double StressAtDesignMpa,
    double OutsideDiameterMm,
    double RemainingWallMm,
    ServiceCategory ServiceCategory,
    bool GasInside,
    double? YieldStrengthMpa = null,
    double? PipeHoldsBar = null,
    double? RepairRatingBar = null,
    double? WeakestComponentBar = null,
    double? VolumeM3 = null
);

/// <summary>One step of a test.</summary>
/// <param name="PressureBar">Pressure to go to, gauge.</param>
/// <param name="HoldTimeMin">Time to hold it.</param>
/// <param name="Words">What is done there.</param>
public sealed record TestStepResult(double PressureBar, double HoldTimeMin, string Words);

/// <summary>The test of a repair.</summary>
/// <param name="PressureBar">Test pressure, gauge.</param>
/// <param name="CodePressureBar">What the code asks for, gauge.</param>
/// <param name="CapBar">Greatest pressure allowed, gauge.</param>
/// <param name="CapBy">What sets it.</param>
/// <param name="ServicePressureOnly">The code's pressure cannot be reached.</param>
/// <param name="Steps">The steps.</param>
/// <param name="ReliefSettingBar">Setting of the relief valve, gauge; nothing without gas.</param>
/// <param name="StoredEnergyKj">Energy of the gas; nothing without gas.</param>
/// <param name="StandOffM">Least distance of people; nothing without gas.</param>
public sealed record PressureTestResult(
    double PressureBar,
    double CodePressureBar,
    double CapBar,
    string CapBy,
    bool ServicePressureOnly,
    IReadOnlyList<TestStepResult> Steps,
    double? ReliefSettingBar,
    double? StoredEnergyKj,
    double? StandOffM
);

/// <summary>A band to cut.</summary>
/// <param name="Code">Its name.</param>
/// <param name="LengthMm">Its cut length.</param>
public sealed record BandToCut([property: Required, StringLength(60)] string Code, double LengthMm);

/// <summary>Stock to cut from.</summary>
/// <param name="Code">Its name.</param>
/// <param name="LengthMm">Length of one.</param>
/// <param name="Count">How many.</param>
/// <param name="Remnant">It is a remnant, not a whole coil.</param>
/// <param name="Available">It may be used.</param>
public sealed record StockToCut(
    [property: Required, StringLength(60)] string Code,
    double LengthMm,
    int Count = 1,
    bool Remnant = false,
    bool Available = true
);

/// <summary>Asks for the best plan to cut bands.</summary>
/// <param name="Bands">The bands, 1 to 1000.</param>
/// <param name="Stock">Coils and remnants.</param>
/// <param name="KerfMm">Width of the cut.</param>
/// <param name="SpliceOverlapMm">Overlap of a splice.</param>
/// <param name="LeastPieceMm">Shortest piece of a spliced band; nothing for twice the overlap.</param>
/// <param name="LeastRemnantMm">Shortest remnant worth keeping; nothing for any.</param>
/// <param name="TimeLimitS">The longest the search may take, s.</param>
public sealed record CalculateCutPlan(
    [property: Required, MinLength(1), MaxLength(1000)] IReadOnlyList<BandToCut> Bands,
    [property: Required, MaxLength(1000)] IReadOnlyList<StockToCut> Stock,
    double KerfMm = 0,
    double SpliceOverlapMm = 0,
    double? LeastPieceMm = null,
    double? LeastRemnantMm = null,
    [property: Range(0.1, 10)] double TimeLimitS = 2
);

/// <summary>A piece cut.</summary>
/// <param name="Band">The band it belongs to.</param>
/// <param name="Part">Which part of it.</param>
/// <param name="Parts">Of how many.</param>
/// <param name="LengthMm">Its length.</param>
public sealed record CutPieceResult(string Band, int Part, int Parts, double LengthMm);

/// <summary>What is cut from one length of stock.</summary>
/// <param name="Stock">The stock.</param>
/// <param name="LengthMm">Its length.</param>
/// <param name="Remnant">It was a remnant.</param>
/// <param name="Pieces">The pieces.</param>
/// <param name="LeftMm">What is left.</param>
public sealed record StockCutResult(
    string Stock,
    double LengthMm,
    bool Remnant,
    IReadOnlyList<CutPieceResult> Pieces,
    double LeftMm
);

/// <summary>One aim of a plan.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Words">In words.</param>
/// <param name="Value">What was reached.</param>
/// <param name="Bound">What no plan can pass.</param>
/// <param name="Unit">Their unit.</param>
/// <param name="Proven">It is proved the best.</param>
public sealed record CutAimResult(string Code, string Words, double Value, double Bound, string Unit, bool Proven);

/// <summary>The plan to cut bands.</summary>
/// <param name="Found">There is a plan.</param>
/// <param name="Proven">It is proved the best.</param>
/// <param name="Splices">Splices it makes.</param>
/// <param name="LongestRemnantMm">Longest remnant left.</param>
/// <param name="LeastStockByMaterial">Fewest stock lengths, by material.</param>
/// <param name="LeastStockByLargeItems">Fewest stock lengths, by large bands.</param>
/// <param name="FirstFit">Stock lengths of a plain first fit; nothing where it finds no plan.</param>
/// <param name="Cuts">What is cut from what.</param>
/// <param name="Aims">Each aim and how near the best it is.</param>
public sealed record CutPlanResult(
    bool Found,
    bool Proven,
    int Splices,
    double LongestRemnantMm,
    int LeastStockByMaterial,
    int LeastStockByLargeItems,
    int? FirstFit,
    IReadOnlyList<StockCutResult> Cuts,
    IReadOnlyList<CutAimResult> Aims
);

/// <summary>A listed diameter near a measured girth.</summary>
/// <param name="Family">The family of diameters.</param>
/// <param name="Size">The size in it.</param>
/// <param name="OutsideDiameterMm">Its outside diameter.</param>
/// <param name="DifferenceMm">Measured less listed.</param>
/// <param name="Source">Where the diameter comes from.</param>
public sealed record DiameterMatchResult(
    string Family,
    string Size,
    double OutsideDiameterMm,
    double DifferenceMm,
    string Source
);

/// <summary>What a girth tells of a pipe.</summary>
/// <param name="OutsideDiameterMm">Girth over π.</param>
/// <param name="Matches">Listed diameters near it, nearest first.</param>
public sealed record GirthResult(double OutsideDiameterMm, IReadOnlyList<DiameterMatchResult> Matches);

/// <summary>Allowable stress of a grade at a temperature.</summary>
/// <param name="AllowableStressMpa">Allowable stress; nothing where none is listed.</param>
public sealed record AllowableStressResult(double? AllowableStressMpa);
