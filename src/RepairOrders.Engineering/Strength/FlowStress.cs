using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The options ASME B31G-2012 gives for the flow stress.</summary>
public enum FlowStressOption
{
    /// <summary>1.1 SMYS; plain carbon steel.</summary>
    A,

    /// <summary>SMYS + 69 MPa; carbon and low-alloy steel to the 70 ksi grade.</summary>
    B,

    /// <summary>Mean of yield and tensile strength; to the 80 ksi grade.</summary>
    C,
}

/// <summary>The stress at which corroded line pipe is taken to fail.</summary>
public static class FlowStress
{
    private const double Hottest = 120;

    // The limits are grade limits: a hard-metric X70 (485 MPa) is the 70 ksi grade though 70 ksi is 483 MPa.
    private const double SeventyKsiGrade = 485;
    private const double EightyKsiGrade = 555;

    private static readonly Clause Source = new("ASME B31G-2012", "1.7", Provenance.FromMemory);
    private static readonly Clause PipeRecord = new("the pipe's record", "", Provenance.Entered);

    /// <summary>Flow stress of an option, never above the tensile strength, by ASME B31G.</summary>
    /// <remarks>
    /// <para>Formula: (a) Sflow = 1.1 SMYS; (b) Sflow = SMYS + 69 MPa; (c) Sflow = (SMYS + SMTS) / 2; each at most SMTS.</para>
    /// <para>Symbols: Sflow flow stress, MPa; SMYS, SMTS specified minimum yield and tensile strength, MPa.</para>
    /// <para>Validity: below 120 °C; (a) plain carbon steel; (b) SMYS ≤ 483 MPa (70 ksi grade, hard-metric 485 MPa); (c) SMYS ≤ 551 MPa (80 ksi grade), strengths at temperature.</para>
    /// <para>Reference: ASME B31G-2012, 1.7 (from memory; the options were seen on a public sheet).</para>
    /// </remarks>
    /// <param name="option">The option.</param>
    /// <param name="yieldStrength">SMYS.</param>
    /// <param name="tensileStrength">SMTS.</param>
    /// <returns>Flow stress Sflow.</returns>
    /// <exception cref="ImpossibleInputException">A strength is not above 0, or yield is above tensile strength.</exception>
    /// <example>X70 hard metric, option (b), SMYS 485 MPa, SMTS 570 MPa: Sflow = 554 MPa.</example>
    public static Pressure Of(FlowStressOption option, Pressure yieldStrength, Pressure tensileStrength)
    {
        var SMYS = Take.Stress("yieldStrengthMpa", yieldStrength);
        var SMTS = Require.Between("tensileStrengthMpa", tensileStrength.Megapascals, SMYS, 10_000);
        return Pressure.FromMegapascals(Math.Min(Raw(option, SMYS, SMTS), SMTS));
    }

