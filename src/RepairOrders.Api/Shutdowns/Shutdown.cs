using RepairOrders.Api.Orders;
using RepairOrders.Api.People;

namespace RepairOrders.Api.Shutdowns;

/// <summary>A planned stop of a site or of an area: the next chance to put lines right for good.</summary>
internal sealed class Shutdown
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid SiteId { get; init; }
    public Sites.Site Site { get; init; } = null!;
    public string Name { get; init; } = "";

    /// <summary>Nothing for the whole site.</summary>
    public string? Area { get; init; }
    public DateOnly Start { get; private set; }
    public uint Version { get; private set; }
    public List<ShutdownMove> Moves { get; } = [];

    private Shutdown() { }

    public Shutdown(Sites.Site site, string name, string? area, DateOnly start)
    {
        SiteId = site.Id;
        Site = site;
        Name = name;
        Area = area;
        Start = start;
    }

    public static Objection? MoveObjection(Shutdown shutdown, DateOnly to, DateOnly today) =>
        to == shutdown.Start
            ? new Objection(
                "shutdown-not-moved",
                $"{shutdown.Name} starts on {to:yyyy-MM-dd} already. Give another day.",
                "whoever plans the shutdown"
            )
        : to < today
            ? new Objection(
                "shutdown-in-the-past",
                $"{to:yyyy-MM-dd} has passed. A shutdown can be moved to today or later.",
                "whoever plans the shutdown"
            )
        : null;

    public ShutdownMove Move(DateOnly to, string why, Person by, DateTimeOffset at)
    {
        var move = new ShutdownMove
        {
            ShutdownId = Id,
            From = Start,
            To = to,
            Why = why,
            By = by.FullName,
            ById = by.Id,
            At = at,
        };
        Moves.Add(move);
        Start = to;
        return move;
    }
}

/// <summary>One move of a shutdown; kept for ever.</summary>
internal sealed class ShutdownMove
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid ShutdownId { get; init; }
    public DateOnly From { get; init; }
    public DateOnly To { get; init; }
    public string Why { get; init; } = "";
    public string By { get; init; } = "";
    public Guid ById { get; init; }
    public DateTimeOffset At { get; init; }
}
