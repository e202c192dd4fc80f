using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.People;

public sealed class SessionOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_one_time_password_opens_nothing_but_the_change_of_itself()
    {
        var scene = await workshop.Scene();
        await scene.Ada.SetOneTimePassword(scene.NameOf("tove"), new SetOneTimePassword("one time and no more"));
        var tove = scene.Device();
        var session = await tove.SignIn(new SignIn(scene.NameOf("tove"), "one time and no more"));
        session.Me.PasswordChangeOwed.ShouldBeTrue();
        var no = await Should.ThrowAsync<Refused>(() => tove.Register(new RegisterFilter()));
        (no.Status, no.Code).ShouldBe((403, "password-change-owed"));

        await tove.ChangePassword(new ChangePassword("one time and no more", SignedIn.Password));
        (await tove.Me()).PasswordChangeOwed.ShouldBeFalse();
        (await tove.Register(new RegisterFilter())).Rows.ShouldBeEmpty();
        var old = new SignIn(scene.NameOf("tove"), "one time and no more");
        (await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(old))).Status.ShouldBe(401);
        (await scene.Device().SignIn(scene.Right("tove"))).Me.FullName.ShouldBe("Tove Aune");
    }

    [Fact]
    public async Task A_one_time_password_that_nobody_used_ends_after_a_week()
    {
        var scene = await workshop.Scene();
        await scene.Ada.SetOneTimePassword(scene.NameOf("tove"), new SetOneTimePassword("one time and no more"));
        scene.Clock.PassDays(7.01);
        var late = new SignIn(scene.NameOf("tove"), "one time and no more");
        (await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(late))).Status.ShouldBe(401);
    }

    [Fact]
    public async Task A_session_lasts_a_shift_and_ends()
    {
        var scene = await workshop.Scene();
        var tove = await scene.SignIn("tove");
        scene.Clock.Pass(TimeSpan.FromHours(11.9));
        (await tove.Me()).FullName.ShouldBe("Tove Aune");
        scene.Clock.Pass(TimeSpan.FromHours(0.2));
        var no = await Should.ThrowAsync<Refused>(() => tove.Me());
        (no.Status, no.Code).ShouldBe((401, "not-signed-in"));
    }

    [Fact]
    public async Task Signing_out_revokes_the_token()
    {
        var scene = await workshop.Scene();
        var tove = await scene.SignIn("tove");
        var token = tove.Token;
        await tove.SignOut();
        tove.Token = token;
        (await Should.ThrowAsync<Refused>(() => tove.Me())).Status.ShouldBe(401);
    }

    [Fact]
    public async Task A_disabled_person_is_shut_out_on_his_next_call()
    {
        var scene = await workshop.Scene();
        var tove = await scene.SignIn("tove");
        var person = await scene.Ada.Person(scene.NameOf("tove"));
        await scene.Ada.ChangePerson(person.Name, person.Details with { Disabled = true }, person.Version);
        (await Should.ThrowAsync<Refused>(() => tove.Me())).Status.ShouldBe(401);
        (await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(scene.Right("tove")))).Status.ShouldBe(401);
    }

    [Fact]
    public async Task An_outside_signers_access_ends_with_his_authority()
    {
        var scene = await workshop.Scene();
        var tove = await scene.SignIn("tove");
        var person = await scene.Ada.Person(scene.NameOf("tove"));
        var outside = new OutsideAuthority("welded repairs of the stock line", scene.Clock.Today.AddDays(3));
        await scene.Ada.ChangePerson(person.Name, person.Details with { Outside = outside }, person.Version);
        var tomorrow = await scene.Device().SignIn(scene.Right("tove"));
        scene.Clock.PassDays(5);
        tove.Token = tomorrow.Token;
        (await Should.ThrowAsync<Refused>(() => tove.Me())).Status.ShouldBe(401);
        (await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(scene.Right("tove")))).Status.ShouldBe(401);
    }

    [Fact]
    public async Task Five_wrong_passwords_lock_for_ten_minutes_whatever_comes_sixth()
    {
        var scene = await workshop.Scene();
        await scene.SignIn("tove");
        var device = scene.Device();
        for (var i = 0; i < 5; i++)
            (await Should.ThrowAsync<Refused>(() => device.SignIn(scene.Wrong("tove")))).Code.ShouldBe(
                "sign-in-failed"
            );
        (await Should.ThrowAsync<Refused>(() => device.SignIn(scene.Right("tove")))).Status.ShouldBe(401);
        (await scene.Ada.Person(scene.NameOf("tove"))).LockedUntil.ShouldBe(scene.Clock.Now.AddMinutes(10));
        scene.Clock.Pass(TimeSpan.FromMinutes(10.1));
        (await device.SignIn(scene.Right("tove"))).Me.FullName.ShouldBe("Tove Aune");
    }

    [Fact]
    public async Task Fifteen_wrong_passwords_at_once_are_no_way_round_the_lock()
    {
        var scene = await workshop.Scene();
        await scene.SignIn("tove");
        var tries = Enumerable
            .Range(0, 15)
            .Select(_ => Should.ThrowAsync<Refused>(() => scene.Device().SignIn(scene.Wrong("tove"))));
        await Task.WhenAll(tries);
        (await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(scene.Right("tove")))).Status.ShouldBe(401);
    }

    [Fact]
    public async Task A_name_that_does_not_exist_reads_like_a_wrong_password()
    {
        var scene = await workshop.Scene();
        await scene.SignIn("tove");
        var wrong = await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(scene.Wrong("tove")));
        var nobody = await Should.ThrowAsync<Refused>(() => scene.Device().SignIn(scene.Wrong("nobody")));
        (nobody.Status, nobody.Code, nobody.Message).ShouldBe((wrong.Status, wrong.Code, wrong.Message));
    }

    [Fact]
    public async Task Sign_in_is_rate_limited_by_address()
    {
        var scene = await workshop.Scene();
        var (one, other) = (scene.Device(), scene.Device());
        var answers = new List<int>();
        for (var i = 0; i < 21; i++)
            answers.Add((await Should.ThrowAsync<Refused>(() => one.SignIn(scene.Wrong($"nobody{i}")))).Status);
        answers.Take(20).ShouldAllBe(status => status == 401);
        answers[20].ShouldBe(429);
        (await Should.ThrowAsync<Refused>(() => other.SignIn(scene.Wrong("nobody")))).Status.ShouldBe(401);
    }

    [Fact]
    public async Task A_weak_password_is_refused_with_the_reason()
    {
        var scene = await workshop.Scene();
        var tove = await scene.SignIn("tove");
        foreach (var weak in new[] { "aaaaaaaaaaaaaa", $"{scene.NameOf("tove")} is my name" })
        {
            var ask = new ChangePassword(SignedIn.Password, weak);
            var no = await Should.ThrowAsync<Refused>(() => tove.ChangePassword(ask));
            (no.Status, no.Fields.Keys.Single()).ShouldBe((400, "password"));
        }
        var wrong = new ChangePassword("not the right one at all", "four swans on the weir");
        (await Should.ThrowAsync<Refused>(() => tove.ChangePassword(wrong))).Fields.Keys.ShouldBe(["current"]);
    }

    [Fact]
    public async Task A_change_of_password_ends_every_other_sign_in()
    {
        var scene = await workshop.Scene();
        var desk = await scene.SignIn("tove");
        var phone = scene.Device();
        await phone.SignIn(scene.Right("tove"));
        await desk.ChangePassword(new ChangePassword(SignedIn.Password, "four swans on the weir"));
        (await Should.ThrowAsync<Refused>(() => phone.Me())).Status.ShouldBe(401);
        (await desk.Me()).FullName.ShouldBe("Tove Aune");
    }

    [Fact]
    public async Task A_person_sees_his_sign_ins_and_ends_one()
    {
        var scene = await workshop.Scene();
        var desk = await scene.SignIn("anton");
        var phone = scene.Device();
        await phone.SignIn(scene.Right("anton") with { Device = "phone" });
        var seen = await desk.SignIns();
        seen.Single(s => s.Current).Device.ShouldBe("desk in the shift office");
        await desk.EndSignIn(seen.Single(s => s.Device == "phone").Id);
        (await Should.ThrowAsync<Refused>(() => phone.Me())).Status.ShouldBe(401);
        var tove = await scene.SignIn("tove");
        var notHers = seen.Single(s => s.Current).Id;
        (await Should.ThrowAsync<Refused>(() => tove.EndSignIn(notHers))).Status.ShouldBe(404);
        (await scene.Ada.SignInsOf(scene.NameOf("anton"))).Count.ShouldBeGreaterThanOrEqualTo(2);
        await scene.Ada.EndSignInsOf(scene.NameOf("anton"));
        (await Should.ThrowAsync<Refused>(() => desk.Me())).Status.ShouldBe(401);
    }
}
