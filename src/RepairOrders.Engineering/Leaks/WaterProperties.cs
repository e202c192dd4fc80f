using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>Water, sea water and saturated steam: vapour pressure, density, viscosity.</summary>
public static class WaterProperties
{
    private const double CriticalK = 647.096;
    private const double CriticalDensity = 322;

    /// <summary>Saturation pressure of water, by IAPWS-IF97.</summary>
    /// <remarks>
    /// <para>Formula: θ = T + n9/(T − n10); A = θ² + n1·θ + n2; B = n3·θ² + n4·θ + n5; C = n6·θ² + n7·θ + n8; p = (2C/(−B + √(B² − 4AC)))⁴.</para>
    /// <para>Symbols: T temperature, K; n1 … n10 coefficients of the source; p saturation pressure, absolute, MPa.</para>
    /// <para>Validity: 273.15 K ≤ T ≤ 647.096 K.</para>
    /// <para>Reference: IAPWS R7-97(2012), section 8.1, eq. 30, Table 34; check values Table 35.</para>
    /// </remarks>
    /// <param name="temperature">Temperature of the water, 0 to 373.946 °C.</param>
    /// <returns>Saturation pressure, absolute.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 373.946 °C.</exception>
    /// <example>500 K: 2.63889776 MPa.</example>
    public static Pressure SaturationPressure(Temperature temperature)
    {
        var T = Kelvin(temperature, 0, CriticalK - 273.15);
        var theta = T - 0.23855557567849 / (T - 0.65017534844798e3);
        var A = theta * theta + 0.11670521452767e4 * theta - 0.72421316703206e6;
        var B = -0.17073846940092e2 * theta * theta + 0.12020824702470e5 * theta - 0.32325550322333e7;
        var C = 0.14915108613530e2 * theta * theta - 0.48232657361591e4 * theta + 0.40511340542057e6;
        var root = 2 * C / (-B + Math.Sqrt(B * B - 4 * A * C));
        return Pressure.FromMegapascals(root * root * root * root); // eq. 30
    }

    /// <summary>Density of fresh water at one atmosphere: the pure-water term of the UNESCO equation.</summary>
    /// <remarks>
    /// <para>Formula: ρ = 999.842594 + 6.793952e−2·t − 9.095290e−3·t² + 1.001685e−4·t³ − 1.120083e−6·t⁴ + 6.536332e−9·t⁵.</para>
    /// <para>Symbols: t temperature, °C; ρ density, kg/m³.</para>
    /// <para>Validity: 0 °C ≤ t ≤ 40 °C, one atmosphere.</para>
    /// <para>Reference: UNESCO Technical Papers in Marine Science 44 (1983), EOS-80, eq. 14 (check values from memory).</para>
    /// </remarks>
    /// <param name="temperature">Temperature, 0 to 40 °C.</param>
    /// <returns>Density.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 40 °C.</exception>
    /// <example>20 °C: 998.206 kg/m³.</example>
    public static Density FreshDensity(Temperature temperature) => SeaDensity(temperature, 0);

    /// <summary>Density of sea water at one atmosphere, by the UNESCO equation of state of 1980.</summary>
    /// <remarks>
    /// <para>Formula: ρ = ρw + A·S + B·S^1.5 + 4.8314e−4·S²; A = 8.24493e−1 − 4.0899e−3·t + 7.6438e−5·t² − 8.2467e−7·t³ + 5.3875e−9·t⁴;
    /// B = −5.72466e−3 + 1.0227e−4·t − 1.6546e−6·t².</para>
    /// <para>Symbols: t temperature, °C; S practical salinity, -; ρw density of fresh water, kg/m³; ρ density, kg/m³.</para>
    /// <para>Validity: 0 °C ≤ t ≤ 40 °C, 0 ≤ S ≤ 42, one atmosphere.</para>
    /// <para>Reference: UNESCO Technical Papers in Marine Science 44 (1983), EOS-80, eq. 13 (check values from memory).</para>
    /// </remarks>
    /// <param name="temperature">Temperature, 0 to 40 °C.</param>
    /// <param name="salinity">Practical salinity [-], 0 to 42; the open sea has 35.</param>
    /// <returns>Density.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 40 °C, or a salinity outside 0 to 42.</exception>
    /// <example>5 °C, S 35: 1027.675 kg/m³.</example>
    public static Density SeaDensity(Temperature temperature, double salinity)
    {
        var t = Kelvin(temperature, 0, 40) - 273.15;
        var S = Require.Between("salinity", salinity, 0, 42);
        var water = Polynomial(t, 999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9);
        var A = Polynomial(t, 8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9);
        var B = Polynomial(t, -5.72466e-3, 1.0227e-4, -1.6546e-6);
        return Density.FromKilogramsPerCubicMeter(water + A * S + B * S * Math.Sqrt(S) + 4.8314e-4 * S * S);
    }

