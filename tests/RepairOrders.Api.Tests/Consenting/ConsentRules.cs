using RepairOrders.Api.Consenting;
using RepairOrders.Api.Lines;
using RepairOrders.Contract;
using static RepairOrders.Contract.ConsentCapacity;

namespace RepairOrders.Api.Tests.Consenting;

public sealed class ConsentRules
{
    [Fact]
    public void Two_consents_let_work_begin_and_one_does_not()
    {
        var sheaf = new Sheaf().Consented("ines", EngineerOnCall);
        sheaf.Order.Stage.ShouldBe(Stage.Requested);
        Consents.NotStanding(sheaf.Order, sheaf.Now)!.Code.ShouldBe("consents-not-standing");
        sheaf.Consented("olaf", OperationsInCharge).Order.Stage.ShouldBe(Stage.Consented);
        Consents.NotStanding(sheaf.Order, sheaf.Now).ShouldBeNull();
    }

    [Fact]
    public void Consents_lapse_after_twelve_hours_without_a_start()
    {
        var sheaf = new Sheaf().Consented("ines", EngineerOnCall).Consented("olaf", OperationsInCharge);
        sheaf.Pass(TimeSpan.FromHours(11));
        Consents.NotStanding(sheaf.Order, sheaf.Now).ShouldBeNull();
        sheaf.Pass(TimeSpan.FromHours(1));
        Consents.NotStanding(sheaf.Order, sheaf.Now).ShouldNotBeNull();
        Consent.Objection(sheaf.Order, sheaf["tove"], sheaf.Now).ShouldBeNull("they can be asked for again");
    }

    [Fact]
    public void While_both_stand_no_third_is_taken()
    {
        var sheaf = new Sheaf().Consented("ines", EngineerOnCall).Consented("olaf", OperationsInCharge);
        Consent.Objection(sheaf.Order, sheaf["tove"], sheaf.Now)!.Code.ShouldBe("consents-stand");
    }

    [Theory]
    [InlineData("wet hydrogen sulphide gas")]
    [InlineData("Chlorine, dry")]
    [InlineData("hydrofluoric acid")]
    public void Contents_on_the_list_are_barred_by_the_words_of_the_line_list(string fluid)
    {
        var sheaf = new Sheaf();
        sheaf.Order.Line!.Fluid = fluid;
        Barred(sheaf)!.Code.ShouldBe("emergency-contents");
    }

    [Fact]
    public void Category_M_is_barred()
    {
        var sheaf = new Sheaf();
        sheaf.Order.Line!.ServiceCategory = "m";
        Barred(sheaf)!.Code.ShouldBe("emergency-contents");
    }

    [Fact]
    public void An_unknown_cause_is_barred_above_auto_ignition_only()
    {
        var sheaf = new Sheaf("HO-100-0450");
        Barred(sheaf, ask => ask with { CauseKnown = false }).ShouldBeNull();
        sheaf.Order.Line!.OperatingTemperatureC = 260;
        Barred(sheaf, ask => ask with { CauseKnown = false })!.Code.ShouldBe("emergency-cause-unknown");
        Barred(sheaf).ShouldBeNull();
    }

    [Fact]
    public void A_crack_and_a_spot_that_failed_before_are_barred()
    {
        Barred(new Sheaf(), ask => ask with { CrackLike = true })!.Code.ShouldBe("emergency-crack-like");
        Barred(new Sheaf(), ask => ask with { FailedBefore = true })!.Code.ShouldBe("emergency-spot-failed");
    }

    [Fact]
    public void Who_writes_his_own_consent_down_has_confirmed_it()
    {
        var sheaf = new Sheaf()
            .Consented("ines", EngineerOnCall)
            .Consented("olaf", OperationsInCharge, writtenBy: "olaf");
        var both = sheaf.Order.All<Consent>().ToList();
        both.ConvertAll(c => Consents.IsConfirmed(sheaf.Order, c)).ShouldBe([false, true]);
        Confirmation.Objection(sheaf.Order, both[0], sheaf["olaf"])!.Code.ShouldBe("not-your-consent");
        Confirmation.Objection(sheaf.Order, both[0], sheaf["ines"]).ShouldBeNull();
    }

    [Fact]
    public void A_consent_that_was_not_given_ends_the_leave_to_work()
    {
        var sheaf = new Sheaf().Consented("ines", EngineerOnCall).Consented("olaf", OperationsInCharge);
        sheaf.Order.SetAside(sheaf.Order.All<Consent>().First(), sheaf["ines"], sheaf.Now, "not given: I said wait");
        sheaf.Order.Stage.ShouldBe(Stage.Requested);
        Consents.NotStanding(sheaf.Order, sheaf.Now).ShouldNotBeNull();
    }

    private static RepairOrders.Api.Orders.Objection? Barred(
        Sheaf sheaf,
        Func<RecordConsent, RecordConsent>? but = null
    )
    {
        var ask = Emergency.Spoken(Guid.Empty, sheaf["ines"].Id, EngineerOnCall, sheaf.Now);
        return EmergencyBars.Objection(
            LineFacts.Of(sheaf.Order, null, false)!,
            but?.Invoke(ask) ?? ask,
            failedHere: false
        );
    }
}
