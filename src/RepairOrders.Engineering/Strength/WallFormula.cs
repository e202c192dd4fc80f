using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Strength;

/// <summary>The pressure formula of the duty's code with its numbers, to be solved for the wall or for the pressure.</summary>
internal sealed class WallFormula
{
    private static readonly Clause Eq3a = new("ASME B31.3-2012", "304.1.2, eq. (3a)");
    private static readonly Clause TableY = new("ASME B31.3", "Table 304.1.1", Provenance.FromMemory);
    private static readonly Clause Eq7 = new("ASME B31.1", "104.1.2, eq. (7)", Provenance.FromMemory);
    private static readonly Clause LiquidLine = new("ASME B31.4", "403.2");
    private static readonly Clause GasLine = new("ASME B31.8", "841.1.1");
    private static readonly Clause BarlowClause = new("Barlow's formula", "on the outside diameter");
    private static readonly Clause PipeRecord = new("the pipe's record", "", Provenance.Entered);
    private static readonly Clause Creep = new("ASME B31.3", "Table 302.3.5", Provenance.FromMemory);
    private static readonly Clause ThinWall = new("mean hoop stress stands for the wall's", "", Provenance.OwnRule);

    private readonly string symbols;
    private readonly double[] factors;
    private readonly double? wallCoefficient;

    // Without a wall coefficient Y the formula is that of a thin wall.
    private WallFormula(Clause source, string symbols, double[] factors, double? wallCoefficient = null)
    {
        Source = source;
        (this.symbols, this.factors, this.wallCoefficient) = (symbols, factors, wallCoefficient);
    }

    public Clause Source { get; }

    private double Stress => factors.Aggregate((a, b) => a * b);

    private string Numbers => string.Join(" × ", factors.Select(f => f.ToString("G5", CultureInfo.InvariantCulture)));

    private double Thickness(double P, double D) => P * D / (2 * (Stress + P * (wallCoefficient ?? 0)));

    public double Held(double D, double t) => 2 * Stress * t / (D - 2 * (wallCoefficient ?? 0) * t);

    public double NoteThickness(Working working, double P, double D) =>
        wallCoefficient is { } Y
            ? Wall(working, $"P D / (2 ({symbols} + P Y))", $"{P} × {D} / (2 ({Numbers} + {P} × {Y}))", Thickness(P, D))
            : Wall(working, $"P D / (2 {symbols})", $"{P} × {D} / (2 × {Numbers})", Thickness(P, D));

    public double NoteHeld(Working working, double D, double t, double held) =>
        wallCoefficient is { } Y
            ? Mawp(working, $"2 {symbols} tc / (D − 2 Y tc)", $"2 × {Numbers} × {t} / ({D} − 2 × {Y} × {t})", held)
            : Mawp(working, $"2 {symbols} tc / D", $"2 × {Numbers} × {t} / {D}", held);

    private double Wall(Working working, string formula, FormattableString numbers, double t) =>
        working.Step("t", "wall for pressure", formula, numbers, t, "mm", Source);

    private double Mawp(Working working, string formula, FormattableString numbers, double P) =>
        working.Step("MAWP", "pressure held, gauge", formula, numbers, P, "MPa", Source);

    /// <summary>The formula of the duty's code; nothing, with its finding, where the pipe lacks what it needs.</summary>
    public static WallFormula? Of(Pipe pipe, WallDuty duty, Working working, List<Finding> findings) =>
        duty.Code switch
        {
            WallCode.B314 or WallCode.B318 => Pipeline(pipe, duty, working, findings),
            WallCode.Barlow => Barlow(pipe, working),
            _ => Piping(pipe, duty, working, findings),
        };

    private static WallFormula Piping(Pipe pipe, WallDuty duty, Working working, List<Finding> findings)
    {
        var power = duty.Code == WallCode.B311;
        var (S, E) = StressAndQuality(pipe, working);
        var W = working.Given(
            "W",
            "weld strength reduction factor",
            Take.Factor("weldFactor", duty.WeldFactor),
            "-",
            Creep
        );
        var Y = working.Given(
            "Y",
            "wall coefficient",
            RequiredWall.WallCoefficient(pipe.Metal, duty.DesignTemperature),
            "-",
            TableY
        );
        if (power && E < 1)
            findings.Add(
                Finding.Watch(
                    "quality-factor-in-stress",
                    "The stress tables of ASME B31.1 print S times E: where the stress was read there, the quality factor must be 1.",
                    Eq7
                )
            );
        return new(power ? Eq7 : Eq3a, "S E W", [S, E, W], Y);
    }

