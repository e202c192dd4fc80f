using RepairOrders.Api.People;

namespace RepairOrders.Api.Stock;

/// <summary>Where material can be. Every move takes it from one place and puts it in another, so nothing is ever lost on the books.</summary>
internal enum StockPlace
{
    /// <summary>Not yet ours: the supplier, or found over at a count.</summary>
    Outside,
    Bin,
    Order,
    Used,
    Scrapped,
}

/// <summary>One end of a move.</summary>
internal readonly record struct StockSpot(StockPlace Place, string? Bin = null)
{
    public static readonly StockSpot Outside = new(StockPlace.Outside);
    public static readonly StockSpot Order = new(StockPlace.Order);
    public static readonly StockSpot Used = new(StockPlace.Used);
    public static readonly StockSpot Scrapped = new(StockPlace.Scrapped);

    public static StockSpot In(string bin) => new(StockPlace.Bin, bin);
}

/// <summary>One move of one batch. Moves are only ever added.</summary>
internal sealed class StockMove
{
    private StockMove() { }

    public StockMove(
        Guid batch,
        decimal quantity,
        StockSpot from,
        StockSpot to,
        string why,
        Person by,
        DateTimeOffset at,
        Guid? order = null
    )
    {
        BatchId = batch;
        Quantity = quantity;
        From = from.Place;
        FromBin = from.Bin;
        To = to.Place;
        ToBin = to.Bin;
        OrderId = order;
        Why = why;
        ById = by.Id;
        By = by.FullName;
        At = at;
    }

    public Guid Id { get; private set; } = Guid.CreateVersion7();
    public Guid BatchId { get; private set; }
    public decimal Quantity { get; private set; }
    public StockPlace From { get; private set; }
    public string? FromBin { get; private set; }
    public StockPlace To { get; private set; }
    public string? ToBin { get; private set; }

    /// <summary>The order at either end; it stays on what was used or scrapped there, so that a recall finds it.</summary>
    public Guid? OrderId { get; private set; }
    public string Why { get; private set; } = "";
    public Guid ById { get; private set; }
    public string By { get; private set; } = "";
    public DateTimeOffset At { get; private set; }
}
