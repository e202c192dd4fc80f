using BenchmarkDotNet.Attributes;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Benchmarks;

/// <summary>A survey of 100 000 defects, each a profile of 50 points, by every method that applies.</summary>
[MemoryDiagnoser]
public class SurveyScreening : BesideC
{
    private StrengthCase[] survey = [];
    private ScreenedStrength[] answers = [];

    [Params(1, 2)]
    public int Threads { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        survey = [.. Enumerable.Range(0, 100_000).Select(Defect)];
        answers = new ScreenedStrength[survey.Length];
    }

    [Benchmark(Description = "100 000 defects of 50 points")]
    public int Screen()
    {
        RemainingStrength.Screen(survey, answers, Threads);
        return answers.Length;
    }

    private static StrengthCase Defect(int number)
    {
        const double Wall = 9.53;
        var (x, d) = RiverBottoms.Make(50, 5, Wall, number);
        var profile = RiverBottom.Of(x, d);
        var pipe = new Pipe(
            Length.FromMillimeters(508),
            Length.FromMillimeters(Wall),
            MetalFamily.CarbonSteel,
            Pressure.FromMegapascals(360),
            Pressure.FromMegapascals(460),
            Pressure.FromMegapascals(151.7),
            1
        );
        var loss = new MetalLoss(
            pipe.NominalWall,
            profile.Deepest,
            profile.Span,
            Length.FromMillimeters(40),
            DefectSide.External,
            profile
        );
        return new(pipe, loss, Pressure.FromBars(70), Temperature.FromDegreesCelsius(20), 1.39, 0.72);
    }
}
