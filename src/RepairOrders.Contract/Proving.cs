using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Kinds of test after a repair.</summary>
public enum TestKind
{
    /// <summary>With water, above service pressure.</summary>
    Hydrostatic,

    /// <summary>With gas, above service pressure.</summary>
    Pneumatic,

    /// <summary>With the service fluid at operating pressure, raised in steps.</summary>
    ServiceLeak,

    /// <summary>With bubbles at low pressure.</summary>
    Bubble,

    /// <summary>With a vacuum box.</summary>
    Vacuum,

    /// <summary>With a tracer or another sensitive means.</summary>
    Sensitive,
}

/// <summary>A test as it was made.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Pressure">Test pressure, gauge.</param>
/// <param name="Hold">How long it was held.</param>
/// <param name="Medium">With what.</param>
/// <param name="MediumTemperature">The medium's temperature.</param>
/// <param name="Gauge">Serial number of the gauge.</param>
/// <param name="Tight">Nothing came out. <c>false</c> is a failure: the order leaves the way to service.</param>
/// <param name="Seen">What was seen, where it leaked.</param>
public sealed record TestMade(
    TestKind Kind,
    [property: Required, MeasuredIn("bar", Least = -1, Greatest = 1500)] Measure Pressure,
    [property: Required, MeasuredIn("min", Least = 0, Greatest = 10000)] Measure Hold,
    [property: Required, StringLength(100, MinimumLength = 2)] string Medium,
    [property: MeasuredIn("°C", Least = -200, Greatest = 600)] Measure? MediumTemperature,
    [property: Required, StringLength(60, MinimumLength = 1)] string Gauge,
    bool Tight,
    [property: StringLength(2000)] string? Seen = null
);

