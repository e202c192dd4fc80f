using CsCheck;
using RepairOrders.Engineering.Cutting;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Cutting;

public class CutPlannerTests
{
    private static readonly CutRules NoKerf = new(Length.Zero, Length.Zero);
    private static readonly CutRules Saw = new(Mm(2), Mm(80));

    [Fact]
    public void Four_bands_from_two_coils()
    {
        var plan = Plan([600, 500, 400, 400], [Coil(1000, 5)], NoKerf).Result;
        plan.Cuts.Count.ShouldBe(2);
        plan.LongestRemnant.Millimeters.ShouldBe(100, 1e-9);
        plan.Proven.ShouldBeTrue();
    }

    // Derived by hand: with 2 mm a cut, 333 + 333 + 333 takes 999 + 4 of 1000, so three do not fit; 332 do.
    [Theory]
    [InlineData(333, 2)]
    [InlineData(332, 1)]
    public void Kerf_is_lost_between_bands_but_not_after_the_last(double length, int coils) =>
        Plan([length, length, length], [Coil(1000, 5)], Saw).Result.Cuts.Count.ShouldBe(coils);

    [Fact]
    public void A_remnant_is_cut_before_a_coil_is_opened()
    {
        var plan = Plan([500], [Coil(4000, 3), Remnant(600)], Saw).Result;
        plan.Cuts.Single().Remnant.ShouldBeTrue();
        plan.Cuts.Single().Left.Millimeters.ShouldBe(98, 1e-9);
        plan.Aims.Single(a => a.Code == "coils-opened").Value.ShouldBe(0);
    }

    [Fact]
    public void Fewer_stock_lengths_come_before_using_up_remnants()
    {
        var plan = Plan([500, 500], [Coil(4000, 3), Remnant(600), Remnant(610)], Saw).Result;
        plan.Cuts.Single().Remnant.ShouldBeFalse();
    }

    [Fact]
    public void What_is_left_is_left_in_one_piece()
    {
        var plan = Plan([300, 300, 300, 300, 300], [Coil(1000, 5)], NoKerf).Result;
        plan.Cuts.Count.ShouldBe(2);
        plan.LongestRemnant.Millimeters.ShouldBe(400, 1e-9);
        plan.Proven.ShouldBeTrue();
    }

    [Fact]
    public void Stock_that_is_not_available_is_not_cut() =>
        Plan([500], [Remnant(600) with { Available = false }, Coil(1000, 1)], Saw)
            .Result.Cuts.Single()
            .Stock.ShouldBe("coil");

    // The worked case of a band of 4000 mm from coils of 1500 mm with 80 mm overlap: 3 pieces, 2 splices.
    [Fact]
    public void A_band_longer_than_any_stock_is_spliced()
    {
        var answer = Plan([4000], [Coil(1500, 5)], new(Length.Zero, Mm(80)));
        answer.Result.Splices.ShouldBe(2);
        answer.Result.Cuts.Count.ShouldBe(3);
        answer.Result.Cuts.SelectMany(c => c.Pieces).Sum(p => p.Length.Millimeters).ShouldBe(4160, 1e-6);
        answer.Findings.ShouldContain(f => f.Code == "band-spliced");
        answer.Result.Proven.ShouldBeTrue();
    }

    [Fact]
    public void A_band_that_fits_is_never_spliced()
    {
        var answer = Plan([900, 900], [Remnant(500), Remnant(510), Remnant(520), Coil(1000, 2)], Saw);
        answer.Result.Splices.ShouldBe(0);
        answer.Result.Cuts.ShouldAllBe(c => !c.Remnant);
    }

    [Fact]
    public void No_splice_is_possible_from_stock_shorter_than_its_overlap() =>
        Plan([1000], [Remnant(70), Remnant(75)], Saw)
            .Findings.ShouldContain(f => f.Code == "no-splice-possible" && f.Blocks);

    [Fact]
    public void Too_little_stock_says_by_how_much()
    {
        var answer = Plan([800, 800], [Coil(1000, 1)], NoKerf);
        answer.Result.Found.ShouldBeFalse();
        answer.Findings.Single(f => f.Code == "not-enough-stock").Words.ShouldContain("600 mm short");
    }

    [Fact]
    public void A_band_that_no_plan_cuts_whole_is_spliced_after_all()
    {
        var answer = Plan([800, 800, 800], [Coil(1000, 2), Remnant(600)], Saw with { SpliceOverlap = Mm(40) });
        answer.Result.Splices.ShouldBe(2);
        answer.Findings.ShouldContain(f => f.Code == "band-spliced" && f.Words.Contains("cut whole in no plan"));
    }

    [Fact]
    public void Enough_material_in_pieces_too_short_is_no_plan() =>
        Plan([800, 800, 800], [Coil(1000, 2), Remnant(450)], Saw)
            .Findings.ShouldContain(f => f.Code == "no-plan-exists" && f.Blocks);

