using System.Globalization;
using CsvHelper;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using Sf = RepairOrders.Engineering.Strength.PipelineMetalLoss;

namespace RepairOrders.Engineering.Tests.Strength;

// A smoke test only: seventeen burst tests recalled from the literature, their tables not seen. With measured strengths the
// methods must land where they are known to land; no single row is a check of a formula.
public sealed class BurstTests
{
    private sealed record Row(double D, double t, double d, double L, double Yield, double Tensile, double Burst);

    private static readonly List<Row> Rows = [.. Read()];

    [Fact]
    public void Original_b31g_predicts_on_the_safe_side_of_every_test()
    {
        var ratios = Ratios(r =>
            Burst(r, Sf.FailureStressOriginal(Mm(r.D), Mm(r.t), Mm(r.d), Mm(r.L), Mpa(1.1 * r.Yield)))
        );
        ratios.Max().ShouldBeLessThan(1);
        ratios.Average().ShouldBe(0.770, 0.0005);
    }

    [Fact]
    public void Modified_b31g_is_near_one_and_over_predicts_long_flat_patches()
    {
        var ratios = Ratios(r =>
            Burst(r, Sf.FailureStressModified(Mm(r.D), Mm(r.t), Mm(r.d), Mm(r.L), Mpa(r.Yield + 69)))
        );
        ratios.Average().ShouldBe(0.993, 0.0005);
        ratios.Max().ShouldBe(1.20, 0.005);
    }

    [Fact]
    public void The_corroded_pipe_method_is_the_closest_and_hardly_over_predicts()
    {
        var ratios = Ratios(r =>
            CorrodedPipeSingleDefect.FailurePressure(Mm(r.D), Mm(r.t), Mm(r.d), Mm(r.L), Mpa(r.Tensile)).Megapascals
        );
        ratios.Average().ShouldBe(0.924, 0.0005);
        ratios.Max().ShouldBeLessThan(1.01);
    }

    [Fact]
    public void The_effective_area_of_the_long_rectangles_is_on_the_safe_side()
    {
        var patches = Rows.Where(r => r.D == 323.9).ToList();
        patches.Count.ShouldBe(9);
        foreach (var r in patches)
        {
            var predicted = EffectiveArea
                .FailurePressure([0, r.L], [r.d, r.d], Mm(r.D), Mm(r.t), Mpa(r.Yield + 69))
                .Megapascals;
            (predicted / r.Burst).ShouldBeInRange(0.755, 0.895);
        }
    }

    private static List<double> Ratios(Func<Row, double> predicted) => [.. Rows.Select(r => predicted(r) / r.Burst)];

    private static double Burst(Row r, Pressure stress) => Mawp.Barlow(Mm(r.D), Mm(r.t), stress).Megapascals;

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static Pressure Mpa(double value) => Pressure.FromMegapascals(value);

    private static IEnumerable<Row> Read()
    {
        using var text = new StreamReader(Path.Combine(AppContext.BaseDirectory, "Published", "burst-tests.csv"));
        using var csv = new CsvReader(text, CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        while (csv.Read())
        {
            double Cell(string name) => csv.GetField<double>(name);
            yield return new(
                Cell("D_mm"),
                Cell("t_mm"),
                Cell("d_mm"),
                Cell("L_mm"),
                Cell("sy_MPa"),
                Cell("su_MPa"),
                Cell("burst_MPa")
            );
        }
    }
}
