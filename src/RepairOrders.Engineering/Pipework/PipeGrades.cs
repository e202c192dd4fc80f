using System.Globalization;
using System.Text.RegularExpressions;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>Grades of pipe: specified strengths, and allowable stress at a temperature. Nothing is extrapolated.</summary>
public static partial class PipeGrades
{
    private const double KsiInMegapascals = 6.894757;
    private const double ColdLimit = -29;

    private static readonly Clause Basis = new("ASME B31.3", "302.3.2(d)", Provenance.FromMemory);
    private static readonly Clause Interpolation = new(
        "ASME B31.3",
        "302.3.2, straight-line interpolation",
        Provenance.FromMemory
    );

    /// <summary>Every tabulated grade.</summary>
    public static IReadOnlyList<PipeGrade> All { get; } =
    [.. EmbeddedTable.Read("material-grades.csv").Rows.Select(Read)];

    /// <summary>The yield strength taken for steel line pipe when nothing at all is known: 24 000 psi.</summary>
    public static Pressure YieldWhenNothingIsKnown { get; } = Pressure.FromMegapascals(165);

    /// <summary>Where <see cref="YieldWhenNothingIsKnown"/> comes from.</summary>
    public static Clause YieldWhenNothingIsKnownSource { get; } =
        new("49 CFR 192", "192.107(b)(2)", Provenance.FromMemory);

    /// <summary>Finds a grade.</summary>
    /// <param name="specification">Such as <c>ASTM A106</c> or <c>API 5L</c>.</param>
    /// <param name="grade">Such as <c>B</c>, <c>X52</c>, <c>L360</c>, <c>TP304L</c>.</param>
    /// <returns>The grade; nothing where it is not listed.</returns>
    public static PipeGrade? Find(string specification, string grade)
    {
        var same = All.Where(g => Same(g.Specification, specification) && Names(g.Grade).Any(n => Same(n, grade)))
            .ToList();
        return same.Count == 1 ? same[0] : null;
    }

    /// <summary>Basic allowable stress at 38 °C from the specified strengths, by the basis of ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: S = min(SMTS / 3, 2 SMYS / 3)</para>
    /// <para>Symbols: S basic allowable stress, MPa; SMTS, SMYS specified minimum tensile and yield strength, MPa.</para>
    /// <para>Validity: ductile metals other than bolting, at 38 °C; not gray iron (SMTS / 10) nor malleable iron (SMTS / 5). Table A-1 prints rounded values; where it lists the grade, the table counts.</para>
    /// <para>Reference: ASME B31.3, 302.3.2(d) (from memory).</para>
    /// </remarks>
    /// <param name="yieldStrength">SMYS.</param>
    /// <param name="tensileStrength">SMTS.</param>
    /// <returns>Basic allowable stress S at 38 °C.</returns>
    /// <exception cref="ImpossibleInputException">A strength is not a finite number above 0.</exception>
    /// <example>API 5L X52, SMYS 52 ksi, SMTS 66 ksi: S = 22.0 ksi.</example>
    public static Pressure AllowableStressBasis(Pressure yieldStrength, Pressure tensileStrength)
    {
        var SMYS = Require.Positive("yieldStrengthMpa", yieldStrength.Megapascals);
        var SMTS = Require.Positive("tensileStrengthMpa", tensileStrength.Megapascals);
        return Pressure.FromMegapascals(Math.Min(SMTS / 3, 2 * SMYS / 3));
    }

    /// <summary>Basic allowable stress of a tabulated grade at a temperature, by ASME B31.3 Table A-1.</summary>
    /// <remarks>
    /// <para>Formula: S(T) = S1 + (S2 − S1) (T − T1) / (T2 − T1) between tabulated temperatures; the value at 38 °C below 38 °C.</para>
    /// <para>Symbols: S basic allowable stress, MPa; T temperature, °C; 1, 2 the tabulated neighbours.</para>
    /// <para>Validity: −29 °C ≤ T ≤ the hottest tabulated temperature of the grade; hotter or colder is refused, never extrapolated. Where editions differ the lower value is taken.</para>
    /// <para>Reference: ASME B31.3, Table A-1 and 302.3.2; each grade names its source and whether it was seen.</para>
    /// </remarks>
    /// <param name="grade">The grade.</param>
    /// <param name="temperature">Metal temperature, the design temperature as a rule.</param>
    /// <param name="wall">Nominal wall where known: TP321 heavier than 9.5 mm is weaker than its row.</param>
    /// <returns>Allowable stress S; nothing where it is refused, with the reason as a finding.</returns>
    /// <exception cref="ImpossibleInputException">The temperature is not a finite number.</exception>
    /// <example>ASTM A106 B at 260 °C (500 °F): S = 18.9 ksi = 130.3 MPa.</example>
    public static Calculated<Pressure?> AllowableStress(PipeGrade grade, Temperature temperature, Length? wall = null)
    {
        ArgumentNullException.ThrowIfNull(grade);
        var T = Require.Finite("temperatureC", temperature.DegreesCelsius);
        return Refusal(grade, T) is { } refusal ? new(null, [], [refusal], []) : At(grade, T, wall);
    }

