using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Tests.MakingPermanent;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Reviewing;

public sealed class ReviewingRules
{
    private static readonly ReviewOrder Act = new(ReviewDecision.Act, "look under the shoe");

    [Fact]
    public void An_action_has_a_person_and_a_day()
    {
        var sheaf = Fitted();
        var today = DateOnly.FromDateTime(sheaf.Now.UtcDateTime);
        Ask(sheaf, Act).ShouldBe("action-not-assigned");
        Ask(sheaf, Act with { ActionBy = "Tove Aune" }).ShouldBe("action-not-assigned");
        Ask(sheaf, Act with { ActionOn = today }).ShouldBe("action-not-assigned");
        Ask(sheaf, Act with { ActionBy = "Tove Aune", ActionOn = today.AddDays(-1) }).ShouldBe("action-not-assigned");
        Ask(sheaf, Act with { ActionBy = "Tove Aune", ActionOn = today }).ShouldBeNull();
        Ask(sheaf, Act with { Decision = ReviewDecision.Stay }).ShouldBeNull();
    }

    [Fact]
    public void A_closed_order_is_not_reviewed()
    {
        var sheaf = PermanentFixRules.Fixed();
        Ask(sheaf, Act with { Decision = ReviewDecision.Stay }).ShouldBeNull();
        sheaf.Order.Sign(new Api.Closing.CloseOut(AnOrder.CloseOut), Mara, sheaf.Now);
        Ask(sheaf, Act with { Decision = ReviewDecision.Stay }).ShouldBe("at-an-end");
    }

    [Fact]
    public void Without_a_step_there_is_nothing_to_answer() =>
        LadderAnswer
            .Objection(Fitted().Order, new(LadderAnswerKind.Cannot, null, "no scaffold"), Mara, Monday)!
            .Code.ShouldBe("no-step-to-answer");

    private static string? Ask(WorkSheaf sheaf, ReviewOrder ask) =>
        Review.Objection(sheaf.Order, ask, Ines, sheaf.Now)?.Code;
}
