using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Surface;

/// <summary>What the instruments show at the pipe.</summary>
/// <param name="Air">Air temperature, °C.</param>
/// <param name="Humidity">Relative humidity, %.</param>
/// <param name="Steel">Temperature of the prepared steel at its coldest point, °C.</param>
public sealed record ClimateReading(Temperature Air, RelativeHumidity Humidity, Temperature Steel);

/// <summary>What a material's data sheet allows at application.</summary>
/// <param name="Least">Least steel temperature, °C.</param>
/// <param name="Greatest">Greatest steel temperature, °C.</param>
/// <param name="ForWetSurfaces">The maker states the material for wet surfaces.</param>
public sealed record ApplicationLimits(Temperature Least, Temperature Greatest, bool ForWetSurfaces);

/// <summary>Go or no-go, and how far from it.</summary>
/// <param name="Go">The material may be mixed and applied in this climate.</param>
/// <param name="DewPoint">Dew point of the air over water, °C.</param>
/// <param name="Condensation">What the gate uses: the dew point, or the frost point below 0 °C, °C.</param>
/// <param name="Margin">Steel less condensation point, K; negative when the steel sweats.</param>
/// <param name="LeastSteel">The least steel temperature the gate lets pass in this air, °C.</param>
/// <param name="Sweating">The steel is at or below the condensation point: wet by definition.</param>
public sealed record ClimateVerdict(
    bool Go,
    Temperature DewPoint,
    Temperature Condensation,
    TemperatureDelta Margin,
    Temperature LeastSteel,
    bool Sweating
);

/// <summary>The climate gate: whether steel is dry and warm enough, and stays so, for a bonded repair.</summary>
public static class SurfaceClimate
{
    /// <summary>Kelvin the steel must be above the condensation point.</summary>
    public const double LeastMarginK = 3;

    /// <summary>Greatest relative humidity, %.</summary>
    public const double GreatestHumidityPercent = 85;

    // A degree above the gate is what a passing shower or a cloud takes away.
    private const double SmallMarginK = LeastMarginK + 1;

    private static readonly Clause Gate = new(
        "practice in the context of ISO 8502-4",
        "steel at least 3 K above the dew point, relative humidity at most 85 %",
        Provenance.FromMemory
    );
    private static readonly Clause Magnus = new(
        "Alduchov, Eskridge, Journal of Applied Meteorology 35 (1996) 601–609",
        "Magnus form over water"
    );
    private static readonly Clause MagnusIce = new(
        "Alduchov, Eskridge, Journal of Applied Meteorology 35 (1996) 601–609",
        "ice constants; prefactors from memory",
        Provenance.FromMemory
    );
    private static readonly Clause DataSheet = new("the material's data sheet", "", Provenance.Entered);
    private static readonly Clause Reading = new("reading at the pipe", "", Provenance.Entered);
    private static readonly Clause Ours = new("climate gate", "", Provenance.OwnRule);

    private static readonly string[] Cautions =
    [
        "Read air, humidity and steel again at mixing, at least once a shift and at every change of weather.",
        "Read the steel at the coldest point of the repair. A line with cold flow sweats whatever the weather.",
        "Warm a pipe only under a permit: no flame near lagging, fuel or vapour, none on a closed-in or live line.",
    ];

    /// <summary>Judges a reading: go when the steel is dry, warm enough above the dew point, and inside the material's range.</summary>
    /// <remarks>
    /// <para>Formula: go when Ts ≥ Tc + 3 K, RH ≤ 85 % and Tmin ≤ Ts ≤ Tmax; for a material stated for wet surfaces only the range, and no ice.</para>
    /// <para>Symbols: Ts steel temperature, °C; Tc condensation point (frost point below 0 °C), °C; RH relative humidity, %; Tmin, Tmax the
    /// material's range, °C.</para>
    /// <para>Validity: −40 °C ≤ air ≤ 50 °C; outside it the answer is no-go.</para>
    /// <para>Reference: practice in the context of ISO 8502-4, numeric limits from memory; dew point by Alduchov and Eskridge (1996).</para>
    /// </remarks>
    /// <param name="reading">Air, humidity and steel.</param>
    /// <param name="limits">What the material's data sheet allows.</param>
    /// <returns>The verdict, with each limit as a finding.</returns>
    /// <exception cref="ImpossibleInputException">A reading or limit that cannot be.</exception>
    /// <example>Air 20 °C, 70 %, steel 17.5 °C: Tc = 14.36 °C, margin 3.14 K: go. Steel 17.0 °C: margin 2.64 K: no-go.</example>
    public static Calculated<ClimateVerdict> Judge(ClimateReading reading, ApplicationLimits limits)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(limits);
        var T = DewPoint.AirC(reading.Air);
        var RH = DewPoint.HumidityPercent(reading.Humidity);
        var Ts = Require.Between("steelTemperatureC", reading.Steel.DegreesCelsius, -273.15, 1500);
        var Tmin = Require.Between("leastTemperatureC", limits.Least.DegreesCelsius, -273.15, 1500);
        var Tmax = Require.Between("greatestTemperatureC", limits.Greatest.DegreesCelsius, Tmin, 1500);

