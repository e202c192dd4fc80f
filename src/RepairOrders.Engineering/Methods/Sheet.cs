using System.Globalization;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Methods;

/// <summary>The sheet a method sizes on: what it was given, the working as it grows, and what was found on the way.</summary>
internal sealed class Sheet
{
    private readonly IRepairMethod method;
    private readonly InputReader input;

    public Sheet(IRepairMethod method, Readings readings, bool damageIsCutOut = false)
    {
        PipeFacts.CheckToSize(readings, damageIsCutOut);
        this.method = method;
        Readings = readings;
        input = new InputReader(method.Inputs, readings, Working, Findings);
    }

    public Readings Readings { get; }

    public Pipe Pipe => Readings.Pipe;

    public Defect Defect => Readings.Defect;

    public Service Service => Readings.Service;

    public Working Working { get; } = [];

    public List<Finding> Findings { get; } = [];

    /// <summary>An input, noted where it is first read.</summary>
    public double this[string code] => input[code];

    /// <summary>A whole number, or the index of a choice.</summary>
    public int Count(string code) => input.Count(code);

    /// <summary>An input for which 0 stands for nothing.</summary>
    public double? Optional(string code) => input.Optional(code);

    public double Given(string symbol, string words, double value, string unit, Clause clause) =>
        Working.Given(symbol, words, value, unit, clause);

    public double Step(
        string symbol,
        string words,
        string formula,
        FormattableString numbers,
        double value,
        string unit,
        Clause clause
    ) => Working.Step(symbol, words, formula, numbers, value, unit, clause);

    public void Add(Finding finding) => Findings.Add(finding);

    /// <summary>
    /// Greatest gauge pressure at the repair in MPa: the pressure given or the line's design pressure, the test, and what is in
    /// operation. Below the operating pressure nothing may be sized; below the design pressure the line needs an interim limit.
    /// </summary>
    public double GreatestPressure()
    {
        var line = Optional("pressureBar") ?? Service.DesignPressure.Bars;
        var test = Optional("testPressureBar") ?? 0;
        var operating = Service.OperatingPressure.Bars;
        if (line < operating)
            Add(
                Finding.AtLeast(
                    "below-operating-pressure",
                    "The pressure it is sized for",
                    line,
                    operating,
                    "bar",
                    Sources.Own,
                    LimitKind.Absolute
                )
            );
        else if (line < Service.DesignPressure.Bars)
            Add(InterimLimit(line));
        var greatest = Math.Max(Math.Max(line, test), operating);
        return Step(
            "P",
            "greatest gauge pressure at the repair",
            "max(line, test, operating)/10",
            $"max({line}, {test}, {operating})/10",
            greatest / 10,
            "MPa",
            Sources.Balance
        );
    }

    /// <summary>The finished design; a claim that bars the method bars the design too.</summary>
    public MethodDesign Design(
        IReadOnlyList<Dimension> dimensions,
        double? heldBar,
        IReadOnlyList<MaterialNeed> materials,
        IEnumerable<string> cautions,
        CureTimes cure,
        double? lifeDays,
        double leastWallMm,
        bool carriesAxialLoad
    ) =>
        new(
            method.Code,
            dimensions,
            heldBar,
            materials,
            method.HoldPoints,
            [.. Cautions.General, .. cautions, .. Cautions.After],
            Working,
            [.. method.Claims(Pipe, Defect, Service).Findings.Where(f => f.Blocks), .. Findings],
            cure.SetForLoadH,
            cure.FullHardnessH,
            cure.ReferenceC,
            lifeDays,
            leastWallMm,
            carriesAxialLoad
        );

    public static Length Mm(double value) => Length.FromMillimeters(value);

    public static Pressure Mpa(double value) => Pressure.FromMegapascals(value);

    public static Force N(double value) => Force.FromNewtons(value);

    public static Angle Rad(double value) => Angle.FromRadians(value);

    public static string Text(FormattableString text) => FormattableString.Invariant(text);

    private Finding InterimLimit(double line) =>
        new(
            "interim-pressure-limit",
            Severity.Watch,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Sized for {line:G4} bar, the line for {Service.DesignPressure.Bars:G4} bar: limit the line while the repair is live."
            ),
            line,
            Service.DesignPressure.Bars,
            "bar",
            Sources.Own
        );
}

/// <summary>Hours until a repair may be loaded and until it is hard, at a temperature.</summary>
internal sealed record CureTimes(double SetForLoadH, double FullHardnessH, double ReferenceC)
{
    public static readonly CureTimes None = new(0, 0, 20);
}
