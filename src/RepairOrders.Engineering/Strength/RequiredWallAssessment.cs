using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

public static partial class RequiredWall
{
    private static readonly Clause Eq3a = new("ASME B31.3-2012", "304.1.2, eq. (3a)");
    private static readonly Clause TableY = new("ASME B31.3", "Table 304.1.1", Provenance.FromMemory);
    private static readonly Clause Eq7 = new("ASME B31.1", "104.1.2, eq. (7)", Provenance.FromMemory);
    private static readonly Clause LiquidLine = new("ASME B31.4", "403.2");
    private static readonly Clause GasLine = new("ASME B31.8", "841.1.1");
    private static readonly Clause BarlowClause = new("Barlow's formula", "on the outside diameter");
    private static readonly Clause PipeRecord = new("the pipe's record", "", Provenance.Entered);
    private static readonly Clause Creep = new("ASME B31.3", "Table 302.3.5", Provenance.FromMemory);
    private static readonly Clause Slender = new(
        "handbook limit D/t ≤ 100: denting and buckling are not covered",
        "",
        Provenance.OwnRule
    );

    /// <summary>Wall a pipe needs, pressure and structural, by the code of its duty.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="B313"/>, <see cref="B311"/>, <see cref="B314"/>, <see cref="B318"/>, <see cref="Barlow"/>; required = larger of pressure wall and structural minimum.</para>
    /// <para>Symbols: those of the formulae.</para>
    /// <para>Validity: those of the formulae, tested as findings; the structural table is for carbon and low-alloy steel to 205 °C and NPS 24, else an engineer gives the value. No corrosion allowance and no mill tolerance: the wall is measured, not ordered.</para>
    /// <para>Reference: the code of the duty; structural minimum API RP 574 (from memory); definitions API 570 (2016).</para>
    /// </remarks>
    /// <param name="pipe">The pipe.</param>
    /// <param name="duty">Pressure, temperature and code.</param>
    /// <returns>The needed wall.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>DN 200, 219.1 mm, A106 B, 3 MPa, 38 °C, ASME B31.3: pressure 2.36 mm, structural 2.8 mm; required 2.8 mm.</example>
    public static Calculated<NeededWall> Assess(Pipe pipe, WallDuty duty)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        ArgumentNullException.ThrowIfNull(duty);
        var working = new Working();
        var findings = new List<Finding>();
        var forPressure = PressureWall(pipe, duty, working, findings);
        var row = StructuralMinimum.Find(pipe.Metal, pipe.OutsideDiameter, duty.DesignTemperature);
        var structural = Structural(duty, row, working, findings);
        var required = Larger(forPressure, structural, working);
        var governs =
            required is null ? ""
            : forPressure >= structural ? "pressure"
            : "structural";
        return new(new(forPressure, structural, row?.Alert, required, governs), working, findings, []);
    }

    private static Length? PressureWall(Pipe pipe, WallDuty duty, Working working, List<Finding> findings)
    {
        var P = working.Given(
            "P",
            "design pressure, gauge",
            Take.Gauge("designPressureBar", duty.DesignPressure),
            "MPa",
            PipeRecord
        );
        var D = working.Given("D", "outside diameter", Shell.Diameter(pipe.OutsideDiameter), "mm", PipeRecord);
        var t = duty.Code switch
        {
            WallCode.B314 or WallCode.B318 => PipelineWall(pipe, duty, P, D, working, findings),
            WallCode.Barlow => BarlowWall(pipe, duty, P, D, working),
            _ => PipingWall(pipe, duty, P, D, working, findings),
        };
        Geometry(pipe, t, findings);
        return findings.Exists(f => f.Blocks) ? null : t;
    }

    private static Length PipingWall(
        Pipe pipe,
        WallDuty duty,
        double P,
        double D,
        Working working,
        List<Finding> findings
    )
    {
        var S = working.Given(
            "S",
            "allowable stress at temperature",
            Take.Stress("allowableStressMpa", pipe.AllowableStress),
            "MPa",
            PipeRecord
        );
        var E =
            duty.Code == WallCode.B311
                ? 1
                : working.Given(
                    "E",
                    "quality factor",
                    Take.Factor("qualityFactor", pipe.QualityFactor),
                    "-",
                    PipeRecord
                );
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
            WallCoefficient(pipe.Metal, duty.DesignTemperature),
            "-",
            TableY
        );
        var t =
            duty.Code == WallCode.B311
                ? B311(duty.DesignPressure, pipe.OutsideDiameter, pipe.AllowableStress, W, Y, Length.Zero)
                : B313(duty.DesignPressure, pipe.OutsideDiameter, pipe.AllowableStress, E, W, Y);
        working.Step(
            "t",
            "wall for pressure",
            "P D / (2 (S E W + P Y))",
            $"{P} × {D} / (2 ({S} × {E} × {W} + {P} × {Y}))",
            t.Millimeters,
            "mm",
            duty.Code == WallCode.B311 ? Eq7 : Eq3a
        );
        findings.Add(ThinEnough(t.Millimeters, D, P / (S * E), duty.Code == WallCode.B311 ? Eq7 : Eq3a));
        if (duty is { WeldFactor: 1, DesignTemperature.DegreesCelsius: > 427 })
        {
            findings.Add(
                new(
                    "weld-factor-default",
                    Severity.Watch,
                    "Hotter than 427 °C, W = 1 must be confirmed for welded pipe.",
                    1,
                    null,
                    "-",
                    Creep
                )
            );
        }
        return t;
    }

    private static Length? PipelineWall(
        Pipe pipe,
        WallDuty duty,
        double P,
        double D,
        Working working,
        List<Finding> findings
    )
    {
        var clause = duty.Code == WallCode.B314 ? LiquidLine : GasLine;
        if (pipe.YieldStrength is not { } yield)
        {
            findings.Add(
                new(
                    "yield-strength-missing",
                    Severity.Fail,
                    "A pipeline code needs a specified minimum yield strength; this metal has none on record.",
                    null,
                    null,
                    null,
                    clause,
                    LimitKind.Absolute
                )
            );
            return null;
        }
        var SMYS = working.Given("SMYS", "specified minimum yield strength", yield.Megapascals, "MPa", PipeRecord);
        var F = working.Given("F", "design factor", duty.DesignFactor, "-", clause);
        var E = working.Given("E", "joint factor", pipe.QualityFactor, "-", PipeRecord);
        var T =
            duty.Code == WallCode.B314
                ? 1
                : working.Given("T", "temperature factor", duty.TemperatureFactor, "-", clause);
        var t = B318(duty.DesignPressure, pipe.OutsideDiameter, yield, F, E, T);
        working.Step(
            "t",
            "wall for pressure",
            "P D / (2 SMYS F E T)",
            $"{P} × {D} / (2 × {SMYS} × {F} × {E} × {T})",
            t.Millimeters,
            "mm",
            clause
        );
        findings.Add(
            new(
                "design-factor",
                F <= 0.72 ? Severity.Pass : Severity.Fail,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Design factor {F:0.##} against the greatest allowed, 0.72."
                ),
                F,
                0.72,
                "-",
                clause
            )
        );
        if (duty is { Code: WallCode.B318, TemperatureFactor: 1, DesignTemperature.DegreesCelsius: > 121 })
        {
            findings.Add(
                new(
                    "temperature-factor",
                    Severity.Fail,
                    "Above 121 °C the temperature factor is less than 1; enter it from the code.",
                    duty.DesignTemperature.DegreesCelsius,
                    121,
                    "°C",
                    clause
                )
            );
        }
        return t;
    }

    private static Length BarlowWall(Pipe pipe, WallDuty duty, double P, double D, Working working)
    {
        var E = working.Given("E", "quality factor", Take.Factor("qualityFactor", pipe.QualityFactor), "-", PipeRecord);
        var S = working.Given(
            "S",
            "allowable stress at temperature",
            Take.Stress("allowableStressMpa", pipe.AllowableStress),
            "MPa",
            PipeRecord
        );
        var t = Barlow(duty.DesignPressure, pipe.OutsideDiameter, Pressure.FromMegapascals(S * E));
        working.Step(
            "t",
            "wall for pressure",
            "P D / (2 S E)",
            $"{P} × {D} / (2 × {S} × {E})",
            t.Millimeters,
            "mm",
            BarlowClause
        );
        return t;
    }

    private static Finding ThinEnough(double t, double D, double ratio, Clause clause)
    {
        var thin = t < D / 6 && ratio <= 0.385;
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"The formula holds for a wall under D/6 = {D / 6:0.0} mm and P/(S E) up to 0.385; here {t:0.00} mm and {ratio:0.000}."
        );
        return new(
            "wall-formula-range",
            thin ? Severity.Pass : Severity.Fail,
            words,
            ratio,
            0.385,
            "-",
            clause,
            LimitKind.Absolute
        );
    }

    private static void Geometry(Pipe pipe, Length? wall, List<Finding> findings)
    {
        if (
            wall is { Millimeters: > 0 }
            && pipe.NominalWall.Millimeters > 0
            && pipe.OutsideDiameter / pipe.NominalWall is > 100 and var slender
        )
        {
            findings.Add(
                new(
                    "wall-slender",
                    Severity.Watch,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"D/t = {slender:0}: denting and buckling are not covered above 100."
                    ),
                    slender,
                    100,
                    "-",
                    Slender
                )
            );
        }
    }

    private static Length? Structural(WallDuty duty, StructuralMinimum? row, Working working, List<Finding> findings)
    {
        if (duty.StructuralMinimum is { } entered)
        {
            working.Given(
                "ts",
                "structural minimum, engineer's value",
                Take.Extent("structuralMinimumMm", entered),
                "mm",
                PipeRecord
            );
            return entered;
        }
        if (row is null)
        {
            findings.Add(
                new(
                    "structural-minimum-unknown",
                    Severity.Fail,
                    "The structural table is for carbon and low-alloy steel to 205 °C and NPS 24: an engineer must give the value.",
                    duty.DesignTemperature.DegreesCelsius,
                    StructuralMinimum.Hottest.DegreesCelsius,
                    "°C",
                    StructuralMinimum.Source
                )
            );
            return null;
        }
        working.Given(
            "ts",
            $"structural minimum, to NPS {row.UpToNps}",
            row.Least.Millimeters,
            "mm",
            StructuralMinimum.Source
        );
        return row.Least;
    }

    private static Length? Larger(Length? forPressure, Length? structural, Working working)
    {
        if (forPressure is not { } t || structural is not { } ts)
        {
            return null;
        }
        var required = Math.Max(t.Millimeters, ts.Millimeters);
        working.Step(
            "t_req",
            "required wall",
            "max(t, ts)",
            $"max({t.Millimeters}, {ts.Millimeters})",
            required,
            "mm",
            StructuralMinimum.Source
        );
        return Length.FromMillimeters(required);
    }
}
