using System.Text.Json;

namespace RepairOrders.Contract;

/// <summary>What a step at the pipe is.</summary>
public enum PipeStepKind
{
    /// <summary>Work may not pass until it is signed.</summary>
    HoldPoint,

    /// <summary>A witness is called to it.</summary>
    WitnessPoint,

    /// <summary>Tag and test.</summary>
    Proof,

    /// <summary>The witness's signature under the test.</summary>
    ProofWitness,

    /// <summary>The owner takes on the first look.</summary>
    FirstLook,

    /// <summary>Operations take the repair into service.</summary>
    Acceptance,
}

/// <summary>Somebody who may sign a step now.</summary>
/// <param name="Id">The person.</param>
/// <param name="Name">His sign-in name.</param>
/// <param name="FullName">His name as it is printed under signatures.</param>
/// <param name="HasShortCode">He has set the six digits for signing on somebody else's device.</param>
public sealed record PipeSigner(Guid Id, string Name, string FullName, bool HasShortCode);

/// <summary>A photograph on record for a step.</summary>
/// <param name="Photo">Its record.</param>
/// <param name="By">Who took it.</param>
/// <param name="At">When it was put on the order.</param>
public sealed record PipePhoto(Guid Photo, string By, DateTimeOffset At);

/// <summary>One step of the work, as whoever stands at the pipe meets it.</summary>
/// <param name="Code">The hold point's code, or <c>proof</c>, <c>proof-witness</c>, <c>first-look</c>, <c>acceptance</c>.</param>
/// <param name="Title">What is true once it is signed.</param>
/// <param name="Kind">What it is.</param>
/// <param name="SignedBy">Who signs it, in words.</param>
/// <param name="Evidence">What must be there before it can be signed.</param>
/// <param name="DoneBy">Who signed it; nothing while it is open.</param>
/// <param name="DoneAt">When.</param>
/// <param name="Objection">Why the caller may not sign it now; nothing when he may, or when it is signed.</param>
/// <param name="Signers">Everybody else who may sign it now; empty while it is not its turn.</param>
/// <param name="Photos">Its photographs.</param>
/// <param name="AsksWitness">A witness has to be called to it.</param>
public sealed record PipeStep(
    string Code,
    string Title,
    PipeStepKind Kind,
    string SignedBy,
    IReadOnlyList<Evidence> Evidence,
    string? DoneBy,
    DateTimeOffset? DoneAt,
    ObjectionView? Objection,
    IReadOnlyList<PipeSigner> Signers,
    IReadOnlyList<PipePhoto> Photos,
    bool AsksWitness
);

/// <summary>The limits that the readings are held against, shown before they are broken. Nothing where the plan sets none.</summary>
/// <param name="LeastWallMm">The least wall the design relies on, mm.</param>
/// <param name="LeastTorqueNm">The last pass reaches this torque, N m.</param>
/// <param name="GreatestTorqueNm">No pass goes above this torque, N m.</param>
/// <param name="LeastTensionN">The last pass reaches this tension, N.</param>
/// <param name="GreatestTensionN">No pass goes above this tension, N.</param>
/// <param name="Fasteners">How many fasteners there are.</param>
/// <param name="LeastShoreD">The softest reading that will do, Shore D.</param>
/// <param name="LeastTestBar">A pressure test below this proves nothing, bar.</param>
/// <param name="GreatestTestBar">The most a test may press, bar.</param>
/// <param name="GreatestTestWhy">What sets it: it is the pressure that … </param>
public sealed record PipeLimits(
    double? LeastWallMm,
    double? LeastTorqueNm,
    double? GreatestTorqueNm,
    double? LeastTensionN,
    double? GreatestTensionN,
    int? Fasteners,
    double? LeastShoreD,
    double? LeastTestBar,
    double? GreatestTestBar,
    string? GreatestTestWhy
);

/// <summary>A batch that may go into a mix.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Number">Its number.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What it is.</param>
/// <param name="Limits">What the maker states; nothing for a hardener.</param>
public sealed record PipeBatch(Guid Batch, string Number, string Item, string Words, MaterialLimits? Limits);

/// <summary>An instrument that may be read with today.</summary>
/// <param name="Serial">Its serial number.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Words">What it is.</param>
public sealed record PipeInstrument(string Serial, InstrumentKind Kind, string Words);

