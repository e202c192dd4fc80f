using System.Text.Json;

namespace RepairOrders.Api.Tests.Calculations;

/// <summary>
/// The limits of every subject, put to an answer from outside: past a limit there is no figure, or a finding says so. Each
/// limit stands in the documentation of the formula it is of.
/// </summary>
internal static class Validity
{
    private const double Slack = 1e-9;

    public static IEnumerable<string> Broken(string subject, Told t) =>
        (
            subject switch
            {
                "wall-thickness" => Wall(t),
                "remaining-strength" => Strength(t, t.Result, t.Asked("depthMm")!.Value),
                "wall-loss-grid" => Grid(t),
                "remaining-life" => Life(t),
                "outliving" => Outliving(t),
                "revisit-plan" => Revisits(t),
                "axial-load" => Axial(t),
                "through-wall" => ThroughWall(t),
                "leak-rate" => Leak(t),
                "risk-class" => Risk(t),
                "method-claims" => Claims(t),
                "cure" => Cure(t),
                "surface-climate" => Climate(t),
                "tightening" => Tightening(t),
                "pressure-test" => PressureTest(t),
                "cut-plan" => Cuts(t),
                _ => Design(subject, t),
            }
        )
            .Where(r => r.Broken)
            .Select(r => r.Words);

    private static (bool Broken, string Words) Never(bool broken, string words) => (broken, words);

