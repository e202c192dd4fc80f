using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.People;

public sealed class ShortCodeOverHttp(Workshop workshop)
{
    private const string Code = "730519";

    [Fact]
    public async Task A_witness_signs_one_order_on_the_technicians_phone_for_five_minutes()
    {
        var (scene, order) = await AtThePipe();
        var other = (await scene.Tove.Request(Cast.Weep(scene.Site))).Title.Number;
        var token = await scene.Tove.SignHere(new SignHere(scene.NameOf("vera"), Code, order));
        token.Me.FullName.ShouldBe("Vera Sand");
        var vera = scene.Device();
        vera.Token = token.Token;

        (await vera.Order(order)).Title.Number.ShouldBe(order);
        (await vera.Me()).FullName.ShouldBe("Vera Sand");
        foreach (
            var elsewhere in new Func<Task>[]
            {
                () => vera.Order(other),
                () => vera.Register(new RegisterFilter()),
                () => vera.Request(Cast.Weep(scene.Site)),
                () => vera.ChangePassword(new ChangePassword(SignedIn.Password, "four swans on the weir")),
                () => vera.SetShortCode(new SetShortCode(SignedIn.Password, "582046")),
            }
        )
            (await Should.ThrowAsync<Refused>(elsewhere)).Code.ShouldBe("one-order-only");
        scene.Clock.Pass(TimeSpan.FromMinutes(5.1));
        (await Should.ThrowAsync<Refused>(() => vera.Order(order))).Status.ShouldBe(401);
        (await scene.Ada.SignInsOf(scene.NameOf("vera"))).ShouldContain(s => s.Order == order);
    }

    [Fact]
    public async Task Five_wrong_codes_use_it_up_until_its_owner_sets_it_again()
    {
        var (scene, order) = await AtThePipe();
        for (var i = 0; i < 5; i++)
        {
            var wrong = new SignHere(scene.NameOf("vera"), "000111", order);
            (await Should.ThrowAsync<Refused>(() => scene.Tove.SignHere(wrong))).Code.ShouldBe("code-failed");
        }
        var right = new SignHere(scene.NameOf("vera"), Code, order);
        (await Should.ThrowAsync<Refused>(() => scene.Tove.SignHere(right))).Status.ShouldBe(401);
        var vera = scene.Device();
        await vera.SignIn(scene.Right("vera"));
        await vera.SetShortCode(new SetShortCode(SignedIn.Password, Code));
        (await scene.Tove.SignHere(right)).Order.ShouldBe(order);
    }

    [Fact]
    public async Task Codes_are_tried_at_most_ten_times_a_minute_from_one_device()
    {
        var (scene, order) = await AtThePipe();
        var statuses = new List<int>();
        for (var i = 0; i < 11; i++)
        {
            var wrong = new SignHere(scene.NameOf($"nobody{i}"), "000111", order);
            statuses.Add((await Should.ThrowAsync<Refused>(() => scene.Anton.SignHere(wrong))).Status);
        }
        statuses.ShouldBe([.. Enumerable.Repeat(401, 10), 429]);
    }

    [Fact]
    public async Task Somebody_from_another_site_signs_nothing_here()
    {
        var (scene, order) = await AtThePipe();
        var elsewhere = await workshop.Scene();
        var guest = await elsewhere.SignIn("vera");
        await guest.SetShortCode(new SetShortCode(SignedIn.Password, Code));
        var ask = new SignHere(elsewhere.NameOf("vera"), Code, order);
        (await Should.ThrowAsync<Refused>(() => scene.Tove.SignHere(ask))).Status.ShouldBe(404);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Tove.SignHere(ask))).Status.ShouldBe(404);
    }

    [Fact]
    public async Task The_codes_everybody_tries_first_are_refused()
    {
        var scene = await workshop.Scene();
        var vera = await scene.SignIn("vera");
        foreach (var weak in new[] { "111111", "123456", "987654", "12345", "12a456" })
            (
                await Should.ThrowAsync<Refused>(() => vera.SetShortCode(new SetShortCode(SignedIn.Password, weak)))
            ).Fields.Keys.ShouldBe(["code"]);
        var stolen = new SetShortCode("not the right one at all", Code);
        (await Should.ThrowAsync<Refused>(() => vera.SetShortCode(stolen))).Fields.Keys.ShouldBe(["password"]);
    }

    private async Task<(Scene Scene, string Order)> AtThePipe()
    {
        var scene = await workshop.Scene();
        var vera = await scene.SignIn("vera");
        await vera.SetShortCode(new SetShortCode(SignedIn.Password, Code));
        (await vera.Me()).HasShortCode.ShouldBeTrue();
        return (scene, (await scene.Tove.Request(Cast.Weep(scene.Site))).Title.Number);
    }
}
