using RepairOrders.Api.Tests.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.AtThePipe;

/// <summary>The phone handed to another signer: he signs, by his own code and under his own rights, and the journal says on whose phone.</summary>
public sealed class ShortCodeSignatures(Workshop workshop)
{
    private const string Code = "730519";

    [Fact]
    public async Task The_record_is_his_and_the_journal_says_on_whose_phone_it_was_signed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var anton = await OnToves(scene, "anton", number);
        await scene.Photograph(number, PhotoOf.HoldPoint, "as-described");
        var point = (await anton.AtThePipe(number)).Work.Points[0].Point;
        var signed = await anton.ReleaseHoldPoint(number, await scene.Evidenced(number, point));
        signed.By.ShouldBe("Anton Reyes");
        var journal = await scene.Ines.Journal(number);
        journal.BrokenAt.ShouldBeNull();
        var line = journal.Lines[^1];
        line.By.ShouldBe("Anton Reyes");
        line.Why.ShouldBe("by short code on the device of Tove Aune");
        // What he signs on his own phone says nothing of the kind.
        await scene.Tove.StopJob(number, new StopJob("the leak grew"));
        (await scene.Ines.Journal(number)).Lines[^1].Why.ShouldBe("the leak grew");
    }

    [Fact]
    public async Task A_reason_given_stays_beside_whose_phone_it_was()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var mara = await OnToves(scene, "mara", number);
        await mara.StopJob(number, new StopJob("wind over the limit"));
        (await scene.Ines.Journal(number))
            .Lines[^1]
            .Why.ShouldBe("wind over the limit (by short code on the device of Tove Aune)");
    }

    [Fact]
    public async Task He_signs_no_more_on_it_than_on_his_own_phone()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var point = (await scene.Tove.Fitting(number)).Points[0].Point;
        var ask = await scene.Evidenced(number, point);
        // Vera is a technician who is not named in the readiness; Signe has no role for it at all.
        var vera = await OnToves(scene, "vera", number);
        (await Should.ThrowAsync<Refused>(() => vera.ReleaseHoldPoint(number, ask))).Code.ShouldBe("not-a-fitter");
        var signe = await OnToves(scene, "signe", number);
        (await Should.ThrowAsync<Refused>(() => signe.ReleaseHoldPoint(number, ask))).Code.ShouldBe("role");
    }

    [Fact]
    public async Task An_administrator_clears_a_code_and_what_it_had_opened_ends()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var anton = await OnToves(scene, "anton", number);
        (await scene.Tove.AtThePipe(number)).Steps[0].Signers.Single().HasShortCode.ShouldBeTrue();
        await scene.Ada.ClearShortCodeOf(scene.NameOf("anton"));
        (await Should.ThrowAsync<Refused>(() => anton.Order(number))).Status.ShouldBe(401);
        var ask = new SignHere(scene.NameOf("anton"), Code, number);
        (await Should.ThrowAsync<Refused>(() => scene.Tove.SignHere(ask))).Code.ShouldBe("code-failed");
        (await scene.Tove.AtThePipe(number)).Steps[0].Signers.Single().HasShortCode.ShouldBeFalse();
        (await scene.Ada.PersonChanges(scene.NameOf("anton"))).ShouldContain(c =>
            c.What == "short code cleared" && c.By == "Ada Mensah"
        );
        // His own sign-in is untouched.
        await scene.Device().SignIn(scene.Right("anton"));
    }

    private static async Task<RepairOrdersClient> OnToves(Scene scene, string name, string number)
    {
        var own = await scene.SignIn(name);
        await own.SetShortCode(new SetShortCode(SignedIn.Password, Code));
        var token = await scene.Tove.SignHere(new SignHere(scene.NameOf(name), Code, number));
        var client = scene.Device();
        client.Token = token.Token;
        return client;
    }
}
