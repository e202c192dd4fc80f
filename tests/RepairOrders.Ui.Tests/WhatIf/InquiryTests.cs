using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Contract;
using RepairOrders.Ui.Parts;
using RepairOrders.Ui.WhatIf;
using Shouldly;
using Xunit;

namespace RepairOrders.Ui.Tests.WhatIf;

/// <summary>A calculation as it is typed, sent and put into an address.</summary>
public sealed class InquiryTests
{
    public static TheoryData<string> All => [.. Subjects.Groups.SelectMany(g => g.Subjects).Select(s => s.Code)];

    [Fact]
    public void Every_subject_of_the_service_has_its_page() => All.Count.ShouldBe(23);

    [Theory]
    [MemberData(nameof(All))]
    public void An_example_typed_into_the_form_is_sent_as_it_stands(string code)
    {
        var inquiry = Filled(code);
        var ask = inquiry.Ask();
        inquiry.Wrong.ShouldBeEmpty();
        Reads(inquiry, ask!).ShouldBe(Reads(inquiry, inquiry.Subject.Example()));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void An_address_carries_all_that_was_typed(string code)
    {
        var inquiry = Filled(code);
        var address = inquiry.Address().ShouldNotBeNull();
        var opened = New(code);
        opened.Take(address[address.IndexOf('?', StringComparison.Ordinal)..]);
        opened.Draft.Typed.ShouldBe(inquiry.Draft.Typed, ignoreOrder: true);
    }

    [Fact]
    public void A_value_in_inches_is_kept_as_typed_and_sent_in_millimetres()
    {
        var inquiry = Filled("wall-thickness");
        inquiry.Draft["pipe.outsideDiameterMm"] = "8.625 in";
        inquiry.Ask()!["pipe"]!["outsideDiameterMm"]!.GetValue<double>().ShouldBe(219.075, 1e-9);
        inquiry.Draft["pipe.outsideDiameterMm"].ShouldBe("8.625 in");
        inquiry.Address()!.ShouldContain("pipe.outsideDiameterMm=8.625%20in");
    }

    [Fact]
    public void A_field_that_cannot_be_read_is_named_with_what_is_allowed()
    {
        var inquiry = Filled("wall-thickness");
        inquiry.Draft["pipe.outsideDiameterMm"] = "wide";
        inquiry.Draft["duty.designPressureBar"] = "";
        inquiry.Ask().ShouldBeNull();
        inquiry.Wrong["pipe.outsideDiameterMm"].ShouldContain("\"wide\"; allowed is a number, in mm");
        inquiry.Wrong["duty.designPressureBar"].ShouldContain("missing");
    }

    [Fact]
    public void An_address_cannot_make_the_form_draw_millions_of_rows()
    {
        var inquiry = New("remaining-life");
        inquiry.Take("?readings[99999999].wallMm=5&readings[1].wallMm=6&nonsense=7");
        inquiry.Draft.Typed.Keys.ShouldBe(["readings[1].wallMm"]);
    }

    [Theory]
    [InlineData("8 in", "8", "in")]
    [InlineData("203.2", "203.2", "mm")]
    [InlineData("1e-3 m", "1e-3", "m")]
    [InlineData("", "", "mm")]
    public void A_text_is_told_apart_in_number_and_unit(string typed, string number, string unit) =>
        UnitSwitch.Parts(typed, "mm").ShouldBe((number, unit));

    [Fact]
    public void Units_are_switched_to_five_figures_and_back()
    {
        UnitSwitch.Converted("219.1", "mm", "in").ShouldBe("8.626");
        UnitSwitch.Converted("30", "bar", "psi").ShouldBe("435.11");
        UnitSwitch.Converted("20", "°C", "°F").ShouldBe("68");
        UnitSwitch.Converted("wide", "mm", "in").ShouldBeNull();
    }

    [Theory]
    [InlineData("outsideDiameterMm", "outsideDiameter", "mm")]
    [InlineData("atmosphereBarAbs", "atmosphere", "bar abs")]
    [InlineData("floorMmPerYear", "floor", "mm/y")]
    [InlineData("setForLoadH", "setForLoad", "h")]
    public void A_unit_is_taken_out_of_a_name(string name, string stem, string unit) =>
        UnitInName.Of(name).ShouldBe((stem, unit));

    [Fact]
    public void A_survey_is_taken_into_the_assessment_and_inputs_into_the_sizing()
    {
        var taken = Takings.Of(Filled("wall-loss-grid"), "2026-03-02");
        taken["survey.axialSpacing"].ShouldBe("20");
        taken["survey.readings"].ShouldContain("3.1");
        taken["readings[0].where"].ShouldBe("beside");
        Takings.Of(Filled("laminate-wrap"), "2026-03-02")["values.softeningC"].ShouldBe("100");
        var walls = Takings.Of(Filled("remaining-life"), "2026-03-02");
        walls["readings[0].wall"].ShouldBe("5.2");
        walls["earlierReadings[1].wall"].ShouldBe("6.1");
    }

    private static Inquiry New(string code)
    {
        var subject = Subjects.Find(code)!;
        return new(subject)
        {
            Inputs = [.. Keys(subject).Select(k => new InputView(k, k, k, "-", 0, 1e6, null, "", null))],
        };
    }

    private static IEnumerable<string> Keys(Subject subject) =>
        subject.Example()["inputs"] is JsonObject inputs ? inputs.Select(i => i.Key) : [];

    private static Inquiry Filled(string code)
    {
        var inquiry = New(code);
        inquiry.Fill(inquiry.Subject.Example());
        return inquiry;
    }

    // As the contract reads it: left out and given at its default are the same.
    private static string Reads(Inquiry inquiry, JsonObject ask)
    {
        var read = JsonSerializer.Deserialize(ask, inquiry.Subject.Ask, RepairOrdersClient.Json)!;
        var json = JsonSerializer.SerializeToNode(read, inquiry.Subject.Ask, RepairOrdersClient.Json)!.AsObject();
        if (json["inputs"] is null or JsonObject { Count: 0 })
            json.Remove("inputs");
        return json.ToJsonString();
    }
}
