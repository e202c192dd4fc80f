using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

public static partial class RequiredWall
{
    private static readonly Clause PipeRecord = new("the pipe's record", "", Provenance.Entered);
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
        var structural = Structural(pipe, duty, row, working, findings);
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
        Length? wall = null;
        if (WallFormula.Of(pipe, duty, working, findings) is { } formula)
        {
            var t = formula.NoteThickness(working, P, D);
            findings.Add(formula.ThinEnough(t, D, P));
            wall = Length.FromMillimeters(t);
        }
        findings.AddRange(WallFormula.Limits(duty));
        Geometry(pipe, wall, findings);
        return findings.Exists(f => f.Blocks) ? null : wall;
    }

    private static void Geometry(Pipe pipe, Length? wall, List<Finding> findings)
    {
        // A wall of 0 stands for one not known.
        if (pipe.NominalWall.Millimeters != 0)
            Require.Between("wallThicknessMm", pipe.NominalWall.Millimeters, 0.01, 1000);
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

    private static Length? Structural(
        Pipe pipe,
        WallDuty duty,
        StructuralMinimum? row,
        Working working,
        List<Finding> findings
    )
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
            findings.Add(OutsideTheTable(pipe, duty));
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

    private static Finding OutsideTheTable(Pipe pipe, WallDuty duty)
    {
        var (T, hottest) = (duty.DesignTemperature.DegreesCelsius, StructuralMinimum.Hottest.DegreesCelsius);
        var (D, largest) = (pipe.OutsideDiameter.Millimeters, StructuralMinimum.Largest.Millimeters);
        var (value, limit, unit) =
            T > hottest ? (T, hottest, "°C")
            : D > largest ? (D, largest, "mm")
            : ((double?)null, (double?)null, (string?)null);
        return new(
            "structural-minimum-unknown",
            Severity.Fail,
            "The structural table is for carbon and low-alloy steel to 205 °C and NPS 24: an engineer must give the value.",
            value,
            limit,
            unit,
            StructuralMinimum.Source
        );
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