        var working = new Working();
        working.Given("T", "air temperature", T, "°C", Reading);
        working.Given("RH", "relative humidity", RH, "%", Reading);
        working.Given("Ts", "steel temperature", Ts, "°C", Reading);
        var Tc = Condensation(working, reading, T, RH);
        var margin = working.Step("ΔT", "margin", "Ts − Tc", $"{Ts} − {Tc:F2}", Ts - Tc, "K", Gate);
        var least = working.Step(
            "Ts,min",
            "least steel temperature",
            "Tc + 3",
            $"{Tc:F2} + 3",
            Tc + LeastMarginK,
            "°C",
            Gate
        );

        List<Finding> findings =
        [
            limits.ForWetSurfaces ? DrynessForWetSurfaces(Ts, Tc, margin) : Dryness(Ts, Tc, margin),
            Humidity(RH, limits.ForWetSurfaces),
            Range(Ts, Tmin, Tmax),
            .. Doubts(T, RH, Ts, Tc, Tmin, Tmax),
        ];
        var verdict = new ClimateVerdict(
            findings.All(f => f.Severity != Severity.Fail),
            DewPoint.Of(reading.Air, reading.Humidity),
            Temperature.FromDegreesCelsius(Tc),
            TemperatureDelta.FromKelvins(margin),
            Temperature.FromDegreesCelsius(limits.ForWetSurfaces ? Tmin : Math.Max(least, Tmin)),
            Ts <= Tc
        );
        return new(verdict, working, findings, Cautions);
    }

    private static double Condensation(Working working, ClimateReading reading, double T, double RH)
    {
        var g = Math.Log(RH / 100) + 17.625 * T / (243.04 + T);
        working.Step(
            "g",
            "humidity term",
            "ln(RH/100) + 17.625·T/(243.04 + T)",
            $"ln({RH}/100) + 17.625 × {T}/(243.04 + {T})",
            g,
            "-",
            Magnus
        );
        var Td = working.Step(
            "Td",
            "dew point",
            "243.04·g/(17.625 − g)",
            $"243.04 × {g}/(17.625 − {g})",
            DewPoint.Of(reading.Air, reading.Humidity).DegreesCelsius,
            "°C",
            Magnus
        );
        if (Td >= 0)
        {
            return Td;
        }

        var e = DewPoint.VapourPressure(reading.Air, reading.Humidity).Hectopascals;
        working.Step(
            "e",
            "vapour pressure",
            "(RH/100)·6.1094·exp(17.625·T/(243.04 + T))",
            $"{RH}/100 × 6.1094 × exp(17.625 × {T}/(243.04 + {T}))",
            e,
            "hPa",
            MagnusIce
        );
        var x = working.Step("x", "ice term", "ln(e/6.1121)", $"ln({e}/6.1121)", Math.Log(e / 6.1121), "-", MagnusIce);
        var Tf = working.Step(
            "Tf",
            "frost point",
            "273.86·x/(22.587 − x)",
            $"273.86 × {x}/(22.587 − {x})",
            DewPoint.Frost(reading.Air, reading.Humidity).DegreesCelsius,
            "°C",
            MagnusIce
        );
        return working.Step(
            "Tc",
            "condensation point",
            "max(Td, Tf)",
            $"max({Td}, {Tf})",
            Math.Max(Td, Tf),
            "°C",
            Ours
        );
    }

    private static Finding Dryness(double Ts, double Tc, double margin)
    {
        var words = Margin(Ts, Tc, margin);
        return margin switch
        {
            <= 0 => Limit(
                "steel-sweating",
                Severity.Fail,
                $"{words} The steel sweats: use a material stated for wet surfaces, or warm or isolate the pipe.",
                margin,
                LeastMarginK,
                "K",
                Gate,
                LimitKind.Absolute
            ),
            < LeastMarginK => Limit(
                "steel-near-dew-point",
                Severity.Fail,
                Text($"{words} It needs {Tc + LeastMarginK:F1} °C or more. Warm the pipe, read again."),
                margin,
                LeastMarginK,
                "K",
                Gate,
                LimitKind.Absolute
            ),
            < SmallMarginK => Limit(
                "steel-above-dew-point",
                Severity.Watch,
                $"{words} That is close: read again before each mix.",
                margin,
                LeastMarginK,
                "K",
                Gate
            ),
            _ => Limit("steel-above-dew-point", Severity.Pass, words, margin, LeastMarginK, "K", Gate),
        };
    }

    private static Finding DrynessForWetSurfaces(double Ts, double Tc, double margin)
    {
        var words = Margin(Ts, Tc, margin);
        if (Ts <= Tc && Ts <= 0)
        {
            var ice = $"{words} There is ice on the steel; no material sticks to it.";
            return Limit("ice-on-steel", Severity.Fail, ice, Ts, 0, "°C", Ours, LimitKind.Absolute);
        }

        return margin >= LeastMarginK
            ? Limit("steel-above-dew-point", Severity.Pass, words, margin, LeastMarginK, "K", Gate)
            : Limit(
                "wet-surface",
                Severity.Watch,
                $"{words} The steel may be wet: only a material stated for wet surfaces, as this one is, may be used.",
                margin,
                LeastMarginK,
                "K",
                DataSheet
            );
    }

    private static Finding Humidity(double RH, bool forWet) =>
        RH <= GreatestHumidityPercent
            ? Limit(
                "humidity",
                Severity.Pass,
                Text($"Humidity is {RH:F0} %, limit 85 %."),
                RH,
                GreatestHumidityPercent,
                "%",
                Gate
            )
            : Limit(
                "humidity-above-limit",
                forWet ? Severity.Watch : Severity.Fail,
                forWet
                    ? Text($"Humidity is {RH:F1} %, above 85 %; the material is stated for wet surfaces.")
                    : Text($"Humidity is {RH:F1} %, above 85 %. Wait, or dry the air inside a shelter."),
                RH,
                GreatestHumidityPercent,
                "%",
                forWet ? DataSheet : Gate
            );

    private static Finding Range(double Ts, double Tmin, double Tmax)
    {
        var words = Text($"Steel is {Ts:F1} °C, the material allows {Tmin:F1} to {Tmax:F1} °C.");
        var nearest = Ts - Tmin < Tmax - Ts ? Tmin : Tmax;
        return Ts < Tmin || Ts > Tmax
            ? Limit(
                "steel-outside-material-range",
                Severity.Fail,
                words,
                Ts,
                nearest,
                "°C",
                DataSheet,
                LimitKind.Absolute
            )
            : Limit("steel-in-material-range", Severity.Pass, words, Ts, nearest, "°C", DataSheet);
    }

    private static IEnumerable<Finding> Doubts(double T, double RH, double Ts, double Tc, double Tmin, double Tmax)
    {
        if (T is < -40 or > 50)
        {
            yield return Limit(
                "dew-point-outside-validity",
                Severity.Fail,
                Text($"Air is {T:F1} °C; the dew point formula holds from −40 to 50 °C."),
                T,
                T < -40 ? -40 : 50,
                "°C",
                Magnus
            );
        }

        if (RH > 95)
        {
            yield return Limit(
                "humidity-sensor-high",
                Severity.Watch,
                "Above 95 % many sensors read 1 to 3 % high; the air is wet either way.",
                RH,
                95,
                "%",
                new("sensor makers' notes", "")
            );
        }

        if (T < Tmin || T > Tmax)
        {
            yield return Limit(
                "air-outside-material-range",
                Severity.Watch,
                Text(
                    $"Air is {T:F1} °C, outside the material's {Tmin:F1} to {Tmax:F1} °C: keep and mix it at a temperature inside."
                ),
                T,
                T < Tmin ? Tmin : Tmax,
                "°C",
                DataSheet
            );
        }

        if (Tc < 0)
        {
            yield return Limit(
                "frost-point-used",
                Severity.Watch,
                Text(
                    $"Below 0 °C the frost point, {Tc:F1} °C, is used: it lies above the dew point. Look for ice (steel is {Ts:F1} °C)."
                ),
                Tc,
                0,
                "°C",
                MagnusIce
            );
        }
    }

    private static string Margin(double Ts, double Tc, double margin) =>
        Text($"Steel is {Ts:F1} °C, condensation point {Tc:F1} °C, margin {margin:F1} K.");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static Finding Limit(
        string code,
        Severity severity,
        string words,
        double value,
        double limit,
        string unit,
        Clause source,
        LimitKind kind = LimitKind.ByDeviation
    ) => new(code, severity, words, value, limit, unit, source, kind);
}
