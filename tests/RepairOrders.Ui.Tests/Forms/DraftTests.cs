using RepairOrders.Contract;
using RepairOrders.Ui.Forms;

namespace RepairOrders.Ui.Tests.Forms;

public sealed class DraftTests
{
    private sealed record Reading(string Spot, [property: MeasuredIn("mm", Least = 0, Greatest = 200)] Measure Wall);

    private sealed record Asked(
        string Place,
        int Count,
        bool Hot,
        DateOnly? On,
        [property: MeasuredIn("bar", Least = 0, Greatest = 400)] Measure Pressure,
        IReadOnlyList<Reading> Readings,
        IReadOnlyList<string> Notes,
        IReadOnlyDictionary<string, double> Values
    );

    private static readonly IReadOnlyList<FieldPlan> Fields = FieldPlan.Of(typeof(Asked));

    [Fact]
    public void What_is_typed_becomes_the_ask_with_units_kept()
    {
        var draft = new Draft();
        draft["place"] = "north wall";
        draft["count"] = "3";
        draft["hot"] = "true";
        draft["pressure"] = "150 psi";
        draft["readings[0].spot"] = "12 h";
        draft["readings[0].wall"] = "0.24 in";
        draft["notes"] = "one\ntwo";
        draft["values.bandWidthMm"] = "30";
        var wrong = new Dictionary<string, string>();
        var json = draft.ToJson(Fields, wrong);
        wrong.ShouldBeEmpty();
        json.ToJsonString()
            .ShouldBe(
                """{"place":"north wall","count":3,"hot":true,"pressure":"150 psi","readings":[{"spot":"12 h","wall":"0.24 in"}],"notes":["one","two"],"values":{"bandWidthMm":30}}"""
            );
    }

    [Fact]
    public void A_value_that_cannot_be_read_names_the_field_the_value_and_what_is_allowed()
    {
        var draft = new Draft();
        draft["place"] = "x";
        draft["count"] = "three";
        draft["pressure"] = "6 mm";
        var wrong = new Dictionary<string, string>();
        draft.ToJson(Fields, wrong);
        wrong["count"].ShouldBe("\"three\" is not a number.");
        wrong["pressure"].ShouldStartWith("Pressure is \"6 mm\"; allowed is 0 to 400 bar");
    }

    [Fact]
    public void A_missing_field_that_must_be_given_is_named()
    {
        var wrong = new Dictionary<string, string>();
        new Draft().ToJson(Fields, wrong);
        wrong.Keys.ShouldBe(["place", "count", "pressure"], ignoreOrder: true);
    }

    [Fact]
    public void Taking_a_row_out_moves_the_later_ones_up()
    {
        var draft = new Draft();
        for (var i = 0; i < 3; i++)
            draft[$"readings[{i}].spot"] = $"spot {i}";
        draft.RemoveRow("readings", 1);
        draft.Rows("readings").ShouldBe(2);
        draft["readings[0].spot"].ShouldBe("spot 0");
        draft["readings[1].spot"].ShouldBe("spot 2");
    }

    [Fact]
    public void What_is_known_is_filled_in_as_it_was_entered()
    {
        Measure.TryRead("90 psi", "bar", out var pressure).ShouldBeTrue();
        var known = new Asked(
            "north wall",
            2,
            true,
            new DateOnly(2026, 3, 2),
            pressure!,
            [new("3 h", Measure.Of(6.1, "mm"))],
            ["a", "b"],
            new Dictionary<string, double> { ["x"] = 1.5 }
        );
        var draft = new Draft();
        draft.Fill(known, Fields);
        draft["pressure"].ShouldBe("90 psi");
        draft["readings[0].wall"].ShouldBe("6.1", "the field's own unit stands beside it");
        draft["notes"].ShouldBe("a\nb");
        draft["values.x"].ShouldBe("1.5");
        draft["on"].ShouldBe("2026-03-02");
        draft["hot"].ShouldBe("true");
    }

    [Theory]
    [InlineData("2026-12-03T18:15:00", "2026-12-03T18:15")]
    [InlineData("2026-12-03T18:15", "2026-12-03T18:15")]
    [InlineData("", "")]
    public void A_moment_is_kept_as_its_field_shows_it(string told, string kept) =>
        Draft.Heard(FieldKind.Moment, told).ShouldBe(kept);
}
