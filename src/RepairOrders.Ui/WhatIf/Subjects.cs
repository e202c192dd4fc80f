using System.Text.Json.Nodes;
using RepairOrders.Contract;

namespace RepairOrders.Ui.WhatIf;

/// <summary>Into which step of an order the values of a calculation can be taken.</summary>
public enum Carries
{
    Nowhere,
    Assessing,
    Sizing,
}

/// <summary>One calculation that can be asked without an order.</summary>
/// <param name="Code">The subject on the wire.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Sentence">The question it answers.</param>
/// <param name="Ask">The contract's ask: the form is drawn from it.</param>
/// <param name="Result">The contract's result.</param>
/// <param name="Carries">Where its values can be taken to.</param>
public sealed record Subject(
    string Code,
    string Title,
    string Sentence,
    Type Ask,
    Type Result,
    Carries Carries = Carries.Nowhere
)
{
    /// <summary>Values to begin with: a real case, to be typed over.</summary>
    public JsonObject Example() => Subjects.Examples[Code]!.DeepClone().AsObject();

    public bool IsMethod => Ask == typeof(CalculateMethod);
}

/// <summary>Subjects of one kind.</summary>
public sealed record SubjectGroup(string Title, IReadOnlyList<Subject> Subjects);

internal static class Subjects
{
    public static IReadOnlyList<SubjectGroup> Groups { get; } =
    [
        new(
            "The pipe",
            [
                Of<CalculateWallThickness, WallThicknessResult>(
                    "wall-thickness",
                    "Wall thickness",
                    "What wall does the pipe need, and what pressure does the measured wall hold?"
                ),
                Of<CalculateRemainingStrength, RemainingStrengthResult>(
                    "remaining-strength",
                    "Remaining strength",
                    "What pressure does a pipe with metal loss still hold, and which method governs?",
                    Carries.Assessing
                ),
                Of<CalculateWallLossGrid, WallLossGridResult>(
                    "wall-loss-grid",
                    "Wall-loss grid",
                    "What does a survey of the wall say: profile, pits, strength?",
                    Carries.Assessing
                ),
                Of<CalculateThroughWall, ThroughWallResult>(
                    "through-wall",
                    "Through the wall",
                    "May a pipe with this hole carry a temporary repair at all?",
                    Carries.Assessing
                ),
                Of<CalculateAxialLoad, AxialLoadResult>(
                    "axial-load",
                    "Axial load",
                    "Does the pipe hold together, and does it stand pressure from outside?",
                    Carries.Assessing
                ),
                Of<CalculateLeakRate, LeakRateResult>(
                    "leak-rate",
                    "Leak rate",
                    "What comes out of the hole, and what does it cost a year?"
                ),
            ]
        ),
        new(
            "Time and risk",
            [
                Of<CalculateRemainingLife, RemainingLifeResult>(
                    "remaining-life",
                    "Remaining life",
                    "How fast does the wall go, and when is it too thin?",
                    Carries.Assessing
                ),
                Of<CalculateOutliving, OutlivingResult>(
                    "outliving",
                    "Outliving the date",
                    "How likely does the wall fall short before a date?"
                ),
                Of<CalculateRevisitPlan, RevisitPlanResult>(
                    "revisit-plan",
                    "Revisit plan",
                    "When must the repair be looked at?"
                ),
                Of<CalculateRiskClass, RiskClassResult>(
                    "risk-class",
                    "Risk class",
                    "Which class has this repair, and why?",
                    Carries.Assessing
                ),
            ]
        ),
        new(
            "The repair",
            [
                Of<CalculateMethodClaims, MethodClaimsResult>(
                    "method-claims",
                    "Methods that claim it",
                    "Which methods are inside their limits here?",
                    Carries.Assessing
                ),
                Method("banded-patch", "Banded patch"),
                Method("laminate-wrap", "Laminate wrap"),
                Method("bolted-clamp", "Bolted clamp"),
                Method("welded-patch", "Welded patch"),
                Method("welded-sleeve", "Welded sleeve"),
                Method("plug", "Plug"),
                Method("section-replacement", "Section replacement"),
            ]
        ),
        new(
            "The work",
            [
                Of<CalculateSurfaceClimate, SurfaceClimateResult>(
                    "surface-climate",
                    "Surface climate",
                    "May the surface be coated now, and when?"
                ),
                Of<CalculateCure, CureResult>(
                    "cure",
                    "Cure",
                    "When may the resin be loaded, and how long is the mix usable?"
                ),
                Of<CalculateTightening, TighteningResult>(
                    "tightening",
                    "Tightening",
                    "What preload does this torque give, and in which passes?"
                ),
                Of<CalculatePressureTest, PressureTestResult>(
                    "pressure-test",
                    "Pressure test",
                    "At which pressure is it tested, in which steps, at what distance?"
                ),
                Of<CalculateCutPlan, CutPlanResult>(
                    "cut-plan",
                    "Cut plan",
                    "How are bands cut from the coils with the least waste?"
                ),
            ]
        ),
    ];

    public static Subject? Find(string code) => Groups.SelectMany(g => g.Subjects).FirstOrDefault(s => s.Code == code);

    internal static JsonObject Examples { get; } = Read();

    private static Subject Of<TAsk, TResult>(
        string code,
        string title,
        string sentence,
        Carries carries = Carries.Nowhere
    ) => new(code, title, sentence, typeof(TAsk), typeof(TResult), carries);

    private static Subject Method(string code, string title) =>
        Of<CalculateMethod, MethodResult>(
            code,
            title,
            $"Does a {title.ToLowerInvariant()} hold here, and what is it made of?",
            Carries.Sizing
        );

    private static JsonObject Read()
    {
        using var stream = typeof(Subjects).Assembly.GetManifestResourceStream("examples.json")!;
        return JsonNode.Parse(stream)!.AsObject();
    }
}