    private static WallFormula? Pipeline(Pipe pipe, WallDuty duty, Working working, List<Finding> findings)
    {
        var clause = duty.Code == WallCode.B314 ? LiquidLine : GasLine;
        if (pipe.YieldStrength is not { } yield)
        {
            findings.Add(
                Finding.Refuse(
                    "yield-strength-missing",
                    "A pipeline code needs a specified minimum yield strength; this metal has none on record.",
                    clause
                )
            );
            return null;
        }
        var SMYS = working.Given(
            "SMYS",
            "specified minimum yield strength",
            Take.Stress("yieldStrengthMpa", yield),
            "MPa",
            PipeRecord
        );
        var F = working.Given("F", "design factor", Take.Factor("designFactor", duty.DesignFactor), "-", clause);
        var E = working.Given("E", "joint factor", Take.Factor("qualityFactor", pipe.QualityFactor), "-", PipeRecord);
        if (duty.Code == WallCode.B314)
            return new(clause, "SMYS F E", [SMYS, F, E]);
        var T = working.Given(
            "T",
            "temperature factor",
            Take.Factor("temperatureFactor", duty.TemperatureFactor),
            "-",
            clause
        );
        return new(clause, "SMYS F E T", [SMYS, F, E, T]);
    }

    private static WallFormula Barlow(Pipe pipe, Working working)
    {
        var (S, E) = StressAndQuality(pipe, working);
        return new(BarlowClause, "S E", [S, E]);
    }

    private static (double S, double E) StressAndQuality(Pipe pipe, Working working) =>
        (
            working.Given(
                "S",
                "allowable stress at temperature",
                Take.Stress("allowableStressMpa", pipe.AllowableStress),
                "MPa",
                PipeRecord
            ),
            working.Given("E", "quality factor", Take.Factor("qualityFactor", pipe.QualityFactor), "-", PipeRecord)
        );

    /// <summary>Whether wall and pressure are inside the formula; beyond, no answer is given.</summary>
    public Finding ThinEnough(double t, double D, double P)
    {
        if (wallCoefficient is null)
            return Finding.AtMost(
                "wall-formula-range",
                "Wall, by a formula for a thin one of at most D/6,",
                t,
                D / 6,
                "mm",
                ThinWall,
                LimitKind.Absolute
            );
        var ratio = P / (factors[0] * factors[1]);
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"The formula holds for a wall under D/6 = {D / 6:0.0} mm and P/(S E) up to 0.385; here {t:0.00} mm and {ratio:0.000}."
        );
        return new(
            "wall-formula-range",
            t < D / 6 && ratio <= 0.385 ? Severity.Pass : Severity.Fail,
            words,
            ratio,
            0.385,
            "-",
            Source,
            LimitKind.Absolute
        );
    }

    /// <summary>Limits of the code that hang on the duty alone.</summary>
    public static IEnumerable<Finding> Limits(WallDuty duty) =>
        duty.Code switch
        {
            WallCode.B314 or WallCode.B318 => OfPipeline(duty, duty.Code == WallCode.B314 ? LiquidLine : GasLine),
            WallCode.Barlow => [],
            _ => OfPiping(duty),
        };

    private static IEnumerable<Finding> OfPiping(WallDuty duty)
    {
        if (duty is { WeldFactor: 1, DesignTemperature.DegreesCelsius: > 427 })
            yield return new(
                "weld-factor-default",
                Severity.Watch,
                "Hotter than 427 °C, W = 1 must be confirmed for welded pipe.",
                1,
                null,
                "-",
                Creep
            );
        if (duty.DesignTemperature.DegreesCelsius > RequiredWall.HottestWallCoefficient)
            yield return Finding.AtMost(
                "wall-coefficient-range",
                "Design temperature, for which the wall coefficient Y is listed,",
                duty.DesignTemperature.DegreesCelsius,
                RequiredWall.HottestWallCoefficient,
                "°C",
                TableY
            );
    }

    private static IEnumerable<Finding> OfPipeline(WallDuty duty, Clause clause)
    {
        yield return Finding.AtMost("design-factor", "Design factor", duty.DesignFactor, 0.72, "-", clause);
        var T = duty.DesignTemperature.DegreesCelsius;
        if (duty is { Code: WallCode.B318, TemperatureFactor: 1 } && T > 121)
            yield return new(
                "temperature-factor",
                Severity.Fail,
                "Above 121 °C the temperature factor is less than 1; enter it from the code.",
                T,
                121,
                "°C",
                clause
            );
        if (duty.Code == WallCode.B314 && T > 120)
            yield return Finding.AtMost(
                "liquid-line-temperature",
                "Design temperature of a liquid pipeline",
                T,
                120,
                "°C",
                new("ASME B31.4", "scope", Provenance.FromMemory)
            );
    }
}
