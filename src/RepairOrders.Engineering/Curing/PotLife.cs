using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>What a data sheet says of the time a mix can be worked.</summary>
/// <param name="Reference">Temperature the times are stated at, °C.</param>
/// <param name="InPot">Pot life at the reference, in the mass the maker states, h.</param>
/// <param name="Open">Open time at the reference, until layers or the plate must be in place, h; nothing where it is not stated.</param>
/// <param name="TestedGreatest">Highest temperature the maker gives a pot life for, °C; nothing where it is the reference.</param>
/// <param name="Law">The material's own law; nothing to take the safe pair of ten-degree ratios.</param>
public sealed record PotLifeData(
    Temperature Reference,
    Duration InPot,
    Duration? Open = null,
    Temperature? TestedGreatest = null,
    RateLaw? Law = null
);

/// <summary>How long a mix can be worked.</summary>
/// <param name="InPot">Pot life at the temperature of the mix, h.</param>
/// <param name="Open">Open time at that temperature, h; nothing where it is not stated.</param>
/// <param name="UsableUntil">When the pot life ends.</param>
/// <param name="PlaceBy">When the open time ends; nothing where it is not stated.</param>
public sealed record WorkingTime(Duration InPot, Duration? Open, DateTimeOffset UsableUntil, DateTimeOffset? PlaceBy);

/// <summary>How long a mix can be used once its parts have met.</summary>
public static class PotLife
{
    private static readonly Clause Rule = new("pot life", "", Provenance.OwnRule);
    private static readonly Clause Reading = new("reading of the mix", "", Provenance.Entered);

    private static readonly string[] Cautions =
    [
        "A larger mix heats itself and gels sooner than stated: mix what one step needs, spread it thin.",
        "A mix that smokes or runs hot is put outside and left alone; never seal it in a tin.",
        "What has gelled is thrown away, never thinned or worked on.",
    ];

    /// <summary>Pot life and open time at the temperature of the mix, counted from the moment its parts meet.</summary>
    /// <remarks>
    /// <para>Formula: t = tref/f(T).</para>
    /// <para>Symbols: tref time at the reference, h; f rate factor of the law, -; T temperature of the mix, °C; t time at T, h.</para>
    /// <para>Validity: the mass the maker states; not above 20 K beyond the tested range, where the finding fails.</para>
    /// <para>Reference: the material's data; without it the safe pair Q10 1.8 below and 2.6 above the reference (own rule), the reverse of cure.</para>
    /// </remarks>
    /// <param name="data">The material's data.</param>
    /// <param name="mix">Temperature of the mix, °C; of the pipe once it is applied, where that is warmer.</param>
    /// <param name="mixedAt">When the parts met.</param>
    /// <returns>Times in h and the instants they end, with defaults and limits as findings.</returns>
    /// <exception cref="ImpossibleInputException">A time not above 0, or above 100 h, or a temperature outside −60 to 300 °C.</exception>
    /// <example>30 min at 20 °C, no product data, mix at 30 °C: f = 2.6; 30/2.6 = 11.5 min.</example>
    public static Calculated<WorkingTime> At(PotLifeData data, Temperature mix, DateTimeOffset mixedAt)
    {
        ArgumentNullException.ThrowIfNull(data);
        if (mixedAt.Year > 2200)
        {
            throw new ImpossibleInputException(
                "mixedAt",
                mixedAt.ToString("o", CultureInfo.InvariantCulture),
                "a year up to 2200"
            );
        }

        var law = data.Law ?? Q10Law.SafeForPotLife;
        var T = CureRate.Celsius("mixTemperatureC", mix);
        var Tref = CureRate.Celsius("referenceTemperatureC", data.Reference);
        var tested = Math.Max(Tref, data.TestedGreatest is { } high ? CureRate.Celsius("testedGreatestC", high) : Tref);
        var inPot = Hours("potLifeH", data.InPot);
        double? open = data.Open is { } given ? Hours("openTimeH", given) : null;

        var working = new Working();
        working.Given("T", "temperature of the mix", T, "°C", Reading);
        // A cold mix keeps longer, but the hour it is carried to a warm pipe it does not: no more credit than 20 K below.
        var counted = Math.Max(T, Tref - Cure.CarryK);
        var f = working.Step(
            "f",
            "rate factor",
            law.Symbols,
            law.Numbers(counted, Tref),
            law.Factor(Temperature.FromDegreesCelsius(counted), data.Reference),
            "-",
            law.Source
        );
        var pot = working.Step("tp", "pot life", "tp,ref/f", $"{inPot:G5}/{f}", inPot / f, "h", Rule);
        double? placed = open is { } o
            ? working.Step("to", "open time", "to,ref/f", $"{o:G5}/{f}", o / f, "h", Rule)
            : null;

        var result = new WorkingTime(
            Duration.FromHours(pot),
            placed is { } p ? Duration.FromHours(p) : null,
            mixedAt + TimeSpan.FromHours(pot),
            placed is { } q ? mixedAt + TimeSpan.FromHours(q) : null
        );
        return new(result, working, [.. Findings(data, T, tested + Cure.CarryK)], Cautions);
    }

