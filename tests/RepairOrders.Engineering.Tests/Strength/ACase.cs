using CsCheck;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Strength;

/// <summary>Cases to test with: a pipe of line steel, a patch of metal loss.</summary>
internal static class ACase
{
    public static Pipe X65(double D = 611, double t = 8.2) =>
        new(Mm(D), Mm(t), MetalFamily.CarbonSteel, Mpa(450), Mpa(535), Mpa(177.2), 1);

    public static Pipe A106B(double D = 168.3, double t = 7.11) =>
        new(Mm(D), Mm(t), MetalFamily.CarbonSteel, Mpa(240), Mpa(415), Mpa(137.9), 1);

    public static Pipe GrayIron() => new(Mm(177), Mm(12), MetalFamily.GrayIron, null, Mpa(214), Mpa(20.7), 1);

    public static StrengthCase With(
        Pipe pipe,
        double depth,
        double length,
        RiverBottom? profile = null,
        PlantPiping? plant = null,
        double maopBar = 80,
        double temperatureC = 20,
        double safetyFactor = 1.39
    ) =>
        new(
            pipe,
            new(pipe.NominalWall, Mm(depth), Mm(length), Mm(length / 2), DefectSide.External, profile),
            Pressure.FromBars(maopBar),
            Temperature.FromDegreesCelsius(temperatureC),
            safetyFactor,
            0.72,
            plant
        );

    /// <summary>The worked profile on its pipe.</summary>
    public static StrengthCase Profiled(double safetyFactor = 1.39) =>
        With(
            X65(),
            2.8,
            289,
            RiverBottom.Of(
                [0, 28.9, 57.8, 86.7, 115.6, 144.5, 173.4, 202.3, 231.2, 260.1, 289.0],
                [0, 1, 1.1, 1.1, 1.1, 1.3, 1.8, 2.8, 2.8, 1.6, 0]
            ),
            safetyFactor: safetyFactor
        );

    /// <summary>Any pipe of carbon steel with any loss, with and without profile and plant data.</summary>
    public static readonly Gen<StrengthCase> Any =
        from D in Gen.Double[60, 1220]
        from t in Gen.Double[3, 20]
        from yield in Gen.Double[205, 500]
        from excess in Gen.Double[40, 200]
        from r in Gen.Double[0, 0.85]
        from L in Gen.Double[1, 1500]
        from profile in EffectiveAreaSearches.Profiles
        from kind in Gen.Int[0, 3]
        from FCA in Gen.Double[0, 2]
        select Make(D, t, yield, excess, r, L, profile, kind, FCA);

    private static StrengthCase Make(
        double D,
        double t,
        double yield,
        double excess,
        double r,
        double L,
        (double[] X, double[] D, double OD, double t) profile,
        int kind,
        double FCA
    )
    {
        var pipe = new Pipe(
            Mm(D),
            Mm(t),
            MetalFamily.CarbonSteel,
            Mpa(yield),
            Mpa(yield + excess),
            Mpa(yield / 1.8),
            1
        );
        var bottom = kind % 2 == 0 ? null : RiverBottom.Of(profile.X, [.. profile.D.Select(d => d / profile.t * t)]);
        var plant = kind < 2 ? null : new PlantPiping(Mm(FCA), null, false);
        return With(pipe, r * t, L, bottom, plant);
    }

    public static Length Mm(double value) => Length.FromMillimeters(value);

    public static Pressure Mpa(double value) => Pressure.FromMegapascals(value);
}
