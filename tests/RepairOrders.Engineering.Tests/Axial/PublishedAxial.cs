using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.Tests.Life;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Axial;

public sealed class PublishedAxial
{
    public static TheoryData<string> Rows =>
        LifeAndLoads.Ids(
            "hoop_thin",
            "long_thin",
            "hoop_lame_id",
            "long_pressure",
            "thrust",
            "axial_wall",
            "expansion",
            "thermal_stress",
            "mismatch_force",
            "bore_mismatch"
        );

    [Theory, MemberData(nameof(Rows))]
    public void As_published(string id)
    {
        var row = LifeAndLoads.Row(id);
        row.ShouldBe(Computed(row));
    }

    private static double Computed(LifeAndLoads row) =>
        row.Function switch
        {
            "hoop_thin" => Mawp.HoopStress(Mpa(row["P"]), Mm(row["D"]), Mm(row["t"])).Megapascals,
            "long_thin" => PipeStress.Longitudinal(Mpa(row["P"]), Mm(row["D"]), Mm(row["t"])).Megapascals,
            "hoop_lame_id" => PipeStress.HoopInside(Mpa(row["P"]), Mm(row["Do"]), Mm(row["Di"])).Megapascals,
            "long_pressure" => PipeStress
                .LongitudinalCombined(Mpa(row["P"]), Mm(row["Do"]), Mm(row["Di"]), Torque.Zero, Force.Zero)
                .Megapascals,
            "thrust" => EndLoad.Thrust(Mpa(row["P"]), Mm(row["Dseal"])).Newtons,
            "axial_wall" => EndLoad.WallNeeded(Force.FromNewtons(row["F"]), Mm(row["Dm"]), Mpa(row["S"])).Millimeters,
            "expansion" => Expansion.Free(Alpha(row["alpha"]), Mm(row["L"]), Kelvins(row["dT"])).Millimeters,
            "thermal_stress" => Expansion
                .RestrainedStress(Mpa(row["E"]), Alpha(row["alpha"]), Kelvins(row["dT"]))
                .Megapascals,
            "mismatch_force" => Expansion
                .Mismatch(
                    Alpha(row["a1"]),
                    Area.FromSquareMillimeters(row["A1"]),
                    Mpa(row["E1"]),
                    Alpha(row["a2"]),
                    Area.FromSquareMillimeters(row["A2"]),
                    Mpa(row["E2"]),
                    Kelvins(row["dT"])
                )
                .Newtons,
            "bore_mismatch" => Expansion
                .BoreGap(Alpha(row["a1"]), Alpha(row["a2"]), Mm(row["D"]), Kelvins(row["dT"]))
                .Millimeters,
            _ => throw new InvalidOperationException(row.Function),
        };

    private static Length Mm(double mm) => Length.FromMillimeters(mm);

    private static Pressure Mpa(double mpa) => Pressure.FromMegapascals(mpa);

    private static TemperatureDelta Kelvins(double kelvins) => TemperatureDelta.FromKelvins(kelvins);

    private static CoefficientOfThermalExpansion Alpha(double perKelvin) =>
        CoefficientOfThermalExpansion.FromPerKelvin(perKelvin);
}
