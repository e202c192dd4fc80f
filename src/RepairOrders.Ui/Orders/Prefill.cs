using RepairOrders.Contract;

namespace RepairOrders.Ui.Orders;

/// <summary>What the order says already, so that nobody types a thing twice. Judgements and readings are left open.</summary>
internal static class Prefill
{
    /// <summary>Two readings to fill in; defect and surroundings as they were last judged.</summary>
    public static RecordAssessment? Assessment(StepContext step)
    {
        var earlier = step.Last<SignedAssessment>("assessment")?.Ask;
        var gauge = earlier?.Readings is [var first, ..] ? first.Instrument : "";
        var wall = Measure.Of(0, "mm");
        return new RecordAssessment(
            [
                new ThicknessReading(ReadingPlace.AtDefect, "", wall, step.Today, gauge),
                new ThicknessReading(ReadingPlace.Beside, "", wall, step.Today, gauge),
            ],
            null,
            earlier?.Defect!,
            earlier?.Consequences!
        );
    }

    /// <summary>A permit of eight hours from now; whoever fitted before, fits again.</summary>
    public static ReadyOrder Readiness(StepContext step)
    {
        var before = step.Last<SignedReadiness>("readiness")?.Ask;
        var now = step.Sheet.ReadAt;
        return new ReadyOrder(
            step.Last("removal-order") is null ? ReadinessFor.Fit : ReadinessFor.Removal,
            "",
            default,
            now,
            now.AddHours(8),
            before?.Isolation,
            before?.LivePressure,
            new GasTest(now, "", 0, 0, null, false),
            before?.Fitters ?? [],
            before?.TalkSignedBy ?? [],
            before?.Standby
        );
    }

    /// <summary>All that is out on the order, back to the bins it came from.</summary>
    public static async Task<ReturnMaterial?> MaterialBack(StepContext step)
    {
        var list = await (await step.Desk.Client()).PickList(step.Number);
        var from = step.All("material-issue")
            .SelectMany(r => r.Read<SignedIssue>().Ask.Lines)
            .ToLookup(l => l.Batch, l => l.Bin);
        return new ReturnMaterial([
            .. list.Out.Select(o => new ReturnLine(o.Batch, o.Quantity, from[o.Batch].LastOrDefault())),
        ]);
    }

    /// <summary>All that is out on the order, as used.</summary>
    public static async Task<AccountForMaterial?> MaterialUse(StepContext step)
    {
        var list = await (await step.Desk.Client()).PickList(step.Number);
        return new AccountForMaterial([.. list.Out.Select(o => new UseLine(o.Batch, o.Quantity, 0))]);
    }

    /// <summary>A test at the most the line may see while the repair is live; nothing where the test is waived.</summary>
    public static RecordProof Proof(StepContext step)
    {
        var design = step.Last<SignedDesign>("design");
        var pressure =
            design?.Ask.InterimLimits?.Pressure
            ?? (design is null ? null : Measure.Of(design.Facts.OperatingPressureBar, "bar"))
            ?? step.Last<RequestRepair>("request")?.OperatingPressure;
        var test =
            step.Last("test-waiver") is null && pressure is not null
                ? new TestMade(default, pressure, Measure.Of(10, "min"), "service fluid", null, "", false)
                : null;
        return new RecordProof(test, null!, null, step.All("photo").LastOrDefault(Tag)?.Id);

        static bool Tag(RecordView photo) => photo.Read<SignedPhoto>().Of == PhotoOf.Tag;
    }

    /// <summary>The last survey and the fix as it is planned.</summary>
    public static AskExtension Extension(StepContext step)
    {
        var design = step.Last<SignedDesign>("design")?.Ask;
        return new AskExtension(
            default,
            "",
            step.All("visit").LastOrDefault(v => v.Read<SignedVisit>().Ask.Readings is { Count: > 0 })?.Id ?? default,
            design?.PermanentFix!,
            design?.ChangeControl
        );
    }

    public static async Task<LiveFitCapacity> LiveFitCapacity(StepContext step) =>
        await step.Desk.Holds(Competences.OperationsInCharge) ? Contract.LiveFitCapacity.OperationsInCharge
        : step.Desk.Me.Roles.Contains(Role.Manager) ? Contract.LiveFitCapacity.Manager
        : step.Desk.Me.Roles.Contains(Role.IntegrityEngineer) ? Contract.LiveFitCapacity.Engineer
        : Contract.LiveFitCapacity.Supervisor;

    public static async Task<WaiverCapacity> WaiverCapacity(StepContext step) =>
        step.Desk.Me.Roles.Contains(Role.Manager) ? Contract.WaiverCapacity.Manager
        : await step.Desk.Holds(Competences.Inspector) ? Contract.WaiverCapacity.Inspector
        : Contract.WaiverCapacity.Engineer;

    public static ApprovalCapacity ApprovalCapacity(StepContext step) =>
        step.Desk.Me.Roles.Contains(Role.IntegrityEngineer) ? Contract.ApprovalCapacity.Engineer
        : step.Desk.Me.Roles.Contains(Role.Manager) ? Contract.ApprovalCapacity.Manager
        : Contract.ApprovalCapacity.Supervisor;

    /// <summary>What is known at once, for a panel that asks nobody.</summary>
    public static Task<T?> Known<T>(T? known)
        where T : class => Task.FromResult(known);
}
