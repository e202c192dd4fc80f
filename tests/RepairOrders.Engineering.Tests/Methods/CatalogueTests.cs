using System.Text.RegularExpressions;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

/// <summary>What is asked of every method; a new one is done when these pass.</summary>
public partial class CatalogueTests
{
    private static readonly string[] Parts =
    [
        "plate",
        "band",
        "fastener",
        "putty",
        "laminate",
        "filler",
        "clamp",
        "seal",
        "bolt",
        "restraint",
        "patch",
        "weld",
        "sleeve",
        "plug",
        "spool",
    ];

    private static readonly string[] Units = ["pcs", "mm", "g", "m2", "cm3"];

    public static TheoryData<string> Codes => [.. MethodCatalogue.All.Select(m => m.Code)];

    private static MethodDesign Sized(string code) => MethodCatalogue.Find(code).Size(Examples.All[code]);

    [Theory]
    [MemberData(nameof(Codes))]
    public void It_has_a_code_and_a_name(string code)
    {
        var method = MethodCatalogue.Find(code);
        Hyphened().IsMatch(code).ShouldBeTrue();
        method.Name.ShouldMatch("^[A-Z][a-z ]+$");
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Its_inputs_have_symbol_unit_range_and_source(string code)
    {
        var inputs = MethodCatalogue.Find(code).Inputs;
        inputs.ShouldNotBeEmpty();
        inputs.Select(i => i.Code).ShouldBeUnique();
        foreach (var input in inputs)
        {
            Camel().IsMatch(input.Code).ShouldBeTrue(input.Code);
            input.Symbol.ShouldNotBeNullOrWhiteSpace(input.Code);
            input.Words.ShouldNotBeNullOrWhiteSpace(input.Code);
            input.Unit.ShouldNotBeNullOrWhiteSpace(input.Code);
            input.Source.Document.ShouldNotBeNullOrWhiteSpace(input.Code);
            double.IsFinite(input.Minimum).ShouldBeTrue(input.Code);
            double.IsFinite(input.Maximum).ShouldBeTrue(input.Code);
            input.Minimum.ShouldBeLessThan(input.Maximum, input.Code);
            if (input.Default is { } value)
                value.ShouldBeInRange(input.Minimum, input.Maximum, input.Code);
            if (input.Choices is { } choices)
            {
                input.Minimum.ShouldBe(0, input.Code);
                input.Maximum.ShouldBe(choices.Count - 1, input.Code);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Its_hold_points_are_in_order_with_evidence_and_source(string code)
    {
        var points = MethodCatalogue.Find(code).HoldPoints;
        points.Count.ShouldBeGreaterThanOrEqualTo(4);
        points.Select(p => p.Code).ShouldBeUnique();
        points.ShouldContain(p => p.Code == "as-described" && p.Evidence.Contains(Evidence.ThicknessReadings));
        for (var i = 0; i < points.Count; i++)
        {
            Hyphened().IsMatch(points[i].Code).ShouldBeTrue(points[i].Code);
            points[i].Title.ShouldNotBeNullOrWhiteSpace();
            points[i].Evidence.ShouldNotBeEmpty(points[i].Code);
            points[i].Source.Document.ShouldNotBeNullOrWhiteSpace(points[i].Code);
            points[i].After.ShouldAllBe(a => points.Take(i).Any(p => p.Code == a));
            points[i].After.Count.ShouldBe(i == 0 ? 0 : 1);
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Its_example_sizes_and_holds(string code)
    {
        var design = Sized(code);
        design.Method.ShouldBe(code);
        design.Holds.ShouldBeTrue(
            string.Join(' ', design.Findings.Where(f => f.Severity == Severity.Fail).Select(f => f.Words))
        );
        design.PressureHeldBar!.Value.ShouldBeGreaterThanOrEqualTo(Examples.All[code].Service.OperatingPressure.Bars);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Its_design_has_dimensions_bill_cautions_and_a_complete_working(string code)
    {
        var design = Sized(code);
        design.Dimensions.ShouldNotBeEmpty();
        design.Dimensions.Select(d => d.Code).ShouldBeUnique();
        design.Dimensions.ShouldAllBe(d => DimensionKinds.All.Any(k => k.Code == d.Code && k.Unit == d.Unit));
        design.Dimensions.ShouldAllBe(d => double.IsFinite(d.Value) && d.Value >= 0);
        design.Materials.ShouldNotBeEmpty();
        design.Materials.ShouldAllBe(m => m.Quantity > 0 && Units.Contains(m.Unit) && Parts.Contains(m.Part));
        design.HoldPoints.ShouldNotBeEmpty();
        design.Cautions.Count.ShouldBeGreaterThan(10);
        design.Cautions.Distinct().Count().ShouldBe(design.Cautions.Count);
        design.Working.Count.ShouldBeGreaterThan(8);
        foreach (var step in design.Working)
        {
            step.Symbol.ShouldNotBeNullOrWhiteSpace();
            step.Words.ShouldNotBeNullOrWhiteSpace(step.Symbol);
            step.Unit.ShouldNotBeNullOrWhiteSpace(step.Symbol);
            step.Clause.Document.ShouldNotBeNullOrWhiteSpace(step.Symbol);
            double.IsFinite(step.Value).ShouldBeTrue(step.Symbol);
            (step.Formula.Length == 0).ShouldBe(step.Substituted.Length == 0, step.Symbol);
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Its_findings_are_sentences_with_sources(string code)
    {
        var example = Examples.All[code];
        var claim = MethodCatalogue.Find(code).Claims(example.Pipe, example.Defect, example.Service);
        foreach (var finding in claim.Findings.Concat(Sized(code).Findings))
        {
            Hyphened().IsMatch(finding.Code).ShouldBeTrue(finding.Code);
            finding.Words.ShouldEndWith(".");
            finding.Source.Document.ShouldNotBeNullOrWhiteSpace(finding.Code);
        }
        claim.Inside.ShouldBeTrue(
            string.Join(' ', claim.Findings.Where(f => f.Severity == Severity.Fail).Select(f => f.Words))
        );
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_same_readings_give_the_same_design_to_the_last_bit(string code)
    {
        var (once, again) = (Sized(code), Sized(code));
        again.Dimensions.ShouldBe(once.Dimensions);
        again.Working.ShouldBe(once.Working);
        again.Findings.ShouldBe(once.Findings);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Whatever_is_not_known_makes_it_not_selectable(string code)
    {
        var pipe = APipe.Dn100 with { NominalWall = Length.Zero };
        var service = APipe.CoolingWater with { Fluid = "" };
        var claim = MethodCatalogue.Find(code).Claims(pipe, Examples.All[code].Defect, service);
        claim.Findings.ShouldContain(f => f.Code == "not-selectable" && f.Blocks && f.Words.Contains("fluid"));
    }

    [Fact]
    public void Crack_like_damage_blocks_every_weldless_method_absolutely()
    {
        var crack = APipe.Pinhole with { Kind = DefectKind.CrackLike };
        foreach (var method in MethodCatalogue.All.Where(m => !m.Welded))
            method
                .Claims(APipe.Dn100, crack, APipe.CoolingWater)
                .Findings.ShouldContain(f => f.Code == "crack-like" && f.Blocks, method.Code);
        Inside(crack, APipe.CoolingWater).ShouldBe(["section-replacement"]);
    }

    [Fact]
    public void Every_code_is_found_and_an_unknown_one_is_refused_with_the_list()
    {
        MethodCatalogue.All.Select(m => m.Code).ShouldBeUnique();
        Should
            .Throw<ImpossibleInputException>(() => MethodCatalogue.Find("glue"))
            .Message.ShouldContain("banded-patch");
    }

    [Fact]
    public void Claims_are_ranked_inside_first_and_barred_last_each_with_a_reason()
    {
        var ranked = MethodCatalogue.Claims(
            APipe.Dn100,
            APipe.Pinhole with
            {
                Growing = true,
            },
            APipe.CoolingWater with
            {
                Flammable = true,
            }
        );
        ranked.Count.ShouldBe(MethodCatalogue.All.Count);
        ranked.Select(r => r.Rank).ShouldBe(Enumerable.Range(1, ranked.Count));
        ranked[0].Claim.Method.ShouldBe("section-replacement");
        ranked[^1].Claim.Method.ShouldBe("banded-patch");
        ranked[^1].Why.ShouldBe("Barred (flammable, growing); seals only; the pipe must carry the rest.");
        var order = ranked
            .Select(r =>
                r.Claim.Barred ? 2
                : r.Claim.Inside ? 0
                : 1
            )
            .ToList();
        order.ShouldBe(order.Order());
    }

    [Fact]
    public void Codes_of_dimensions_are_unique_and_end_in_their_unit()
    {
        DimensionKinds.All.Select(k => k.Code).ShouldBeUnique();
        DimensionKinds.All.Count.ShouldBeGreaterThan(50);
        foreach (var kind in DimensionKinds.All.Where(k => k.Unit == "mm"))
            kind.Code.ShouldEndWith("Mm");
    }

    private static string[] Inside(Defect defect, Service service) =>
        [
            .. MethodCatalogue
                .Claims(APipe.Dn100, defect, service)
                .Where(r => r.Claim.Inside)
                .Select(r => r.Claim.Method),
        ];

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex Hyphened();

    [GeneratedRegex("^[a-z]+([A-Z][a-z0-9]*)*$")]
    private static partial Regex Camel();
}
