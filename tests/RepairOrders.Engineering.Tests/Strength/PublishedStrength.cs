using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using Sf = RepairOrders.Engineering.Strength.PipelineMetalLoss;

namespace RepairOrders.Engineering.Tests.Strength;

// Every row of Published/strength.csv at its printed rounding. A row names its source; "memory" is a value recalled from the
// named document and not seen, "computed" one recomputed independently with the digits it is given to.
public sealed class PublishedStrength
{
    private static readonly Dictionary<string, PublishedRow> Rows = PublishedRow
        .Read("strength.csv")
        .ToDictionary(r => r.Id);

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_published_value_is_met_at_its_printed_rounding(string id)
    {
        var row = Rows[id];
        Answer(row).ShouldBe(row.ExpectedNumber, row.Rounding, row.ToString());
    }

    [Fact]
    public void Every_row_names_its_source_and_how_it_is_known() =>
        Rows.Values.ShouldAllBe(r =>
            r.Source.Length > 0 && new[] { "published", "memory", "computed" }.Contains(r.Provenance)
        );

    private static double Answer(PublishedRow r) =>
        r.Function switch
        {
            "pipe_od" => r.Shown(PipeSizes.ByNps(r.Text("nps"))!.OutsideDiameter),
            "pipe_wall" => r.Shown(PipeSizes.ByNps(r.Text("nps"))!.Wall(r.Text("sch"))!.Wall),
            "pipe_mass" => PipeSizes.MassByLength(r.L("D_mm"), r.L("t_mm")).KilogramsPerMeter,
            "material" => Strength(r, PipeGrades.Find(r.Text("spec"), r.Text("grade"))!),
            "b313_basis_ksi" => r.Shown(PipeGrades.AllowableStressBasis(r.P("sy"), r.P("st"))),
            "b313_t" => r.Shown(B313(r)),
            "b313_tm" => r.Shown(B313(r) + r.L("c")),
            "b313_tnom" => r.Shown(RequiredWall.OrderWall(B313(r), r.L("c"), r["mill"])),
            "b313_t_id" => r.Shown(RequiredWall.B313FromBore(r.P("P"), r.L("d"), r.L("c"), r.P("S"), 1, 1, 0.4)),
            "b313_mawp" => r.Shown(Mawp.B313(r.L("D"), r.L("t"), r.P("S"), 1, 1, 0.4)),
            "y_coeff" => RequiredWall.WallCoefficient(
                Metal(r.Text("material")),
                Temperature.FromDegreesCelsius(r["T_C"])
            ),
            "y_thick" => RequiredWall.ThickWallCoefficient(r.L("D"), r.L("d"), r.L("c")),
            "b311_tm" => r.Shown(RequiredWall.B311(r.P("P"), r.L("D"), r.P("SE"), 1, 0.4, r.L("A"))),
            "iacs_t0" => r.Shown(RequiredWall.IacsP1(Pressure.FromBars(r["P_bar"]), r.L("D"), r.P("K"), r["e"])),
            "b31_pipeline_p" => r.Shown(Mawp.Pipeline(r.L("D"), r.L("t"), r.P("smys"), r["F"], r["E"], r["T"])),
            "b31_pipeline_t" => r.Shown(RequiredWall.B318(r.P("P"), r.L("D"), r.P("smys"), r["F"], r["E"], r["T"])),
            "barlow_p" => r.Shown(Mawp.Barlow(r.L("D"), r.L("t"), r.P("S"))),
            "hoop_thin" => r.Shown(Mawp.HoopStress(r.P("P"), r.L("D"), r.L("t"))),
            "api570_mawp" => r.Shown(Mawp.HalfLife(r.L("D"), r.L("t"), r.L("rate") * r["years"], r.P("S"), r["E"])),
            _ => PipelineAnswer(r),
        };

    private static double PipelineAnswer(PublishedRow r) =>
        r.Function switch
        {
            "b31g_z" => Sf.LengthParameter(r.L("L"), r.L("D"), r.L("t")),
            "folias_orig" => Sf.BulgingOriginal(r["z"]),
            "folias_mod" => Sf.BulgingModified(r["z"]),
            "b31g_orig_sf" => r.Shown(Sf.FailureStressOriginal(r.L("D"), r.L("t"), r.L("d"), r.L("L"), r.P("sflow"))),
            "b31g_mod_sf" => r.Shown(Sf.FailureStressModified(r.L("D"), r.L("t"), r.L("d"), r.L("L"), r.P("sflow"))),
            "b31g_orig_pf" => r.Shown(
                Burst(r, Sf.FailureStressOriginal(r.L("D"), r.L("t"), r.L("d"), r.L("L"), r.P("sflow")))
            ),
            "b31g_mod_pf" => r.Shown(
                Burst(r, Sf.FailureStressModified(r.L("D"), r.L("t"), r.L("d"), r.L("L"), r.P("sflow")))
            ),
            "b31g_mod_psafe" => r.Shown(
                Sf.SafePressure(
                    Burst(
                        r,
                        Sf.FailureStressModified(r.L("D"), r.L("t"), r.L("d"), r.L("L"), r.P("smys") + r.P("add"))
                    ),
                    1 / r["F"]
                )
            ),
            "b31g_1991_A" => Sf.LengthParameter1991(r.L("L"), r.L("D"), r.L("t")),
            "b31g_1991_psafe" => r.Shown(Sf.SafePressure1991(r.P("P"), r.L("D"), r.L("t"), r.L("d"), r.L("L"))),
            "b31g_B" => Sf.AllowableLengthFactor1991(r["r"]),
            "b31g_1991_len" => r.Shown(Sf.AllowableLength1991(r.L("D"), r.L("t"), r.L("d"))),
            "flow_stress" => r.Shown(FlowStress.Of(FlowStressOption.B, r.P("smys"), r.P("smts"))),
            "erf" => Sf.EstimatedRepairFactor(r.P("maop"), Sf.SafePressure(r.P("pf"), r["sf"])),
            _ => DefectAnswer(r),
        };

