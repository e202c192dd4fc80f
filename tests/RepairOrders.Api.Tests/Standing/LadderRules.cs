using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Standing;

public sealed class LadderRules
{
    private static readonly DateTimeOffset Due = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(RiskClass.A, -7, LadderStep.HeadsUp)]
    [InlineData(RiskClass.A, 0, LadderStep.Supervisor)]
    [InlineData(RiskClass.A, 1, LadderStep.Engineer)]
    [InlineData(RiskClass.A, 2, LadderStep.Manager)]
    [InlineData(RiskClass.A, 3, LadderStep.SiteHead)]
    [InlineData(RiskClass.B, -14, LadderStep.HeadsUp)]
    [InlineData(RiskClass.B, 0, LadderStep.Due)]
    [InlineData(RiskClass.B, 1, LadderStep.Supervisor)]
    [InlineData(RiskClass.C, 2.9, LadderStep.Due)]
    [InlineData(RiskClass.C, 3, LadderStep.Supervisor)]
    [InlineData(RiskClass.D, -30, LadderStep.HeadsUp)]
    [InlineData(RiskClass.D, 6.9, LadderStep.Due)]
    [InlineData(RiskClass.D, 7, LadderStep.Supervisor)]
    public void The_first_steps_come_by_the_days_of_the_class(RiskClass riskClass, double day, LadderStep step) =>
        At(riskClass, day).ShouldNotBeNull().Step.ShouldBe(step);

    [Theory]
    [InlineData(RiskClass.B, 3, LadderStep.Engineer)]
    [InlineData(RiskClass.B, 7, LadderStep.Manager)]
    [InlineData(RiskClass.B, 14, LadderStep.SiteHead)]
    [InlineData(RiskClass.C, 10, LadderStep.Engineer)]
    [InlineData(RiskClass.C, 21, LadderStep.Manager)]
    [InlineData(RiskClass.C, 45, LadderStep.SiteHead)]
    [InlineData(RiskClass.D, 21, LadderStep.Engineer)]
    [InlineData(RiskClass.D, 45, LadderStep.Manager)]
    [InlineData(RiskClass.D, 90, LadderStep.SiteHead)]
    public void Answers_do_not_stop_the_days_of_the_class(RiskClass riskClass, double day, LadderStep step)
    {
        var answers = Enumerable.Range(0, 100).Select(d => Due.AddDays(d)).ToArray();
        At(riskClass, day, answers: answers).ShouldNotBeNull().Step.ShouldBe(step);
        At(riskClass, day - 0.1, answers: answers).ShouldNotBeNull().Step.ShouldBe(step - 1);
    }

    [Fact]
    public void A_step_that_is_not_answered_climbs_after_24_hours_on_A_and_B_and_72_on_C_and_D()
    {
        At(RiskClass.B, 1.9)!.Step.ShouldBe(LadderStep.Supervisor);
        At(RiskClass.B, 2)!.Step.ShouldBe(LadderStep.Engineer);
        At(RiskClass.B, 2, answers: [Due.AddDays(1.5)])!.Step.ShouldBe(LadderStep.Supervisor);
        At(RiskClass.C, 6)!.Step.ShouldBe(LadderStep.Engineer);
        At(RiskClass.C, 6, answers: [Due.AddDays(4)])!.Step.ShouldBe(LadderStep.Supervisor);
        At(RiskClass.C, 6, answers: [Due.AddDays(1)])!.Step.ShouldBe(LadderStep.Engineer);
    }

    [Fact]
    public void Past_the_end_date_it_starts_one_step_higher()
    {
        At(RiskClass.C, 0, LadderItem.EndDate)!.Step.ShouldBe(LadderStep.Supervisor);
        At(RiskClass.C, 3, LadderItem.EndDate)!.Step.ShouldBe(LadderStep.Engineer);
        At(RiskClass.A, 0, LadderItem.EndDate)!.Step.ShouldBe(LadderStep.Engineer);
    }

    [Fact]
    public void It_says_who_should_answer_and_until_when()
    {
        var step = At(RiskClass.C, 3.5)!;
        step.Who.ShouldBe("supervisor");
        step.AnswerBy.ShouldBe(Due.AddDays(6));
        step.NextAt.ShouldBe(Due.AddDays(6));
        step.Answered.ShouldBeFalse();
        At(RiskClass.C, 3.5, answers: [Due.AddDays(3.2)])!.Answered.ShouldBeTrue();
        At(RiskClass.C, 3.5, answers: [Due.AddDays(3.2)])!.NextAt.ShouldBe(Due.AddDays(10));
        At(RiskClass.C, -31).ShouldBeNull();
        At(RiskClass.D, 200)!.NextAt.ShouldBeNull();
    }

    private static LadderView? At(
        RiskClass riskClass,
        double day,
        LadderItem item = LadderItem.Look,
        DateTimeOffset[]? answers = null
    ) => Ladder.At(item, Due, riskClass, answers ?? [], Due.AddDays(day));
}
