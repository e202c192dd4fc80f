using System.Text.Json;
using RepairOrders.Contract;
using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Tests.Orders;

/// <summary>A signed record reads as a person would say it.</summary>
public sealed class ReadableTests
{
    private static IReadOnlyList<Readable> Of(
        string kind,
        Dictionary<Guid, string>? names = null,
        TimeZoneInfo? zone = null
    ) => Readable.Of(CannedOrder.Records().Last(r => r.Kind == kind).Body, RecordNames.Body(kind), names ?? [], zone);

    [Fact]
    public void Units_stand_as_they_were_entered()
    {
        Of("request").Single(f => f.Label == "Operating pressure").Text.ShouldBe("90 psi");
        Of("visit").Single(f => f.Label == "Readings").Rows!.Single().Select(c => c.Text).ShouldContain("0.25 in");
    }

    [Fact]
    public void Choices_are_words_and_ticks_are_yes_or_no()
    {
        Of("request").Single(f => f.Label == "Found how").Text.ShouldBe("Round");
        Of("visit").Single(f => f.Label == "Result").Text.ShouldBe("Fit to stay");
        Of("visit").Single(f => f.Label == "Moved").Text.ShouldBe("no");
    }

    [Fact]
    public void The_unit_in_a_name_stands_behind_the_figure() =>
        Of("visit").Single(f => f.Label == "Rate").Text.ShouldBe("0.1 mm/y");

    [Fact]
    public void Findings_stand_with_their_tone_and_source_and_not_as_codes() =>
        Of("design")
            .Single(f => f.Label == "Method")
            .Inside!.Single(f => f.Label == "Findings")
            .Findings!.ShouldContain(f => f.Words == "DN 150 is inside 25 to 600");

    [Fact]
    public void A_person_is_named_and_an_unknown_identity_is_left_out()
    {
        Of("hand-over", new() { [CannedOrder.Me] = "Ines Duarte" })
            .Single(f => f.Label == "To")
            .Text.ShouldBe("Ines Duarte");
        Of("hand-over").ShouldNotContain(f => f.Label == "To");
    }

    [Fact]
    public void A_moment_stands_on_the_clock_of_the_site() =>
        Of("consent", zone: TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo"))
            .Single(f => f.Label == "Given at")
            .Text.ShouldBe("2026-03-14 10:00");

    [Fact]
    public void Machine_words_are_left_out() =>
        Of("design").ShouldNotContain(f => f.Label == "Fingerprint" || f.Label == "Assessment");

    [Fact]
    public void A_field_is_explained_by_the_contract() =>
        Of("visit").Single(f => f.Label == "Result").Hint.ShouldNotBeNullOrWhiteSpace();
}
