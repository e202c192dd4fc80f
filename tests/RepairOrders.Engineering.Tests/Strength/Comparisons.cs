using CsCheck;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using static RepairOrders.Engineering.Tests.Strength.ACase;

namespace RepairOrders.Engineering.Tests.Strength;

public sealed class Comparisons
{
    // Profile and pipe recalled from the complex-shaped defect example of DNV-RP-F101; pressures computed here.
    [Fact]
    public void A_profile_is_judged_by_its_effective_area()
    {
        var compared = RemainingStrength.Compare(Profiled());
        compared.Result.Governs.ShouldBe("effective-area");
        compared.Result.SafePressure!.Value.Megapascals.ShouldBe(12.0066 / 1.39, 0.00005);
        Stands(compared, "b31g-original").ShouldBe(AnswerStanding.SecondOpinion);
        Stands(compared, "b31g-modified").ShouldBe(AnswerStanding.SecondOpinion);
        Stands(compared, "corroded-pipe").ShouldBe(AnswerStanding.SecondOpinion);
        Stands(compared, "local-thin-area").ShouldBe(AnswerStanding.Refused);
        compared.Result.WhyTheyDiffer.Count.ShouldBe(5);
        compared.Working.ShouldContain(s => s.Symbol == "A" && Math.Abs(s.Value - 384.37) < 0.005);
        compared.Findings.ShouldContain(f => f.Code == "second-opinion-lower");
    }

