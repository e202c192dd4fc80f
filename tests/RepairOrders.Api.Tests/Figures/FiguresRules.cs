using RepairOrders.Api.Figures;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Tests.Figures;

/// <summary>What a site may make of the procedure's own figures.</summary>
public sealed class FiguresRules
{
    [Fact]
    public void The_first_version_is_the_engines_class_table()
    {
        foreach (var duties in ClassDuties.All)
            SiteFiguresRules.First.Of(duties.Class).ShouldBe(duties);
        SiteFiguresRules.Problems(SiteFiguresRules.First).ShouldBeEmpty();
    }

    [Fact]
    public void The_worse_class_is_never_treated_more_gently()
    {
        var gentle = With(RiskClass.B, row => row with { CapDays = 400 });
        SiteFiguresRules
            .Problems(gentle)
            .ShouldHaveSingleItem()
            .Sentence.ShouldBe(
                "capDays is 400 for class B and 365 for class C; allowed is no more for the worse class than for the better one."
            );
    }

    [Fact]
    public void Each_class_has_one_row()
    {
        var first = SiteFiguresRules.First;
        var twice = first with { Classes = [first.Classes[0], first.Classes[0], first.Classes[2], first.Classes[3]] };
        SiteFiguresRules.Problems(twice).ShouldHaveSingleItem().Field.ShouldBe("figures.classes");
    }

    [Fact]
    public void Dry_does_not_ask_for_looks_more_often() =>
        SiteFiguresRules
            .Problems(With(RiskClass.A, row => row with { LookHoursOnceDry = 6 }))
            .ShouldHaveSingleItem()
            .Sentence.ShouldContain("lookHoursOnceDry is 6 for class A");

    [Fact]
    public void After_the_end_date_a_survey_is_no_older_than_before() =>
        SiteFiguresRules
            .Problems(SiteFiguresRules.First with { SurveyDays = 5 })
            .ShouldHaveSingleItem()
            .Field.ShouldBe("figures.surveyDaysAfterEnd");

    /// <summary>The first figures with one class's row changed.</summary>
    internal static SiteFigures With(RiskClass riskClass, Func<ClassFigures, ClassFigures> change) =>
        SiteFiguresRules.First with
        {
            Classes = [.. SiteFiguresRules.First.Classes.Select(c => c.Class == riskClass ? change(c) : c)],
        };
}
