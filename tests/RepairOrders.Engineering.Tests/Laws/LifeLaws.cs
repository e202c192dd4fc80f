using CsCheck;
using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.Testing;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Laws;

public sealed class LifeLaws
{
    private static readonly Gen<double> Wall = Gen.Double[0.5, 20];
    private static readonly Gen<double> MmPerYear = Gen.Double[0.01, 3];
    private static readonly Gen<double> Share = Gen.Double[0, 1];
    private static readonly DateTimeOffset Start = new(2027, 1, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_thicker_wall_never_lives_shorter_and_a_faster_rate_never_longer() =>
        Gen.Select(Wall, Wall, Wall, MmPerYear, MmPerYear)
            .Sample(
                (a, b, required, slow, more) =>
                {
                    var (thin, thick) = (Math.Min(a, b), Math.Max(a, b));
                    Life(thin, required, slow).ShouldBeLessThanOrEqualTo(Life(thick, required, slow));
                    Life(thick, required, slow + more).ShouldBeLessThanOrEqualTo(Life(thick, required, slow));
                }
            );

    [Fact]
    public void The_governing_rate_is_never_below_any_measured_one_nor_the_floor() =>
        Gen.Select(Gen.Double[3, 8], Gen.Double[3, 8], Gen.Double[3, 8], Gen.Int[100, 3000], Gen.Int[100, 3000])
            .Sample(
                (first, middle, last, days, more) =>
                {
                    var day = new DateOnly(2010, 1, 1);
                    var rates = CorrosionRate
                        .Assess(
                            new(
                                [
                                    new(day, Mm(first), "A", "probe"),
                                    new(day.AddDays(days), Mm(middle), "A", "probe"),
                                    new(day.AddDays(days + more), Mm(last), "A", "probe"),
                                ],
                                Mm(7.11),
                                day,
                                Pitting: false,
                                ThroughWall: false
                            )
                        )
                        .Result;
                    var governing = rates.Governing!.Value.MillimetresPerYear();
                    governing.ShouldBeGreaterThanOrEqualTo(0.05 - 1e-12);
                    governing.ShouldBeGreaterThanOrEqualTo((rates.LongTerm ?? Speed.Zero).MillimetresPerYear() - 1e-12);
                    governing.ShouldBeGreaterThanOrEqualTo(
                        (rates.ShortTerm ?? Speed.Zero).MillimetresPerYear() - 1e-12
                    );
                }
            );

    [Fact]
    public void Due_dates_lie_on_one_grid_whenever_looks_are_done() =>
        Gen.Select(Gen.Int[2, 60], Gen.Int[2, 90], Gen.Double[0, 700].Array[0, 12], Gen.Double[0, 700])
            .Sample(
                (first, interval, visits, now) =>
                {
                    var state = LookSeries.At(
                        Start,
                        TimeSpan.FromDays(first),
                        [new(Start, TimeSpan.FromDays(interval), TimeSpan.FromDays(1))],
                        [.. visits.Select(v => Start + TimeSpan.FromDays(v))],
                        Start + TimeSpan.FromDays(now)
                    );
                    ((state.NextDue - Start).TotalDays - first).ShouldBe(
                        Math.Round(((state.NextDue - Start).TotalDays - first) / interval) * interval,
                        1e-9
                    );
                    (state.LastSettled ?? DateTimeOffset.MinValue).ShouldBeLessThan(state.NextDue);
                    state.Overdue.ShouldBe(state.MissedNow > 0);
                }
            );

    [Fact]
    public void Another_term_never_moves_the_end_out() =>
        Gen.Select(Gen.Int[1, 900], Gen.Double[0, 4000], Gen.Double[0, 4000], Gen.Int[1, 900])
            .Sample(
                (cap, design, life, shutdown) =>
                {
                    var start = new DateOnly(2027, 3, 1);
                    var bare = new EndDateAsk(start, start.AddDays(cap), null, null, null, null, null, null);
                    var full = bare with
                    {
                        DesignLife = Duration.FromDays(design),
                        RemainingLife = Duration.FromDays(life),
                        NextShutdown = start.AddDays(shutdown),
                    };
                    var end = EndDate.Earliest(full).Result;
                    end.On.ShouldBeLessThanOrEqualTo(EndDate.Earliest(bare).Result.On);
                    end.Terms.ShouldAllBe(t => t.On >= end.On);
                    (end.On.DayNumber - start.DayNumber).ShouldBe(
                        Math.Min(Math.Min(cap, shutdown), Math.Min((int)design, (int)(life / 2)))
                    );
                }
            );

    [Fact]
    public void Odds_never_fall_with_time_nor_rise_with_wall() =>
        Gen.Select(Gen.Double[2, 7], Gen.Double[0, 2], Gen.Double[0.05, 0.5], Gen.Int[1, 4000], Gen.Int[0, 4000])
            .Sample(
                (wall, thicker, spread, days, later) =>
                {
                    var ask = Thinned(wall, spread, days);
                    var now = Outliving.Before(ask).Result;
                    Outliving
                        .Before(ask with { By = ask.By.AddDays(later) })
                        .Result.Either.ShouldBeGreaterThanOrEqualTo(now.Either);
                    Outliving
                        .Before(ask with { Wall = Mm(wall + thicker) })
                        .Result.Either.ShouldBeLessThanOrEqualTo(now.Either);
                },
                iter: 40
            );

    // The kernel of the sampling is the strength method solved for the wall: put back, the method must give the stress again.
    [Fact]
    public void The_wall_sampled_for_is_the_one_of_the_strength_method() =>
        Gen.Select(Gen.Double[60, 1200], Gen.Double[0.01, 0.08], Gen.Double[0.1, 60], Gen.Double[0.05, 0.99])
            .Sample(
                (D, slenderness, rootZ, share) =>
                {
                    var t = D * slenderness;
                    var L = Math.Min(rootZ, 12) * Math.Sqrt(D * t);
                    var stress = share * 309;
                    var pressure = stress * 2 * t / D;
                    var need = new StrengthNeed(Mm(D), Mm(t), Mm(L), Mm(0), Mpa(309), Mpa(pressure), Mpa(0), 1);
                    var wall = new OutlivingModel(Thinned(5, 0.1, 100) with { Strength = need }).StrengthWall(
                        new(0.0),
                        new(0.0)
                    )[0];
                    var depth = t - wall;
                    depth.ShouldBeInRange(0, 0.8 * t * (1 + 1e-12));
                    var held = PipelineMetalLoss
                        .FailureStressModified(Mm(D), Mm(t), Mm(Math.Min(depth, t)), Mm(L), Mpa(309))
                        .Megapascals;
                    if (depth < 0.8 * t * (1 - 1e-9))
                    {
                        held.ShouldBe(stress, 1e-6 * 309);
                    }
                    else
                    {
                        held.ShouldBeGreaterThanOrEqualTo(stress * (1 - 1e-9));
                    }
                }
            );

    [Fact]
    public void A_deeper_or_wider_loss_never_bears_more_and_never_more_than_sound_pipe() =>
        Gen.Select(Gen.Double[30, 1200], Share, Share, Share, Share)
            .Sample(
                (D, a, b, round, wider) =>
                {
                    var t = D / 20;
                    var girth = Math.PI * D;
                    var (less, more) = (Math.Min(a, b) * t, Math.Max(a, b) * t);
                    var c = round * girth;
                    var wide = c + wider * (girth - c);
                    Capacity(D, t, less, c).ShouldBeLessThanOrEqualTo(Capacity(D, t, more, c) * (1 + 1e-12));
                    Capacity(D, t, less, wide).ShouldBeLessThanOrEqualTo(Capacity(D, t, less, c) * (1 + 1e-9) + 1e-3);
                    Capacity(D, t, more, c).ShouldBeLessThanOrEqualTo(Capacity(D, t, t, 0) * (1 + 1e-12));
                }
            );

    [Fact]
    public void More_pressure_never_makes_the_critical_length_longer_nor_a_thicker_wall_shorter() =>
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[0, 10], Gen.Double[2, 15], Gen.Double[0, 10])
            .Sample(
                (pressure, more, wall, thicker) =>
                {
                    var length = Critical(pressure, wall);
                    Critical(pressure + more, wall).ShouldBeLessThanOrEqualTo(length * (1 + 1e-12));
                    Critical(pressure, wall + thicker).ShouldBeGreaterThanOrEqualTo(length * (1 - 1e-12));
                }
            );

