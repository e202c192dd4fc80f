using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Methods.BandedPatch;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

public class BandedPatchTests
{
    private static readonly BandedPatch Method = new();

    private static MethodDesign Size(double bar, params (string, double)[] values) =>
        Method.Size(APipe.With(values) with { Service = APipe.At(bar) });

    private static Finding Of(MethodDesign design, string code) => design.Findings.Single(f => f.Code == code);

    private static Finding? Of(Claim claim, string code) => claim.Findings.SingleOrDefault(f => f.Code == code);

    // ---- sizing ----

    [Fact]
    public void A_pinhole_at_2_5_bar_on_DN_100_takes_four_bands()
    {
        var design = Size(2.5);
        design.Holds.ShouldBeTrue();
        design["bandCount"].ShouldBe(4);
        design["plateLengthMm"].ShouldBe(126, "four bands of 30 mm with 2 mm between them");
        design["fullCircle"].ShouldBe(0);
        design.PressureHeldBar!.Value.ShouldBeGreaterThan(2.5);
        design.CarriesAxialLoad.ShouldBeFalse();
    }

    // By hand, no source: Ds = 114.3 + 2 × 3.4 = 121.1, T allow = 2/3 × 205 × 30 × 1.5 × 0.8 = 4920 N, M = 11.5 N m of 11.81,
    // T low = 11.5/(0.5 × 0.008) = 2875 N, heat 193 000 × 4.8e-6 × 3 × 45 = 125 N, left 0.7 × 2875 − 125 = 1887 N,
    // c = exp(−0.3 π/2) = 0.6242, P = 4 × 1887 × 0.6242/(2 × 60.55 × 126) = 0.3089 MPa.
    [Fact]
    public void The_pressure_held_agrees_with_a_hand_calculation() =>
        Size(2.5).PressureHeldBar!.Value.ShouldBe(3.089, 0.001);

    [Fact]
    public void More_bands_than_fit_is_refused_and_nobody_may_sign_for_it()
    {
        var design = Size(4);
        design.Holds.ShouldBeFalse();
        Of(design, "bands-fit").Blocks.ShouldBeTrue();
        Of(design, "bands-fit").Words.ShouldContain("A longer plate does not help");
        design["bandsNeeded"]!.Value.ShouldBeGreaterThan(design["bandsThatFit"]!.Value);
    }