    private static Calculated<Pressure?> At(PipeGrade grade, double T, Length? wall)
    {
        var upper = grade.Allowable.FirstOrDefault(a => a.Temperature.DegreesCelsius >= T) ?? grade.Allowable[^1];
        var lower = grade.Allowable.LastOrDefault(a => a.Temperature.DegreesCelsius <= T) ?? upper;
        var (T1, T2) = (lower.Temperature.DegreesCelsius, upper.Temperature.DegreesCelsius);
        var (S1, S2) = (lower.Stress.Megapascals, upper.Stress.Megapascals);
        var working = new Working();
        working.Given("T", "metal temperature", T, "°C", grade.AllowableSource);
        working.Given("S1", $"allowable stress of {grade.Name} at {Shown(T1)} °C", S1, "MPa", grade.AllowableSource);
        var S = S1;
        if (T1 < T2)
        {
            working.Given(
                "S2",
                $"allowable stress of {grade.Name} at {Shown(T2)} °C",
                S2,
                "MPa",
                grade.AllowableSource
            );
            S = S1 + (S2 - S1) * (T - T1) / (T2 - T1);
            working.Step(
                "S",
                "allowable stress",
                "S1 + (S2 − S1)(T − T1)/(T2 − T1)",
                $"{S1} + ({S2} − {S1})({T} − {T1})/({T2} − {T1})",
                S,
                "MPa",
                Interpolation
            );
        }
        var heavy = IsWeakerWhenHeavy(grade) && wall is { Millimeters: > 9.5 };
        if (heavy)
        {
            S = Math.Min(
                S,
                working.Given(
                    "S",
                    "allowable stress of the heavy wall, 16.7 ksi",
                    16.7 * KsiInMegapascals,
                    "MPa",
                    Basis
                )
            );
        }
        return new(Pressure.FromMegapascals(S), working, [.. Findings(grade, S, lower, upper, wall)], []);
    }

    private static IEnumerable<Finding> Findings(
        PipeGrade grade,
        double S,
        AllowableAt lower,
        AllowableAt upper,
        Length? wall
    )
    {
        if (lower.EditionsDiffer || upper.EditionsDiffer)
        {
            yield return new(
                "allowable-stress-editions-differ",
                Severity.Watch,
                "Editions of the code print different stresses here; the lower is used. State the edition the line was built to.",
                S,
                null,
                "MPa",
                grade.AllowableSource
            );
        }
        if (grade.AllowableSource.Provenance == Provenance.FromMemory)
        {
            yield return new(
                "allowable-stress-from-memory",
                Severity.Watch,
                $"The allowable stress of {grade.Name} is recalled, not seen: check it against the code.",
                S,
                null,
                "MPa",
                grade.AllowableSource
            );
        }
        if (IsWeakerWhenHeavy(grade))
        {
            yield return new(
                "grade-weaker-when-heavy",
                Severity.Watch,
                $"{grade.Name} seamless heavier than 9.5 mm is weaker than its row: 170/485 MPa, S 16.7 ksi.",
                wall?.Millimeters,
                9.5,
                "mm",
                grade.AllowableSource
            );
        }
        if (grade.Brittle)
        {
            yield return new(
                "metal-brittle",
                Severity.Watch,
                $"{grade.Name} is brittle: it breaks without yielding.",
                null,
                null,
                null,
                grade.StrengthSource
            );
        }
    }

