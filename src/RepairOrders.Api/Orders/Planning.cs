using RepairOrders.Api.Consenting;
using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>
/// When assessing, choosing, sizing and approving are open, and where they lead. Before work they carry the order forward; on
/// the emergency path and in service they are signed beside the work and the stage stays.
/// </summary>
internal static class Planning
{
    private static readonly Stage[] BeforeWork =
    [
        Stage.Requested,
        Stage.Assessed,
        Stage.Chosen,
        Stage.Sized,
        Stage.Approved,
        Stage.Issued,
        Stage.Ready,
    ];

    private static readonly Stage[] Open =
    [
        .. BeforeWork,
        Stage.Consented,
        Stage.InService,
        Stage.LineOutOfService,
        Stage.MadeSafe,
    ];

    /// <summary>The objection while the papers may not be signed: during the work itself, after a failure not yet made safe, and at the end.</summary>
    public static Objection? NotOpen(RepairOrder order, string what) =>
        IsEmergency(order) && order.Stage is Stage.Fitting or Stage.Fitted ? null : Objection.NotNow(order, what, Open);

    /// <summary>The stage after a record of these steps.</summary>
    public static Stage After(Stage before, SignedRecord record, RepairOrder order, Stage next) =>
        StartsRound(record, order) || (BeforeWork.Contains(before) && !Consents.Both(order, record.Round, record))
            ? next
            : before;

    /// <summary>The repair is on the pipe and counts: papers signed now are signed again.</summary>
    public static bool InService(RepairOrder order) => order.Stage is Stage.InService or Stage.LineOutOfService;

    /// <summary>Work in this round rests on two consents.</summary>
    public static bool IsEmergency(RepairOrder order) => Consents.Both(order, order.Round);

    private static bool StartsRound(SignedRecord record, RepairOrder order) =>
        record.Round > 1 && !order.Records.Any(r => r.Round == record.Round && record.IsAfter(r));
}
