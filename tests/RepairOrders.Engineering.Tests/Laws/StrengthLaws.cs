using CsCheck;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.Tests.Strength;
using UnitsNet;
using static RepairOrders.Engineering.Tests.Strength.ACase;
using Sf = RepairOrders.Engineering.Strength.PipelineMetalLoss;

namespace RepairOrders.Engineering.Tests.Laws;

public sealed class StrengthLaws
{
    private const double Hair = 1 + 1e-9;

    private static readonly Gen<(double D, double t, double r, double L, double more)> Loss =
        from D in Gen.Double[30, 1500]
        from thin in Gen.Double[0.005, 0.15]
        from r in Gen.Double[0, 0.8]
        from L in Gen.Double[0, 3000]
        from more in Gen.Double[1, 1.5]
        select (D, D * thin, r, L, more);

    [Fact]
    public void More_pressure_never_needs_less_wall_and_the_wall_it_needs_holds_it() =>
        Loss.Sample(x =>
        {
            var P = 0.2 + x.r * 20;
            var t = RequiredWall.B313(Mpa(P), Mm(x.D), Mpa(137.9), 1, 1, 0.4);
            var more = RequiredWall.B313(Mpa(P * x.more), Mm(x.D), Mpa(137.9), 1, 1, 0.4);
            return more >= t && Math.Abs(Mawp.B313(Mm(x.D), t, Mpa(137.9), 1, 1, 0.4).Megapascals / P - 1) < 1e-12;
        });

    [Fact]
    public void A_thicker_wall_never_holds_less() =>
        Loss.Sample(x =>
        {
            var (thin, thick) = (Mm(x.t), Mm(x.t * x.more));
            return Mawp.B313(Mm(x.D), thick, Mpa(137.9), 1, 1, 0.4) >= Mawp.B313(Mm(x.D), thin, Mpa(137.9), 1, 1, 0.4);
        });

    [Fact]
    public void A_thicker_wall_with_the_same_loss_never_fails_sooner() =>
        Every(x =>
        {
            var d = x.r * x.t;
            return Failures(x.D, x.t * x.more, d, x.L)
                .Zip(Failures(x.D, x.t, d, x.L))
                .All(p => p.First * Hair >= p.Second);
        });

    [Fact]
    public void A_longer_loss_never_fails_later() =>
        Every(x =>
            Failures(x.D, x.t, x.r * x.t, x.L * x.more)
                .Zip(Failures(x.D, x.t, x.r * x.t, x.L))
                .All(p => p.First <= p.Second * Hair)
        );

    [Fact]
    public void A_deeper_loss_never_fails_later() =>
        Every(x =>
            Failures(x.D, x.t, x.r * x.t, x.L)
                .Zip(Failures(x.D, x.t, x.r / x.more * x.t, x.L))
                .All(p => p.First <= p.Second * Hair)
        );

    [Fact]
    public void No_loss_leaves_the_whole_strength()
    {
        Loss.Sample(x =>
        {
            var whole = 2 * 400 * x.t / x.D;
            return Failures(x.D, x.t, 0, x.L).Take(2).All(p => Math.Abs(p / whole - 1) < 1e-12);
        });
    }

    [Fact]
    public void A_longer_or_thinner_area_never_has_the_greater_strength_factor() =>
        Loss.Sample(x =>
        {
            var (Rt, l) = (1 - x.r, x.L / 100);
            var RSF = LocalThinArea.RemainingStrengthFactor(Rt, l);
            return LocalThinArea.RemainingStrengthFactor(Rt, l * x.more) <= RSF * Hair
                && LocalThinArea.RemainingStrengthFactor(Rt / x.more, l) <= RSF * Hair
                && RSF <= 1 + 1e-12
                && RSF >= Rt - 1e-12;
        });

    [Fact]
    public void The_effective_area_lies_between_the_deepest_and_the_shallowest_rectangle() =>
        EffectiveAreaSearches.Profiles.Sample(
            p =>
            {
                var (whole, deepest, shallowest) = (p.X[^1] - p.X[0], p.D.Max(), p.D.Min());
                var found = EffectiveArea.Weakest(p.X, p.D, Mm(p.OD), Mm(p.t)).StrengthRatio;
                return found * Hair >= Rectangle(whole, deepest, p) && found <= Rectangle(whole, shallowest, p) * Hair;
            },
            iter: 2000
        );

