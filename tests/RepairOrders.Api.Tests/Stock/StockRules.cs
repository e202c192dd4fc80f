using CsCheck;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Stock;

public sealed class StockRules
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 6, 30, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 3, 2);
    private static readonly Person Signe = new() { FullName = "Signe Dahl", Roles = [Role.Storekeeper] };
    private static readonly Person Ines = new() { FullName = "Ines Duarte", Roles = [Role.IntegrityEngineer] };
    private static readonly StockItem Putty = Item(Stores.Putty("mill"));

    private static StockItem Item(DescribeStockItem said)
    {
        var item = new StockItem { Code = said.Code };
        item.Describe(said);
        return item;
    }

    private static Batch Lot(string number, DateOnly? expiry) =>
        new()
        {
            Item = Putty,
            Number = number,
            Expiry = expiry,
        };

    [Fact]
    public void A_bin_gives_no_more_than_it_holds()
    {
        var batch = Lot("7", Today.AddDays(100));
        StockMove[] moves = [Move(batch, 100, StockSpot.Outside, StockSpot.In("A-1"))];
        Ledger
            .Objection(batch, moves, Move(batch, 100, StockSpot.In("A-1"), StockSpot.Order, Guid.NewGuid()))
            .ShouldBeNull();
        var no = Ledger.Objection(batch, moves, Move(batch, 101, StockSpot.In("A-1"), StockSpot.Scrapped));
        no.ShouldNotBeNull();
        no.Code.ShouldBe("not-in-bin");
        no.Sentence.ShouldStartWith("Bin A-1 holds 100 g of batch 7, not 101 g.");
    }

    [Fact]
    public void What_is_out_on_one_order_cannot_be_used_on_another()
    {
        var batch = Lot("7", Today.AddDays(100));
        var (one, other) = (Guid.NewGuid(), Guid.NewGuid());
        StockMove[] moves =
        [
            Move(batch, 100, StockSpot.Outside, StockSpot.In("A-1")),
            Move(batch, 60, StockSpot.In("A-1"), StockSpot.Order, one),
        ];
        Ledger.Objection(batch, moves, Move(batch, 60, StockSpot.Order, StockSpot.Used, one)).ShouldBeNull();
        Ledger
            .Objection(batch, moves, Move(batch, 1, StockSpot.Order, StockSpot.Used, other))!
            .Code.ShouldBe("not-out-on-order");
    }

    /// <summary>Whatever is tried, in any order: the books of a batch balance and no place holds less than nothing.</summary>
    [Fact]
    public void What_was_received_is_in_bins_out_used_or_scrapped_after_any_sequence_of_moves()
    {
        string[] bins = ["A-1", "B-2", "L-1"];
        Guid[] orders = [Guid.NewGuid(), Guid.NewGuid()];
        var spots = Gen.OneOf(
            Gen.Const(StockSpot.Outside),
            Gen.Int[0, 2].Select(i => StockSpot.In(bins[i])),
            Gen.Const(StockSpot.Order),
            Gen.Const(StockSpot.Used),
            Gen.Const(StockSpot.Scrapped)
        );
        var tries = Gen.Select(spots, spots, Gen.Int[1, 50_000], Gen.Int[0, 1].Select(i => orders[i])).Array[0, 40];
        tries.Sample(
            all =>
            {
                var batch = Lot("7", null);
                var moves = new List<StockMove>();
                foreach (var (from, to, thousandths, order) in all)
                {
                    var next = Move(batch, thousandths / 1000m, from, to, order);
                    if (from != to && Ledger.Objection(batch, moves, next) is null)
                        moves.Add(next);
                }
                var sum = Ledger.Balance(moves);
                sum.Received.ShouldBe(sum.InBins + sum.OutOnOrders + sum.Used + sum.Scrapped);
                bins.Sum(b => Ledger.InBin(moves, b)).ShouldBe(sum.InBins);
                orders.Sum(o => Ledger.OutOn(moves, o)).ShouldBe(sum.OutOnOrders);
                bins.ShouldAllBe(b => Ledger.InBin(moves, b) >= 0);
                orders.ShouldAllBe(o => Ledger.OutOn(moves, o) >= 0);
            },
            iter: 3000
        );
    }

    [Fact]
    public void What_expires_first_is_picked_first_and_what_does_not_expire_last()
    {
        InBin[] stock =
        [
            new(Lot("never", null), "A-1", 500),
            new(Lot("late", Today.AddDays(300)), "A-1", 40),
            new(Lot("soon", Today.AddDays(20)), "B-2", 30),
        ];
        var picks = FirstExpiryFirst.Picks(stock, 100, FirstExpiryFirst.LeastExpiry(Today, null));
        picks.Select(p => (p.Batch.Number, p.Quantity)).ShouldBe([("soon", 30), ("late", 40), ("never", 30)]);
    }

    [Fact]
    public void A_batch_that_expires_within_two_days_of_the_fit_is_not_picked()
    {
        var fit = Today.AddDays(10);
        var least = FirstExpiryFirst.LeastExpiry(Today, fit);
        FirstExpiryFirst.Usable(Lot("a", fit.AddDays(1)), least).ShouldBeFalse();
        FirstExpiryFirst.Usable(Lot("b", fit.AddDays(2)), least).ShouldBeTrue();
        // A fit that slipped is counted from today.
        FirstExpiryFirst.LeastExpiry(Today, Today.AddDays(-9)).ShouldBe(Today.AddDays(2));
    }

    [Theory]
    [InlineData(BatchStanding.Quarantined)]
    [InlineData(BatchStanding.Recalled)]
    public void A_batch_that_is_set_apart_or_called_back_is_not_picked(BatchStanding standing)
    {
        var batch = Lot("7", Today.AddDays(300));
        batch.Judge(new JudgeBatch(standing, "notice 12"), Signe, Now);
        FirstExpiryFirst.Picks([new(batch, "A-1", 10)], 10, Today).ShouldBeEmpty();
    }

    [Fact]
    public void Anybody_who_keeps_stock_sets_apart_and_only_an_engineer_frees()
    {
        Batch.Objection(new JudgeBatch(BatchStanding.Quarantined, "tin dented"), Signe).ShouldBeNull();
        Batch.Objection(new JudgeBatch(BatchStanding.Good, "looks fine"), Signe)!.Code.ShouldBe("engineer-frees");
        Batch.Objection(new JudgeBatch(BatchStanding.Good, "tested"), Ines).ShouldBeNull();
    }

    [Fact]
    public void An_item_that_expires_is_not_taken_in_without_its_expiry()
    {
        var ask = new ReceiveBatch("mill", "PUT-12", "7", null, null, "A-1", 10);
        Batch.Objection(ask, Putty, null)!.Code.ShouldBe("expiry-missing");
        Batch.Objection(ask with { Expiry = Today }, Putty, null).ShouldBeNull();
        Batch.Objection(ask with { Expiry = Today }, Putty, Lot("7", Today.AddDays(1)))!.Code.ShouldBe("batch-differs");
    }

    [Theory]
    [InlineData("2026-03-02", "2026-03-03")] // Monday to Tuesday
    [InlineData("2026-03-06", "2026-03-09")] // Friday to Monday
    [InlineData("2026-03-07", "2026-03-09")] // Saturday to Monday
    public void A_locker_is_counted_on_the_next_working_day(string issued, string due)
    {
        var day = DateOnly.Parse(issued, System.Globalization.CultureInfo.InvariantCulture);
        var expected = DateOnly.Parse(due, System.Globalization.CultureInfo.InvariantCulture);
        Bin.CountDue(true, day).ShouldBe(expected);
        Bin.CountDue(false, day).ShouldBeNull();
        Bin.CountDue(true, null).ShouldBeNull();
    }

    [Fact]
    public void Limits_that_contradict_each_other_are_named_by_field()
    {
        var said = Stores.Putty("mill") with
        {
            Limits = Stores.WetPutty with
            {
                GreatestTemperature = Measure.Of(2, "°C"),
                PotLifeAt = null,
                FullHardness = Measure.Of(1, "h"),
                MixRatio = 4,
            },
        };
        StockItem
            .Contradictions(said)
            .Keys.Order()
            .ShouldBe(["limits.fullHardness", "limits.greatestTemperature", "limits.mixRatio", "limits.potLifeAt"]);
        StockItem.Contradictions(Stores.Putty("mill")).ShouldBeEmpty();
    }

    private static StockMove Move(Batch batch, decimal quantity, StockSpot from, StockSpot to, Guid? order = null) =>
        new(batch.Id, quantity, from, to, "test", Signe, Now, order);
}
