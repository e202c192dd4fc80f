using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

public class RegimeAndEmergencyTests
{
    private static readonly EmergencyEntry Entry = new(
        "banded-patch",
        Length.FromMillimeters(60.3),
        Length.FromMillimeters(219.1),
        Pressure.FromBars(4),
        Temperature.FromDegreesCelsius(60),
        ["Cooling water", "Effluent"]
    );

    private static readonly EmergencyFacts Facts = new(
        DefectKind.Pinhole,
        CauseUnknown: true,
        ListedContents: false,
        FailedBefore: false
    );

    private static IEnumerable<Finding> Under(Regime regime, Service service) =>
        MethodCatalogue.Claims(APipe.Dn100, APipe.Pinhole, service, regime)[0].Claim.Findings;

    private static List<string> Refused(Service service, EmergencyFacts facts, double diameter = 114.3)
    {
        var findings = EmergencyList.Findings(Entry, Length.FromMillimeters(diameter), service, facts);
        findings.Where(f => f.Severity == Severity.Fail).ShouldAllBe(f => f.Blocks);
        return [.. findings.Where(f => f.Severity == Severity.Fail).Select(f => f.Code)];
    }

    // NRC Generic Letter 90-05; flaw size and moderate energy from memory.
    [Fact]
    public void Nuclear_pipe_needs_relief()
    {
        var findings = Under(Regime.Nuclear, APipe.At(20)).ToList();
        findings.Single(f => f.Code == "regulator-relief").Severity.ShouldBe(Severity.Fail);
        findings.Single(f => f.Code == "moderate-energy-pressure").Severity.ShouldBe(Severity.Fail);
        findings.Single(f => f.Code == "flaw-size").Limit!.Value.ShouldBe(0.15 * Math.PI * 114.3, 1e-9);
    }

    // IACS Rec. 76.
    [Fact]
    public void A_classed_ship_tells_its_class()
    {
        Under(Regime.Ship, APipe.CoolingWater).ShouldContain(f => f.Code == "class-condition");
        Under(Regime.Ship, APipe.CoolingWater with { Toxic = true }).ShouldContain(f => f.Code == "surveyor");
        Under(Regime.Plant, APipe.CoolingWater).ShouldNotContain(f => f.Code == "class-condition");
    }

    [Fact]
    public void An_entry_of_the_emergency_list_admits_what_it_was_signed_for() =>
        Refused(APipe.CoolingWater, Facts).ShouldBeEmpty();

    [Fact]
    public void And_nothing_outside_its_limits()
    {
        Refused(APipe.At(4.1), Facts).ShouldBe(["emergency-pressure"]);
        Refused(APipe.CoolingWater, Facts, diameter: 50).ShouldBe(["emergency-diameter-least"]);
        Refused(APipe.CoolingWater, Facts, diameter: 300).ShouldBe(["emergency-diameter"]);
        Refused(APipe.CoolingWater with { Fluid = "Condensate" }, Facts).ShouldBe(["emergency-fluid"]);
        Refused(APipe.CoolingWater with { OperatingTemperature = Temperature.FromDegreesCelsius(61) }, Facts)
            .ShouldBe(["emergency-temperature"]);
    }

    [Fact]
    public void What_bars_the_emergency_path()
    {
        Refused(APipe.CoolingWater with { Category = ServiceCategory.M }, Facts).ShouldBe(["emergency-category-m"]);
        Refused(APipe.CoolingWater, Facts with { ListedContents = true }).ShouldBe(["emergency-contents"]);
        Refused(APipe.CoolingWater, Facts with { Kind = DefectKind.CrackLike }).ShouldBe(["emergency-crack"]);
        Refused(APipe.CoolingWater with { AboveAutoIgnition = true }, Facts).ShouldBe(["emergency-cause-unknown-hot"]);
        Refused(APipe.CoolingWater, Facts with { FailedBefore = true }).ShouldBe(["emergency-failed-before"]);
    }

    [Fact]
    public void Steel_that_may_be_brittle_or_creeps_needs_a_signed_basis()
    {
        var cold = APipe.CoolingWater with { OperatingTemperature = Temperature.FromDegreesCelsius(-30) };
        var hot = APipe.CoolingWater with { OperatingTemperature = Temperature.FromDegreesCelsius(400) };
        Claim(cold).ShouldContain(f => f.Code == "brittle-temperature" && f.Severity == Severity.Fail);
        Claim(hot).ShouldContain(f => f.Code == "creep-range" && f.Severity == Severity.Fail);

        static IReadOnlyList<Finding> Claim(Service service) =>
            MethodCatalogue.Find("bolted-clamp").Claims(APipe.Dn100, APipe.Pinhole, service).Findings;
    }
}
