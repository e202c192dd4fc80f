namespace RepairOrders.Api.People;

/// <summary>What an endpoint needs. Whether it may be done on this order is the step's own objection.</summary>
internal enum Permission
{
    SeeOneself,
    ReadRegister,
    ReadOrder,
    RequestRepair,
    ApproveOrder,
    WithdrawApproval,
    PlanShutdowns,
}
