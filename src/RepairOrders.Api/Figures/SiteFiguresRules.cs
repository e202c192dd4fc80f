using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Figures;

/// <summary>The figures the service comes with, and what a site may make of them.</summary>
internal static class SiteFiguresRules
{
    /// <summary>Version 1: the class table of the engine and the procedure's own figures.</summary>
    public static SiteFigures First { get; } =
        new(
            [.. ClassDuties.All.Select(Row)],
            ApprovalStandsDays: 30,
            ConsentStandsHours: 12,
            EmergencyIssueHours: 4,
            SurveyDays: 30,
            SurveyDaysAfterEnd: 7,
            AskAheadDays: 30,
            AskAheadDaysOnA: 7
        );

    /// <summary>What a class asks for under these figures. Who watches the test is no figure and stays.</summary>
    public static ClassDuties Of(this SiteFigures figures, Engineering.Risk.RiskClass riskClass)
    {
        var row = figures.Classes.First(c => c.Class == riskClass.As<RiskClass>());
        return ClassDuties.Of(riskClass) with
        {
            FirstLook = TimeSpan.FromHours(row.FirstLookHours),
            LookInterval = TimeSpan.FromHours(row.LookHours),
            LookIntervalOnceDry = TimeSpan.FromHours(row.LookHoursOnceDry),
            DryFor = TimeSpan.FromDays(row.DryForDays),
            ThicknessInterval = TimeSpan.FromDays(row.ThicknessDays),
            Grace = TimeSpan.FromHours(row.GraceHours),
            Cap = TimeSpan.FromDays(row.CapDays),
            Extensions = row.Extensions,
            ExtensionLength = TimeSpan.FromDays(row.ExtensionDays),
            EmergencyClock = TimeSpan.FromHours(row.EmergencyHours),
        };
    }

    public static ClassDuties Of(this SiteFigures figures, RiskClass riskClass) =>
        figures.Of(riskClass.As<Engineering.Risk.RiskClass>());

    public static IEnumerable<(string Field, string Sentence)> Problems(SiteFigures figures)
    {
        var rows = figures.Classes.OrderByDescending(c => c.Class).ToList();
        if (!rows.Select(r => r.Class).SequenceEqual([RiskClass.D, RiskClass.C, RiskClass.B, RiskClass.A]))
        {
            yield return ("figures.classes", "figures.classes must have one row each for A, B, C and D.");
            yield break;
        }
        foreach (var (better, worse) in rows.Zip(rows.Skip(1)))
        foreach (var (name, value) in Steps)
            if (value(worse) > value(better))
                yield return (
                    "figures.classes",
                    $"{name} is {value(worse)} for class {worse.Class} and {value(better)} for class {better.Class}; allowed is no more for the worse class than for the better one."
                );
        foreach (var row in rows.Where(r => r.LookHoursOnceDry < r.LookHours))
            yield return (
                "figures.classes",
                $"lookHoursOnceDry is {row.LookHoursOnceDry} for class {row.Class}; allowed is lookHours, {row.LookHours}, or more."
            );
        if (figures.SurveyDaysAfterEnd > figures.SurveyDays)
            yield return (
                "figures.surveyDaysAfterEnd",
                $"surveyDaysAfterEnd is {figures.SurveyDaysAfterEnd}; allowed is surveyDays, {figures.SurveyDays}, or less."
            );
    }

    private static readonly (string Name, Func<ClassFigures, int> Value)[] Steps =
    [
        ("firstLookHours", f => f.FirstLookHours),
        ("lookHours", f => f.LookHours),
        ("lookHoursOnceDry", f => f.LookHoursOnceDry),
        ("thicknessDays", f => f.ThicknessDays),
        ("graceHours", f => f.GraceHours),
        ("capDays", f => f.CapDays),
        ("extensions", f => f.Extensions),
        ("extensionDays", f => f.ExtensionDays),
        ("emergencyHours", f => f.EmergencyHours),
    ];

    private static ClassFigures Row(ClassDuties d) =>
        new(
            d.Class.As<RiskClass>(),
            (int)d.FirstLook.TotalHours,
            (int)d.LookInterval.TotalHours,
            (int)d.LookIntervalOnceDry.TotalHours,
            (int)d.DryFor.TotalDays,
            (int)d.ThicknessInterval.TotalDays,
            (int)d.Grace.TotalHours,
            (int)d.Cap.TotalDays,
            d.Extensions,
            (int)d.ExtensionLength.TotalDays,
            (int)d.EmergencyClock.TotalHours
        );
}