    [Fact]
    public void A_test_is_never_above_its_cap_and_the_stages_never_above_the_test() =>
        Gen.Select(
                Gen.Enum<TestKind>(),
                Gen.Double[0.5, 100],
                Gen.Double[0, 100],
                Gen.Double[0, 8],
                Gen.Double[0, 100],
                Gen.Double[0.1, 50]
            )
            .Sample(
                (kind, design, operating, wall, rating, volume) =>
                {
                    var test = PressureTest
                        .Plan(
                            new(
                                kind,
                                Pressure.FromBars(design),
                                Pressure.FromBars(operating),
                                Mpa(138),
                                Mpa(120),
                                Mm(168.3),
                                Mm(wall),
                                Mpa(240),
                                null,
                                Pressure.FromBars(rating),
                                null,
                                ServiceCategory.D,
                                GasInside: false,
                                Volume.FromCubicMeters(volume)
                            )
                        )
                        .Result;
                    test.Pressure.Bars.ShouldBeLessThanOrEqualTo(test.Cap.Pressure.Bars * (1 + 1e-12));
                    test.Steps.ShouldAllBe(s => s.Pressure.Bars <= test.Pressure.Bars * (1 + 1e-12));
                    test.ServicePressureOnly.ShouldBe(test.CodePressure.Bars > test.Cap.Pressure.Bars);
                }
            );

