using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Requesting;

public sealed class RequestingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_technician_raises_an_order_and_finds_it_in_the_register()
    {
        var scene = await workshop.Scene();
        var order = await scene.Tove.Request(Cast.Weep(scene.Site));
        order.Title.Number.ShouldBe($"{scene.Site}-1");
        order.Title.Stage.ShouldBe(Stage.Requested);
        order.Records.Single().By.ShouldBe("Tove Aune");
        var register = await scene.Mara.Register(new RegisterFilter());
        register.Rows.Single().Number.ShouldBe(order.Title.Number);
        (await scene.Rune.Journal(order.Title.Number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task The_same_key_gives_the_first_answer_again_and_a_different_body_is_refused()
    {
        var scene = await workshop.Scene();
        var first = await scene.Tove.Request(Cast.Weep(scene.Site), "key-1");
        var again = await scene.Tove.Request(Cast.Weep(scene.Site), "key-1");
        again.Title.Number.ShouldBe(first.Title.Number);
        var other = Cast.Weep(scene.Site) with { Place = "somewhere else" };
        (await Should.ThrowAsync<Refused>(() => scene.Tove.Request(other, "key-1"))).Status.ShouldBe(422);
        (await scene.Mara.Register(new RegisterFilter())).Rows.Count.ShouldBe(1);
    }

    [Fact]
    public async Task A_value_is_kept_as_it_was_entered()
    {
        var scene = await workshop.Scene();
        Measure.TryRead("90 psi", "bar", out var pressure).ShouldBeTrue();
        var order = await scene.Tove.Request(Cast.Weep(scene.Site) with { OperatingPressure = pressure! });
        order.Title.Duty.ShouldBe("90 psi · 18 °C");
    }

    [Fact]
    public async Task A_hazardous_leak_without_an_immediate_measure_is_refused()
    {
        var scene = await workshop.Scene();
        var ask = Cast.Weep(scene.Site) with { Hazardous = true, ImmediateMeasures = null };
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.Request(ask));
        (no.Status, no.Code).ShouldBe((409, "hazard-without-measure"));
        no.Clears.ShouldNotBeNullOrEmpty();
    }

    [Fact]
    public async Task A_pressure_that_is_none_names_the_field_the_value_and_what_is_allowed()
    {
        var scene = await workshop.Scene();
        var ask = Cast.Weep(scene.Site) with { OperatingPressure = new Measure(5000, "bar", "5000 bar") };
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.Request(ask));
        no.Status.ShouldBe(400);
        no.Fields["operatingPressure"].Single().ShouldBe("operatingPressure is 5000 bar; allowed is 0 to 1000 bar.");
    }

    [Fact]
    public async Task An_empty_place_is_refused_by_field()
    {
        var scene = await workshop.Scene();
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.Request(Cast.Weep(scene.Site) with { Place = "" }));
        no.Status.ShouldBe(400);
        no.Fields.Keys.ShouldContain("place");
    }

    [Fact]
    public async Task A_reader_may_not_raise_and_a_stranger_is_not_let_in()
    {
        var scene = await workshop.Scene();
        (await Should.ThrowAsync<Refused>(() => scene.Rune.Request(Cast.Weep(scene.Site)))).Status.ShouldBe(403);
        (await Should.ThrowAsync<Refused>(() => scene.Stranger.Register(new RegisterFilter()))).Status.ShouldBe(401);
    }

    [Fact]
    public async Task Another_sites_people_do_not_see_it()
    {
        var here = await workshop.Scene();
        var there = await workshop.Scene();
        var order = await here.Tove.Request(Cast.Weep(here.Site));
        (await Should.ThrowAsync<Refused>(() => there.Mara.Order(order.Title.Number))).Status.ShouldBe(404);
        (await there.Mara.Register(new RegisterFilter())).Rows.ShouldBeEmpty();
    }

    [Fact]
    public async Task Ten_requests_at_once_get_ten_numbers()
    {
        var scene = await workshop.Scene();
        var orders = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => scene.Tove.Request(Cast.Weep(scene.Site))));
        orders.Select(o => o.Title.Number).Distinct().Count().ShouldBe(10);
    }
}
