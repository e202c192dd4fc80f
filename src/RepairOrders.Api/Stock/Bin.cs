using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

/// <summary>A place in the stores, or a locker near the pipes that a supervisor may open at night.</summary>
internal sealed class Bin : IKept
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid SiteId { get; init; }
    public string Code { get; init; } = "";
    public string Words { get; set; } = "";
    public bool Locker { get; set; }
    public List<KitMinimum> Kit { get; set; } = [];
    public DateTimeOffset? CountedAt { get; set; }
    public uint Version { get; private set; }
    public string Kind => "bin";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";

    public void Describe(DescribeBin said)
    {
        Words = said.Words;
        Locker = said.Locker;
        Kit = [.. (said.Kit ?? []).Select(k => new KitMinimum { Item = k.Item, Least = k.Least })];
    }

    public DescribeBin Said(string site) =>
        new(site, Code, Words, Locker, [.. Kit.Select(k => new KitLine(k.Item, k.Least))]);

    /// <summary>The working day a locker is to be counted on: the next one after the first issue nobody has counted since.</summary>
    public static DateOnly? CountDue(bool locker, DateOnly? firstUncountedIssue) =>
        locker && firstUncountedIssue is { } day ? NextWorkingDay(day) : null;

    // The site's own holidays are not known here; a count due on one is simply overdue the day after.
    public static DateOnly NextWorkingDay(DateOnly day)
    {
        do day = day.AddDays(1);
        while (day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday);
        return day;
    }

    public static Objection? Objection(DescribeBin said, bool taken, string? unknownItem)
    {
        if (taken)
            return new Objection(
                "bin-taken",
                $"Bin {said.Code} is on the books already. Choose another name, or change that bin.",
                "storekeeper"
            );
        return unknownItem is null ? null : StockStore.NoItem(unknownItem);
    }
}

/// <summary>The least a bin should hold of an item.</summary>
internal sealed class KitMinimum
{
    public string Item { get; init; } = "";
    public decimal Least { get; init; }
}

/// <summary>A count of a bin. What it found otherwise than booked stands in the moves it made.</summary>
internal sealed class StockCount
{
    private StockCount() { }

    public StockCount(Bin bin, Person by, DateTimeOffset at, string? remark)
    {
        BinId = bin.Id;
        ById = by.Id;
        By = by.FullName;
        At = at;
        Remark = remark;
    }

    public Guid Id { get; private set; } = Guid.CreateVersion7();
    public Guid BinId { get; private set; }
    public Guid ById { get; private set; }
    public string By { get; private set; } = "";
    public DateTimeOffset At { get; private set; }
    public string? Remark { get; private set; }
}
