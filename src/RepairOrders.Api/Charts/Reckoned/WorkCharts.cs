using RepairOrders.Api.Calculations;
using RepairOrders.Api.Drawing;
using RepairOrders.Contract;
using static RepairOrders.Api.Charts.Reckoned.Sweeps;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts.Reckoned;

/// <summary>Charts of what is reckoned of the work itself.</summary>
internal static class WorkCharts
{
    public static IEnumerable<Chart?> Of(CalculateLeakRate ask)
    {
        var asked = Result(ask, LeakRate.Calculate);
        var hole = ask.HoleDiameterMm ?? Math.Sqrt((ask.HoleAreaMm2 ?? 0) * 4 / Math.PI);
        yield return Sweeps.Of(
            "leak-rate",
            "What comes out against the hole",
            "diameter of the hole, mm",
            "mass flow, kg/h",
            Math.Max(1, 2 * hole),
            mm => Result(ask with { HoleDiameterMm = mm, HoleAreaMm2 = null }, LeakRate.Calculate).MassFlowKgH,
            hole,
            new Limit(Say($"{asked.VolumeFlowLMin:0.##} l/min"), asked.MassFlowKgH)
        );
    }

    public static IEnumerable<Chart?> Of(CalculateCure ask)
    {
        var still = ask with { Log = null, Forecast = null, PotLife = null };
        CureTimesResult? Times(double c) => Result(still with { TemperatureC = c }, Cure.Calculate).Times;
        var from = ask.LeastTemperatureC;
        var over = Math.Max(10, Math.Max(ask.ReferenceTemperatureC, ask.TemperatureC ?? 0) + 15 - from);
        List<Spot> By(Func<CureTimesResult, double?> which) =>
            [
                .. Points(over, t => Times(from + t) is { } times ? which(times) : null)
                    .Select(s => new Spot(from + s.X, s.Y)),
            ];
        var (load, hard) = (By(t => t.SetForLoadH), By(t => t.FullHardnessH));
        if (load.Count > 1 && hard.Count > 1)
            yield return Chart(
                "cure-temperature",
                "Hours of cure against temperature",
                "steel, °C",
                [
                    new Panel("to set for load, h", [new("", load, Pen.Outline)], [Here(ask)]),
                    new Panel("to full hardness, h", [new("", hard, Pen.Outline)], [Here(ask) with { Words = "" }]),
                ]
            );
        if (ask.Log is { Count: > 1 } log)
            yield return Logged(ask, [.. log.OrderBy(r => r.At)]);
    }

    private static Limit Here(CalculateCure ask) =>
        new(
            Say(
                $"{(ask.TemperatureC is null ? "reference" : "here")} {Number(ask.TemperatureC ?? ask.ReferenceTemperatureC)} °C"
            ),
            ask.TemperatureC ?? ask.ReferenceTemperatureC,
            Upright: true
        );

    private static Chart Logged(CalculateCure ask, IReadOnlyList<TemperatureAt> log)
    {
        const int most = 60;
        var every = Math.Max(1, (log.Count + most - 1) / most);
        double Hours(TemperatureAt read) => (read.At - log[0].At).TotalHours;
        var worth = Enumerable
            .Range(0, log.Count)
            .Where(i => i > 0 && (i % every == 0 || i == log.Count - 1))
            .Select(i => new Spot(
                Hours(log[i]),
                Result(
                    ask with
                    {
                        Log = [.. log.Take(i + 1)],
                        Forecast = null,
                        PotLife = null,
                    },
                    Cure.Calculate
                ).Progress?.EquivalentTimeH
                    ?? 0
            ));
        return Chart(
            "cure",
            "Cure against the temperature log",
            "hours of the log",
            [
                new Panel(
                    "steel, °C",
                    [
                        new(
                            "steel, as read",
                            [.. log.Select(r => new Spot(Hours(r), r.TemperatureC))],
                            Pen.Outline,
                            Marked: log.Count < 40
                        ),
                    ],
                    [new(Say($"reference {Number(ask.ReferenceTemperatureC)} °C"), ask.ReferenceTemperatureC)]
                )
                {
                    OwnZero = true,
                },
                new Panel(
                    "hours at the reference",
                    [new("cured so far", [new(0, 0), .. worth], Pen.Alarm)],
                    [
                        new(Say($"set for load {Number(ask.SetForLoadH)} h"), ask.SetForLoadH),
                        new(Say($"fully hard {Number(ask.FullHardnessH)} h"), ask.FullHardnessH),
                    ]
                ),
            ]
        );
    }