    [Fact]
    public void The_size_of_the_hole_earns_no_higher_pressure()
    {
        var small = APipe.With();
        var large = small with { Defect = APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(12) } };
        Method.Size(large).PressureHeldBar.ShouldBe(Method.Size(small).PressureHeldBar);
    }

    [Fact]
    public void A_large_area_of_damage_makes_the_plate_go_all_round_with_an_open_gap()
    {
        var wide = APipe.Pinhole with { CircumferentialLength = Length.FromMillimeters(270) };
        var design = Method.Size(APipe.With(("bandThicknessMm", 3), ("screw", 4)) with { Defect = wide });
        design["fullCircle"].ShouldBe(1);
        design["plateGapMm"]!.Value.ShouldBe(2 * Math.PI, 1e-9, "2 π times 1 mm of squeeze");
    }

    [Fact]
    public void Anti_seize_lowers_the_torque_that_may_be_set()
    {
        var dry = Size(1);
        var greased = Size(1, ("nutFactorLow", 0.12), ("nutFactorHigh", 0.2));
        greased["torqueMostNm"]!.Value.ShouldBe(dry["torqueMostNm"]!.Value * 0.12 / 0.3, 1e-9);
    }

    [Fact]
    public void A_torque_outside_its_window_fails()
    {
        var design = Size(2.5, ("torqueNm", 20));
        Of(design, "torque-window").Severity.ShouldBe(Severity.Fail);
        Of(design, "band-tension").Severity.ShouldBe(Severity.Fail);
    }

    [Fact]
    public void A_worm_drive_without_a_measured_tension_is_refused()
    {
        Of(Size(1, ("fastenerKind", 2)), "worm-drive").Blocks.ShouldBeTrue();
        var measured = Size(1, ("fastenerKind", 2), ("tensionBasis", 1), ("tensionLowN", 3000), ("tensionHighN", 4000));
        measured.Findings.ShouldNotContain(f => f.Code == "worm-drive");
        measured.Holds.ShouldBeTrue();
    }

    [Fact]
    public void A_second_turn_counts_only_where_its_tension_was_measured()
    {
        var one = Size(1).PressureHeldBar!.Value;
        Size(1, ("wraps", 2)).PressureHeldBar!.Value.ShouldBe(one, 1e-9);
        Size(1, ("wraps", 2), ("innerTurnMeasured", 1)).PressureHeldBar!.Value.ShouldBeGreaterThan(one);
    }

    [Fact]
    public void Heat_slackens_a_stainless_band_on_carbon_steel()
    {
        var hot = APipe.CoolingWater with
        {
            OperatingTemperature = Temperature.FromDegreesCelsius(75),
            DesignTemperature = Temperature.FromDegreesCelsius(75),
        };
        var design = Method.Size(APipe.With() with { Service = hot });
        design.PressureHeldBar!.Value.ShouldBeLessThan(Size(2.5).PressureHeldBar!.Value);
    }

    [Fact]
    public void Bands_on_a_thinned_pipe_are_checked_against_its_collapse()
    {
        var thin = APipe.Thinning with
        {
            RemainingWall = Length.FromMillimeters(1),
            SoundWallBeside = Length.FromMillimeters(1),
        };
        var design = Method.Size(APipe.With() with { Defect = thin });
        Of(design, "pipe-under-band").Severity.ShouldBe(Severity.Fail);
        Of(design, "pipe-under-band").Kind.ShouldBe(LimitKind.ByDeviation);
    }

    [Fact]
    public void Sized_below_the_operating_pressure_is_refused_and_below_design_is_an_interim_limit()
    {
        Of(Size(2.5, ("pressureBar", 1)), "below-operating-pressure").Blocks.ShouldBeTrue();
        var reduced = APipe.CoolingWater with { DesignPressure = Pressure.FromBars(10) };
        var design = Method.Size(APipe.With(("pressureBar", 2.5)) with { Service = reduced });
        Of(design, "interim-pressure-limit").Severity.ShouldBe(Severity.Watch);
        design.Holds.ShouldBeTrue();
    }

    [Fact]
    public void A_default_that_stands_for_a_fact_is_watched_and_a_choice_of_design_passes()
    {
        var design = Size(1);
        Of(design, "default-preload-kept").Severity.ShouldBe(Severity.Watch);
        Of(design, "default-band-width-mm").Severity.ShouldBe(Severity.Pass);
        Size(1, ("preloadKept", 0.7)).Findings.ShouldNotContain(f => f.Code == "default-preload-kept");
    }

    [Fact]
    public void Facts_of_the_trade_are_marked_as_such()
    {
        var design = Size(1);
        Of(design, "default-plate-thickness-mm").Source.Provenance.ShouldBe(Provenance.CommonPractice);
        Of(design, "default-set-for-load-h").Source.Provenance.ShouldBe(Provenance.CommonPractice);
        Of(design, "putty-area").Source.Provenance.ShouldBe(Provenance.CommonPractice);
        design.SetForLoadHours.ShouldBe(0.25);
        design.FullHardnessHours.ShouldBe(24);
        design.CureReferenceC.ShouldBe(30);
    }

    [Fact]
    public void Pressure_falls_round_the_arc_from_the_fastener()
    {
        var points = Size(2.5).Series.Single(s => s.Code == "pressure-round-the-arc").Points;
        points.Count.ShouldBe(37);
        points[^1].X.ShouldBe(90, 1e-9);
        points.Zip(points.Skip(1)).ShouldAllBe(p => p.First.Y > p.Second.Y);
    }

    [Theory]
    [InlineData("puttyThicknes", 3, "puttyThicknes")]
    [InlineData("puttyThicknessMm", 0, "1 to 15 mm")]
    [InlineData("puttyThicknessMm", double.NaN, "puttyThicknessMm is NaN")]
    [InlineData("wraps", 1.5, "a whole number")]
    [InlineData("nutFactorLow", 0.9, "at most the greatest nut factor")]
    public void Impossible_input_names_field_value_and_what_is_allowed(string code, double value, string says) =>
        Should.Throw<ImpossibleInputException>(() => Size(1, (code, value))).Message.ShouldContain(says);

    // ---- claims ----

    [Fact]
    public void A_pinhole_on_cooling_water_is_inside()
    {
        var claim = Method.Claims(APipe.Dn100, APipe.Pinhole, APipe.CoolingWater);
        claim.Inside.ShouldBeTrue(string.Join(' ', claim.Findings.Where(f => f.Severity == Severity.Fail)));
    }

    [Fact]
    public void Damage_that_is_crack_like_bars_it() =>
        Of(
            Method.Claims(APipe.Dn100, APipe.Pinhole with { Kind = DefectKind.CrackLike }, APipe.CoolingWater),
            "crack-like"
        )!
            .Blocks.ShouldBeTrue();

    [Fact]
    public void Limits_of_pressure_temperature_and_hole_come_with_their_source()
    {
        var claim = Method.Claims(
            APipe.Dn100,
            APipe.Pinhole with
            {
                HoleDiameter = Length.FromMillimeters(26),
            },
            APipe.At(21) with
            {
                OperatingTemperature = Temperature.FromDegreesCelsius(94),
            }
        );
        foreach (var code in (string[])["pressure-above-limit", "temperature-above-limit", "hole-above-limit"])
        {
            Of(claim, code)!.Severity.ShouldBe(Severity.Fail);
            Of(claim, code)!.Source.Document.ShouldContain("TM 55-1915-200-SDC");
        }
    }

    [Fact]
    public void Flammable_and_toxic_fluids_bar_it()
    {
        Of(Method.Claims(APipe.Dn100, APipe.Pinhole, APipe.CoolingWater with { Flammable = true }), "flammable")!
            .Blocks.ShouldBeTrue();
        Of(Method.Claims(APipe.Dn100, APipe.Pinhole, APipe.CoolingWater with { Toxic = true }), "toxic")!
            .Blocks.ShouldBeTrue();
    }

    [Fact]
    public void What_is_not_known_is_listed_and_bars_it()
    {
        var claim = Method.Claims(
            APipe.Dn100,
            APipe.Pinhole with
            {
                SoundWallBeside = Length.Zero,
            },
            APipe.CoolingWater with
            {
                Fluid = " ",
            }
        );
        var finding = Of(claim, "not-selectable")!;
        finding.Blocks.ShouldBeTrue();
        finding.Words.ShouldBe("Not selectable until known: the fluid, the wall beside the damage.");
    }

    [Fact]
    public void A_line_designed_hotter_needs_an_interim_limit()
    {
        var service = APipe.CoolingWater with { DesignTemperature = Temperature.FromDegreesCelsius(120) };
        Of(Method.Claims(APipe.Dn100, APipe.Pinhole, service), "interim-temperature-limit")!
            .Severity.ShouldBe(Severity.Watch);
    }

    [Fact]
    public void A_barred_claim_makes_the_design_fail_too() =>
        Method
            .Size(APipe.With() with { Defect = APipe.Pinhole with { Kind = DefectKind.CrackLike } })
            .Holds.ShouldBeFalse();
}
