using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Reviewing;

/// <summary>The answer to a step of the ladder. It moves no date.</summary>
internal sealed class LadderAnswer : SignedRecord<SignedAnswer>
{
    private LadderAnswer() { }

    public LadderAnswer(SignedAnswer body)
        : base(body) { }

    public override string Kind => "ladder-answer";

    public override string Summary =>
        Asked.Ask.Kind switch
        {
            LadderAnswerKind.DateSet => $"will be done on {Asked.Ask.On:yyyy-MM-dd}: {Asked.Ask.Why}",
            LadderAnswerKind.Cannot => $"cannot be done: {Asked.Ask.Why}",
            _ => $"the line is taken out of service: {Asked.Ask.Why}",
        };

    public override Tone Tone => Tone.Watch;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (OrderToday.LadderOf(order.Columns, at) is not { Step: >= LadderStep.Supervisor } ladder)
            return new Objection(
                "no-step-to-answer",
                "The order stands on no step of the ladder that asks for an answer.",
                "nobody; there is nothing to answer"
            )
            {
                IsOfStage = true,
            };
        return Authority.Objection(by, order, at) ?? (Answers(by, ladder.Step) ? null : NotYours(ladder));
    }

    public static Objection? Objection(RepairOrder order, AnswerLadder ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            ask.Kind == LadderAnswerKind.DateSet && !(ask.On >= order.Site.Today(at))
                ? new Objection("no-day-set", "A date is set by naming a day, today or later.", "whoever answers")
                : null
        );

    // Somebody above may always answer for the step below him.
    private static bool Answers(Person by, LadderStep step) =>
        step switch
        {
            LadderStep.Supervisor => by.Roles.Any(r => r is Role.Supervisor or Role.IntegrityEngineer or Role.Manager),
            LadderStep.Engineer => by.Roles.Any(r => r is Role.IntegrityEngineer or Role.Manager),
            _ => by.Is(Role.Manager),
        };

    private static Objection NotYours(LadderView ladder) =>
        new Objection("answer-from-above", $"This step is answered by: {ladder.Who}.", ladder.Who);
}
