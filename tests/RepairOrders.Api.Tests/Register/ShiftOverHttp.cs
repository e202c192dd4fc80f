using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Register;

/// <summary>What one shift hands to the next: each fit with go or no-go, and the limits operations hold lines to.</summary>
public sealed class ShiftOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_fit_goes_or_not_by_permit_climate_and_stop_gravest_first()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var fit = await Fit(scene);
        (fit.Number, fit.Stage, fit.Released, fit.Tone).ShouldBe((number, Stage.Ready, 0, Tone.Watch));
        fit.Points.ShouldBe((await scene.Tove.Fitting(number)).Points.Count);
        fit.NextPoint.ShouldBe((await scene.Tove.Fitting(number)).Points[0].Point.Title);

        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        fit = await Fit(scene);
        fit.Tone.ShouldBe(Tone.Go);
        fit.Gate.ShouldContain("above the dew point");

        var sweating = AnOrder.Dry with { HumidityPercent = 98 };
        await scene.Tove.RecordClimate(number, sweating);
        (await Fit(scene)).Gate.ShouldBe("Go. Steel is 0.7 K below the dew point; the material is for wet steel.");

        await scene.Tove.RecordClimate(number, AnOrder.Dry with { Steel = Measure.Of(70, "°C") });
        (await Fit(scene)).Gate.ShouldStartWith("No-go for");

        scene.Clock.Pass(TimeSpan.FromHours(1.1));
        (await Fit(scene)).Tone.ShouldBe(Tone.Watch, "what was read an hour ago says nothing of now");

        await scene.Tove.StopJob(number, new("the drain runs again", NotAsWritten: false));
        (await Fit(scene)).Gate.ShouldStartWith("Stopped by Tove");

        await scene.Mara.ResumeJob(number, new("the drain was shut"));
        scene.Clock.PassDays(4);
        fit = await Fit(scene);
        fit.Tone.ShouldBe(Tone.Stop, "the permit is over");
    }

    [Fact]
    public async Task Limits_are_handed_over_while_the_repair_is_live()
    {
        var scene = await workshop.Scene();
        await AnOrder.Approved(scene);
        (await scene.Olaf.Shift()).Limits.ShouldBeEmpty("nothing is on the pipe yet");
        var number = await AnOrder.InService(scene);
        var limit = (await scene.Olaf.Shift()).Limits.ShouldHaveSingleItem();
        (limit.Number, limit.Line, limit.Limits.Pressure!.Entered).ShouldBe((number, "CW-150-3104", "6 bar"));
        limit.EndDate.ShouldNotBeNull();
        (await scene.Tove.Shift(limits: false)).Limits.ShouldBeEmpty(
            "who does not hand them over does not ask for them"
        );
    }

    private static async Task<FitUnderWay> Fit(Scene scene) => (await scene.Olaf.Shift()).Fits.ShouldHaveSingleItem();
}