    private static double DefectAnswer(PublishedRow r) =>
        r.Function switch
        {
            "profile_area" => EffectiveArea.LostArea(r.List("x"), r.List("d")),
            "effective_area_pairs" => EffectiveArea.Pairs((int)r["n"]),
            "effective_area_pf" => r.Shown(
                EffectiveArea.FailurePressure(r.Lengths("x"), r.Lengths("d"), r.L("D"), r.L("t"), r.P("sflow"))
            ),
            "effective_area_len" => r.Shown(
                Length.FromMillimeters(
                    EffectiveArea.Weakest(r.Lengths("x"), r.Lengths("d"), r.L("D"), r.L("t")).LengthMm
                )
            ),
            "mt_poly" => LocalThinArea.Bulging(r["lam"]),
            "mt_2000" => LocalThinArea.Bulging2000(r["lam"]),
            "ffs_lambda" => LocalThinArea.LengthParameter(r.L("s"), r.L("Di"), r.L("tc")),
            "ffs_rsf" => LocalThinArea.RemainingStrengthFactor(
                (r["tmm"] - r["FCA"]) / r["tc"],
                LocalThinArea.LengthParameter(r.L("s"), r.L("Di"), r.L("tc"))
            ),
            "ffs_mawpr" => r.Shown(LocalThinArea.ReducedPressure(r.P("mawp"), r["rsf"])),
            "ffs_Q" => GeneralMetalLoss.AveragingFactor(r["Rt"]),
            "ffs_L" => r.Shown(GeneralMetalLoss.AveragingLength(r["Rt"], r.L("Di"), r.L("tc"))),
            "cov" => GeneralMetalLoss.CoefficientOfVariation(r.List("vals")),
            "lmsd" => r.Shown(LocalThinArea.LeastDistanceToDiscontinuity(r.L("Di"), r.L("tc"))),
            "dnv_Q" => CorrodedPipeSingleDefect.LengthCorrection(r.L("l"), r.L("D"), r.L("t")),
            "std_rel" => CorrodedPipeSingleDefect.DepthDeviation(
                DepthMeasurement.Relative,
                r["acc"],
                r["conf"],
                Length.FromMillimeters(10)
            ),
            "dnv_gamma_d_normal" => CorrodedPipeSingleDefect.DepthFactor(r["a"], SafetyClass.Normal),
            "dnv_eps_d" => CorrodedPipeSingleDefect.DepthFractile(r["a"]),
            "dnv_pcorr" => r.Shown(
                CorrodedPipeSingleDefect.AllowablePressure(
                    r.L("D"),
                    r.L("t"),
                    r["dt_meas"],
                    r.L("l"),
                    r.P("fu"),
                    new(r["gamma_m"], r["gamma_d"], r["eps_d"], r["std"])
                )
            ),
            "dnv_pf" => r.Shown(
                CorrodedPipeSingleDefect.FailurePressure(r.L("D"), r.L("t"), r.L("d"), r.L("l"), r.P("fu"))
            ),
            "dnv_pcap" => r.Shown(
                CorrodedPipeSingleDefect.MeanCapacity(r.L("D"), r.L("t"), r.L("d"), r.L("l"), r.P("fu"))
            ),
            _ => throw new InvalidDataException($"no function {r.Function}"),
        };

    private static Length B313(PublishedRow r) => RequiredWall.B313(r.P("P"), r.L("D"), r.P("S"), 1, 1, 0.4);

    private static Pressure Burst(PublishedRow r, Pressure failureStress) =>
        Mawp.Barlow(r.L("D"), r.L("t"), failureStress);

    private static double Strength(PublishedRow r, PipeGrade grade) =>
        r.Text("field") switch
        {
            "smys_mpa" => r.Shown(grade.YieldStrength!.Value),
            "smts_mpa" => r.Shown(grade.TensileStrength!.Value),
            _ => r.Shown(PipeGrades.AllowableStress(grade, Temperature.FromDegreesFahrenheit(100)).Result!.Value),
        };

    private static MetalFamily Metal(string name) =>
        name == "austenitic" ? MetalFamily.AusteniticStainless : MetalFamily.CarbonSteel;
}
