using System.Text.Json;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Proving;

public sealed class ProvingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task An_order_goes_from_approval_into_service()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.InService);
        (await scene.Signe.PickList(number)).Out.ShouldBeEmpty();
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
        var acceptance = order.Records.Single(r => r.Kind == "acceptance");
        acceptance.Summary.ShouldBe("in service, tag T-118, limits 6 bar; told: day shift, by the board");
    }

    [Fact]
    public async Task Every_refusal_of_a_proof_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var open = await AnOrder.Fitting(scene);
        var hold = await Refuses(
            "hold-points-open",
            async () => await scene.Tove.RecordProof(open, await scene.Test(open))
        );
        hold.Message.ShouldContain("girth", Case.Insensitive);

        var number = await AnOrder.Fitted(scene);
        var proof = await scene.Test(number);
        var test = proof.Test!;
        await Is("no-test", proof with { Test = null });
        await Is("tag-photo-missing", proof with { TagPhoto = Guid.NewGuid() });
        await Is("instrument-not-listed", proof with { Test = test with { Gauge = "PG-0" } });
        await Is("gauge-range", proof with { Test = test with { Gauge = "PG-25" } });
        await Is("held-too-short", proof with { Test = test with { Hold = Measure.Of(5, "min") } });
        await Is("test-below-service", proof with { Test = test with { Pressure = Measure.Of(5, "bar") } });
        await scene.Signe.AddInstrument(
            new(
                scene.Site,
                "PG-1000",
                InstrumentKind.PressureGauge,
                "gauge 0 to 1000 bar",
                scene.Clock.Today.AddDays(90),
                null,
                Measure.Of(1000, "bar")
            )
        );
        var high = test with { Pressure = Measure.Of(400, "bar"), Gauge = "PG-1000" };
        await Is("test-above-wall", proof with { Test = high });

        Task<Refused> Is(string code, RecordProof ask) => Refuses(code, () => scene.Tove.RecordProof(number, ask));
    }

    [Fact]
    public async Task Every_refusal_of_an_acceptance_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitted(scene);
        var accept = new AcceptRepair("day shift, by the board", IsolationsRemoved: true);
        await Refuses("not-in-charge", () => scene.Mara.AcceptRepair(number, accept));
        await Refuses("not-proved", () => scene.Olaf.AcceptRepair(number, accept));
        await Refuses("not-proved-yet", () => scene.Olaf.WitnessProof(number, Guid.NewGuid(), new()));
        await Refuses("no-departure", () => scene.Ines.AcceptDepartures(number, new("as strong as drawn")));
        var proof = await scene.Tove.RecordProof(
            number,
            await scene.Test(number) with
            {
                Departure = "gap bridged by a strip",
            }
        );
        await Refuses("cannot-witness", () => scene.Anton.WitnessProof(number, proof.Id, new()));
        await Refuses("witness-missing", () => scene.Olaf.AcceptRepair(number, accept));
        await scene.Olaf.WitnessProof(number, proof.Id, new("tight"));
        await Refuses("departure-open", () => scene.Olaf.AcceptRepair(number, accept));
        await scene.Ines.AcceptDepartures(number, new("as strong as drawn"));
        await Refuses("first-look-not-accepted", () => scene.Olaf.AcceptRepair(number, accept));
        await Refuses("not-the-owner", () => scene.Olaf.AcceptFirstLook(number, new()));
        await scene.Mara.AcceptFirstLook(number, new());
        await Refuses("first-look-taken", () => scene.Mara.AcceptFirstLook(number, new()));
        await Refuses(
            "isolations-on",
            () => scene.Olaf.AcceptRepair(number, accept with { IsolationsRemoved = false })
        );
        await scene.Olaf.AcceptRepair(number, accept);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.InService);
    }

    [Fact]
    public async Task A_test_at_service_pressure_alone_is_for_category_D()
    {
        var scene = await workshop.Scene();
        await scene.Line("CW-150-3104", l => l.ServiceCategory = "normal");
        var number = await AnOrder.ApprovedWith(scene);
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        var proof = await scene.Test(number);
        await Refuses(
            "service-test-alone",
            () => scene.Tove.RecordProof(number, proof with { Test = proof.Test! with { Kind = TestKind.ServiceLeak } })
        );
    }

    [Fact]
    public async Task Who_fits_does_not_accept_whatever_hats_he_wears()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Issued(scene);
        Cast.Member hats = new(
            "lars",
            "Lars Eide",
            [Role.Technician, Role.Supervisor],
            [.. Cast.Methods, Api.People.Competence.OperationsInCharge]
        );
        var lars = await scene.Hire(hats, null, null);
        var ready = AnOrder.Readiness(scene);
        var id = (await lars.Me()).Id;
        await scene.Olaf.ReadyOrder(
            number,
            ready with
            {
                Fitters = [scene.IdOf("tove"), id],
                TalkSignedBy = [scene.IdOf("tove"), id],
            }
        );
        await scene.Fit(number);
        await Refuses("own-fit", () => lars.AcceptRepair(number, new("day shift", IsolationsRemoved: true)));
    }

    [Fact]
    public async Task A_test_is_waived_by_engineer_and_inspector_with_another_examination()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitted(scene);
        var waive = new WaiveTest(WaiverCapacity.Engineer, "no water can be brought there", "dye, no indication");
        await Refuses(
            "waiver-capacity",
            () => scene.Ines.WaiveTest(number, waive with { As = WaiverCapacity.Inspector })
        );
        await scene.Ines.WaiveTest(number, waive);
        await Refuses("waiver-signed", () => scene.Pavel.WaiveTest(number, waive));
        await scene.Pavel.WaiveTest(number, waive with { As = WaiverCapacity.Inspector });
        var proof = await scene.Tove.RecordProof(number, await scene.Test(number) with { Test = null });
        proof.Summary.ShouldBe("test waived; tag T-118");
        proof.Tone.ShouldBe(Tone.Watch);
    }

    [Fact]
    public async Task A_repair_that_leaks_under_test_has_failed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitted(scene);
        var test = (await scene.Test(number)).Test! with { Tight = false, Seen = "drips at the gap" };
        var proof = await scene.Tove.RecordProof(number, new(test, Measure.Of(20, "°C"), null, null));
        proof.Tone.ShouldBe(Tone.Stop);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Failed);
        proof.Body.Deserialize<SignedProof>(RepairOrdersClient.Json)!.Failed.ShouldBeTrue();
    }
}
