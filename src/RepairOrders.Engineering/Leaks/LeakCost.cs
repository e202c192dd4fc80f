using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>What a leak costs in a year, in the currency of its price. Energy is never counted twice: the price of steam already holds its fuel.</summary>
public static class LeakCost
{
    /// <summary>The most hours a year has.</summary>
    public const double HoursOfALeapYear = 8784;

    /// <summary>Cost a year of a leak that is priced by mass.</summary>
    /// <remarks>
    /// <para>Formula: C = m·h·c.</para>
    /// <para>Symbols: m mass flow, t/h; h hours a year; c price, currency/t; C cost, currency/year.</para>
    /// <para>Validity: steady leak, h ≤ 8784.</para>
    /// <para>Reference: arithmetic; example of US DOE Steam Tip Sheet 1.</para>
    /// </remarks>
    /// <param name="flow">Mass flow.</param>
    /// <param name="hoursAYear">Hours a year the line is under pressure.</param>
    /// <param name="pricePerTonne">Price [currency/t].</param>
    /// <returns>Cost [currency/year].</returns>
    /// <exception cref="ImpossibleInputException">A flow, hours or price that cannot be.</exception>
    /// <example>75.8 lb/h of steam, 8760 h, 10 USD for 1000 lb (22.046 USD/t): 6640 USD.</example>
    public static double ByMass(MassFlow flow, Duration hoursAYear, double pricePerTonne) =>
        Require.Between("massFlowKgH", flow.KilogramsPerHour, 0, 1e15)
        / 1000
        * Hours(hoursAYear)
        * Price("pricePerTonne", pricePerTonne);

    /// <summary>Cost a year of a leak that is priced by volume.</summary>
    /// <remarks>
    /// <para>Formula: C = Q·h·c.</para>
    /// <para>Symbols: Q volume flow, m³/h; h hours a year; c price, currency/m³; C cost, currency/year.</para>
    /// <para>Validity: steady leak, h ≤ 8784.</para>
    /// <para>Reference: arithmetic; example of US Navy MO-209 (47 cubic feet a minute at 0.50 USD for 1000 cubic feet: 12 350 USD).</para>
    /// </remarks>
    /// <param name="flow">Volume flow; of a gas, as free gas.</param>
    /// <param name="hoursAYear">Hours a year the line is under pressure.</param>
    /// <param name="pricePerCubicMetre">Price [currency/m³].</param>
    /// <returns>Cost [currency/year].</returns>
    /// <exception cref="ImpossibleInputException">A flow, hours or price that cannot be.</exception>
    /// <example>47 cubic feet a minute (79.85 m³/h), 8760 h, 0.50 USD for 1000 cubic feet (0.017657 USD/m³): 12 350 USD.</example>
    public static double ByVolume(VolumeFlow flow, Duration hoursAYear, double pricePerCubicMetre) =>
        Require.Between("volumeFlowM3H", flow.CubicMetersPerHour, 0, 1e15)
        * Hours(hoursAYear)
        * Price("pricePerCubicMetre", pricePerCubicMetre);

    /// <summary>Cost a year of compressed air, by the power that makes it.</summary>
    /// <remarks>
    /// <para>Formula: C = n·Q·Cd·w·h·c.</para>
    /// <para>Symbols: n number of leaks, -; Q free air through one ideal hole, m³/min; Cd discharge coefficient, -; w power for free air,
    /// kW/(m³/min); h hours a year; c price of power, currency/kWh; C cost, currency/year.</para>
    /// <para>Validity: steady leak, h ≤ 8784. Q must not hold a discharge coefficient already.</para>
    /// <para>Reference: US DOE Compressed Air Tip Sheet 3 (2004), example (from memory).</para>
    /// </remarks>
    /// <param name="leaks">Number of such leaks [-].</param>
    /// <param name="freeAir">Free air through one ideal hole.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient Cd [-].</param>
    /// <param name="powerPerFreeAir">Power for free air [kW/(m³/min)]; 0.18 kW for a cubic foot a minute is 6.357.</param>
    /// <param name="hoursAYear">Hours a year the compressors run.</param>
    /// <param name="pricePerKilowattHour">Price of power [currency/kWh].</param>
    /// <returns>Cost [currency/year].</returns>
    /// <exception cref="ImpossibleInputException">A number, flow, coefficient, power, hours or price that cannot be.</exception>
    /// <example>100 leaks of 1.46 cubic feet a minute, Cd 0.61, 0.18 kW for each, 7000 h, 0.05 USD: 5611 USD.</example>
    public static double OfCompressedAir(
        double leaks,
        VolumeFlow freeAir,
        double dischargeCoefficient,
        double powerPerFreeAir,
        Duration hoursAYear,
        double pricePerKilowattHour
    ) =>
        Require.Between("leaks", leaks, 0, 1e6)
        * Require.Between("freeAirM3Min", freeAir.CubicMetersPerMinute, 0, 1e12)
        * Hole.Coefficient(dischargeCoefficient)
        * Require.Between("powerPerFreeAir", powerPerFreeAir, 0, 1e3)
        * Hours(hoursAYear)
        * Price("pricePerKilowattHour", pricePerKilowattHour);

    internal static double Hours(Duration hours) => Require.Between("hoursAYear", hours.Hours, 0, HoursOfALeapYear);

    internal static double Price(string field, double price) => Require.Between(field, price, 0, 1e9);
}
