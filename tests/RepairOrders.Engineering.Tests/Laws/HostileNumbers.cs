using CsCheck;
using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Testing;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Laws;

// Whatever number is put in: an answer whose every figure is finite, or an error that names the field. What is not finite, or
// so near the end of a double that a change of unit overflows, the quantities refuse themselves before it comes this far.
public sealed class HostileNumbers
{
    private static readonly double[] Hard = [0, -0.0, 1e-300, -1e-300, 1e300, -1e300, double.Epsilon, 1, -1];

    private static readonly Gen<double> Any = Gen.OneOf(
        Gen.Int[0, Hard.Length - 1].Select(i => Hard[i]),
        Gen.Double[0, 10],
        Gen.Double[0, 500],
        Gen.Double[-1e6, 1e6]
    );

    private static readonly Gen<double[]> Numbers = Any.Array[24];

    [Fact]
    public void Axial_load() =>
        Answers(n =>
            AxialLoad.Check(
                new(
                    PipeOf(n),
                    DefectOf(n),
                    Pressure.FromBars(n[8]),
                    Pressure.FromBars(n[9]),
                    Mm(n[10]),
                    Force.FromKilonewtons(n[11]),
                    Torque.FromNewtonMeters(n[12]),
                    n[13] > 1,
                    n[14] > 1,
                    n[15] > 1
                )
            )
        );

    [Fact]
    public void Crushing_from_outside() =>
        Answers(n =>
            Crushing.Check(
                new(
                    Mm(n[0]),
                    Mm(n[1]),
                    n[2] > 1 ? MetalFamily.CarbonSteel : MetalFamily.Other,
                    Mpa(n[3]),
                    n[4] > 1 ? Mpa(n[5]) : null,
                    n[6] > 1 ? n[7] : null,
                    Pressure.FromBars(n[8]),
                    Pressure.FromBars(n[9])
                )
            )
        );

    [Fact]
    public void Through_wall() =>
        Answers(n =>
            CriticalLength.Check(new(PipeOf(n), Mm(n[8]), Mm(n[9]), Mm(n[10]), Pressure.FromBars(n[11]), Mpa(n[12])))
        );

    [Fact]
    public void Pressure_test() =>
        Answers(n =>
            PressureTest.Plan(
                new(
                    (TestKind)Math.Clamp((int)Math.Clamp(n[0], 0, 6), 0, 6),
                    Pressure.FromBars(n[1]),
                    Pressure.FromBars(n[2]),
                    Mpa(n[3]),
                    Mpa(n[4]),
                    Mm(n[5]),
                    Mm(n[6]),
                    Mpa(n[7]),
                    n[8] > 1 ? Pressure.FromBars(n[9]) : null,
                    n[10] > 1 ? Pressure.FromBars(n[11]) : null,
                    n[12] > 1 ? Pressure.FromBars(n[13]) : null,
                    ServiceCategory.Normal,
                    n[14] > 1,
                    Volume.FromCubicMeters(n[15])
                )
            )
        );

    [Fact]
    public void Remaining_life() =>
        Answers(n =>
        {
            var day = new DateOnly(2010, 1, 1);
            var rates = CorrosionRate.Assess(
                new(
                    [
                        new(day.AddDays(Days(n[0])), Mm(n[1]), "A", "probe"),
                        new(day.AddDays(Days(n[2])), Mm(n[3]), n[4] > 1 ? "A" : "B", "probe", n[5] > 5),
                    ],
                    Mm(n[6]),
                    n[7] > 1 ? day : null,
                    n[8] > 1,
                    n[9] > 1,
                    n[10] > 1 ? CorrosionRate.FromMillimetresPerYear(n[11]) : null
                )
            );
            return RemainingLife.Forecast(rates.Result, Mm(n[12]), InspectionInterval.For(1 + Days(n[13]) % 4));
        });

    [Fact]
    public void Revisit_bound() =>
        Answers(n =>
            RevisitBound.Of(
                [
                    .. RevisitBound.Codes.Select(
                        (c, i) => new RevisitTerm(c, n[i] > 5 ? null : Duration.FromDays(n[i + 8]))
                    ),
                ],
                Duration.FromDays(n[16])
            )
        );

