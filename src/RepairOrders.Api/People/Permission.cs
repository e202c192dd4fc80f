namespace RepairOrders.Api.People;

/// <summary>What an endpoint needs. Whether it may be done on this order is the step's own objection.</summary>
internal enum Permission
{
    SeeOneself,
    ChangeOwnPassword,
    KeepOwnSignIns,
    SignOnThisDevice,
    ReadPeople,
    KeepPeople,
    ReadSites,
    KeepSites,
    ReadLines,
    KeepLines,
    VerifyHistory,
    ReadRegister,
    ReadOrder,
    ReadStock,
    DescribeStock,
    KeepStock,
    JudgeBatch,
    KeepInstruments,
    RequestRepair,
    RecordAssessment,
    ChooseMethod,
    SignDeviation,
    SizeRepair,
    ApproveOrder,
    WithdrawApproval,
    PlanShutdowns,
}