    /// <summary>Density of saturated liquid water, by the IAPWS supplementary equations.</summary>
    /// <remarks>
    /// <para>Formula: ρ/322 = 1 + 1.99274064·τ^(1/3) + 1.09965342·τ^(2/3) − 0.510839303·τ^(5/3) − 1.75493479·τ^(16/3) − 45.5170352·τ^(43/3)
    /// − 6.7469445e5·τ^(110/3); τ = 1 − T/647.096.</para>
    /// <para>Symbols: T temperature, K; ρ density, kg/m³.</para>
    /// <para>Validity: 273.16 K ≤ T ≤ 647.096 K.</para>
    /// <para>Reference: IAPWS SR1-86(1992), eq. 2 (check values from memory).</para>
    /// </remarks>
    /// <param name="temperature">Temperature, 0 to 373.946 °C.</param>
    /// <returns>Density.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 373.946 °C.</exception>
    /// <example>373.1243 K: 958.365 kg/m³.</example>
    public static Density SaturatedLiquidDensity(Temperature temperature)
    {
        var tau = Math.Max(0, 1 - Kelvin(temperature, 0, CriticalK - 273.15) / CriticalK);
        var third = Math.Cbrt(tau);
        return Density.FromKilogramsPerCubicMeter(
            CriticalDensity
                * (
                    1
                    + 1.99274064 * third
                    + 1.09965342 * third * third
                    - 0.510839303 * Math.Pow(third, 5)
                    - 1.75493479 * Math.Pow(third, 16)
                    - 45.5170352 * Math.Pow(third, 43)
                    - 6.74694450e5 * Math.Pow(third, 110)
                )
        );
    }

    /// <summary>Density of saturated steam, by the IAPWS supplementary equations.</summary>
    /// <remarks>
    /// <para>Formula: ln(ρ/322) = −2.0315024·τ^(2/6) − 2.6830294·τ^(4/6) − 5.38626492·τ^(8/6) − 17.2991605·τ^(18/6) − 44.7586581·τ^(37/6)
    /// − 63.9201063·τ^(71/6); τ = 1 − T/647.096.</para>
    /// <para>Symbols: T temperature, K; ρ density, kg/m³.</para>
    /// <para>Validity: 273.16 K ≤ T ≤ 647.096 K; dry saturated steam.</para>
    /// <para>Reference: IAPWS SR1-86(1992), eq. 3 (check values from memory).</para>
    /// </remarks>
    /// <param name="temperature">Temperature, 0 to 373.946 °C.</param>
    /// <returns>Density.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 373.946 °C.</exception>
    /// <example>373.1243 K: 0.597586 kg/m³.</example>
    public static Density SaturatedSteamDensity(Temperature temperature)
    {
        var tau = Math.Max(0, 1 - Kelvin(temperature, 0, CriticalK - 273.15) / CriticalK);
        var sixth = Math.Pow(tau, 1.0 / 6);
        return Density.FromKilogramsPerCubicMeter(
            CriticalDensity
                * Math.Exp(
                    -2.03150240 * Math.Pow(sixth, 2)
                        - 2.68302940 * Math.Pow(sixth, 4)
                        - 5.38626492 * Math.Pow(sixth, 8)
                        - 17.2991605 * Math.Pow(sixth, 18)
                        - 44.7586581 * Math.Pow(sixth, 37)
                        - 63.9201063 * Math.Pow(sixth, 71)
                )
        );
    }

