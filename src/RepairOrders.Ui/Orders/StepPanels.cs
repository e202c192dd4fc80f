using System.ComponentModel.DataAnnotations;
using RepairOrders.Contract;
using RepairOrders.Ui.Approving;
using RepairOrders.Ui.Assessing;
using RepairOrders.Ui.Choosing;
using RepairOrders.Ui.Closing;
using RepairOrders.Ui.Consenting;
using RepairOrders.Ui.Exiting;
using RepairOrders.Ui.Extending;
using RepairOrders.Ui.Failing;
using RepairOrders.Ui.Fitting;
using RepairOrders.Ui.Issuing;
using RepairOrders.Ui.MakingPermanent;
using RepairOrders.Ui.Owning;
using RepairOrders.Ui.Proving;
using RepairOrders.Ui.Readying;
using RepairOrders.Ui.Removing;
using RepairOrders.Ui.Requesting;
using RepairOrders.Ui.Reviewing;
using RepairOrders.Ui.Revisiting;
using RepairOrders.Ui.Sizing;

namespace RepairOrders.Ui.Orders;

/// <summary>A reason, for what is taken back.</summary>
/// <param name="Why">Why; it stands in the journal.</param>
public sealed record GiveReason([property: Required, StringLength(500, MinimumLength = 3)] string Why);

/// <summary>Which panel answers which action. Each step has its own in its folder, in the order of the procedure.</summary>
internal static class StepPanels
{
    private static readonly Dictionary<string, IStepPanel> Panels = new[]
    {
        RequestingPanels.All,
        AssessingPanels.All,
        ChoosingPanels.All,
        SizingPanels.All,
        ApprovingPanels.All,
        ConsentingPanels.All,
        IssuingPanels.All,
        ReadyingPanels.All,
        FittingPanels.All,
        ProvingPanels.All,
        RevisitingPanels.All,
        ExtendingPanels.All,
        FailingPanels.All,
        RemovingPanels.All,
        MakingPermanentPanels.All,
        ClosingPanels.All,
        OwningPanels.All,
        ReviewingPanels.All,
        ExitingPanels.All,
    }
        .SelectMany(panels => panels)
        .ToDictionary();

    // What may be done at any time waits for nobody; it stands below what does.
    private static readonly HashSet<string> Aside =
    [
        "sign-deviation",
        "withdraw-approval",
        "record-consent",
        "grant-period",
        "agree-substitution",
        "consent-to-live-fit",
        "record-climate",
        "start-mix",
        "record-cure",
        "stop-job",
        "return-material",
        "waive-test",
        "report-failure",
        "ask-extension",
        "order-removal",
        "reopen-order",
        "offer-hand-over",
        "review-order",
        "exit-order",
    ];

    public static IEnumerable<string> Actions => Panels.Keys;

    public static IStepPanel? For(string action) => Panels.GetValueOrDefault(action);

    // Signed once, these may be signed again; they wait only until the stage they lead to, or where something is owed.
    private static readonly Dictionary<string, Stage> LeadsTo = new()
    {
        ["record-assessment"] = Stage.Assessed,
        ["choose-method"] = Stage.Chosen,
        ["size-repair"] = Stage.Sized,
    };

    /// <summary>The action that waits for this person; nothing where he may only step in.</summary>
    public static ActionView? Waiting(OrderSheet sheet) =>
        sheet.Actions.FirstOrDefault(a => a.Objection is null && !Aside.Contains(a.Action) && IsDue(a.Action, sheet));

    private static bool IsDue(string action, OrderSheet sheet) =>
        action == "record-visit"
            ? Shows(sheet, Flags.LookDue, Flags.LookOverdue, Flags.InGrace, Flags.ThicknessDue)
            : !LeadsTo.TryGetValue(action, out var then)
                || sheet.Title.Stage < then
                || sheet.Title.Stage > Stage.InService
                || Shows(sheet, Flags.ReassessmentOwed, Flags.ApprovalOwed);

    private static bool Shows(OrderSheet sheet, params string[] codes) => sheet.Flags.Any(f => codes.Contains(f.Code));
}
