using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>How a step of the ladder is answered. There is no snooze.</summary>
public enum LadderAnswerKind
{
    /// <summary>It will be done on a day.</summary>
    DateSet,

    /// <summary>It cannot be done, and why.</summary>
    Cannot,

    /// <summary>The line is taken out of service.</summary>
    LineOut,
}

/// <summary>Answers the step of the ladder an order has reached. It moves no date.</summary>
/// <param name="Kind">The answer.</param>
/// <param name="On">The day set.</param>
/// <param name="Why">What stands behind it.</param>
public sealed record AnswerLadder(
    LadderAnswerKind Kind,
    DateOnly? On,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Why
);

/// <summary>The body of an answer.</summary>
/// <param name="Ask">The answer.</param>
/// <param name="Item">What it answers.</param>
/// <param name="Step">The step it answers.</param>
public sealed record SignedAnswer(AnswerLadder Ask, LadderItem Item, LadderStep Step);

/// <summary>What the weekly review decides on one order.</summary>
public enum ReviewDecision
{
    /// <summary>It may stay.</summary>
    Stay,

    /// <summary>Somebody acts.</summary>
    Act,

    /// <summary>An extension is asked for.</summary>
    Extend,

    /// <summary>It comes off.</summary>
    Remove,
}

/// <summary>Enters what the weekly review decided. It moves no date.</summary>
/// <param name="Decision">The decision.</param>
/// <param name="Minutes">What was said.</param>
/// <param name="ActionBy">Who acts.</param>
/// <param name="ActionOn">By when.</param>
public sealed record ReviewOrder(
    ReviewDecision Decision,
    [property: Required, StringLength(4000, MinimumLength = 3)] string Minutes,
    [property: StringLength(100)] string? ActionBy = null,
    DateOnly? ActionOn = null
);

/// <summary>One order the weekly review has to look at.</summary>
/// <param name="Row">Its row of the register.</param>
/// <param name="DaysLate">Days since the older of look and end date passed.</param>
/// <param name="Ladder">Where it stands on the ladder.</param>
/// <param name="LastAnswer">The last answer given, in one line.</param>
/// <param name="LastReview">What the last review decided, in one line.</param>
public sealed record ReviewRow(
    RegisterRow Row,
    int DaysLate,
    LadderView? Ladder,
    string? LastAnswer,
    string? LastReview
);

/// <summary>Everything overdue or past life, by class and then by lateness.</summary>
/// <param name="Rows">The orders, gravest class first, then the longest late.</param>
/// <param name="ReadAt">When this was read.</param>
public sealed record ReviewView(IReadOnlyList<ReviewRow> Rows, DateTimeOffset ReadAt);

/// <summary>One live repair of a section.</summary>
/// <param name="Number">The order's number.</param>
/// <param name="Line">The line.</param>
/// <param name="ClassToday">The class as it reads now.</param>
/// <param name="Weight">Its weight: A 27, B 9, C 3, D 1.</param>
public sealed record CarriedRepair(string Number, string Line, RiskClass ClassToday, int Weight);

/// <summary>The risk a section carries.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Section">The section.</param>
/// <param name="Sum">The sum of the weights.</param>
/// <param name="Repairs">The live repairs on it, gravest first.</param>
public sealed record CarriedRiskView(string Site, string Section, int Sum, IReadOnlyList<CarriedRepair> Repairs);

/// <summary>The figures a manager answers for, each with what it means.</summary>
/// <param name="Figures">One line each.</param>
/// <param name="Months">Live repairs at the end of each of the last twelve months, the running one last.</param>
/// <param name="Methods">Failures of the last twelve months by method, most first.</param>
/// <param name="ReadAt">When this was read.</param>
public sealed record LiveFiguresView(
    IReadOnlyList<LiveFigure> Figures,
    IReadOnlyList<LiveMonth> Months,
    IReadOnlyList<MethodFailures> Methods,
    DateTimeOffset ReadAt
);

/// <summary>One figure.</summary>
/// <param name="Code">Stable: <c>live</c>, <c>past-life</c>, <c>look-overdue</c>, <c>age-mean</c>, <c>age-oldest</c>,
/// <c>extended</c>, <c>approval-owed</c>, <c>repeat-leak</c>.</param>
/// <param name="Words">Its name.</param>
/// <param name="Means">How it is counted.</param>
/// <param name="Count">How many orders; for an age, how many it is taken over.</param>
/// <param name="Value">The figure; nothing where no repair is live.</param>
/// <param name="Unit"><c>repairs</c>, <c>%</c> of the live ones, or <c>days</c>.</param>
public sealed record LiveFigure(string Code, string Words, string Means, int Count, double? Value, string Unit);

/// <summary>How many repairs were live at the end of a month.</summary>
/// <param name="On">The last day of the month, or today.</param>
/// <param name="Live">Repairs in service then.</param>
/// <param name="Begun">Repairs that came into service in the month.</param>
/// <param name="Ended">Repairs that ceased to be live in it.</param>
public sealed record LiveMonth(DateOnly On, int Live, int Begun, int Ended);

/// <summary>How often repairs of a method failed.</summary>
/// <param name="Method">The method's name; <c>emergency list</c> before anything was chosen.</param>
/// <param name="Failures">Failures reported in the last twelve months.</param>
/// <param name="InService">Repairs of the method that were in service at some time in them.</param>
public sealed record MethodFailures(string Method, int Failures, int InService);

public sealed partial class RepairOrdersClient
{
    /// <summary>The figures a manager answers for, over the sites the caller may see.</summary>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>Figures, trend and failures.</returns>
    public Task<LiveFiguresView> LiveFigures(CancellationToken stop = default) =>
        Get<LiveFiguresView>("reviews/live-figures", stop);

    /// <summary>The weekly review: everything overdue or past life.</summary>
    /// <param name="site">A site's short name; nothing for all.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The list.</returns>
    public Task<ReviewView> OverdueReview(string? site = null, CancellationToken stop = default) =>
        Get<ReviewView>(site is null ? "reviews/overdue" : $"reviews/overdue?site={Uri.EscapeDataString(site)}", stop);

    /// <summary>Answers the step of the ladder an order has reached.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The answer.</param>
    /// <returns>The answer; its body is a <see cref="SignedAnswer"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AnswerLadder(string number, AnswerLadder ask) =>
        Post<RecordView>($"orders/{number}/ladder-answers", ask);

    /// <summary>Enters what the weekly review decided.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Decision and minutes.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ReviewOrder(string number, ReviewOrder ask) =>
        Post<RecordView>($"orders/{number}/reviews", ask);

    /// <summary>The risk each section with live repairs carries, greatest first.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The sections.</returns>
    public Task<IReadOnlyList<CarriedRiskView>> CarriedRisk(string site, CancellationToken stop = default) =>
        Get<IReadOnlyList<CarriedRiskView>>($"sections/carried-risk?site={Uri.EscapeDataString(site)}", stop);

    /// <summary>The risk one section carries.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="section">The section.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The section.</returns>
    public Task<CarriedRiskView> CarriedRisk(string site, string section, CancellationToken stop = default) =>
        Get<CarriedRiskView>(
            $"sections/{Uri.EscapeDataString(site)}/{Uri.EscapeDataString(section)}/carried-risk",
            stop
        );
}