    /// <summary>Viscosity of liquid water near one atmosphere, by Korson, Drost-Hansen and Millero.</summary>
    /// <remarks>
    /// <para>Formula: log10(μ/1.0020) = (1.1709·(20 − t) − 0.001827·(t − 20)²)/(t + 89.93).</para>
    /// <para>Symbols: t temperature, °C; μ viscosity, mPa s.</para>
    /// <para>Validity: 0 °C ≤ t ≤ 40 °C as used here.</para>
    /// <para>Reference: Korson, Drost-Hansen, Millero, Journal of Physical Chemistry 73 (1969) 34–39.</para>
    /// </remarks>
    /// <param name="temperature">Temperature, 0 to 40 °C.</param>
    /// <returns>Dynamic viscosity.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 40 °C.</exception>
    /// <example>10 °C: 1.3068 mPa s.</example>
    public static DynamicViscosity FreshViscosity(Temperature temperature)
    {
        var t = Kelvin(temperature, 0, 40) - 273.15;
        var power = (1.1709 * (20 - t) - 0.001827 * (t - 20) * (t - 20)) / (t + 89.93);
        return DynamicViscosity.FromMillipascalSeconds(1.0020 * Math.Pow(10, power));
    }

    /// <summary>Viscosity of water and steam, by IAPWS, without the term near the critical point.</summary>
    /// <remarks>
    /// <para>Formula: μ = μ0(T)·μ1(T, ρ); μ0 = 100·√Tr/Σ Hi/Tr^i; μ1 = exp(ρr·Σ (1/Tr − 1)^i·Σ Hij·(ρr − 1)^j).</para>
    /// <para>Symbols: Tr = T/647.096, ρr = ρ/322, T temperature, K; ρ density, kg/m³; Hi, Hij coefficients of the source; μ viscosity, µPa s.</para>
    /// <para>Validity: 273.16 K ≤ T ≤ 1173.15 K, away from the critical point.</para>
    /// <para>Reference: IAPWS R12-08, eqs. 10 to 12, Tables 1 and 2; check values Table 4.</para>
    /// </remarks>
    /// <param name="temperature">Temperature, 0 to 900 °C.</param>
    /// <param name="density">Density, up to 1300 kg/m³.</param>
    /// <returns>Dynamic viscosity.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 900 °C, or a density outside 0 to 1300 kg/m³.</exception>
    /// <example>298.15 K, 998 kg/m³: 889.735 µPa s.</example>
    public static DynamicViscosity Viscosity(Temperature temperature, Density density)
    {
        var Tr = Kelvin(temperature, 0, 900) / CriticalK;
        var rhor = Require.Between("densityKgM3", density.KilogramsPerCubicMeter, 0, 1300) / CriticalDensity;
        var mu0 = 100 * Math.Sqrt(Tr) / Polynomial(1 / Tr, 1.67752, 2.20462, 0.6366564, -0.241605);
        var x = 1 / Tr - 1;
        var y = rhor - 1;
        double[] rows =
        [
            Polynomial(y, 5.20094e-1, 2.22531e-1, -2.81378e-1, 1.61913e-1, -3.25372e-2),
            Polynomial(y, 8.50895e-2, 9.99115e-1, -9.06851e-1, 2.57399e-1),
            Polynomial(y, -1.08374, 1.88797, -7.72479e-1),
            Polynomial(y, -2.89555e-1, 1.26613, -4.89837e-1, 0, 6.98452e-2, 0, -4.35673e-3),
            Polynomial(y, 0, 0, -2.57040e-1, 0, 0, 8.72102e-3),
            Polynomial(y, 0, 1.20573e-1, 0, 0, 0, 0, -5.93264e-4),
        ];
        return DynamicViscosity.FromMicropascalSeconds(mu0 * Math.Exp(rhor * Polynomial(x, rows)));
    }

    // A temperature given in kelvin comes back in degrees with a rounding that must not push it over the edge.
    private static double Kelvin(Temperature temperature, double least, double greatest) =>
        Require.Between("fluidTemperatureC", temperature.DegreesCelsius, least - 1e-9, greatest + 1e-9) + 273.15;

    private static double Polynomial(double x, params ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = sum * x + coefficients[i];
        }

        return sum;
    }
}