    [Fact]
    public void A_deeper_profile_is_never_the_stronger_one() =>
        Gen.Select(EffectiveAreaSearches.Profiles, Gen.Double[0, 1])
            .Sample(
                (p, share) =>
                {
                    double[] deeper = [.. p.D.Select((d, i) => i % 3 == 0 ? Math.Min(p.t, d + share * (p.t - d)) : d)];
                    var before = EffectiveArea.Weakest(p.X, p.D, Mm(p.OD), Mm(p.t)).StrengthRatio;
                    return EffectiveArea.Weakest(p.X, deeper, Mm(p.OD), Mm(p.t)).StrengthRatio <= before * Hair;
                },
                iter: 1000
            );

    [Fact]
    public void What_is_credited_is_never_above_what_counts_nor_the_maop() =>
        Any.Sample(
            c =>
            {
                var result = RemainingStrength.Compare(c).Result;
                return result.SafePressure is not { } safe
                    || (
                        result
                            .Answers.Where(a => a.Standing is AnswerStanding.Counts or AnswerStanding.Governs)
                            .All(a => safe.Megapascals <= a.Answer.SafePressure!.Value.Megapascals)
                        && result.PressureLimit!.Value.Megapascals <= c.Maop.Megapascals
                    );
            },
            iter: 500
        );

    [Fact]
    public void A_deeper_or_longer_loss_is_never_credited_with_more() =>
        Gen.Select(Any, Gen.Double[1, 1.4])
            .Sample(
                (c, more) =>
                {
                    var deeper = c with
                    {
                        Loss = c.Loss with
                        {
                            Depth = Mm(
                                Math.Min(0.84 * c.Pipe.NominalWall.Millimeters, c.Loss.Depth.Millimeters * more)
                            ),
                        },
                    };
                    var longer = c with { Loss = c.Loss with { AxialLength = c.Loss.AxialLength * more } };
                    return (deeper.Loss.Depth < c.Loss.Depth || Credited(deeper) <= Credited(c) * Hair)
                        && Credited(longer) <= Credited(c) * Hair;
                },
                iter: 1500
            );

    // Of a profile that counts: one that misses the deepest place is judged as a rectangle, so making it deep enough to count
    // is better knowledge and no deeper loss.
    [Fact]
    public void A_deeper_profile_is_never_credited_with_more() =>
        Gen.Select(Any, Gen.Double[0, 0.3], Gen.Int[0, 200])
            .Sample(
                (c, share, place) =>
                {
                    if (c.Loss.Profile is not { } profile)
                    {
                        return true;
                    }
                    c = c with { Loss = c.Loss with { Depth = profile.Deepest, AxialLength = profile.Span } };
                    var (t, depths) = (c.Pipe.NominalWall.Millimeters, profile.DepthsMm.ToArray());
                    ref var deeper = ref depths[place % depths.Length];
                    deeper = Math.Min(t, deeper + share * t);
                    var more = c with { Loss = c.Loss with { Profile = RiverBottom.Of(profile.PositionsMm, depths) } };
                    return Credited(more) <= Credited(c) * Hair;
                },
                iter: 1500
            );

    [Fact]
    public void The_units_put_in_do_not_change_what_comes_out() =>
        Loss.Sample(x =>
        {
            var metric = Sf.FailureStressModified(Mm(x.D), Mm(x.t), Mm(x.r * x.t), Mm(x.L), Mpa(429));
            var customary = Sf.FailureStressModified(
                Length.FromInches(x.D / 25.4),
                Length.FromInches(x.t / 25.4),
                Length.FromInches(x.r * x.t / 25.4),
                Length.FromInches(x.L / 25.4),
                Pressure.FromPoundsForcePerSquareInch(429 / 0.006894757293168361)
            );
            return Math.Abs(customary.Megapascals / metric.Megapascals - 1) < 1e-9;
        });

    private static void Every(Func<(double D, double t, double r, double L, double more), bool> law) =>
        Loss.Sample(law, iter: 5000);

    private static double Credited(StrengthCase c) => RemainingStrength.Screen(c).SafePressure?.Megapascals ?? 0;

    private static double Rectangle(double whole, double depth, (double[] X, double[] D, double OD, double t) p) =>
        EffectiveArea.Weakest([0, whole], [depth, depth], Mm(p.OD), Mm(p.t)).StrengthRatio;

    // Failure pressures by original and modified ASME B31G and by DNV-RP-F101.
    private static double[] Failures(double D, double t, double d, double L)
    {
        var (od, wall, depth, length) = (Mm(D), Mm(Math.Min(t, 0.49 * D)), Mm(d), Mm(L));
        return
        [
            Mawp.Barlow(od, wall, Sf.FailureStressOriginal(od, wall, depth, length, Mpa(400))).Megapascals,
            Mawp.Barlow(od, wall, Sf.FailureStressModified(od, wall, depth, length, Mpa(400))).Megapascals,
            CorrodedPipeSingleDefect.FailurePressure(od, wall, depth, length, Mpa(500)).Megapascals,
        ];
    }
}