    [Fact]
    public void A_safe_pressure_above_the_maop_is_no_permission_to_raise_it()
    {
        var compared = RemainingStrength.Compare(Profiled() with { Maop = UnitsNet.Pressure.FromBars(40) });
        compared.Result.PressureLimit!.Value.Bars.ShouldBe(40, 1e-9);
        compared.Cautions.ShouldContain(c => c.Contains("no permission", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(80, Severity.Pass)]
    [InlineData(83, Severity.Watch)]
    [InlineData(90, Severity.Fail)]
    public void The_repair_factor_shows_a_thin_margin_and_a_missing_one(double maopBar, Severity severity)
    {
        var strengthCase = Profiled() with { Maop = UnitsNet.Pressure.FromBars(maopBar) };
        RemainingStrength
            .Compare(strengthCase)
            .Findings.Single(f => f.Code == "estimated-repair-factor")
            .Severity.ShouldBe(severity);
    }

    // ASME B31G-2012 (from memory): one reading, short: both Level 1 answers count and the lower governs.
    [Fact]
    public void One_reading_of_a_short_loss_is_judged_by_level_1()
    {
        var compared = RemainingStrength.Compare(With(X65(), 3, 80));
        compared.Result.Governs.ShouldBe("b31g-original");
        Stands(compared, "b31g-modified").ShouldBe(AnswerStanding.Counts);
        Stands(compared, "effective-area").ShouldBe(AnswerStanding.Refused);
    }

    // The 0.85 factor over-predicts long flat patches: up to 1.20 of the burst pressure in recalled tests.
    [Fact]
    public void A_long_loss_that_is_not_known_not_to_be_flat_is_not_judged_by_0_85()
    {
        var compared = RemainingStrength.Compare(With(X65(), 3, 400));
        Stands(compared, "b31g-modified").ShouldBe(AnswerStanding.SetAside);
        compared
            .Result.Answers.Single(a => a.Answer.Code == "b31g-modified")
            .Findings.ShouldContain(f => f.Code == "long-flat-patch");
        Stands(compared, "corroded-pipe").ShouldBeOneOf(AnswerStanding.Counts, AnswerStanding.Governs);
        Stands(compared, "effective-area").ShouldBeOneOf(AnswerStanding.Counts, AnswerStanding.Governs);
    }

    [Fact]
    public void A_long_flat_profile_takes_the_lower_of_effective_area_and_corroded_pipe()
    {
        var flat = RiverBottom.Of([0, 1, 200, 399, 400], [0, 3, 2.9, 3, 0]);
        var compared = RemainingStrength.Compare(With(X65(), 3, 400, flat));
        Stands(compared, "b31g-modified").ShouldBe(AnswerStanding.SetAside);
        var counting = compared
            .Result.Answers.Where(a => a.Standing is AnswerStanding.Counts or AnswerStanding.Governs)
            .ToList();
        counting.Select(a => a.Answer.Code).ShouldBe(["effective-area", "corroded-pipe"], ignoreOrder: true);
        compared.Result.SafePressure.ShouldBe(counting.Min(a => a.Answer.SafePressure));
    }

    // ASME B31G-2012 2.2(a) (from memory): D 500, t 10, d 5, Sflow 396: 11.489 MPa at z = 20, 7.920 MPa just above.
    [Theory]
    [InlineData(316.2277660168379, 11.489)]
    [InlineData(316.3, 7.920)]
    public void The_jump_of_the_original_method_is_shown_on_both_sides(double length, double failure)
    {
        var pipe = X65(500, 10) with { YieldStrength = Mpa(360), TensileStrength = Mpa(460) };
        var answer = PipelineMetalLoss.AssessOriginal(With(pipe, 5, length));
        answer.Result.FailurePressure!.Value.Megapascals.ShouldBe(failure, 0.0005);
        var jump = answer.Findings.Single(f => f.Code == "b31g-branch-jump");
        jump.Words.ShouldContain("114.9 to 79.2 bar");
    }

    [Fact]
    public void Above_80_per_cent_no_pressure_is_credited()
    {
        var compared = RemainingStrength.Compare(With(X65(500, 10), 8.2, 50));
        compared.Result.SafePressure.ShouldBeNull();
        compared.Findings.ShouldContain(f => f.Code == "depth-above-80-percent" && f.Blocks);
        compared.Findings.ShouldContain(f => f.Code == "no-pressure-credited");
    }

    [Fact]
    public void Exactly_80_per_cent_is_still_calculated() =>
        RemainingStrength.Compare(With(X65(508, 10), 8.0, 50)).Result.SafePressure.ShouldNotBeNull();

    [Fact]
    public void Gray_iron_is_credited_with_nothing()
    {
        var compared = RemainingStrength.Compare(With(GrayIron(), 3, 40, plant: new(Mm(0.2), Mm(500), false)));
        compared.Result.Answers.ShouldAllBe(a => a.Standing == AnswerStanding.Refused);
        compared.Findings.ShouldContain(f => f.Code == "no-pressure-credited" && f.Blocks);
    }

    [Fact]
    public void A_profile_that_misses_the_deepest_reading_is_taken_for_a_rectangle()
    {
        var strengthCase = Profiled();
        var deeper = strengthCase with { Loss = strengthCase.Loss with { Depth = Mm(3.5) } };
        var answer = EffectiveArea.Assess(deeper);
        answer.Findings.ShouldContain(f => f.Code == "profile-misses-deepest");
        var rectangle = EffectiveArea.FailurePressure([0, 289], [3.5, 3.5], Mm(611), Mm(8.2), Mpa(519));
        answer.Result.FailurePressure!.Value.Megapascals.ShouldBe(rectangle.Megapascals, 1e-12);
    }

    [Fact]
    public void A_profile_of_a_part_of_the_loss_is_taken_for_a_rectangle_of_the_whole()
    {
        var strengthCase = Profiled();
        var longer = strengthCase with { Loss = strengthCase.Loss with { AxialLength = Mm(400) } };
        var answer = EffectiveArea.Assess(longer);
        answer.Findings.ShouldContain(f => f.Code == "profile-short");
        var rectangle = EffectiveArea.FailurePressure([0, 400], [2.8, 2.8], Mm(611), Mm(8.2), Mpa(519));
        answer.Result.FailurePressure!.Value.Megapascals.ShouldBe(rectangle.Megapascals, 1e-12);
    }

    // API 579-1 Part 5 Level 1 (from memory), DN 150 schedule 40; the numbers are computed, none published was accessible.
    [Fact]
    public void Plant_piping_is_judged_by_its_own_method()
    {
        var plant = new PlantPiping(Mm(0.5), Mm(100), false);
        var inside = With(A106B(), 3.11, 100, plant: plant);
        inside = inside with { Loss = inside.Loss with { Side = Damage.DefectSide.Internal } };
        var compared = RemainingStrength.Compare(inside);
        compared.Result.Governs.ShouldBe("local-thin-area");
        compared.Result.SafePressure!.Value.Megapascals.ShouldBe(8.0288, 0.00005);
        compared.Working.Single(s => s.Symbol == "RSF").Value.ShouldBe(0.64613, 0.000005);
        compared.Working.Single(s => s.Symbol == "MAWP").Value.ShouldBe(11.183, 0.0005);
    }

    [Theory]
    [InlineData(5.6, false, "least-wall")]
    [InlineData(3, true, "service-cyclic")]
    public void The_plant_method_is_refused_outside_its_limits(double depth, bool cyclic, string code)
    {
        var strengthCase = With(A106B(), depth, 30, plant: new(Mm(0.5), Mm(100), cyclic));
        LocalThinArea.Assess(strengthCase).Findings.ShouldHaveSingleItem().Code.ShouldBe(code);
        RemainingStrength.Compare(strengthCase).Findings.ShouldContain(f => f.Code == "plant-method-refused");
    }

    // API 579-1 5.4.2 (seen on a public sheet): Rt under 0.20 is refused.
    [Fact]
    public void A_thickness_ratio_under_a_fifth_is_refused() =>
        LocalThinArea
            .Assess(With(A106B(219.1, 18.26), 15, 30, plant: new(Mm(0.5), null, false)))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("thickness-ratio");

    [Fact]
    public void Too_near_a_nozzle_or_too_wide_round_the_pipe_is_a_finding()
    {
        var strengthCase = With(A106B(), 2, 30, plant: new(Mm(0.5), Mm(20), false));
        strengthCase = strengthCase with { Loss = strengthCase.Loss with { CircumferentialLength = Mm(100) } };
        var findings = LocalThinArea.Assess(strengthCase).Findings;
        findings.Single(f => f.Code == "discontinuity-distance").Severity.ShouldBe(Severity.Fail);
        findings.Single(f => f.Code == "circumferential-extent").Severity.ShouldBe(Severity.Watch);
    }

    // DNV-RP-F101 (from memory): d/t up to 85 %.
    [Fact]
    public void The_corroded_pipe_method_ends_at_85_per_cent() =>
        CorrodedPipeSingleDefect
            .Assess(With(X65(300, 10), 8.6, 50))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("depth-above-85-percent");

    [Theory]
    [InlineData(1.0, Severity.Fail)]
    [InlineData(1.25, Severity.Pass)]
    public void A_safety_factor_under_1_25_is_a_finding(double factor, Severity severity) =>
        RemainingStrength
            .Compare(Profiled(factor))
            .Findings.Single(f => f.Code == "safety-factor")
            .Severity.ShouldBe(severity);

    [Fact]
    public void The_working_of_what_governs_ends_in_its_safe_pressure() =>
        Any.Sample(
            c =>
            {
                var compared = RemainingStrength.Compare(c);
                return compared.Result.SafePressure is not { } safe || compared.Working[^1].Value == safe.Megapascals;
            },
            iter: 300
        );

    [Fact]
    public void A_survey_answers_as_the_single_case_to_the_last_bit() =>
        Any.Sample(c => Same(RemainingStrength.Compare(c).Result, RemainingStrength.Screen(c)), iter: 1500);

    [Fact]
    public void A_survey_goes_on_past_a_defect_that_cannot_be()
    {
        var good = With(X65(), 3, 80);
        var bad = good with { Loss = good.Loss with { Depth = Mm(9) } };
        var results = new ScreenedStrength[3];
        RemainingStrength.Screen([good, bad, good], results);
        results[1].Error!.Field.ShouldBe("depthMm");
        results[1].SafePressure.ShouldBeNull();
        results[2].ShouldBe(results[0]);
        results[0].Error.ShouldBeNull();
    }

    private static bool Same(StrengthComparison one, ScreenedStrength many) =>
        one.Governs == many.Governs
        && one.SafePressure?.Megapascals == many.SafePressure?.Megapascals
        && one.EstimatedRepairFactor == many.EstimatedRepairFactor
        && Failure(one, "b31g-original") == many.Original?.Megapascals
        && Failure(one, "b31g-modified") == many.Modified?.Megapascals
        && Failure(one, "effective-area") == many.Effective?.Megapascals
        && Failure(one, "corroded-pipe") == many.Corroded?.Megapascals
        && one.Answers.Single(a => a.Answer.Code == "local-thin-area").Answer.SafePressure?.Megapascals
            == many.ThinArea?.Megapascals;

    private static double? Failure(StrengthComparison one, string code) =>
        one.Answers.Single(a => a.Answer.Code == code).Answer.FailurePressure?.Megapascals;

    private static AnswerStanding Stands(Calculated<StrengthComparison> compared, string code) =>
        compared.Result.Answers.Single(a => a.Answer.Code == code).Standing;
}
