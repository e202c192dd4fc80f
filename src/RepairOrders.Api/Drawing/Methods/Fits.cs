namespace RepairOrders.Api.Drawing.Methods;

/// <summary>Which method is drawn how: one line a method.</summary>
internal static class Fits
{
    private static readonly Dictionary<string, Func<Subject, Fit?>> Known = new()
    {
        ["banded-patch"] = BandedPatchFit.Of,
        ["laminate-wrap"] = LaminateFit.Of,
        ["bolted-clamp"] = ClampFit.Of,
        ["welded-patch"] = WeldedPatchFit.Of,
        ["welded-sleeve"] = SleeveFit.Of,
        ["plug"] = PlugFit.Of,
        ["section-replacement"] = SpoolFit.Of,
    };

    /// <summary>The torque with its window; a window whose least is above its most is none, and says so.</summary>
    public static string Torque(Subject s, double torque) =>
        s["torqueLeastNm"] is { } least && s["torqueMostNm"] is { } most && least > most
            ? Board.Say($"NO torque holds: {Board.Number(least)} N m are needed, {Board.Number(most)} are borne")
            : Board.Say($"torque {Board.Number(torque)} N m ({s["torqueLeastNm"]:0.#} to {s["torqueMostNm"]:0.#})");

    /// <summary>What the design puts on the pipe; nothing on it where no design is signed or its sizes do not tell enough.</summary>
    public static Fit Of(Subject subject) =>
        subject.Design is { } design && Known.TryGetValue(design.Method, out var fit)
            ? fit(subject) ?? Fit.Nothing
            : Fit.Nothing;
}