    [Fact]
    public void Out_of_round_pipe_never_bears_more_from_outside() =>
        Gen.Select(Gen.Double[0.2, 8], Gen.Double[0, 0.05], Gen.Double[0, 0.05])
            .Sample(
                (wall, oval, more) =>
                {
                    Outside(wall, oval + more).ShouldBeLessThanOrEqualTo(Outside(wall, oval) * (1 + 1e-12));
                    Outside(wall, oval).ShouldBeLessThanOrEqualTo(Outside(wall * 1.1, oval));
                }
            );

    private static OutlivingAsk Thinned(double wall, double spread, int days) =>
        new(
            new(2026, 1, 1),
            new DateOnly(2026, 1, 1).AddDays(days),
            Mm(wall),
            Mm(spread),
            CorrosionRate.FromMillimetresPerYear(0.3),
            CorrosionRate.FromMillimetresPerYear(0.1),
            Mm(3),
            new(Mm(168.3), Mm(7.11), Mm(100), Mm(10), Mpa(309), Mpa(8), Mpa(0.6), 1.5),
            0.01,
            Samples: 2_000
        );

    private static double Life(double wall, double required, double rate) =>
        RemainingLife.Of(Mm(wall), Mm(required), CorrosionRate.FromMillimetresPerYear(rate))!.Value.Days;

    private static double Capacity(double D, double t, double left, double round) =>
        EndLoad.Capacity(Mm(D), Mm(t), Mm(left), Mm(round), Mpa(138)).Newtons;

    private static double Critical(double pressure, double wall) =>
        CriticalLength.Of(Mpa(pressure), Mm(323.8), Mm(wall), Mpa(309))!.Value.Millimeters;

    private static double Outside(double wall, double ovality) =>
        Crushing
            .Check(new(Mm(168.3), Mm(wall), MetalFamily.CarbonSteel, Mpa(240), null, ovality, Mpa(0.1), Pressure.Zero))
            .Result.Allowed.Megapascals;

    private static Length Mm(double mm) => Length.FromMillimeters(mm);

    private static Pressure Mpa(double mpa) => Pressure.FromMegapascals(mpa);
}
