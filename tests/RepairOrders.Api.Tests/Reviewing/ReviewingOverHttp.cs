using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Reviewing;

public sealed class ReviewingOverHttp(Workshop workshop)
{
    private static readonly AnswerLadder Cannot = new(LadderAnswerKind.Cannot, null, "the scaffold is not up");

    [Fact]
    public async Task A_step_not_answered_climbs_and_an_answer_moves_no_date()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var due = (await scene.Mara.Order(number)).NextLook;
        await scene.Mara.AnswerLadder(number, Cannot).ShouldBeRefused("no-step-to-answer");
        scene.Clock.PassDays(7 + 3.5);
        var step = (await scene.Mara.Order(number)).Ladder!;
        (step.Step, step.Answered).ShouldBe((LadderStep.Supervisor, false));
        (await scene.Mara.Order(number)).Next!.Action.ShouldBe("answer-ladder");
        scene.Clock.PassDays(4);
        step = (await scene.Mara.Order(number)).Ladder!;
        step.Step.ShouldBe(LadderStep.Engineer, "three days without an answer are one step");
        var answer = await scene.Ines.AnswerLadder(
            number,
            new(LadderAnswerKind.DateSet, scene.Clock.Today.AddDays(1), "the scaffold is up tomorrow")
        );
        answer.Summary.ShouldStartWith("will be done on");
        var order = await scene.Mara.Order(number);
        (order.Ladder!.Step, order.Ladder.Answered, order.NextLook).ShouldBe((LadderStep.Engineer, true, due));
        order.Flags.ShouldContain(f => f.Code == Flags.LookOverdue, "there is no snooze");
    }

    [Fact]
    public async Task Every_refusal_of_an_answer_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        scene.Clock.PassDays(7 + 3.5);
        var date = new AnswerLadder(LadderAnswerKind.DateSet, null, "next week");
        await scene.Mara.AnswerLadder(number, date).ShouldBeRefused("no-day-set");
        var past = date with { On = scene.Clock.Today.AddDays(-1) };
        await scene.Mara.AnswerLadder(number, past).ShouldBeRefused("no-day-set");
        scene.Clock.PassDays(4);
        await scene.Mara.AnswerLadder(number, Cannot).ShouldBeRefused("answer-from-above");
        await scene.Ines.AnswerLadder(number, Cannot);
        scene.Clock.PassDays(15);
        await scene.Ines.AnswerLadder(number, Cannot).ShouldBeRefused("answer-from-above");
        await scene.Henrik.AnswerLadder(number, Cannot);
    }

    [Fact]
    public async Task The_review_lists_what_is_overdue_gravest_first_with_its_last_answer_and_decision()
    {
        var scene = await workshop.Scene();
        var plain = await AnOrder.InService(scene);
        var grave = await AnOrder.InServiceWith(scene, AnOrder.Grave(scene));
        (await scene.Ines.OverdueReview(scene.Site)).Rows.ShouldBeEmpty();
        scene.Clock.PassDays(12);
        await scene.Henrik.AnswerLadder(grave, Cannot);
        await scene.Ines.ReviewOrder(
            plain,
            new(ReviewDecision.Act, "look by Friday", "Tove Aune", scene.Clock.Today.AddDays(2))
        );
        var rows = (await scene.Ines.OverdueReview(scene.Site)).Rows;
        rows.Select(r => r.Row.Number).ShouldBe([grave, plain]);
        rows[0].LastAnswer.ShouldBe("Henrik Vold: cannot be done: the scaffold is not up");
        rows[1].LastReview.ShouldNotBeNull().ShouldContain("look by Friday (Tove Aune, by");
        rows.ShouldAllBe(r => r.DaysLate > 0);
    }

    [Fact]
    public async Task Every_refusal_of_a_review_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Closed(scene);
        var stay = new ReviewOrder(ReviewDecision.Stay, "dry at every look");
        await scene.Ines.ReviewOrder(number, stay).ShouldBeRefused("at-an-end");
        var open = await AnOrder.InService(scene);
        var act = stay with { Decision = ReviewDecision.Act };
        await scene.Ines.ReviewOrder(open, act).ShouldBeRefused("action-not-assigned");
        await scene
            .Ines.ReviewOrder(open, act with { ActionBy = "Tove Aune", ActionOn = scene.Clock.Today.AddDays(-1) })
            .ShouldBeRefused("action-not-assigned");
        await scene.Ines.ReviewOrder(open, stay);
        (await Should.ThrowAsync<Refused>(() => scene.Mara.ReviewOrder(open, stay))).Status.ShouldBe(403);
    }

    [Fact]
    public async Task A_section_carries_the_weights_of_its_live_repairs()
    {
        var scene = await workshop.Scene();
        var plain = await AnOrder.InService(scene);
        var grave = await AnOrder.InServiceWith(scene, AnOrder.Grave(scene));
        var section = (await scene.Rune.CarriedRisk(scene.Site)).Single();
        (section.Section, section.Sum).ShouldBe(("CW-N", 27 + 3));
        section.Repairs.Select(r => (r.Number, r.Weight)).ShouldBe([(grave, 27), (plain, 3)]);
        await scene.TakeOff(plain);
        (await scene.Rune.CarriedRisk(scene.Site, "CW-N")).Sum.ShouldBe(27);
        (await scene.Rune.CarriedRisk(scene.Site, "nowhere")).Sum.ShouldBe(0);
    }

    [Fact]
    public async Task The_managers_figures_follow_the_records_and_the_clock()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await AnOrder.Approved(scene);
        var begun = await scene.Henrik.LiveFigures();
        Figure(begun, "live").Count.ShouldBe(1);
        Figure(begun, "past-life").Value.ShouldBe(0);
        (begun.Months[^1].Live, begun.Months[0].Live).ShouldBe((1, 0));
        begun.Methods.ShouldBeEmpty();

        scene.Clock.PassDays(200);
        var late = await scene.Henrik.LiveFigures();
        Figure(late, "past-life").Value.ShouldBe(100);
        Figure(late, "age-oldest").Value!.Value.ShouldBe(200, 1);

        await scene.Tove.ReportFailure(number, new(LeakState.Drip, "dripping at the lower edge"));
        var failed = await scene.Henrik.LiveFigures();
        failed.Methods.ShouldBe([new("Banded patch", 1, 1)]);
        Figure(failed, "live").Count.ShouldBe(1, "a failed repair is still on the pipe");
    }

    private static LiveFigure Figure(LiveFiguresView view, string code) => view.Figures.Single(f => f.Code == code);
}
