using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>
/// What the lists search and sort by: a summary of the records, written with them and rebuilt from them by a test. Dates only;
/// what depends on the clock is a range on one of them, and is computed on each read.
/// </summary>
internal sealed record OrderColumns
{
    public Stage Stage { get; init; }

    /// <summary>Not at an end: lists of open work ask for no other.</summary>
    public bool Open { get; init; } = true;
    public string Place { get; init; } = "";
    public string Fluid { get; init; } = "";

    /// <summary>All that a search in plain words finds it by: number, line, fluid, place, method, batches, people.</summary>
    public string Words { get; init; } = "";

    /// <summary>When a leak was first seen, and when the last one was; nothing for a thin spot.</summary>
    public DateTimeOffset? LeakedAt { get; init; }
    public DateTimeOffset? LastLeakAt { get; init; }

    /// <summary>Since when it leaks with nothing over it.</summary>
    public DateTimeOffset? LeaksSince { get; init; }

    /// <summary>Class, method, end date, owner and permanent fix in force, or else those of the design that awaits signatures.</summary>
    public RiskClass? SignedClass { get; init; }

    /// <summary>Before one is chosen, what both consents of the emergency path name, and marked so.</summary>
    public string? Method { get; init; }
    public DateOnly? EndDate { get; init; }

    /// <summary>The moment the end date is over at the site.</summary>
    public DateTimeOffset? EndsAt { get; init; }
    public Guid? OwnerId { get; init; }
    public string? Owner { get; init; }
    public string? PermanentFix { get; init; }
    public DateOnly? PermanentFixOn { get; init; }

    /// <summary>The shutdown the end date leans on, by name.</summary>
    public string? Shutdown { get; init; }
    public int Extensions { get; init; }

    /// <summary>First in-service start; rounds run on from it.</summary>
    public DateTimeOffset? InServiceSince { get; init; }

    /// <summary>It counts among the live repairs of its section.</summary>
    public bool Live { get; init; }

    /// <summary>The class was signed with its neighbours counted, or cannot rise for them.</summary>
    public bool CountsNeighbours { get; init; }

    /// <summary>From when the class today is this one or worse, should nobody sign anything more.</summary>
    public DateTimeOffset? ClassDFrom { get; init; }
    public DateTimeOffset? ClassCFrom { get; init; }
    public DateTimeOffset? ClassBFrom { get; init; }
    public DateTimeOffset? ClassAFrom { get; init; }

    public DateTimeOffset? LastLookAt { get; init; }
    public DateTimeOffset? LookDueAt { get; init; }
    public DateTimeOffset? LookOverdueAt { get; init; }

    /// <summary>When walls are due if the looks are made, and if nobody goes at all.</summary>
    public DateTimeOffset? ThicknessPlannedAt { get; init; }
    public DateTimeOffset? ThicknessDueAt { get; init; }

    /// <summary>When the assessment in force was made: what happens later may unsettle it.</summary>
    public DateTimeOffset? SettledAt { get; init; }
    public DateTimeOffset? ReassessmentOwedFrom { get; init; }
    public string? ReassessmentWhy { get; init; }

    /// <summary>The end of the debt clock of an emergency; nothing once it is paid.</summary>
    public DateTimeOffset? ApprovalOwedUntil { get; init; }
    public DateTimeOffset? RemovalOwedFrom { get; init; }
    public string? RemovalWhy { get; init; }
    public DateTimeOffset? StoppedSince { get; init; }
    public string? StopWhy { get; init; }

    /// <summary>The end of the permit's window, while work is unfinished.</summary>
    public DateTimeOffset? PermitUntil { get; init; }

    /// <summary>When full hardness is reached.</summary>
    public DateTimeOffset? CuringUntil { get; init; }

    /// <summary>When a step of the ladder was answered.</summary>
    public DateTimeOffset[] AnsweredAt { get; init; } = [];

    /// <summary>The batches issued for it.</summary>
    public Guid[] Batches { get; init; } = [];

    public static OrderColumns From(RepairOrder order) => Standing.Summary.Of(order);
}
