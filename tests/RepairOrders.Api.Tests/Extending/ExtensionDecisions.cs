using RepairOrders.Api.Extending;
using RepairOrders.Api.Figures;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;
using static RepairOrders.Contract.ExtensionCapacity;

namespace RepairOrders.Api.Tests.Extending;

/// <summary>Who grants a later end date, and what bars it whoever asks.</summary>
public sealed class ExtensionDecisions
{
    [Fact]
    public void One_level_above_the_first_approval_decides()
    {
        ExtensionRules.Needed(RiskClass.D, afterEnd: false).ShouldBe([Engineer]);
        ExtensionRules.Needed(RiskClass.C, afterEnd: false).ShouldBe([ManagerOrSecondEngineer]);
        ExtensionRules.Needed(RiskClass.B, afterEnd: false).ShouldBe([Manager, Engineer]);
        ExtensionRules.Needed(RiskClass.A, afterEnd: false).ShouldBe([Manager, SecondEngineer]);
    }

    [Theory]
    [InlineData(RiskClass.B)]
    [InlineData(RiskClass.C)]
    [InlineData(RiskClass.D)]
    public void After_the_end_date_the_manager_and_an_engineer_decide(RiskClass riskClass) =>
        ExtensionRules.Needed(riskClass, afterEnd: true).ShouldBe([Manager, Engineer]);

    [Fact]
    public void With_the_cause_unknown_nobody_can_say_how_the_pipe_goes_on()
    {
        var sheaf = InService();
        ExtensionRules.OfOrder(sheaf.Order, sheaf.Now)!.Code.ShouldBe("extension-cause-unknown");
    }

    [Fact]
    public void The_end_date_is_the_last_day_in_service()
    {
        var sheaf = InService();
        var zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");
        var end = new DateTimeOffset(2026, 8, 1, 23, 59, 0, zone.GetUtcOffset(new DateTime(2026, 8, 1)));
        ExtensionRules.AfterEnd(sheaf.Order, end).ShouldBeFalse();
        ExtensionRules.AfterEnd(sheaf.Order, end.AddMinutes(2)).ShouldBeTrue();
    }

    [Fact]
    public void How_many_and_how_long_are_the_sites_figures()
    {
        var first = SiteFiguresRules.First;
        first.Of(RiskClass.A).Extensions.ShouldBe(1);
        first.Of(RiskClass.C).ExtensionLength.ShouldBe(TimeSpan.FromDays(180));
    }
}
