using CsCheck;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Risk;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Risk;

/// <summary>Rules of our own, no outside source.</summary>
public class RiskRules
{
    private static readonly Gen<RiskRank> Ranks =
        from c in Gen.Int[1, 5]
        from l in Gen.Int[1, 5]
        select new RiskRank(RiskRanking.FromMatrix(c, l), c, l, []);

    private static readonly Gen<Ageing> Ages =
        from missed in Gen.Int[0, 4]
        from used in Gen.Double[0, 1.5]
        from past in Gen.Bool
        from score in Gen.Double[0, 100]
        select new Ageing(missed, used, past, score);

    [Fact]
    public void The_matrix_reads_as_printed()
    {
        var rows = Enumerable
            .Range(1, 5)
            .Reverse()
            .Select(c => string.Concat(Enumerable.Range(1, 5).Select(l => RiskRanking.FromMatrix(c, l).ToString())));
        rows.ShouldBe(["BBAAA", "CBBAA", "CCBBA", "DCCBB", "DDDCC"]);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 6)]
    public void A_score_outside_one_to_five_is_refused(int c, int l) =>
        Should.Throw<ImpossibleInputException>(() => RiskRanking.FromMatrix(c, l)).Message.ShouldContain("1 to 5");

    [Fact]
    public void Worse_scores_never_give_a_better_class() =>
        Ranks.Sample(r =>
            (r.Consequence == 5 || RiskRanking.FromMatrix(r.Consequence + 1, r.Likelihood) >= r.Class)
            && (r.Likelihood == 5 || RiskRanking.FromMatrix(r.Consequence, r.Likelihood + 1) >= r.Class)
        );

    [Fact]
    public void Class_today_is_never_below_the_signed_one() =>
        Gen.Select(Ranks, Ages)
            .Sample((signed, age) => RiskRanking.Today(signed, age, new Standing()).Class >= signed.Class);

    [Fact]
    public void Age_over_half_adds_one_and_the_end_date_two()
    {
        var signed = new RiskRank(RiskClass.D, 2, 1, []);
        Likelihoods(signed, 0.5).ShouldBe(1);
        Likelihoods(signed, 0.51).ShouldBe(2);
        Likelihoods(signed, 1).ShouldBe(3);

        static int Likelihoods(RiskRank signed, double used) =>
            RiskRanking.Today(signed, new Ageing(0, used, PastEndDate: false), new Standing()).Likelihood;
    }

    [Fact]
    public void Three_live_repairs_on_a_section_raise_each_by_one_class()
    {
        var signed = new RiskRank(RiskClass.C, 1, 4, []);
        var fresh = new Ageing(0, 0, PastEndDate: false);
        RiskRanking.Today(signed, fresh, new Standing(LiveRepairsOnSection: 2)).Class.ShouldBe(RiskClass.C);
        RiskRanking.Today(signed, fresh, new Standing(LiveRepairsOnSection: 3)).Class.ShouldBe(RiskClass.B);
    }

    [Fact]
    public void A_repair_without_a_permanent_fix_is_one_class_worse()
    {
        var signed = new RiskRank(RiskClass.C, 1, 4, []);
        var today = RiskRanking.Today(
            signed,
            new Ageing(0, 0, PastEndDate: false),
            new Standing(NoPermanentFixReference: true)
        );
        today.Class.ShouldBe(RiskClass.B);
        today.Reasons.ShouldContain("No permanent fix is on order: class C becomes B.");
    }

    [Fact]
    public void Weights_add_up_over_a_section()
    {
        CarriedRisk.Sum([RiskClass.A, RiskClass.B, RiskClass.C, RiskClass.D]).ShouldBe(40);
        CarriedRisk.Sum([]).ShouldBe(0);
    }

    [Fact]
    public void Every_class_has_duties_and_a_worse_class_never_has_the_longer_time()
    {
        ClassDuties.All.Select(d => d.Class).ShouldBe([RiskClass.A, RiskClass.B, RiskClass.C, RiskClass.D]);
        foreach (var (worse, better) in ClassDuties.All.Zip(ClassDuties.All.Skip(1)))
        {
            worse.FirstLook.ShouldBeLessThanOrEqualTo(better.FirstLook);
            worse.LookInterval.ShouldBeLessThan(better.LookInterval);
            worse.ThicknessInterval.ShouldBeLessThan(better.ThicknessInterval);
            worse.Grace.ShouldBeLessThan(better.Grace);
            worse.Cap.ShouldBeLessThan(better.Cap);
            worse.EmergencyClock.ShouldBeLessThanOrEqualTo(better.EmergencyClock);
            ((int)worse.Witness).ShouldBeGreaterThanOrEqualTo((int)better.Witness);
        }
    }

    [Fact]
    public void Nobody_has_assessed_means_likelihood_five()
    {
        var service = new Service(
            "Compressed air",
            FluidState.Gas,
            ServiceCategory.D,
            2,
            4,
            Flammable: false,
            Toxic: false,
            AboveAutoIgnition: false,
            Pressure.FromBars(7),
            Pressure.FromBars(8),
            Temperature.FromDegreesCelsius(25),
            Temperature.FromDegreesCelsius(40),
            SafetyCritical: false,
            Potable: false,
            Cyclic: false
        );
        var facts = new ConsequenceFacts(
            service,
            150,
            PeopleNearby.MannedArea,
            ListedContents: false,
            LiquefiedFlammableGas: false,
            StrongAcidOrAlkali: false,
            ShipClassOne: false,
            IsolableWithinTenMinutes: true,
            Mass.FromKilograms(10),
            DrainsToWater: false
        );
        var rank = RiskRanking.UntilAssessed(facts);
        rank.Consequence.ShouldBe(4, "8 bar on DN 150 is over 1000 bar mm, and people are near");
        rank.Likelihood.ShouldBe(5);
        rank.Class.ShouldBe(RiskClass.A);
    }

    [Fact]
    public void An_unmeasured_wall_and_a_crack_start_at_five()
    {
        var defect = new Defect(
            DefectKind.GeneralThinning,
            DefectSide.External,
            DefectCause.ExternalCorrosion,
            ThroughWall: false,
            Length.FromMillimeters(50),
            Length.FromMillimeters(50),
            Length.FromMillimeters(5),
            Length.Zero,
            Length.FromMillimeters(6),
            6,
            Growing: false
        );
        LikelihoodOf(defect, measured: true).ShouldBe(1);
        LikelihoodOf(defect, measured: false).ShouldBe(5);
        LikelihoodOf(defect with { Kind = DefectKind.CrackLike }, measured: true).ShouldBe(5);

        static int LikelihoodOf(Defect defect, bool measured) =>
            Likelihood
                .Score(
                    new LikelihoodFacts(
                        defect,
                        Length.FromMillimeters(3),
                        measured,
                        RepairStrength.Engineered,
                        Cyclic: false,
                        EarlierLeaks: 0,
                        Reinjections: 0
                    )
                )
                .Value;
    }
}
