using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Axial;

/// <summary>What is needed to say whether the pipe under a repair holds together.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Pressure">Greatest gauge pressure, design or test, without surge.</param>
/// <param name="SurgeRise">Pressure rise by surge; 0 where none can come.</param>
/// <param name="SealDiameter">Diameter the pressure acts on if the pipe parts; not less than the pipe's outside.</param>
/// <param name="OutsidePull">Pull from outside beside pressure: weight, supports, warmth.</param>
/// <param name="BendingMoment">Bending moment at the defect.</param>
/// <param name="Unrestrained">Nothing else holds the line together: expansion joint, coupling, dead leg, open end.</param>
/// <param name="ConditionUnknown">The metal under the repair could not be measured.</param>
/// <param name="RepairCarriesAxialLoad">The repair itself holds the pipe together: grips, tie rods, weld, axial laminate.</param>
public sealed record AxialCase(
    Pipe Pipe,
    Defect Defect,
    Pressure Pressure,
    Pressure SurgeRise,
    Length SealDiameter,
    Force OutsidePull,
    Torque BendingMoment,
    bool Unrestrained,
    bool ConditionUnknown,
    bool RepairCarriesAxialLoad
);

/// <summary>Whether the pipe holds together, and what must hold it if not.</summary>
/// <param name="EndLoad">Thrust, pull and bending together, as an even pull.</param>
/// <param name="Thrust">Pressure thrust on the seal diameter.</param>
/// <param name="Capacity">End load the thinned wall bears.</param>
/// <param name="WallNeeded">Wall the end load needs all round.</param>
/// <param name="AssumeFullThrust">The pipe is taken as parted, whatever its capacity.</param>
/// <param name="RestraintNeeded">Load the restraint must hold; 0 where the pipe bears it.</param>
public sealed record AxialCheck(
    Force EndLoad,
    Force Thrust,
    Force Capacity,
    Length WallNeeded,
    bool AssumeFullThrust,
    Force RestraintNeeded
);

/// <summary>End load against what the thinned wall bears.</summary>
public static class AxialLoad
{
    /// <summary>Whether the pipe under a repair holds together, and the restraint it needs if not.</summary>
    /// <remarks>
    /// <para>Formula: load = (P + dP) π/4 Ds² + F_out + 4 M/Dm; restraint = load where capacity &lt; load or full thrust is assumed, else 0; see <see cref="EndLoad"/>.</para>
    /// <para>Symbols: P gauge pressure, dP surge, MPa; Ds seal diameter, mm; F_out pull from outside, N; M bending moment, N·mm; Dm mean diameter, mm.</para>
    /// <para>Validity: ductile straight pipe. Full thrust is assumed for loss over 80 % deep on over a quarter of the girth, a crack-like defect,
    /// an unknown condition, an unrestrained line, or surge.</para>
    /// <para>Reference: UK HSE note on leak sealing repair clamps; ASME B31.3, 302.3.5 (from memory).</para>
    /// </remarks>
    /// <param name="axial">Pipe, defect and loads.</param>
    /// <returns>Loads and restraint, with working and findings.</returns>
    /// <exception cref="ImpossibleInputException">A size is not above 0, or the seal is smaller than the pipe.</exception>
    /// <example>168.3 mm, 7.11 mm sound, 2 MPa on its own diameter, no other load: 44.5 kN of 496.9 kN; no restraint.</example>
    public static Calculated<AxialCheck> Check(AxialCase axial)
    {
        ArgumentNullException.ThrowIfNull(axial);
        return new AxialRun(axial).Answer();
    }
}
