using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Testing;

/// <summary>The kind of test after a repair.</summary>
public enum TestKind
{
    /// <summary>Leak test at service pressure, in stages: the usual one on a live line.</summary>
    ServicePressure,

    /// <summary>Hydrostatic, ASME B31.3.</summary>
    Hydrostatic,

    /// <summary>Pneumatic, ASME B31.3.</summary>
    Pneumatic,

    /// <summary>Hydrostatic, ASME B31.1.</summary>
    PowerHydrostatic,

    /// <summary>Pneumatic, ASME B31.1.</summary>
    PowerPneumatic,

    /// <summary>Initial service leak test, ASME B31.3: Category D only.</summary>
    InitialService,

    /// <summary>Sensitive leak test, ASME B31.3.</summary>
    SensitiveLeak,
}

/// <summary>What a test is planned from. All pressures are gauge.</summary>
/// <param name="Kind">Kind of test.</param>
/// <param name="DesignPressure">Design pressure.</param>
/// <param name="OperatingPressure">Pressure in operation.</param>
/// <param name="StressAtTest">Allowable stress at test temperature.</param>
/// <param name="StressAtDesign">Allowable stress at design temperature.</param>
/// <param name="OutsideDiameter">Outside diameter.</param>
/// <param name="LeastWall">Least wall that bears the test pressure itself; where the repair bears it, the least wall outside the repair.</param>
/// <param name="YieldStrength">Yield strength at test temperature; nothing for a metal without one.</param>
/// <param name="PipeHolds">Safe pressure of the damaged pipe by its remaining-strength assessment; nothing where none was made.</param>
/// <param name="RepairRating">Greatest pressure the repair is sized for; nothing where it has none.</param>
/// <param name="WeakestComponent">Greatest test pressure of any other part in the test; nothing where none is known.</param>
/// <param name="Category">Fluid service category.</param>
/// <param name="GasInside">The line holds gas or steam during the test.</param>
/// <param name="Volume">Volume under pressure; needed where gas is inside.</param>
public sealed record PressureTestAsk(
    TestKind Kind,
    Pressure DesignPressure,
    Pressure OperatingPressure,
    Pressure StressAtTest,
    Pressure StressAtDesign,
    Length OutsideDiameter,
    Length LeastWall,
    Pressure? YieldStrength,
    Pressure? PipeHolds,
    Pressure? RepairRating,
    Pressure? WeakestComponent,
    ServiceCategory Category,
    bool GasInside,
    Volume? Volume
);

/// <summary>One step of a test.</summary>
/// <param name="Pressure">Gauge pressure to go to.</param>
/// <param name="HoldMinutes">Minutes to hold it.</param>
/// <param name="Words">What is done there.</param>
public sealed record TestStep(Pressure Pressure, double HoldMinutes, string Words);

/// <summary>A term that caps the test pressure.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Words">The term in words.</param>
/// <param name="Pressure">Gauge pressure it allows.</param>
public sealed record TestCap(string Code, string Words, Pressure Pressure);

/// <summary>A test, planned.</summary>
/// <param name="Pressure">Test pressure, gauge.</param>
/// <param name="CodePressure">What the code asks for, gauge.</param>
/// <param name="Cap">Greatest pressure that wall, repair and parts allow, with the term that sets it.</param>
/// <param name="ServicePressureOnly">The code's pressure cannot be reached: the record must say "leak test at service pressure only" and who accepted it.</param>
/// <param name="Steps">Steps, in order.</param>
/// <param name="ReliefSetting">Setting of the relief valve; nothing for a test without gas.</param>
/// <param name="Energy">Energy of the gas; nothing without gas.</param>
/// <param name="StandOff">Least distance of people; nothing without gas.</param>
public sealed record PressureTest(
    Pressure Pressure,
    Pressure CodePressure,
    TestCap Cap,
    bool ServicePressureOnly,
    IReadOnlyList<TestStep> Steps,
    Pressure? ReliefSetting,
    Energy? Energy,
    Length? StandOff
)
{
    /// <summary>Plans the test of a repair: the code's pressure, never above what wall, repair and parts hold.</summary>
    /// <remarks>
    /// <para>Formula: PT = code pressure where it is at most min(0.9 P_y, pipe, repair, weakest part), else min(operating pressure, that cap); see <see cref="TestPressure"/>, <see cref="StoredEnergy"/>.</para>
    /// <para>Symbols: PT test pressure, MPa; P_y pressure at which the least wall yields, MPa; all gauge.</para>
    /// <para>Validity: the code in force and the site's procedure come first. Gas: relief at PT + min(345 kPa, 10 %), first look at min(0.5 PT, 170 kPa).</para>
    /// <para>Reference: ASME B31.3, 345 (public pages and memory); ASME B31.1, 137 (from memory); stages of 25, 50, 75 and 100 % are our own.</para>
    /// </remarks>
    /// <param name="ask">Kind of test, pressures, wall and ratings.</param>
    /// <returns>The test, with working, findings and cautions.</returns>
    /// <exception cref="ImpossibleInputException">A size is not above 0, a pressure is negative, or gas is inside and no volume is given.</exception>
    /// <example>Water line, 10 bar, ST = S, 168.3 mm, 4 mm of 240 MPa, clamp rated 16 bar: code 15 bar, cap 16 bar, test at 15 bar in four stages.</example>
    public static Calculated<PressureTest> Plan(PressureTestAsk ask)
    {
        ArgumentNullException.ThrowIfNull(ask);
        return new TestPlanning(ask).Answer();
    }
}