    private static Finding? Refusal(PipeGrade grade, double T)
    {
        if (grade.Allowable.Count == 0)
        {
            return Refuse(
                "allowable-stress-not-listed",
                $"No allowable stress is listed for {grade.Name} ({grade.AllowableBasis}): enter it from the code of the line.",
                T,
                null,
                grade
            );
        }
        var hottest = grade.Allowable[^1].Temperature.DegreesCelsius;
        if (T > hottest + 1e-9)
        {
            return Refuse(
                "temperature-above-table",
                $"The row of {grade.Name} ends at {Shown(hottest)} °C; {Shown(T)} °C is hotter. Enter the allowable stress from the code.",
                T,
                hottest,
                grade
            );
        }
        return T < ColdLimit
            ? Refuse(
                "temperature-below-table",
                $"Below {Shown(ColdLimit)} °C the cold limit of {grade.Name} must be looked up; {Shown(T)} °C is colder.",
                T,
                ColdLimit,
                grade
            )
            : null;
    }

    private static Finding Refuse(string code, string words, double T, double? limit, PipeGrade grade) =>
        new(code, Severity.Fail, words, T, limit, "°C", grade.AllowableSource, LimitKind.Absolute);

    private static bool IsWeakerWhenHeavy(PipeGrade grade) => grade.Grade == "TP321";

    private static bool Same(string left, string? right) =>
        string.Equals(left.Trim(), right?.Trim(), StringComparison.OrdinalIgnoreCase);

    // "B (S or E)" is also "B"; "X52 / L360" is also "X52" and "L360".
    private static IEnumerable<string> Names(string grade)
    {
        var bare = Parenthesis().Replace(grade, "");
        return bare.Split(" / ").Append(bare).Append(grade);
    }

    private static PipeGrade Read(EmbeddedTable.Row row) =>
        new(
            row["spec"],
            row["grade"],
            FamilyOf(row["family"]),
            Stress(row.Number("smys_mpa")),
            Stress(row.Number("smts_mpa")),
            row.Number("smys_ksi"),
            row.Number("smts_ksi"),
            [.. AllowablesOf(row)],
            row["b313_basis"],
            row["brittle"] == "yes",
            SourceOf(row, "", "prov_strength"),
            SourceOf(row, row["b313_basis"], "prov_allowable")
        );

    private static IEnumerable<AllowableAt> AllowablesOf(EmbeddedTable.Row row)
    {
        if (row.Number("b313_S_38C_mpa") is not { } cold)
        {
            yield break;
        }
        yield return new(Temperature.FromDegreesCelsius(38), Pressure.FromMegapascals(cold), false);
        var elevated = row["b313_S_elevated_ksi"];
        if (SameTo().Match(elevated) is { Success: true } same)
        {
            yield return new(Fahrenheit(same.Groups[1].Value), Pressure.FromMegapascals(cold), false);
        }
        foreach (Match at in ElevatedStress().Matches(elevated))
        {
            // "20.0@400F older/19.9 newer": every stress named beside the temperature is one edition's.
            var editions = Decimals().Matches(at.Value).Select(m => Number(m.Value)).ToList();
            yield return new(
                Fahrenheit(at.Groups[1].Value),
                Pressure.FromMegapascals(editions.Min() * KsiInMegapascals),
                editions.Count > 1
            );
        }
    }

    private static Temperature Fahrenheit(string text) => Temperature.FromDegreesCelsius((Number(text) - 32) / 1.8);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static Pressure? Stress(double? megapascals) =>
        megapascals is { } value ? Pressure.FromMegapascals(value) : null;

    private static Clause SourceOf(EmbeddedTable.Row row, string paragraph, string column) =>
        new(row["source"], paragraph, row[column] == "memory" ? Provenance.FromMemory : Provenance.Published);

    private static MetalFamily FamilyOf(string family) =>
        family switch
        {
            "carbon_steel" or "line_pipe" => MetalFamily.CarbonSteel,
            "low_alloy" => MetalFamily.LowAlloySteel,
            "austenitic" => MetalFamily.AusteniticStainless,
            "duplex" => MetalFamily.OtherStainless,
            "copper" or "copper_nickel" => MetalFamily.CopperAlloy,
            "ductile_iron" => MetalFamily.DuctileIron,
            "gray_iron" => MetalFamily.GrayIron,
            _ => MetalFamily.Other,
        };

    private static string Shown(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\s*\([^)]*\)")]
    private static partial Regex Parenthesis();

    [GeneratedRegex(@"same to (\d+)F")]
    private static partial Regex SameTo();

    [GeneratedRegex(@"\d+\.\d@(\d+)F.*?(?=\d+\.\d@|$)")]
    private static partial Regex ElevatedStress();

    [GeneratedRegex(@"\d+\.\d")]
    private static partial Regex Decimals();
}