/// <summary>Proves the repair: the test, or the waiver it rests on, and the tag.</summary>
/// <param name="Test">The test; nothing where it is waived.</param>
/// <param name="PipeTemperature">Temperature of the pipe at the repair now; it closes the cure log.</param>
/// <param name="Tag">Number of the tag on the repair; nothing only where it leaked.</param>
/// <param name="TagPhoto">The photograph of the tag.</param>
/// <param name="Departure">Anything done otherwise than written.</param>
/// <param name="Remark">What the technician wants on record.</param>
public sealed record RecordProof(
    TestMade? Test,
    [property: Required, MeasuredIn("°C", Least = -200, Greatest = 600)] Measure PipeTemperature,
    [property: StringLength(40, MinimumLength = 1)] string? Tag,
    Guid? TagPhoto,
    [property: StringLength(2000)] string? Departure = null,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>The body of a proof.</summary>
/// <param name="Ask">What was done.</param>
/// <param name="Failed">It leaked: the order has failed.</param>
/// <param name="GreatestPressureBar">The greatest test pressure the thinned wall and the repair hold, bar; nothing where no test was made.</param>
/// <param name="GreatestPressureWhy">What sets it.</param>
/// <param name="Cures">How far each cure had come.</param>
public sealed record SignedProof(
    RecordProof Ask,
    bool Failed,
    double? GreatestPressureBar,
    string? GreatestPressureWhy,
    IReadOnlyList<CureClockView> Cures
);

/// <summary>In which capacity a test is waived.</summary>
public enum WaiverCapacity
{
    /// <summary>As integrity engineer.</summary>
    Engineer,

    /// <summary>As inspector.</summary>
    Inspector,

    /// <summary>As manager, on class A.</summary>
    Manager,
}

/// <summary>Waives the test for one of the places its class asks for.</summary>
/// <param name="As">The capacity signed in.</param>
/// <param name="Why">Why no test can be made.</param>
/// <param name="Substitute">The examination made instead, with its result.</param>
public sealed record WaiveTest(
    WaiverCapacity As,
    [property: Required, StringLength(1000, MinimumLength = 3)] string Why,
    [property: Required, StringLength(1000, MinimumLength = 3)] string Substitute
);

/// <summary>Witnesses a proof.</summary>
/// <param name="Remark">What the witness saw.</param>
public sealed record WitnessProof([property: StringLength(2000)] string? Remark = null);

/// <summary>The body of a witness's signature.</summary>
/// <param name="Proof">The proof.</param>
/// <param name="Remark">What the witness saw.</param>
public sealed record SignedWitness(Guid Proof, string? Remark);

/// <summary>Accepts every departure on record so far.</summary>
/// <param name="Why">Why the repair is as good.</param>
public sealed record AcceptDepartures([property: Required, StringLength(2000, MinimumLength = 3)] string Why);

/// <summary>The body of an acceptance of departures.</summary>
/// <param name="Why">Why.</param>
/// <param name="Departures">What was accepted.</param>
public sealed record SignedDepartures(string Why, IReadOnlyList<string> Departures);

/// <summary>Takes on the first look, and every look after it.</summary>
/// <param name="Remark">What the owner wants on record.</param>
public sealed record AcceptFirstLook([property: StringLength(1000)] string? Remark = null);

/// <summary>The body of an acceptance of the first look.</summary>
/// <param name="Owner">Who goes back to look.</param>
/// <param name="Remark">What he wants on record.</param>
public sealed record SignedFirstLook(NamedPerson Owner, string? Remark);

/// <summary>Accepts the repair into service, for operations.</summary>
/// <param name="OperatorsTold">Who was told of the interim limits and of what to do when it leaks, by name or shift.</param>
/// <param name="IsolationsRemoved">Every lock of the isolation is off; <c>true</c> where the line was live.</param>
/// <param name="Remark">What operations want on record.</param>
public sealed record AcceptRepair(
    [property: Required, StringLength(1000, MinimumLength = 2)] string OperatorsTold,
    bool IsolationsRemoved,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>The body of an acceptance into service.</summary>
/// <param name="Ask">What was asked.</param>
/// <param name="Proof">The proof it rests on.</param>
/// <param name="Tag">Number of the tag.</param>
/// <param name="Limits">The interim limits operations were told; nothing where there are none.</param>
public sealed record SignedAcceptance(AcceptRepair Ask, Guid Proof, string Tag, InterimLimits? Limits);

public sealed partial class RepairOrdersClient
{
    /// <summary>Proves the repair.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Test and tag.</param>
    /// <returns>The proof; its body is a <see cref="SignedProof"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> RecordProof(string number, RecordProof ask) =>
        Post<RecordView>($"orders/{number}/proofs", ask);

    /// <summary>Witnesses a proof.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="proof">The proof.</param>
    /// <param name="ask">What was seen.</param>
    /// <returns>The witness's signature.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> WitnessProof(string number, Guid proof, WitnessProof ask) =>
        Post<RecordView>($"orders/{number}/proofs/{proof}/witnesses", ask);

    /// <summary>Waives the test for one of the places its class asks for.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Capacity, reason and substitute.</param>
    /// <returns>The waiver.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> WaiveTest(string number, WaiveTest ask) =>
        Post<RecordView>($"orders/{number}/test-waivers", ask);

    /// <summary>Accepts every departure on record so far.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Why the repair is as good.</param>
    /// <returns>The acceptance.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AcceptDepartures(string number, AcceptDepartures ask) =>
        Post<RecordView>($"orders/{number}/departure-acceptances", ask);

    /// <summary>Takes on the first look.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What the owner wants on record.</param>
    /// <returns>The acceptance.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AcceptFirstLook(string number, AcceptFirstLook ask) =>
        Post<RecordView>($"orders/{number}/first-look-acceptances", ask);

    /// <summary>Accepts the repair into service.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Who was told, and that the isolations are off.</param>
    /// <returns>The acceptance; its body is a <see cref="SignedAcceptance"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AcceptRepair(string number, AcceptRepair ask) =>
        Post<RecordView>($"orders/{number}/acceptances", ask);
}
