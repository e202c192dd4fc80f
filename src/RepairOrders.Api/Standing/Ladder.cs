using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>
/// The ladder: steps reached by dates of the class, and sooner where a step was not answered in time. An answer is only that; it
/// moves no date, and there is no snooze.
/// </summary>
internal static class Ladder
{
    private const int Top = (int)LadderStep.SiteHead;

    // Days from the due date to supervisor, engineer, manager, site head. Our own figures.
    private static double[] Steps(RiskClass riskClass) =>
        riskClass switch
        {
            RiskClass.A => [0, 1, 2, 3],
            RiskClass.B => [1, 3, 7, 14],
            RiskClass.C => [3, 10, 21, 45],
            _ => [7, 21, 45, 90],
        };

    private static TimeSpan HeadsUp(RiskClass riskClass) =>
        TimeSpan.FromDays(
            riskClass switch
            {
                RiskClass.A => 7,
                RiskClass.B => 14,
                _ => 30,
            }
        );

    /// <summary>How long a step waits for its answer.</summary>
    public static TimeSpan AnswerWithin(RiskClass riskClass) =>
        TimeSpan.FromHours(riskClass is RiskClass.A or RiskClass.B ? 24 : 72);

    /// <summary>The step reached at a moment.</summary>
    /// <param name="item">What climbs: past the end date everything starts one step higher.</param>
    /// <param name="due">When it fell due.</param>
    /// <param name="riskClass">The class today.</param>
    /// <param name="answers">When somebody answered, oldest first.</param>
    /// <param name="at">The moment.</param>
    /// <returns>Where it stands; nothing before the heads-up.</returns>
    public static LadderView? At(
        LadderItem item,
        DateTimeOffset due,
        RiskClass riskClass,
        IReadOnlyList<DateTimeOffset> answers,
        DateTimeOffset at
    )
    {
        if (at < due - HeadsUp(riskClass))
            return null;
        var reached = Moments(item, due, riskClass, answers);
        var step = Array.FindLastIndex(reached, r => r <= at);
        var answered = step >= (int)LadderStep.Supervisor && answers.Any(a => a >= reached[step] && a <= at);
        return new LadderView(
            item,
            due,
            (LadderStep)step,
            reached[step],
            Who((LadderStep)step),
            step >= (int)LadderStep.Supervisor ? reached[step] + AnswerWithin(riskClass) : null,
            answered,
            reached.Skip(step + 1).Where(r => r > at).Select(r => (DateTimeOffset?)r).FirstOrDefault()
        );
    }

    // When each step is reached, heads-up first. Steps that coincide leave the higher one standing.
    private static DateTimeOffset[] Moments(
        LadderItem item,
        DateTimeOffset due,
        RiskClass riskClass,
        IReadOnlyList<DateTimeOffset> answers
    )
    {
        var days = Steps(riskClass);
        var higher = item == LadderItem.EndDate ? 1 : 0;
        var moments = new DateTimeOffset[Top + 1];
        moments[(int)LadderStep.HeadsUp] = due - HeadsUp(riskClass);
        moments[(int)LadderStep.Due] = due;
        for (var step = (int)LadderStep.Supervisor; step <= Top; step++)
        {
            var place = step - (int)LadderStep.Supervisor - higher;
            var byDate = place < 0 ? due : due + TimeSpan.FromDays(days[place]);
            moments[step] = step == (int)LadderStep.Supervisor ? byDate : Sooner(byDate, moments[step - 1]);
        }
        return moments;

        DateTimeOffset Sooner(DateTimeOffset byDate, DateTimeOffset before)
        {
            var limit = before + AnswerWithin(riskClass);
            return limit < byDate && !answers.Any(a => a >= before && a <= limit) ? limit : byDate;
        }
    }

    private static string Who(LadderStep step) =>
        step switch
        {
            LadderStep.HeadsUp => "owner",
            LadderStep.Due => "owner and supervisor",
            LadderStep.Supervisor => "supervisor",
            LadderStep.Engineer => "integrity engineer",
            LadderStep.Manager => "manager",
            _ => "head of the site; operations are asked for a pressure cut or isolation",
        };
}