    [Fact]
    public void Revisit_plan() =>
        Answers(n =>
            RevisitPlan.Make(
                new(
                    new(2027, 1, 1, 0, 0, 0, TimeSpan.Zero),
                    new DateOnly(2027, 1, 1).AddDays(Days(n[0])),
                    new(
                        TimeSpan.FromDays(Days(n[1])),
                        TimeSpan.FromDays(Days(n[2])),
                        TimeSpan.FromDays(Days(n[3])),
                        TimeSpan.FromDays(Days(n[4]))
                    ),
                    n[5] > 1 ? Duration.FromDays(n[6]) : null,
                    Duration.FromDays(n[7])
                )
            )
        );

    [Fact]
    public void End_date() =>
        Answers(n =>
            EndDate.Earliest(
                new(
                    new(2027, 1, 1),
                    new DateOnly(2027, 1, 1).AddDays(Days(n[0])),
                    Duration.FromDays(n[1]),
                    Duration.FromDays(n[2]),
                    new DateOnly(2020, 1, 1).AddDays(Days(n[3])),
                    null,
                    null,
                    null
                )
            )
        );

    [Fact]
    public void Outliving_a_date() =>
        Answers(
            n =>
                Outliving.Before(
                    new(
                        new(2027, 1, 1),
                        new DateOnly(2027, 1, 1).AddDays(Days(n[0])),
                        Mm(n[1]),
                        Mm(n[2]),
                        CorrosionRate.FromMillimetresPerYear(n[3]),
                        CorrosionRate.FromMillimetresPerYear(n[4]),
                        Mm(n[5]),
                        n[6] > 1
                            ? new(Mm(n[7]), Mm(n[8]), Mm(n[9]), Mm(n[10]), Mpa(n[11]), Mpa(n[12]), Mpa(n[13]), n[14])
                            : null,
                        Math.Abs(n[15]) % 1,
                        n[16] > 1 ? n[17] % 1 : 0,
                        1_000
                    )
                ),
            2_000
        );

    [Fact]
    public void Temporary_repair_decision() =>
        Answers(n =>
            TemporaryRepairDecision.Decide(
                new(PipeOf(n), DefectOf(n), ServiceOf(n), Mm(n[8]))
                {
                    WallMappedEachSide = Mm(n[9]),
                    PatchSize = Mm(n[10]),
                    Repair = RepairInMind.WeldedPatch,
                }
            )
        );

    private static void Answers<T>(Func<double[], Calculated<T>> ask, int times = 20_000) =>
        Numbers.Sample(
            n =>
            {
                Calculated<T> answer;
                try
                {
                    answer = ask(n);
                }
                catch (ImpossibleInputException refused)
                {
                    refused.Field.ShouldNotBeEmpty();
                    return;
                }
                answer.Working.ShouldAllBe(s => double.IsFinite(s.Value));
                answer.Findings.ShouldAllBe(f => double.IsFinite(f.Value ?? 0) && double.IsFinite(f.Limit ?? 0));
            },
            iter: times,
            seed: "0000KOIPe036"
        );

    private static int Days(double n) => (int)(Math.Abs(n) % 20_000);

    private static Pipe PipeOf(double[] n) =>
        new(Mm(n[0]), Mm(n[1]), MetalFamily.CarbonSteel, Mpa(n[2]), null, Mpa(n[3]), 1);

    private static Defect DefectOf(double[] n) =>
        new(
            DefectKind.Hole,
            DefectSide.Unknown,
            DefectCause.InternalCorrosion,
            n[16] > 1,
            Mm(n[17]),
            Mm(n[18]),
            Mm(n[19]),
            Mm(n[20]),
            Mm(n[21]),
            6,
            Growing: true
        );

    private static Service ServiceOf(double[] n) =>
        new(
            "water",
            FluidState.Liquid,
            ServiceCategory.D,
            2,
            4,
            Flammable: false,
            Toxic: false,
            AboveAutoIgnition: false,
            Pressure.FromBars(n[4]),
            Pressure.FromBars(n[5]),
            Temperature.FromDegreesCelsius(n[6]),
            Temperature.FromDegreesCelsius(n[7]),
            SafetyCritical: false,
            Potable: false,
            Cyclic: false
        );

    private static Length Mm(double mm) => Length.FromMillimeters(mm);

    private static Pressure Mpa(double mpa) => Pressure.FromMegapascals(mpa);
}
