using RepairOrders.Contract;
using RepairOrders.Ui.AtThePipe;

namespace RepairOrders.Ui.Tests.AtThePipe;

/// <summary>One thing at a time: which part of a step is asked for now.</summary>
public sealed class PipePartsTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_step_without_climate_mix_or_cure_is_signed_at_once() =>
        PipeParts.Now(View(), Step(Evidence.ThicknessReadings, Evidence.Photo)).ShouldBe(PipePart.Sign);

    [Fact]
    public void The_climate_is_read_before_a_mix_is_begun() =>
        PipeParts.Now(View(), Step(Evidence.Mix)).ShouldBe(PipePart.Climate);

    [Fact]
    public void A_no_go_asks_for_another_reading_and_not_for_a_mix() =>
        PipeParts.Now(View(climate: false), Step(Evidence.Mix)).ShouldBe(PipePart.Climate);

    [Fact]
    public void On_a_go_the_mix_is_begun() =>
        PipeParts.Now(View(climate: true), Step(Evidence.Mix)).ShouldBe(PipePart.Mix);

    [Fact]
    public void While_a_mix_may_be_used_the_step_is_signed_and_after_that_mixed_anew()
    {
        PipeParts.Now(View(true, Mix(minutesLeft: 5)), Step(Evidence.Mix)).ShouldBe(PipePart.Sign);
        PipeParts.Now(View(true, Mix(minutesLeft: -1)), Step(Evidence.Mix)).ShouldBe(PipePart.Mix);
        PipeParts.Now(View(true, Mix(minutesLeft: -1, used: true)), Step(Evidence.Mix)).ShouldBe(PipePart.Sign);
    }

    [Fact]
    public void The_pipe_is_read_until_everything_has_set()
    {
        var step = Step(Evidence.CureLog, Evidence.HardnessReading);
        PipeParts.Now(View(), step).ShouldBe(PipePart.Cure);
        PipeParts.Now(View() with { Work = Work(cures: [Cure(false), Cure(true)]) }, step).ShouldBe(PipePart.Cure);
        PipeParts.Now(View() with { Work = Work(cures: [Cure(true)]) }, step).ShouldBe(PipePart.Sign);
    }

    [Fact]
    public void A_climate_is_told_in_words_with_its_reason()
    {
        var no = ClimateWords.Of(Climate(go: false));
        no.Dew.ShouldBe("Dew point 7.9 °C, pipe 1.5 °C above it. Dry steel needs 10.9 °C.");
        no.Lines.ShouldBe([new ClimateLine(false, "no-go: laminating resin", "Steel is 1.5 K above the dew point.")]);
        ClimateWords.Of(Climate(go: true) with { MarginK = -0.4 }).Dew.ShouldContain("pipe 0.4 °C below it");
    }

    private static PipeStep Step(params Evidence[] evidence) =>
        new("step", "A step", PipeStepKind.HoldPoint, "technician", evidence, null, null, null, [], [], false);

    private static SignedClimate Climate(bool go) =>
        new(
            new(Measure.Of(12, "°C"), 76, Measure.Of(9.4, "°C"), "HY-5"),
            7.91,
            1.49,
            10.91,
            [
                new(
                    "RESIN-1",
                    "laminating resin",
                    go,
                    go
                        ? []
                        :
                        [
                            new(
                                "dew-margin",
                                FindingSeverity.Fail,
                                "Steel is 1.5 K above the dew point.",
                                1.5,
                                3,
                                "K",
                                "",
                                true
                            ),
                        ]
                ),
            ]
        );

    private static MixClock Mix(double minutesLeft, bool used = false) =>
        new(
            Guid.Empty,
            "RESIN-1",
            "laminating resin",
            "R-1",
            Now.AddMinutes(minutesLeft - 20),
            Now.AddMinutes(minutesLeft),
            null,
            used ? Now.AddMinutes(minutesLeft - 2) : null,
            minutesLeft,
            Tone.Go
        );

    private static CureClockView Cure(bool set) =>
        new("putty", Now, Now, 20, set ? 2 : 1, 2, 24, set, false, Now.AddHours(1), null, []);

    private static FittingView Work(
        SignedClimate? climate = null,
        IReadOnlyList<MixClock>? mixes = null,
        IReadOnlyList<CureClockView>? cures = null
    ) => new([], null, "PTW 1", null, [], null, climate, climate is null ? null : Now, mixes ?? [], cures ?? [], Now);

    private static PipeView View(bool? climate = null, params MixClock[] mixes) =>
        new(
            new("mill-1", "Board mill", null, "", "", "", null, null, null, null, null, null, Stage.Fitting, 1, 1),
            "Europe/Oslo",
            "1",
            false,
            [],
            Work(climate is { } go ? Climate(go) : null, mixes),
            climate is null ? null : Now.AddMinutes(40),
            [],
            new(null, null, null, null, null, null, null, null, null, null),
            [],
            [],
            [],
            null,
            [],
            null,
            null,
            null,
            Now
        );
}
