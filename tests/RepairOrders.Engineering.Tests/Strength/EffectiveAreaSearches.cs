using CsCheck;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Strength;

public sealed class EffectiveAreaSearches
{
    private static readonly double[] X = [0, 28.9, 57.8, 86.7, 115.6, 144.5, 173.4, 202.3, 231.2, 260.1, 289.0];
    private static readonly double[] Depths = [0, 1, 1.1, 1.1, 1.1, 1.3, 1.8, 2.8, 2.8, 1.6, 0];

    // Profile recalled from the complex-shaped defect example of DNV-RP-F101; the answer is computed by the plain loop.
    [Fact]
    public void The_weakest_stretch_of_the_worked_example_is_found()
    {
        var weakest = EffectiveArea.Weakest(X, Depths, Mm(611), Mm(8.2));
        (weakest.From, weakest.To).ShouldBe((1, 9));
        weakest.LengthMm.ShouldBe(231.2, 1e-9);
        weakest.StrengthRatio.ShouldBe(0.86188, 0.000005);
    }

    [Fact]
    public void The_fast_search_answers_as_the_plain_loop_to_the_last_bit() =>
        Profiles.Sample(
            p => EffectiveArea.Weakest(p.X, p.D, Mm(p.OD), Mm(p.t)) == PlainEffectiveArea.Weakest(p.X, p.D, p.OD, p.t),
            iter: 2000
        );

    // Where every stretch is as weak as its neighbour the first of equals must win, as in the plain loop.
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(64)]
    [InlineData(333)]
    public void A_flat_profile_answers_as_the_plain_loop(int points)
    {
        var x = Enumerable.Range(0, points).Select(i => i * 7.0).ToArray();
        foreach (var depth in new[] { 0.0, 0.5, 4, 7.6 })
        {
            var d = Enumerable.Repeat(depth, points).ToArray();
            EffectiveArea.Weakest(x, d, Mm(508), Mm(9.53)).ShouldBe(PlainEffectiveArea.Weakest(x, d, 508, 9.53));
        }
    }

    [Fact]
    public void A_profile_far_from_its_zero_answers_as_the_plain_loop()
    {
        var x = Enumerable.Range(0, 400).Select(i => 1e8 + (i * 3.7)).ToArray();
        var d = Enumerable.Range(0, 400).Select(i => 2 + (2 * Math.Sin(i / 9.0))).ToArray();
        EffectiveArea.Weakest(x, d, Mm(219.1), Mm(8.18)).ShouldBe(PlainEffectiveArea.Weakest(x, d, 219.1, 8.18));
    }

    [Fact]
    public void Points_a_hair_apart_in_a_long_profile_answer_as_the_plain_loop()
    {
        var x = Enumerable.Range(0, 300).Select(i => i % 2 == 0 ? i * 5000.0 : ((i - 1) * 5000.0) + 1e-6).ToArray();
        var d = Enumerable.Range(0, 300).Select(i => 1 + (i * 7 % 5)).Select(v => (double)v).ToArray();
        EffectiveArea.Weakest(x, d, Mm(219.1), Mm(8.18)).ShouldBe(PlainEffectiveArea.Weakest(x, d, 219.1, 8.18));
    }

    [Theory]
    [InlineData(50)]
    [InlineData(1000)]
    public void The_search_allocates_nothing(int points)
    {
        var x = Enumerable.Range(0, points).Select(i => i * 5.0).ToArray();
        var d = Enumerable.Range(0, points).Select(i => 2 + Math.Sin(i / 5.0)).ToArray();
        EffectiveArea.Weakest(x, d, Mm(508), Mm(9.53));
        var before = GC.GetAllocatedBytesForCurrentThread();
        EffectiveArea.Weakest(x, d, Mm(508), Mm(9.53));
        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBe(0);
    }

    [Theory]
    [InlineData(new[] { 0.0, 2, 1 }, new[] { 0.0, 1, 0 }, "positionsMm[2]")]
    [InlineData(new[] { 0.0, 1, 1 }, new[] { 0.0, 1, 0 }, "positionsMm[2]")]
    [InlineData(new[] { 0.0, double.NaN, 2 }, new[] { 0.0, 1, 0 }, "positionsMm[1]")]
    [InlineData(new[] { 0.0, 1, 2 }, new[] { 0.0, -1, 0 }, "depthsMm[1]")]
    [InlineData(new[] { 0.0, 1, 2 }, new[] { 0.0, 10.1, 0 }, "depthsMm[1]")]
    [InlineData(new[] { 0.0, 1, 2 }, new[] { 0.0, double.NaN, 0 }, "depthsMm[1]")]
    [InlineData(new[] { 0.0 }, new[] { 0.0 }, "positionsMm")]
    [InlineData(new[] { 0.0, 1 }, new[] { 0.0 }, "positionsMm")]
    public void A_profile_no_wall_can_have_is_refused_by_name(double[] x, double[] d, string field) =>
        Should
            .Throw<ImpossibleInputException>(() => EffectiveArea.Weakest(x, d, Mm(500), Mm(10)))
            .Field.ShouldBe(field);

    [Fact]
    public void Readings_at_one_position_are_merged_into_the_deepest()
    {
        var profile = RiverBottom.Of([
            new(Mm(0), Mm(0)),
            new(Mm(5), Mm(1)),
            new(Mm(5), Mm(3)),
            new(Mm(5), Mm(2)),
            new(Mm(9), Mm(0)),
        ]);
        profile.PositionsMm.ToArray().ShouldBe([0.0, 5, 9]);
        profile.DepthsMm.ToArray().ShouldBe([0.0, 3, 0]);
    }

    // Short and long, even and uneven, shallow and deep, so that both branches of M and all vector ends are met.
    internal static readonly Gen<(double[] X, double[] D, double OD, double t)> Profiles =
        from n in Gen.Int[2, 150]
        from OD in Gen.Double[30, 1400]
        from t in Gen.Double[2, 14]
        from spacing in Gen.Double[0.5, 60]
        from steps in Gen.Double[0.05, 1].Array[n]
        from depths in Gen.Double[0, 0.8].Array[n]
        from rough in Gen.Double[0, 1]
        select Make(steps, depths, OD, t, spacing, rough);

    private static (double[] X, double[] D, double OD, double t) Make(
        double[] steps,
        double[] depths,
        double OD,
        double t,
        double spacing,
        double rough
    )
    {
        var (x, d) = (new double[steps.Length], new double[steps.Length]);
        for (var i = 0; i < x.Length; i++)
        {
            x[i] = i == 0 ? 0 : x[i - 1] + (spacing * steps[i]);
            var smooth = 0.4 * (1 + Math.Sin(i / 6.0));
            d[i] = t * ((rough * depths[i]) + ((1 - rough) * smooth));
        }
        return (x, d, OD, Math.Min(t, 0.45 * OD));
    }

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
