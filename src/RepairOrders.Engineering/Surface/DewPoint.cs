using System.Globalization;
using UnitsNet;

namespace RepairOrders.Engineering.Surface;

/// <summary>When moisture settles on steel: the dew point, and below 0 °C the frost point.</summary>
public static class DewPoint
{
    private const double a = 17.625;
    private const double b = 243.04;

    /// <summary>Dew point of moist air over water, by the Magnus form with the constants of Alduchov and Eskridge.</summary>
    /// <remarks>
    /// <para>Formula: g = ln(RH/100) + a·T/(b + T); Td = b·g/(a − g).</para>
    /// <para>Symbols: T air temperature, °C; RH relative humidity over water, %; Td dew point, °C; a = 17.625, b = 243.04 °C constants.</para>
    /// <para>Validity: −40 °C ≤ T ≤ 50 °C, 0 &lt; RH ≤ 100 %. Below 0 °C a surface frosts earlier, see <see cref="Frost"/>.</para>
    /// <para>Reference: Alduchov, Eskridge, Journal of Applied Meteorology 35 (1996) 601–609, eq. 21 (constants as quoted in open-source documentation).</para>
    /// </remarks>
    /// <param name="air">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity over water, %.</param>
    /// <returns>Dew point, °C.</returns>
    /// <exception cref="ImpossibleInputException">Humidity not above 0 or above 100 %, or an air temperature not −90 to 100 °C.</exception>
    /// <example>20 °C and 70 %: g = −0.35667 + 17.625 × 20/263.04 = 0.98343; Td = 243.04 × 0.98343/(17.625 − 0.98343) = 14.36 °C.</example>
    public static Temperature Of(Temperature air, RelativeHumidity humidity)
    {
        var T = AirC(air);
        var RH = HumidityPercent(humidity);
        var g = Math.Log(RH / 100) + a * T / (b + T);
        return Temperature.FromDegreesCelsius(b * g / (a - g));
    }

    /// <summary>Frost point of moist air: where ice settles on a surface below 0 °C. Humidity stays over water, as instruments show it.</summary>
    /// <remarks>
    /// <para>Formula: e = (RH/100)·6.1094·exp(a·T/(b + T)); x = ln(e/6.1121); Tf = 273.86·x/(22.587 − x).</para>
    /// <para>Symbols: T air temperature, °C; RH relative humidity over water, %; e vapour pressure, hPa; Tf frost point, °C; a = 17.625, b = 243.04 °C constants.</para>
    /// <para>Validity: −40 °C ≤ T ≤ 50 °C, 0 &lt; RH ≤ 100 %, and Tf ≤ 0 °C.</para>
    /// <para>Reference: Alduchov, Eskridge, Journal of Applied Meteorology 35 (1996) 601–609, ice constants; the prefactors 6.1094 and 6.1121 hPa from memory.</para>
    /// </remarks>
    /// <param name="air">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity over water, %.</param>
    /// <returns>Frost point, °C; above 0 °C it has no meaning.</returns>
    /// <exception cref="ImpossibleInputException">Humidity not above 0 or above 100 %, or an air temperature not −90 to 100 °C.</exception>
    /// <example>2 °C and 60 %: e = 0.6 × 6.1094 × exp(17.625 × 2/245.04) = 4.2328 hPa; x = −0.36744; Tf = −4.38 °C, where the dew point is −4.96 °C.</example>
    public static Temperature Frost(Temperature air, RelativeHumidity humidity)
    {
        var x = Math.Log(VapourPressure(air, humidity).Hectopascals / 6.1121);
        return Temperature.FromDegreesCelsius(273.86 * x / (22.587 - x));
    }

    /// <summary>Partial pressure of water vapour in air, by the Magnus form with the constants of Alduchov and Eskridge.</summary>
    /// <remarks>
    /// <para>Formula: e = (RH/100)·6.1094·exp(a·T/(b + T)).</para>
    /// <para>Symbols: T air temperature, °C; RH relative humidity over water, %; e vapour pressure, hPa; a = 17.625, b = 243.04 °C constants.</para>
    /// <para>Validity: −40 °C ≤ T ≤ 50 °C, 0 &lt; RH ≤ 100 %.</para>
    /// <para>Reference: Alduchov, Eskridge, Journal of Applied Meteorology 35 (1996) 601–609, eq. 21; the prefactor from memory.</para>
    /// </remarks>
    /// <param name="air">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity over water, %.</param>
    /// <returns>Vapour pressure, absolute, hPa.</returns>
    /// <exception cref="ImpossibleInputException">Humidity not above 0 or above 100 %, or an air temperature not −90 to 100 °C.</exception>
    /// <example>2 °C and 60 %: e = 0.6 × 6.1094 × exp(17.625 × 2/245.04) = 4.2328 hPa.</example>
    public static Pressure VapourPressure(Temperature air, RelativeHumidity humidity)
    {
        var T = AirC(air);
        var RH = HumidityPercent(humidity);
        return Pressure.FromHectopascals(RH / 100 * 6.1094 * Math.Exp(a * T / (b + T)));
    }

    /// <summary>The temperature at which moisture settles on steel: the dew point, or the higher frost point once both are below 0 °C.</summary>
    /// <remarks>
    /// <para>Formula: Tc = Td for Td ≥ 0 °C, else max(Td, Tf).</para>
    /// <para>Symbols: Td dew point, °C; Tf frost point, °C; Tc condensation point, °C.</para>
    /// <para>Validity: that of <see cref="Of"/> and <see cref="Frost"/>.</para>
    /// <para>Reference: derived here: steel below 0 °C collects ice as soon as the air is saturated over ice. The greater of the two keeps the
    /// answer continuous where the two fits cross, at −0.05 °C.</para>
    /// </remarks>
    /// <param name="air">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity over water, %.</param>
    /// <returns>Condensation point, °C.</returns>
    /// <exception cref="ImpossibleInputException">Humidity not above 0 or above 100 %, or an air temperature not −90 to 100 °C.</exception>
    /// <example>2 °C and 60 %: Td = −4.96 °C, Tf = −4.38 °C, so Tc = −4.38 °C. 20 °C and 70 %: Tc = Td = 14.36 °C.</example>
    public static Temperature Condensation(Temperature air, RelativeHumidity humidity)
    {
        var Td = Of(air, humidity);
        if (Td.DegreesCelsius >= 0)
        {
            return Td;
        }

        var Tf = Frost(air, humidity);
        return Tf > Td ? Tf : Td;
    }

    internal static double AirC(Temperature air) => Require.Between("airTemperatureC", air.DegreesCelsius, -90, 100);

    internal static double HumidityPercent(RelativeHumidity humidity) =>
        humidity.Percent is > 0 and <= 100
            ? humidity.Percent
            : throw new ImpossibleInputException(
                "relativeHumidityPercent",
                humidity.Percent.ToString("G6", CultureInfo.InvariantCulture),
                "more than 0 and at most 100"
            );
}