    [Fact]
    public void No_stock_at_all_is_a_finding() =>
        Plan([800], [], NoKerf).Findings.ShouldContain(f => f.Code == "no-stock");

    [Fact]
    public void A_remnant_too_short_to_keep_counts_for_nothing()
    {
        var plan = Plan([900], [Coil(1000, 1)], NoKerf with { LeastRemnant = Mm(200) }).Result;
        plan.Aims.Single(a => a.Code == "longest-remnant").Value.ShouldBe(0);
    }

    [Theory]
    [InlineData(0, 1000, "bands[0].lengthMm")]
    [InlineData(500, 0, "stock[0].lengthMm")]
    public void Impossible_lengths_are_named(double band, double coil, string field) =>
        Should.Throw<ImpossibleInputException>(() => Plan([band], [Coil(coil, 1)], NoKerf)).Field.ShouldBe(field);

    [Fact]
    public void The_working_adds_up_each_stock_length()
    {
        var answer = Plan([600, 300], [Coil(1000, 1)], Saw);
        var step = answer.Working.Single(s => s.Symbol == "r");
        step.Substituted.ShouldBe("1000 − (600 + 300) − 2 × 2");
        step.Value.ShouldBe(96, 1e-9);
    }

    [Fact]
    public void The_same_order_gives_the_same_plan()
    {
        double[] bands = [.. Enumerable.Range(0, 30).Select(i => 310.5 + 37.3 * (i % 11))];
        StockLength[] stock = [Coil(4000, 10), Remnant(1210), Remnant(2950.5)];
        string Text() => string.Join('|', Plan(bands, stock, Saw).Result.Cuts.Select(c => string.Join(',', c.Pieces)));
        Text().ShouldBe(Text());
    }

    [Fact]
    public void Every_band_is_cut_once_and_no_stock_is_overfilled() =>
        Gen.Select(
                Gen.Double[50, 1800].Array[1, 14],
                Gen.Double[200, 1500].Array[0, 4],
                Gen.Double[900, 1600],
                Gen.Double[0, 5]
            )
            .Sample(
                (bands, remnants, coil, kerf) =>
                {
                    StockLength[] stock = [Coil(coil, 40), .. remnants.Select(Remnant)];
                    var rules = Saw with { Kerf = Mm(kerf) };
                    Check(bands, stock, rules, Plan(bands, stock, rules, 2));
                },
                iter: 60
            );

    private static void Check(double[] bands, StockLength[] stock, CutRules rules, Calculated<CutPlan> answer)
    {
        var plan = answer.Result;
        plan.Found.ShouldBeTrue();
        foreach (var cut in plan.Cuts)
        {
            var used = cut.Pieces.Sum(p => p.Length.Millimeters) + (cut.Pieces.Count - 1) * rules.Kerf.Millimeters;
            used.ShouldBeLessThanOrEqualTo(cut.Length.Millimeters + 1e-6);
        }

        foreach (var kind in plan.Cuts.GroupBy(c => c.Stock))
        {
            kind.Count().ShouldBeLessThanOrEqualTo(stock.Where(s => s.Code == kind.Key).Sum(s => s.Count));
        }

        for (var i = 0; i < bands.Length; i++)
        {
            var parts = plan.Cuts.SelectMany(c => c.Pieces).Where(p => p.Band == $"{i}").ToList();
            parts.Select(p => p.Part).Order().ShouldBe(Enumerable.Range(1, parts.Count));
            var whole = parts.Sum(p => p.Length.Millimeters) - (parts.Count - 1) * rules.SpliceOverlap.Millimeters;
            whole.ShouldBe(bands[i], 0.1 + 1e-6);
            whole.ShouldBeGreaterThanOrEqualTo(bands[i] - 1e-5);
            if (parts.Count > 1)
            {
                answer.Findings.ShouldContain(f => f.Code == "band-spliced" && f.Words.StartsWith($"Band {i},"));
            }
        }

        plan.Bounds.ByMaterial.ShouldBeLessThanOrEqualTo(plan.Cuts.Count);
        plan.Bounds.ByLargeItems.ShouldBeLessThanOrEqualTo(plan.Cuts.Count);
        plan.Aims.ShouldAllBe(a => a.Code == "longest-remnant" ? a.Bound >= a.Value : a.Bound <= a.Value);
    }

    private static Calculated<CutPlan> Plan(
        IReadOnlyList<double> bands,
        IReadOnlyList<StockLength> stock,
        CutRules rules,
        double seconds = 20
    ) =>
        CutPlanner.Plan(
            [.. bands.Select((l, i) => new Band($"{i}", Mm(l)))],
            stock,
            rules,
            TimeSpan.FromSeconds(seconds)
        );

    private static StockLength Coil(double length, int count) => new("coil", Mm(length), count, false);

    private static StockLength Remnant(double length) => new($"remnant {length}", Mm(length), 1, true);

    private static Length Mm(double length) => Length.FromMillimeters(length);
}