/// <summary>The order as whoever stands at the pipe needs it: the steps in turn, the clocks, the limits, and what to choose from.</summary>
/// <param name="Title">The title block.</param>
/// <param name="TimeZone">The site's time zone, IANA.</param>
/// <param name="Version">The version of the order.</param>
/// <param name="Emergency">The work rests on two consents, not on an approved design.</param>
/// <param name="Cautions">The plan's cautions.</param>
/// <param name="Work">Hold points, permit, climate and clocks.</param>
/// <param name="ClimateUntil">Until when the last climate reading speaks.</param>
/// <param name="Steps">The steps from the first hold point to service; empty before there is a plan to work by.</param>
/// <param name="Limits">The limits of the readings.</param>
/// <param name="Batches">What may be mixed.</param>
/// <param name="Instruments">What may be read with today.</param>
/// <param name="Witnesses">Who may be called as witness.</param>
/// <param name="MixObjection">Why the caller may not start a mix now.</param>
/// <param name="Resumers">Who may let a stopped job go on; empty while it is not stopped.</param>
/// <param name="Proof">The proof that awaits its witness.</param>
/// <param name="TagPhoto">The last photograph of the tag.</param>
/// <param name="Next">The one next action of the order for the caller.</param>
/// <param name="ReadAt">When this was read, by the service's clock: every clock counts from it.</param>
public sealed record PipeView(
    TitleBlock Title,
    string TimeZone,
    string Version,
    bool Emergency,
    IReadOnlyList<string> Cautions,
    FittingView Work,
    DateTimeOffset? ClimateUntil,
    IReadOnlyList<PipeStep> Steps,
    PipeLimits Limits,
    IReadOnlyList<PipeBatch> Batches,
    IReadOnlyList<PipeInstrument> Instruments,
    IReadOnlyList<NamedPerson> Witnesses,
    ObjectionView? MixObjection,
    IReadOnlyList<PipeSigner> Resumers,
    Guid? Proof,
    Guid? TagPhoto,
    ActionView? Next,
    DateTimeOffset ReadAt
);

/// <summary>What can be signed from the page at the pipe.</summary>
public enum PipeAsk
{
    /// <summary><see cref="Contract.RecordClimate"/>.</summary>
    Climate,

    /// <summary><see cref="Contract.StartMix"/>.</summary>
    Mix,

    /// <summary><see cref="Contract.UseMix"/> of the mix.</summary>
    MixUse,

    /// <summary><see cref="Contract.RecordCure"/>.</summary>
    Cure,

    /// <summary><see cref="Contract.ReleaseHoldPoint"/>.</summary>
    HoldPoint,

    /// <summary><see cref="Contract.StopJob"/>.</summary>
    Stop,

    /// <summary><see cref="Contract.ResumeJob"/>.</summary>
    Resume,

    /// <summary><see cref="Contract.RecordProof"/>.</summary>
    Proof,

    /// <summary><see cref="WitnessProof"/> of the proof.</summary>
    ProofWitness,

    /// <summary><see cref="Contract.AcceptFirstLook"/>.</summary>
    FirstLook,

    /// <summary><see cref="Contract.AcceptRepair"/>.</summary>
    Acceptance,
}

public sealed partial class RepairOrdersClient
{
    /// <summary>The order as whoever stands at the pipe needs it.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>Steps, clocks, limits and choices.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see.</exception>
    public Task<PipeView> AtThePipe(string number, CancellationToken stop = default) =>
        Get<PipeView>($"orders/{number}/pipe", stop);

    /// <summary>What a climate would say, while it is being typed. Nothing is recorded.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="air">Air temperature as typed, °C where no unit is.</param>
    /// <param name="humidity">Relative humidity, percent.</param>
    /// <param name="steel">Temperature of the steel as typed.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The same answer a reading signed now would get.</returns>
    /// <exception cref="Refused">400 with the field that cannot be read.</exception>
    public Task<SignedClimate> ClimateAsTyped(
        string number,
        string air,
        string humidity,
        string steel,
        CancellationToken stop = default
    ) =>
        Get<SignedClimate>(
            $"orders/{number}/pipe/climate?air={Escaped(air)}&humidity={Escaped(humidity)}&steel={Escaped(steel)}",
            stop
        );

    /// <summary>Hands on what was signed at the pipe, as it was entered there.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="what">What it is.</param>
    /// <param name="of">The mix or proof it is signed of, where it is one's.</param>
    /// <param name="ask">The ask, as the wire writes it.</param>
    /// <param name="key">The idempotency key it was entered under.</param>
    /// <returns>The record.</returns>
    /// <exception cref="Refused">400 with the fields, 409 with the objection.</exception>
    public Task<RecordView> SignAtThePipe(string number, PipeAsk what, Guid? of, JsonElement ask, string key) =>
        Post<RecordView>(
            $"orders/{number}/"
                + what switch
                {
                    PipeAsk.Climate => "climate-readings",
                    PipeAsk.Mix => "mixes",
                    PipeAsk.MixUse => $"mixes/{of}/uses",
                    PipeAsk.Cure => "cure-readings",
                    PipeAsk.HoldPoint => "hold-point-releases",
                    PipeAsk.Stop => "stops",
                    PipeAsk.Resume => "resumptions",
                    PipeAsk.Proof => "proofs",
                    PipeAsk.ProofWitness => $"proofs/{of}/witnesses",
                    PipeAsk.FirstLook => "first-look-acceptances",
                    PipeAsk.Acceptance => "acceptances",
                    _ => throw new ArgumentOutOfRangeException(nameof(what), what, "There is no such ask."),
                },
            ask,
            key
        );
}
