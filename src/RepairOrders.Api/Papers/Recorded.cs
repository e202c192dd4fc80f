using System.Globalization;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;
using static RepairOrders.Api.Papers.JobSheet;

namespace RepairOrders.Api.Papers;

/// <summary>What was recorded at the pipe in this round, as it stands in the boxes of the job sheet; empty boxes stay to be filled in.</summary>
internal sealed class Recorded(OrderFacts facts)
{
    private readonly List<ReleaseHoldPoint> releases =
    [
        .. facts.Order.InRound<HoldPointRelease>().Select(r => r.Asked.Ask),
    ];

    public string Walls => Join(releases.SelectMany(r => r.Walls ?? []).Select(w => $"{w.Spot}: {w.Wall.Entered}"));

    public string WallGauge => Instruments(r => r.Walls is { Count: > 0 });

    public string Diameters =>
        Join(releases.SelectMany(r => r.Diameters ?? []).Select(d => $"{d.Spot}: {d.Diameter.Entered}"));

    public SurfaceRead? Surface => releases.LastOrDefault(r => r.Surface is not null)?.Surface;

    public string Grade =>
        Surface?.Grade switch
        {
            null => "",
            SurfaceGrade.BareMetal => "bare metal",
            SurfaceGrade.Sa2Half => "Sa 2½",
            { } grade => grade.ToString().Insert(2, " "),
        };

    public string Profile => Surface is { } s ? Join(s.ProfileUm.Select(p => Say($"{p:0.#}"))) : "";

    public string Cleaned =>
        facts.Order.InRound<HoldPointRelease>().LastOrDefault(r => r.Asked.Ask.Surface is not null) is { } release
            ? Clock(release.At)
            : "";

    public string Hardness => Join(releases.SelectMany(r => r.ShoreD ?? []).Select(h => $"{h}"));

    public string Durometer => Instruments(r => r.ShoreD is { Count: > 0 });

    public string HardnessAt =>
        facts.Order.InRound<HoldPointRelease>().LastOrDefault(r => r.Asked.Ask.ShoreD is { Count: > 0 }) is { } release
            ? Clock(release.At)
            : "";

    /// <summary>The last two climates read, the older one first.</summary>
    public IReadOnlyList<ClimateReading> Climates => [.. facts.Order.InRound<ClimateReading>().TakeLast(2)];

    public IReadOnlyList<Mix> Mixes => [.. facts.Order.InRound<Mix>()];

    /// <summary>What a fastener was tightened to in a pass; empty where it was not.</summary>
    public string Tightened(int pass, int fastener) =>
        releases.SelectMany(r => r.Tightening ?? []).LastOrDefault(t => t.Pass == pass && t.Fastener == fastener)
            is { } t
            ? Say($"{(t.Torque ?? t.Tension)?.Value:0.#}")
            : "";

    public string Used(Mix mix) => Mix.UsedAt(facts.Order, mix.Id) is { } at ? Clock(at) : "";

    public string CureLog =>
        Join(
            facts
                .Order.InRound<CureReading>()
                .SelectMany(c => c.Asked.Readings.Select(r => Say($"{r.Pipe.Value:0.#}, {Clock(r.At ?? c.At)}")))
                .TakeLast(6),
            " · "
        );

    public string SetFrom =>
        CureClock.Of(facts.Order) is [.., { SetForLoad: true, SetForLoadAt: { } at }] ? facts.Moment(at)[5..] : "";

    /// <summary>Batches issued against a line of the bill, counted from 1.</summary>
    public string Batches(int line) =>
        Join(
            facts
                .Order.InRound<MaterialIssue>()
                .SelectMany(i => i.Asked.Lines)
                .Where(l => l.Line == line)
                .Select(l => l.Number)
                .Distinct()
        );

    public string Clock(DateTimeOffset at) => facts.Moment(at)[11..];

    private string Instruments(Func<ReleaseHoldPoint, bool> which) =>
        Join(releases.Where(which).Select(r => r.Instrument).OfType<string>().Distinct());

    private static string Join(IEnumerable<string> parts, string between = ", ") => string.Join(between, parts);
}
