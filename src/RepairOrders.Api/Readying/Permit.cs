using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Readying;

/// <summary>The window of the permit. What was read before it ended is kept.</summary>
internal static class Permit
{
    public static Objection? Window(
        RepairOrder order,
        string permit,
        DateTimeOffset from,
        DateTimeOffset until,
        DateTimeOffset at
    )
    {
        if (from >= until)
            return new Objection(
                "permit-window",
                $"Permit {permit} would end before it begins. Read the times again.",
                "supervisor"
            );
        return at >= until
            ? new Objection(
                "permit-over",
                $"Permit {permit} ended {Local(order, until, at)}. Ask for it to be revalidated; readings so far are kept.",
                "permit issuer, then the supervisor by a new readiness"
            )
            : null;
    }

    /// <summary>What stands against work at this moment under the readiness that counts.</summary>
    public static Objection? Objection(RepairOrder order, ReadinessFor what, DateTimeOffset at)
    {
        if (Readiness.Current(order, what) is not { } ready)
            return new Objection(
                "not-ready",
                "The job is not readied: no permit, isolation, gas test and talk are on record.",
                "supervisor"
            );
        var ask = ready.Asked.Ask;
        if (at < ask.PermitFrom)
            return new Objection(
                "permit-not-begun",
                $"Permit {ask.Permit} begins {Local(order, ask.PermitFrom, at)}.",
                "permit issuer"
            );
        return Window(order, ask.Permit, ask.PermitFrom, ask.PermitUntil, at);
    }

    // The time on the site's own clock, with the day where it is not today.
    private static string Local(RepairOrder order, DateTimeOffset when, DateTimeOffset at)
    {
        var local = TimeZoneInfo.ConvertTime(when, TimeZoneInfo.FindSystemTimeZoneById(order.Site.TimeZone));
        return order.Site.Today(when) == order.Site.Today(at)
            ? local.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)
            : local.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
    }
}

/// <summary>Whether the air at the place of work may be breathed and does not burn.</summary>
internal static class Gas
{
    public static readonly TimeSpan GoodFor = TimeSpan.FromHours(4);

    // Common practice, no source; the permit may state closer values and then says so itself.
    private const double MostExplosivePercent = 10;
    private const double LeastOxygenPercent = 19.5;
    private const double MostOxygenPercent = 23.5;

    public static Objection? Objection(ReadyOrder ask, DateTimeOffset at)
    {
        var test = ask.GasTest;
        if (test.At > at || at - test.At > GoodFor)
            return new Objection(
                "gas-test-old",
                "The gas test must have been made within the last four hours. Test again.",
                "authorised tester"
            );
        var inside =
            test.WithinPermit
            && test.LowerExplosivePercent < MostExplosivePercent
            && test.OxygenPercent is >= LeastOxygenPercent and <= MostOxygenPercent;
        return inside
            ? null
            : new Objection(
                "gas-test-fails",
                "The gas test is outside the permit or outside 10 % of the explosive limit and 19.5 to 23.5 % oxygen. Nobody works there; find the source, ventilate, test again.",
                "operations, then the authorised tester"
            );
    }
}