    /// <summary>The share of its pot life a mix has used over a log of its temperature.</summary>
    /// <remarks>
    /// <para>Formula: u = Σ f(Tw)·Δt/tref, Tw the warmer of an interval's two readings.</para>
    /// <para>Symbols: Tw temperature, °C; Δt length of the interval, h; f rate factor of the law, -; tref pot life at the reference, h; u share used, -.</para>
    /// <para>Validity: that of <see cref="At"/>; gaps count in full, since a mix does not wait.</para>
    /// <para>Reference: derived here.</para>
    /// </remarks>
    /// <param name="data">The material's data.</param>
    /// <param name="log">Readings of the mix from the moment its parts met, in order.</param>
    /// <returns>Share of the pot life used [-]; 1 or more means it may not be used.</returns>
    /// <exception cref="ImpossibleInputException">No reading, readings out of order, or a value out of range.</exception>
    /// <example>30 min at 20 °C, Q10 2.6 above; 10 min from 25 to 30 °C: 2.6 × 10/30 = 0.867.</example>
    public static double Used(PotLifeData data, IReadOnlyList<LogReading> log)
    {
        ArgumentNullException.ThrowIfNull(data);
        var law = data.Law ?? Q10Law.SafeForPotLife;
        var tref = Hours("potLifeH", data.InPot);
        var lengths = TemperatureLog.Intervals(log);
        return lengths
            .Select(
                (interval, i) =>
                {
                    var warmer =
                        log[i].Temperature > log[i + 1].Temperature ? log[i].Temperature : log[i + 1].Temperature;
                    return law.Factor(warmer, data.Reference) * interval.Length.Hours / tref;
                }
            )
            .Sum();
    }

    private static double Hours(string field, Duration time)
    {
        Require.Positive(field, time.Hours);
        return Require.Between(field, time.Hours, 0, 100);
    }

    private static IEnumerable<Finding> Findings(PotLifeData data, double T, double edge)
    {
        if (data.Law is null)
        {
            yield return new(
                "pot-life-law-default",
                Severity.Watch,
                "No law for this material was given: the safe pair of ten-degree ratios is used, 1.8 below the reference and 2.6 above.",
                null,
                null,
                null,
                Q10Law.SafeForPotLife.Source
            );
        }

        if (T > edge)
        {
            yield return new(
                "pot-life-unknown",
                Severity.Fail,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The mix is at {T:F1} °C, more than 20 K beyond what was tested: nobody knows how fast it gels. Cool it."
                ),
                T,
                edge,
                "°C",
                Rule,
                LimitKind.Absolute
            );
        }
    }
}
