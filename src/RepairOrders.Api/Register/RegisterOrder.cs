using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>The orders of the list, and the key that tells where a page ended: by newest, by end date, by next look.</summary>
internal static class RegisterOrder
{
    private const string None = "none";

    public static IQueryable<RepairOrder> Sorted(this IQueryable<RepairOrder> orders, RegisterSort sort) =>
        sort switch
        {
            RegisterSort.EndDate => orders.OrderBy(o => o.Columns.EndDate).ThenByDescending(o => o.Id),
            RegisterSort.NextLook => orders.OrderBy(o => o.Columns.LookDueAt).ThenByDescending(o => o.Id),
            _ => orders.OrderByDescending(o => o.Id),
        };

    /// <summary>Those that follow a key. Orders without a date come last, as PostgreSQL sorts them.</summary>
    public static IQueryable<RepairOrder> After(this IQueryable<RepairOrder> orders, RegisterSort sort, string? after)
    {
        if (after is null)
            return orders;
        var parts = after.Split('_');
        if (parts.Length != 2 || !Guid.TryParse(parts[1], out var id))
            throw Malformed(after);
        if (sort == RegisterSort.Newest)
            return orders.Where(o => o.Id < id);
        if (parts[0] == None)
            return sort == RegisterSort.EndDate
                ? orders.Where(o => o.Columns.EndDate == null && o.Id < id)
                : orders.Where(o => o.Columns.LookDueAt == null && o.Id < id);
        return sort == RegisterSort.EndDate
            ? AfterEnd(orders, Day(parts[0], after), id)
            : AfterLook(orders, Moment(parts[0], after), id);
    }

    public static string Key(RegisterSort sort, OrderColumns columns, Guid id) =>
        sort switch
        {
            RegisterSort.EndDate => $"{columns.EndDate?.DayNumber.ToString(CultureInfo.InvariantCulture) ?? None}_{id}",
            RegisterSort.NextLook =>
                $"{columns.LookDueAt?.UtcTicks.ToString(CultureInfo.InvariantCulture) ?? None}_{id}",
            _ => $"{None}_{id}",
        };

    private static IQueryable<RepairOrder> AfterEnd(IQueryable<RepairOrder> orders, DateOnly end, Guid id) =>
        orders.Where(o =>
            o.Columns.EndDate > end || o.Columns.EndDate == null || (o.Columns.EndDate == end && o.Id < id)
        );

    private static IQueryable<RepairOrder> AfterLook(IQueryable<RepairOrder> orders, DateTimeOffset look, Guid id) =>
        orders.Where(o =>
            o.Columns.LookDueAt > look || o.Columns.LookDueAt == null || (o.Columns.LookDueAt == look && o.Id < id)
        );

    private static DateOnly Day(string part, string after) =>
        int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var day)
        && day <= DateOnly.MaxValue.DayNumber
            ? DateOnly.FromDayNumber(day)
            : throw Malformed(after);

    private static DateTimeOffset Moment(string part, string after) =>
        long.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var ticks)
        && ticks <= DateTime.MaxValue.Ticks
            ? new DateTimeOffset(ticks, TimeSpan.Zero)
            : throw Malformed(after);

    private static MalformedAsk Malformed(string after) =>
        new("after", $"after is \"{after}\"; allowed is the key a page before gave as next, with the same sort.");
}