    private static IEnumerable<(bool Broken, string Words)> Wall(Told t)
    {
        var (D, T) = (t.Asked("pipe.outsideDiameterMm")!.Value, t.Asked("duty.designTemperatureC")!.Value);
        var code = t.Word("duty.code");
        var piping = code is "b313" or "b311";
        var (S, E) = (t.Asked("pipe.allowableStressMpa")!.Value, t.Asked("pipe.qualityFactor") ?? 1);
        var (wall, held) = (t["forPressureMm"], t["held.mawpBar"]);
        yield return Never(wall >= D / 6 * (1 + Slack), "a wall past D/6");
        yield return Never(
            t["held.wallThatCountsMm"] >= D / 6 * (1 + Slack) && held > 0,
            "a pressure of a wall past D/6"
        );
        yield return Never(
            piping && wall is not null && t.Asked("duty.designPressureBar") / 10 / (S * E) > 0.385 * (1 + Slack),
            "a wall past P/(S E) of 0.385"
        );
        yield return Never(
            t["order.nominalMm"] < t["order.minimumMm"] * (1 - Slack),
            "less to order than there must be"
        );
        yield return Never(
            t["order.nominalMm"] is not null
                && !t.Given("order.millTolerancePercent")
                && !t.Given("order.millToleranceMm")
                && !t.Said("mill-tolerance-default"),
            "a mill tolerance nobody gave"
        );
        yield return Never(!t.Given("pipe.qualityFactor") && !t.Said("quality-factor-default"), "a seam nobody named");
        yield return Never(
            t["structuralMm"] is not null && T > 205 && !t.Given("duty.structuralMinimumMm"),
            "a structural minimum of the table above 205 °C"
        );
        yield return Never(
            t["structuralMm"] is null && !t.Said("structural-minimum-unknown"),
            "no structural minimum and no finding"
        );
        yield return Never(
            t["requiredMm"] is not null && t["requiredMm"] < wall * (1 - Slack),
            "less than for pressure"
        );
        yield return Never(piping && T > 621 && wall > 0 && !t.Said("wall-coefficient-range"), "Y above 621 °C");
        yield return Never(
            code is "b314" or "b318"
                && wall is not null
                && (t.Asked("duty.designFactor") ?? 0.72) > 0.72
                && !t.Said("design-factor"),
            "a design factor above 0.72"
        );
        yield return Never(
            code == "b318" && T > 121 && (t.Asked("duty.temperatureFactor") ?? 1) == 1 && !t.Said("temperature-factor"),
            "a hot gas line with T = 1"
        );
        yield return Never(
            held is not null
                && t.Asked("measured.measuredWallMm") > 1.25 * t.Asked("pipe.wallThicknessMm") * (1 + Slack),
            "a pressure of a reading above 1.25 × nominal"
        );
        yield return Never(
            held < t.Asked("duty.designPressureBar") * (1 - Slack) && !t.Said("mawp-against-design"),
            "a wall that does not hold, and no finding"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Strength(Told t, JsonElement result, double depth)
    {
        var full = t.Asked("referenceWallMm")!.Value;
        var (share, safe) = (depth / full, Told.Number(result, "safePressureBar"));
        yield return Never(safe is not null && share > 0.8 * (1 + Slack), "a pressure for a wall deeper than 80 %");
        yield return Never(
            Told.Number(result, "pressureLimitBar") > t.Asked("maopBar") * (1 + Slack),
            "a limit above the established pressure"
        );
        yield return Never(!t.Given("safetyFactor") && !t.Said("safety-factor-default"), "a factor nobody gave");
        yield return Never((t.Asked("safetyFactor") ?? 1.39) < 1.25 && !t.Said("safety-factor"), "a factor below 1.25");
        yield return Never(
            full > 1.25 * t.Asked("pipe.wallThicknessMm") * (1 + Slack) && !t.Said("reference-wall-plausible"),
            "a reference wall above 1.25 × nominal"
        );
        yield return Never(safe is null && !t.Said("no-pressure-credited"), "no pressure and no finding");
        foreach (var answer in result.GetProperty("answers").EnumerateArray())
            if (Told.Number(answer, "safePressureBar") is not null)
                foreach (var limit in OfMethod(t, answer.GetProperty("code").GetString()!, share, full, answer))
                    yield return limit;
    }

    private static IEnumerable<(bool Broken, string Words)> OfMethod(
        Told t,
        string code,
        double share,
        double full,
        JsonElement answer
    )
    {
        var metal = t.Word("pipe.metal");
        var steel = metal is "carbonSteel" or "lowAlloySteel";
        var (yield, D) = (t.Asked("pipe.yieldStrengthMpa"), t.Asked("pipe.outsideDiameterMm")!.Value);
        var findings = answer.GetProperty("findings").EnumerateArray().ToList();
        switch (code)
        {
            case "local-thin-area":
                var FCA = t.Asked("plant.futureLossMm") ?? double.NaN;
                var left = full * (1 - share) - FCA;
                yield return Never(!(left >= 1.3 * (1 - Slack)), "a thin area under 1.3 mm");
                yield return Never(!(left / (full - FCA) >= 0.2 * (1 - Slack)), "a thin area with Rt under 0.20");
                yield return Never(t.Flag("plant.cyclic") || metal == "grayIron", "a thin area outside its scope");
                yield return Never(
                    !t.Given("plant.distanceToDiscontinuityMm") && !Told.Said(findings, "discontinuity-unknown"),
                    "a distance nobody gave, and no finding"
                );
                break;
            case "corroded-pipe":
                yield return Never(share > 0.85 * (1 + Slack), "a single defect deeper than 85 %");
                yield return Never(!steel || yield is null or > 555, "a single defect of a metal outside");
                break;
            default:
                yield return Never(share > 0.8 * (1 + Slack), $"{code} deeper than 80 %");
                yield return Never(t.Asked("temperatureC") >= 120, $"{code} at 120 °C");
                yield return Never(!steel || yield is null, $"{code} of a metal outside");
                yield return Never(code != "b31g-original" && yield > 485, $"{code} above the 70 ksi grade");
                var z = Math.Pow(t.Asked("axialLengthMm") ?? 0, 2) / (D * full);
                yield return Never(
                    code == "b31g-original" && z >= 16 * (1 + Slack) && !Told.Said(findings, "b31g-branch-jump"),
                    "a jump that is not shown"
                );
                break;
        }
    }

    private static IEnumerable<(bool Broken, string Words)> Grid(Told t)
    {
        var depth = t.Result.GetProperty("along").EnumerateArray().Max(p => p.GetProperty("depthMm").GetDouble());
        foreach (var limit in Strength(t, t.Result.GetProperty("strength"), depth))
            yield return limit;
        yield return Never(t["missing"] > 0 && !t.Said("grid-cells-blank"), "blank cells and no finding");
        yield return Never(
            t.Yes("general.mayAverage") && (t["general.variation"] > 0.1 || t["readings"] < 15),
            "an average of readings that differ"
        );
        yield return Never(
            t.Yes("general.level1") && t["general.averageMm"] < t["general.requiredMm"] * (1 - Slack),
            "level 1 below the required wall"
        );
        yield return Never(t.Yes("general.level1") && !t.Yes("general.level2"), "level 1 without level 2");
    }

    private static IEnumerable<(bool Broken, string Words)> Life(Told t)
    {
        var (life, rate) = (t["remainingDays"], t["governingMmPerYear"]);
        var (thickness, half) = (t["thicknessIntervalDays"], t["halfLifeDays"]);
        yield return Never(rate is null && (life is not null || !t.Said("rate-unknown")), "a life without a rate");
        yield return Never(rate <= 0, "a rate that is none");
        yield return Never(
            life > Math.Max(0, (t["actualMm"] - t.Asked("requiredWallMm"))!.Value) / rate * 365.25 * (1 + Slack),
            "a life longer than wall over rate"
        );
        yield return Never(thickness > half * (1 + Slack), "an interval above half the life");
        double? most = t.Asked("inspectionClass") switch
        {
            0 => 3,
            1 => 5,
            2 or 3 => 10,
            _ => null,
        };
        yield return Never(thickness > most * 365.25 * (1 + Slack), "an interval above the class's");
        yield return Never(
            life is { } days && days / 2 < 30 && !t.Said("half-life-under-30-days"),
            "half a life under 30 days"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Outliving(Told t)
    {
        string[] shares = ["wall.sampled", "wall.firstOrder", "strength.sampled", "strength.firstOrder", "either"];
        foreach (var share in shares)
            yield return Never(t[share] is < 0 or > 1, $"{share} is no probability");
        yield return Never(t["either"] < t["wall.sampled"] - Slack, "either way less likely than one");
        yield return Never(t["either"] < t["strength.sampled"] - Slack, "either way less likely than the other");
        yield return Never(
            t["either"] > t.Asked("targetProbability") && !t.Said("shortfall-target"),
            "above the target and no finding"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Revisits(Told t)
    {
        var approved = t
            .Result.GetProperty("bounds")
            .EnumerateArray()
            .Where(b => b.GetProperty("code").GetString() == "approval")
            .Select(b => b.GetProperty("timeDays").GetDouble())
            .Single();
        yield return Never(t["boundDays"] > approved * (1 + Slack), "a revisit after the approval has ended");
        yield return Never(t["lookIntervalDays"] > Math.Max(approved, 1) / 4 + 1, "fewer than three looks");
        yield return Never(
            t["thicknessIntervalDays"] > Math.Max(t.Asked("remainingLifeDays") / 2 ?? double.MaxValue, 1) * (1 + Slack)
                && t.Asked("remainingLifeDays") > 0,
            "readings further apart than half the life"
        );
        yield return Never(
            !(t.Asked("remainingLifeDays") > 0) && !t.Said("no-remaining-life"),
            "no life known and no finding"
        );
        yield return Never(
            t.Result.GetProperty("bounds").EnumerateArray().Any(b => b.GetProperty("isDefault").GetBoolean())
                && !t.Said("revisit-default"),
            "a default and no finding"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Axial(Told t)
    {
        var carries = t.Flag("repairCarriesAxialLoad");
        yield return Never(
            t["capacityKn"] < t["endLoadKn"] * (1 - Slack) && (!t.Said("axial-capacity") || !(carries || t.Fails)),
            "a pipe that parts, and no finding"
        );
        yield return Never(
            t.Yes("assumeFullThrust") && !(t["restraintNeededKn"] >= t["endLoadKn"] * (1 - Slack)),
            "full thrust without restraint"
        );
        yield return Never(t["crushing.netBar"] > t["crushing.allowedBar"] * (1 + Slack) && !t.Fails, "crushed");
        yield return Never(
            (t.Word("pipe.metal") == "grayIron" || !t.Given("pipe.yieldStrengthMpa")) && t["crushing.allowedBar"] > 0,
            "load on a brittle wall"
        );
        yield return Never(
            t["crushing.allowedBar"] > 0 && !t.Given("crushing.ovality") && !t.Said("ovality-default"),
            "an ovality nobody gave"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> ThroughWall(Told t)
    {
        var critical = t["criticalLengthMm"];
        yield return Never(
            (t.Word("pipe.metal") == "grayIron" || !t.Given("pipe.yieldStrengthMpa"))
                && (critical is not null || !t.Said("not-ductile")),
            "a ductile limit of a metal that is not"
        );
        yield return Never(t["shareOfYield"] >= 0.3 * (1 + Slack) && !t.Said("leak-or-rupture"), "rupture is credible");
        yield return Never(
            t["lengthMm"] >= critical / 3 * (1 + Slack) && !t.Said("critical-length"),
            "a flaw too long"
        );
        yield return Never(
            t.Result.GetProperty("verdict").GetString() != "ok"
                && t.Result.GetProperty("reasons").GetArrayLength() == 0,
            "a verdict without a reason"
        );
        yield return Never(
            t.Word("defect.kind") == "crackLike" && t.Result.GetProperty("verdict").GetString() == "ok",
            "a crack that is routine"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Leak(Told t)
    {
        var fluid = t.Word("fluid");
        var atmosphere = t.Asked("atmosphereBarAbs") ?? 1.01325;
        var inside = t.Asked("insidePressureBar")!.Value + atmosphere;
        var outside = (t.Asked("outsidePressureBar") ?? 0) + atmosphere;
        yield return Never(
            inside <= outside && (t["massFlowKgH"] > 0 || !t.Said("no-outflow")),
            "a leak against the pressure"
        );
        yield return Never(
            fluid == "steam"
                && inside > outside
                && outside / inside > 0.577 * (1 + Slack)
                && !t.Said("below-critical-pressure"),
            "steam below its critical ratio"
        );
        yield return Never(
            fluid is "air" or "otherGas"
                && (t.Asked("compressibility") ?? 1) == 1
                && inside > 20 * (1 + Slack)
                && !t.Said("ideal-gas-at-pressure"),
            "an ideal gas at pressure"
        );
        yield return Never(
            fluid == "otherLiquid" && t.Asked("vapourPressureBarAbs") > outside * (1 + Slack) && !t.Said("flashes"),
            "a liquid that flashes"
        );
        yield return Never(
            fluid == "otherLiquid" && !t.Given("vapourPressureBarAbs") && !t.Said("flashing-not-tested"),
            "flashing not tested and not told"
        );
        yield return Never(
            !t.Given("dischargeCoefficient") && !t.Said("discharge-coefficient-default"),
            "a coefficient nobody gave"
        );
        yield return Never(
            fluid is "freshWater" or "seaWater" or "otherLiquid" && t.Yes("choked"),
            "a liquid at the speed of sound"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Risk(Told t)
    {
        yield return Never(t["asSigned.consequence"] is not (>= 1 and <= 5), "a consequence outside 1 to 5");
        yield return Never(t["asSigned.likelihood"] is not (>= 1 and <= 5), "a likelihood outside 1 to 5");
        var signed = t.Result.GetProperty("asSigned").GetProperty("class").GetString()!;
        yield return Never(t["asSigned.consequence"] == 5 && signed is not ("A" or "B"), "consequence 5 below B");
        yield return Never(
            t.Result.TryGetProperty("today", out var today)
                && today.ValueKind == JsonValueKind.Object
                && string.CompareOrdinal(today.GetProperty("class").GetString(), signed) > 0,
            "today's class below the signed one"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Claims(Told t)
    {
        foreach (var claim in t.Result.GetProperty("claims").EnumerateArray())
        {
            var findings = claim.GetProperty("findings").EnumerateArray().ToList();
            var method = claim.GetProperty("method").GetString();
            var inside = claim.GetProperty("inside").GetBoolean();
            yield return Never(inside && Told.Fail(findings), $"{method} inside its limits with a failed one");
            yield return Never(
                inside && method != "section-replacement" && t.Word("defect.kind") == "crackLike",
                $"{method} over a crack"
            );
            yield return Never(
                inside && method == "banded-patch" && t.Asked("service.operatingPressureBar") > 20.7,
                "bands above their ceiling"
            );
            yield return Never(
                inside && method == "banded-patch" && t.Asked("service.operatingTemperatureC") > 93,
                "putty above 93 °C"
            );
            yield return Never(
                inside && method == "plug" && !t.Flag("defect.throughWall"),
                "a plug where there is no hole"
            );
            yield return Never(
                inside && method is "welded-patch" or "welded-sleeve" && t.Word("pipe.metal") == "grayIron" && inside,
                $"{method} on cast iron"
            );
        }
    }

    private static IEnumerable<(bool Broken, string Words)> Design(string method, Told t)
    {
        var (holds, held) = (t.Yes("holds"), t["pressureHeldBar"]);
        yield return Never(holds && t.Fails, "holds against a failed limit");
        yield return Never(!holds && !t.Fails, "does not hold, and no finding says why");
        yield return Never(
            holds && held < t.Asked("service.operatingPressureBar") * (1 - Slack) - Slack,
            "holds less than the pressure in operation"
        );
        yield return Never(
            holds && method != "section-replacement" && t.Word("defect.kind") == "crackLike",
            "holds over a crack"
        );
        double? Dimension(string code) =>
            t
                .Result.GetProperty("dimensions")
                .EnumerateArray()
                .Where(d => d.GetProperty("code").GetString() == code)
                .Select(d => (double?)d.GetProperty("value").GetDouble())
                .FirstOrDefault();
        yield return Never(
            holds && method == "bolted-clamp" && Dimension("torqueLeastNm") > Dimension("torqueMostNm") * (1 + Slack),
            "a clamp no torque seals"
        );
        yield return Never(
            holds && method == "banded-patch" && t.Flag("service.flammable"),
            "putty on a flammable fluid"
        );
        yield return Never(
            holds
                && method == "laminate-wrap"
                && Dimension("laminateThicknessMm") > t.Asked("pipe.outsideDiameterMm") / 6,
            "a laminate past D/6"
        );
        yield return Never(
            holds
                && method == "plug"
                && held
                    > 20
                        * t.Asked("pipe.allowableStressMpa")
                        * t.Asked("defect.soundWallBesideMm")
                        / t.Asked("pipe.outsideDiameterMm")
                        * (1 + Slack),
            "a plug stronger than its pipe"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Cure(Told t)
    {
        var (T, least, reference) = (
            t.Asked("temperatureC"),
            t.Asked("leastTemperatureC"),
            t.Asked("referenceTemperatureC")!.Value
        );
        var coldest = Math.Min(reference, t.Asked("testedLeastC") ?? reference) - 20;
        var hottest = Math.Max(reference, t.Asked("testedGreatestC") ?? reference) + 20;
        yield return Never(
            T < least && (t["times.factor"] > 0 || !t.Said("below-least-cure-temperature")),
            "cold cure"
        );
        yield return Never(
            T >= least && T < coldest && (t["times.factor"] > 0 || !t.Said("beyond-tested-range")),
            "credit colder than tested"
        );
        yield return Never(T >= least && T > hottest && !t.Said("beyond-tested-range"), "credit hotter than tested");
        var lawless = !t.Given("q10Below") && !t.Given("activationEnergyKjMol");
        yield return Never(
            lawless && (T is not null || t.Given("log")) && !t.Said("cure-law-default"),
            "a law nobody gave"
        );
        yield return Never(
            t.Yes("progress.setForLoad") && t["progress.equivalentTimeH"] < t.Asked("setForLoadH") * (1 - Slack),
            "set for load before its time"
        );
        yield return Never(t.Yes("progress.fullyHard") && !t.Yes("progress.setForLoad"), "hard before it is set");
        yield return Never(
            t["times.fullHardnessH"] < t["times.setForLoadH"] * (1 - Slack),
            "full hardness before set for load"
        );
        var mixReference = t.Asked("potLife.referenceTemperatureC") ?? 0;
        yield return Never(
            t.Asked("potLife.mixTemperatureC")
                > Math.Max(mixReference, t.Asked("potLife.testedGreatestC") ?? mixReference) + 20 + Slack
                && !t.Said("pot-life-unknown"),
            "a pot life nobody knows"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Climate(Told t)
    {
        var (go, wet, RH) = (t.Yes("go"), t.Flag("forWetSurfaces"), t.Asked("relativeHumidityPercent"));
        var (air, steel) = (t.Asked("airTemperatureC"), t.Asked("steelTemperatureC"));
        yield return Never(go && !t.Given("forecast") && t.Fails, "go against a failed limit");
        yield return Never(go && !wet && RH > 85, "go above 85 %");
        yield return Never(go && !wet && t["marginK"] < 3 * (1 - Slack), "go with less than 3 K");
        yield return Never(
            go && (steel < t.Asked("leastTemperatureC") || steel > t.Asked("greatestTemperatureC")),
            "go outside the material's range"
        );
        yield return Never(
            air is < -40 or > 50 && (go || !t.Said("dew-point-outside-validity")),
            "a dew point outside"
        );
        if (t.Result.TryGetProperty("hours", out var hours) && hours.ValueKind == JsonValueKind.Array)
            foreach (var hour in hours.EnumerateArray().Where(h => h.GetProperty("go").GetBoolean()))
                yield return Never(
                    !wet && Told.Number(hour, "marginK") < 3 * (1 - Slack),
                    "an hour with less than 3 K"
                );
    }

    private static IEnumerable<(bool Broken, string Words)> Tightening(Told t)
    {
        yield return Never(
            t["preloadLowKn"] < t.Asked("preloadNeededKn") * (1 - Slack) && !t.Said("preload-low"),
            "too loose"
        );
        yield return Never(
            t["preloadHighKn"] > t.Asked("preloadAllowedKn") * (1 + Slack) && !t.Said("preload-high"),
            "too tight"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> PressureTest(Told t)
    {
        var (test, cap) = (t["pressureBar"], t["capBar"]);
        yield return Never(test > cap * (1 + Slack), "a test above what holds");
        yield return Never(
            test
                > 0.9
                    * 20
                    * t.Asked("yieldStrengthMpa")
                    * t.Asked("remainingWallMm")
                    / t.Asked("outsideDiameterMm")
                    * (1 + Slack)
                    + Slack,
            "a test above nine tenths of yield"
        );
        yield return Never(test > t.Asked("pipeHoldsBar") * (1 + Slack), "a test above what the pipe holds");
        yield return Never(
            t.Word("kind") == "pneumatic"
                && test > 1.33 * t.Asked("designPressureBar") * (1 + Slack)
                && !t.Said("pneumatic-ceiling"),
            "gas above 1.33 times design"
        );
        yield return Never(
            t.Word("kind") == "initialService"
                && t.Word("serviceCategory") != "d"
                && !t.Said("initial-service-category"),
            "an initial service test of another category"
        );
        yield return Never(
            t.Asked("operatingPressureBar") > cap * (1 + Slack) && !t.Said("service-pressure-held"),
            "back to a pressure that does not hold"
        );
        yield return Never(
            t["codePressureBar"] > cap * (1 + Slack) && !t.Said("code-pressure"),
            "below the code's test"
        );
    }

    private static IEnumerable<(bool Broken, string Words)> Cuts(Told t)
    {
        foreach (var cut in t.Result.GetProperty("cuts").EnumerateArray())
        {
            var pieces = cut.GetProperty("pieces").EnumerateArray().Sum(p => p.GetProperty("lengthMm").GetDouble());
            var used = pieces + cut.GetProperty("leftMm").GetDouble();
            yield return Never(used > cut.GetProperty("lengthMm").GetDouble() + 1e-6, "more cut than there is");
        }
        yield return Never(!t.Yes("found") && !t.Fails, "no plan and no finding");
        yield return Never(
            t.Yes("found")
                && t.Ask.GetProperty("bands").GetArrayLength()
                    > t.Result.GetProperty("cuts")
                        .EnumerateArray()
                        .SelectMany(c => c.GetProperty("pieces").EnumerateArray())
                        .Select(p => p.GetProperty("band").GetString())
                        .Count(),
            "a band that is not cut"
        );
    }
}