    public static IEnumerable<Chart?> Of(CalculateSurfaceClimate ask)
    {
        var now = ask with { Forecast = null, WorkH = null };
        yield return Sweeps.Of(
            "dew-point",
            "Dew point against humidity in this air",
            "relative humidity, %",
            "dew point, °C",
            100,
            rh => Result(now with { RelativeHumidityPercent = rh }, SurfaceClimate.Calculate).DewPointTemperatureC,
            ask.RelativeHumidityPercent,
            new Limit(Say($"steel {Number(ask.SteelTemperatureC)}"), ask.SteelTemperatureC)
        );
        if (Result(ask, SurfaceClimate.Calculate).Hours is not { Count: > 1 } hours)
            yield break;
        double After(ClimateHour h) => (h.At - hours[0].At).TotalHours;
        yield return Chart(
            "forecast",
            "Steel and dew point by the forecast",
            Say($"hours after {hours[0].At:yyyy-MM-dd HH:mm} UTC"),
            [
                new Panel(
                    "°C",
                    [
                        new("steel", [.. hours.Select(h => new Spot(After(h), h.SteelTemperatureC))], Pen.Outline),
                        new(
                            "dew point",
                            [.. hours.Select(h => new Spot(After(h), h.DewPointTemperatureC))],
                            Pen.Hidden
                        ),
                        new(
                            "no-go",
                            [.. hours.Where(h => !h.Go).Select(h => new Spot(After(h), h.SteelTemperatureC))],
                            Pen.None,
                            Marked: true
                        ),
                    ],
                    []
                )
                {
                    OwnZero = true,
                },
            ]
        );
    }

    public static IEnumerable<Chart?> Of(CalculateTightening ask)
    {
        var asked = Result(ask, Tightening.Calculate);
        var most = 1.3 * Math.Max(ask.TorqueNm, Math.Max(asked.TorqueLeastNm, asked.TorqueMostNm));
        TighteningResult At(double torque) => Result(ask with { TorqueNm = torque }, Tightening.Calculate);
        yield return Chart(
            "preload",
            "Preload against torque, by the scatter of friction",
            "torque, N m",
            [
                new Panel(
                    "preload, kN",
                    [
                        new("slippery", [new(0, 0), .. Points(most, t => At(t).PreloadHighKn)], Pen.Outline),
                        new("rough", [new(0, 0), .. Points(most, t => At(t).PreloadLowKn)], Pen.Outline),
                    ],
                    [
                        new(Say($"needed {Number(ask.PreloadNeededKn)}"), ask.PreloadNeededKn),
                        new(Say($"allowed {Number(ask.PreloadAllowedKn)}"), ask.PreloadAllowedKn),
                        new(Say($"here {Number(ask.TorqueNm)} N m"), ask.TorqueNm, Upright: true),
                    ]
                ),
            ]
        );
    }

    public static IEnumerable<Chart?> Of(CalculatePressureTest ask)
    {
        var test = Result(ask, PressureTest.Calculate);
        if (test.Steps.Count == 0)
            yield break;
        List<Spot> stairs = [new(0, 0)];
        var minutes = 0.0;
        foreach (var step in test.Steps)
        {
            stairs.Add(new(minutes, step.PressureBar));
            minutes += step.HoldTimeMin;
            stairs.Add(new(minutes, step.PressureBar));
        }
        yield return Chart(
            "test-steps",
            "The test, step by step",
            "minutes held",
            [
                new Panel(
                    "gauge pressure, bar",
                    [new("", stairs, Pen.Outline)],
                    [
                        new(Say($"design {Number(ask.DesignPressureBar)}"), ask.DesignPressureBar),
                        new(Say($"never above {Number(test.CapBar)}"), test.CapBar),
                    ]
                ),
            ]
        );
    }

    public static IEnumerable<Chart?> Of(CalculateCutPlan ask)
    {
        var plan = Result(ask, CutPlan.Calculate);
        if (plan.Cuts.Count == 0)
            yield break;
        const double left = 22,
            wide = Graph.Width - left,
            high = 8;
        var board = new Board();
        var longest = plan.Cuts.Max(c => c.LengthMm);
        board.Text(0, 4.2, "Cuts, to scale", bold: true, size: 3.7);
        var y = 9.0;
        foreach (var cut in plan.Cuts.Take(60))
        {
            board.Text(left - 2, y + 5, cut.Stock, Align.Right, 3.1, ink: Pen.Quiet);
            var x = left;
            foreach (var piece in cut.Pieces)
            {
                var to = x + piece.LengthMm / longest * wide;
                board.Put(Trace.Box(x, y, to, y + high - 2), Pen.Outline, Fill.Scale5);
                var words = Say($"{piece.Band} {Number(piece.LengthMm)}");
                if (TextWidth.Of(words, 3.1) < to - x - 1)
                    board.Text((x + to) / 2, y + 4.1, words, Align.Middle, 3.1);
                x = to;
            }
            board.Put(Trace.Box(x, y, left + cut.LengthMm / longest * wide, y + high - 2), Pen.Hidden);
            y += high;
        }
        yield return new(
            "cuts",
            "Cuts, to scale",
            ["stock", "length, mm", "pieces", "left, mm"],
            [
                .. plan.Cuts.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            c.Stock,
                            Charts.Chart.Number(c.LengthMm),
                            string.Join(" + ", c.Pieces.Select(p => Say($"{p.Band} {Number(p.LengthMm)}"))),
                            Charts.Chart.Number(c.LeftMm),
                        ]
                ),
            ],
            new("cuts", "Cuts, to scale.", Graph.Width, y + 1, board.Marks)
        );
    }
}
