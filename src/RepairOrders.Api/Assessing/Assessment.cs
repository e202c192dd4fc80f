using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Assessing;

/// <summary>The judgement on the pipe: what was measured, and what the engine made of it.</summary>
internal sealed class Assessment : SignedRecord<SignedAssessment>, IMovesStage
{
    private Assessment() { }

    public Assessment(SignedAssessment body)
        : base(body) { }

    public override string Kind => "assessment";

    public override string Summary
    {
        get
        {
            var judged = Asked.Judgement;
            var wall = judged.SoundWallMm is { } sound
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{judged.ThinnestMm:0.0} mm left, {sound:0.0} mm beside, {judged.RequiredWallMm:0.0} mm required"
                )
                : "wall not read";
            return $"class {judged.Risk.Class}, {Words.Of(Asked.Ask.Defect.Kind)}: {wall}";
        }
    }

    public override Tone Tone => Asked.Judgement.RemainingLifeDays is 0 ? Tone.Watch : Tone.Go;

    public Stage After(Stage before, RepairOrder order) => Planning.After(before, this, order, Stage.Assessed);

    /// <summary>What failed was made safe, or a job was stopped: the assessment begins the next round.</summary>
    public static bool StartsRound(RepairOrder order) => order.Stage == Stage.MadeSafe || EndsStoppedJob(order);

    // On the emergency path the papers are signed beside the work; only a pipe that is not as written ends that round.
    private static bool EndsStoppedJob(RepairOrder order) =>
        order.Stage is Stage.Fitting or Stage.Fitted
        && !Planning.IsEmergency(order)
        && Fitting.Stop.Standing(order) is not null;

    /// <summary>Whether it may be signed at all now, by this person.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        (EndsStoppedJob(order) ? null : Planning.NotOpen(order, "An assessment")) ?? Authority.Objection(by, order, at);

    /// <summary>Whether this one may be signed.</summary>
    public static Objection? Objection(RepairOrder order, RecordAssessment ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at) ?? OfLine(order, ask) ?? OfReadings(ask);

    private static Objection? OfLine(RepairOrder order, RecordAssessment ask)
    {
        if (order.Line is null && ask.Line is null)
            return new Objection(
                "line-facts-missing",
                "The line is not in the line list. Give its size, wall, grade, fluid class and design values with the assessment.",
                "integrity engineer"
            );
        if (order.Line is { } line && ask.Line is not null)
            return new Objection(
                "line-facts-twice",
                $"Line {line.Number} is in the line list and its facts come from there. Have the list corrected where it is wrong, and leave them out here.",
                "administrator, who keeps the line list"
            );
        return null;
    }

    private static Objection? OfReadings(RecordAssessment ask)
    {
        var beside = ask.Readings.Any(r => r.Where == ReadingPlace.Beside);
        var at =
            ask.Defect.ThroughWall || ask.Survey is not null || ask.Readings.Any(r => r.Where == ReadingPlace.AtDefect);
        if (!(beside && at) && string.IsNullOrWhiteSpace(ask.NotMeasuredWhy))
            return new Objection(
                "wall-not-read",
                $"No wall was read {(at ? "beside" : "at")} the defect and no reason is given. Read it, or say why it cannot be read.",
                "integrity engineer, or whoever reads the wall"
            );
        return null;
    }
}