    /// <summary>Flow stress of a pipe by an option, or the reason why the option may not be used.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="Of"/>.</para>
    /// <para>Symbols: those of <see cref="Of"/>.</para>
    /// <para>Validity: those of <see cref="Of"/>; outside them the option is refused, not clamped.</para>
    /// <para>Reference: ASME B31G-2012, 1.7 (from memory).</para>
    /// </remarks>
    /// <param name="option">The option.</param>
    /// <param name="pipe">The pipe, with both specified strengths.</param>
    /// <param name="temperature">Metal temperature.</param>
    /// <returns>Flow stress; nothing where the option is refused.</returns>
    /// <exception cref="ImpossibleInputException">A strength is not above 0, or yield is above tensile strength.</exception>
    /// <example>API 5L X52 (360/460 MPa) at 20 °C, option (b): 429 MPa.</example>
    public static Calculated<Pressure?> Assess(FlowStressOption option, Pipe pipe, Temperature temperature)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        if (Refusal(option, pipe, temperature) is { } refusal)
        {
            return new(null, [], [refusal], []);
        }
        var flow = Of(option, pipe.YieldStrength!.Value, pipe.TensileStrength!.Value);
        return new(flow, Shown(option, pipe, flow.Megapascals), [], []);
    }

    /// <summary>Flow stress in MPa; nothing where the option is refused.</summary>
    internal static double? Allowed(FlowStressOption option, Pipe pipe, Temperature temperature) =>
        Refusal(option, pipe, temperature) is null
            ? Of(option, pipe.YieldStrength!.Value, pipe.TensileStrength!.Value).Megapascals
            : null;

    private static Working Shown(FlowStressOption option, Pipe pipe, double flow)
    {
        var working = new Working();
        var SMYS = working.Given(
            "SMYS",
            "specified minimum yield strength",
            pipe.YieldStrength!.Value.Megapascals,
            "MPa",
            PipeRecord
        );
        var SMTS = working.Given(
            "SMTS",
            "specified minimum tensile strength",
            pipe.TensileStrength!.Value.Megapascals,
            "MPa",
            PipeRecord
        );
        (string formula, FormattableString numbers) = option switch
        {
            FlowStressOption.A => ("min(1.1 SMYS, SMTS)", (FormattableString)$"min(1.1 × {SMYS}, {SMTS})"),
            FlowStressOption.B => ("min(SMYS + 69, SMTS)", (FormattableString)$"min({SMYS} + 69, {SMTS})"),
            _ => ("(SMYS + SMTS) / 2", (FormattableString)$"({SMYS} + {SMTS}) / 2"),
        };
        working.Step("Sflow", $"flow stress, option {Letter(option)}", formula, numbers, flow, "MPa", Source);
        return working;
    }

    private static double Raw(FlowStressOption option, double SMYS, double SMTS) =>
        option switch
        {
            FlowStressOption.A => 1.1 * SMYS,
            FlowStressOption.B => SMYS + 69,
            _ => (SMYS + SMTS) / 2,
        };

    private static Finding? Refusal(FlowStressOption option, Pipe pipe, Temperature temperature)
    {
        if (pipe.Metal is not (MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel))
        {
            return Refuse(
                "flow-stress-metal",
                "The method is for carbon and low-alloy steel; this metal is another.",
                null,
                null,
                null
            );
        }
        if (option == FlowStressOption.A && pipe.Metal != MetalFamily.CarbonSteel)
        {
            return Refuse("flow-stress-metal", "Option (a) is for plain carbon steel only.", null, null, null);
        }
        if (pipe.YieldStrength is not { } yield || pipe.TensileStrength is null)
        {
            return Refuse(
                "flow-stress-strength-missing",
                "Both specified strengths must be on record: the flow stress is capped by the tensile strength.",
                null,
                null,
                null
            );
        }
        if (temperature.DegreesCelsius >= Hottest)
        {
            return Refuse(
                "flow-stress-temperature",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The flow stress holds below 120 °C; the metal is at {temperature.DegreesCelsius:0} °C."
                ),
                temperature.DegreesCelsius,
                Hottest,
                "°C"
            );
        }
        return Strongest(option) is { } limit && yield.Megapascals > limit
            ? Refuse(
                "flow-stress-grade",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Option ({Letter(option)}) ends at the grade of {limit:0} MPa yield; this pipe has {yield.Megapascals:0} MPa."
                ),
                yield.Megapascals,
                limit,
                "MPa"
            )
            : null;
    }

    private static double? Strongest(FlowStressOption option) =>
        option switch
        {
            FlowStressOption.B => SeventyKsiGrade,
            FlowStressOption.C => EightyKsiGrade,
            _ => null,
        };

    private static string Letter(FlowStressOption option) => option.ToString().ToLowerInvariant();

    private static Finding Refuse(string code, string words, double? value, double? limit, string? unit) =>
        new(code, Severity.Fail, words, value, limit, unit, Source, LimitKind.Absolute);
}
