using RepairOrders.Contract;
using static RepairOrders.Api.People.Permission;
using static RepairOrders.Contract.Role;

namespace RepairOrders.Api.People;

/// <summary>Who may at all: one line a permission. Every endpoint names its permission here.</summary>
internal static class RoleRules
{
    private static readonly Role[] Everyone = Enum.GetValues<Role>();
    private static readonly Role[] NotReaders = [.. Everyone.Where(r => r != Reader)];

    private static readonly Dictionary<Permission, Role[]> Allowed = new()
    {
        [SeeOneself] = Everyone,
        [Permission.ChangeOwnPassword] = Everyone,
        [KeepOwnSignIns] = Everyone,
        [SignOnThisDevice] = [Supervisor, Technician, Storekeeper, IntegrityEngineer, Manager],
        [ReadPeople] = Everyone,
        [KeepPeople] = [Administrator],
        [ReadSites] = Everyone,
        [KeepSites] = [Administrator],
        [ReadLines] = Everyone,
        [Calculate] = Everyone,
        [KeepLines] = [Administrator],
        [VerifyHistory] = [Administrator, Reader],
        [ReadRegister] = Everyone,
        [ReadOrder] = Everyone,
        [ReadStock] = Everyone,
        [DescribeStock] = [Storekeeper, IntegrityEngineer],
        [KeepStock] = [Storekeeper],
        [Permission.JudgeBatch] = [Storekeeper, IntegrityEngineer],
        [KeepInstruments] = [Storekeeper, IntegrityEngineer, Administrator],
        [Permission.RequestRepair] = [Supervisor, Technician, IntegrityEngineer],
        [Permission.RecordAssessment] = [IntegrityEngineer],
        [Permission.ChooseMethod] = [IntegrityEngineer],
        [Permission.SignDeviation] = [IntegrityEngineer],
        [Permission.SizeRepair] = [IntegrityEngineer],
        [KeepFigures] = [IntegrityEngineer, Manager],
        [KeepEmergencyList] = [IntegrityEngineer, Manager],
        [Permission.RecordConsent] = [Supervisor, Technician, Storekeeper, IntegrityEngineer, Manager],
        [Permission.ConfirmConsent] = [Supervisor, Technician, Storekeeper, IntegrityEngineer, Manager],
        [Permission.GrantPeriod] = [Manager],
        [Permission.ExitOrder] = [Supervisor, Technician, IntegrityEngineer],
        [Permission.SignExit] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.ReturnToService] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.ApproveOrder] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.WithdrawApproval] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.IssueMaterial] = [Storekeeper, Supervisor],
        [Permission.AgreeSubstitution] = [IntegrityEngineer],
        [Permission.ReturnMaterial] = [Storekeeper],
        [Permission.AccountForMaterial] = [Technician, Storekeeper],
        [Permission.ReadyOrder] = [Supervisor],
        [Permission.ConsentToLiveFit] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.RecordReadings] = [Supervisor, Technician, IntegrityEngineer],
        [Permission.StartMix] = [Technician],
        [Permission.VoidMix] = [Supervisor, Technician],
        [Permission.ReleaseHoldPoint] = [Supervisor, Technician, IntegrityEngineer],
        [Permission.StopJob] = NotReaders,
        [Permission.ResumeJob] = [Supervisor],
        [Permission.AddPhoto] = NotReaders,
        [Permission.RecordProof] = [Technician],
        [Permission.WitnessProof] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.WaiveTest] = [Technician, IntegrityEngineer, Manager],
        [Permission.AcceptDepartures] = [IntegrityEngineer],
        [Permission.AcceptFirstLook] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.AcceptRepair] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.RecordVisit] = [Supervisor, Technician, IntegrityEngineer],
        [Permission.CountersignVisit] = [IntegrityEngineer],
        [Permission.AskExtension] = [Supervisor],
        [Permission.DecideExtension] = [IntegrityEngineer, Manager],
        [Permission.ReportFailure] = [Supervisor, Technician, Storekeeper, IntegrityEngineer, Manager, Administrator],
        [Permission.MakeSafe] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.AgreeContainment] = [Manager],
        [Permission.StateFailureMode] = [IntegrityEngineer],
        [Permission.OrderRemoval] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.RecordRemoval] = [Technician],
        [Permission.InspectRemoval] = [Supervisor, Technician, IntegrityEngineer],
        [Permission.RecordPermanentFix] = [Supervisor],
        [Permission.CloseOrder] = [Supervisor, Manager],
        [Permission.CountersignCloseOut] = [IntegrityEngineer],
        [ReopenOrder] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.OfferHandOver] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.AcceptHandOver] = [Supervisor, Technician, IntegrityEngineer, Manager],
        [Permission.AnswerLadder] = [Supervisor, IntegrityEngineer, Manager],
        [Permission.ReviewOrder] = [IntegrityEngineer],
        [PlanShutdowns] = [Supervisor, IntegrityEngineer, Manager],
    };

    public static IReadOnlyList<Role> RolesFor(Permission permission) => Allowed[permission];

    public static bool May(Person person, Permission permission) => Allowed[permission].Any(person.Is);

    public static Orders.Objection? Objection(Person person, Permission permission) =>
        May(person, permission)
            ? null
            : new Orders.Objection(
                "role",
                $"Your roles do not allow this. It takes: {string.Join(", ", RolesFor(permission).Select(r => Orders.Words.Of(r)))}.",
                $"a person with one of these roles: {string.Join(", ", RolesFor(permission).Select(r => Orders.Words.Of(r)))}"
            );

    public static IEnumerable<Permission> PermissionsOf(Person person) =>
        Enum.GetValues<Permission>().Where(p => May(person, p));
}
