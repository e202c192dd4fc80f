using RepairOrders.Api.Owning;
using RepairOrders.Api.People;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Owning;

public sealed class OwningRules
{
    [Fact]
    public void An_offer_changes_nothing_until_the_new_owner_accepts()
    {
        var sheaf = Fitted();
        var offer = sheaf.Order.Sign(new HandOver(new(new(Tove.Id, "shift"), Tove.FullName)), Mara, sheaf.Now);
        sheaf.Order.Columns.OwnerId.ShouldBe(Mara.Id);
        Owner.Objection(sheaf.Order, new(offer.Id), Anton, sheaf.Now)!.Code.ShouldBe("hand-over-not-yours");
        Owner.Objection(sheaf.Order, new(offer.Id), Tove, sheaf.Now).ShouldBeNull();
        sheaf.Order.Sign(new Owner(new(offer.Id)), Tove, sheaf.Now);
        sheaf.Order.Columns.OwnerId.ShouldBe(Tove.Id);
        Owner.Objection(sheaf.Order, Tove, sheaf.Now)!.Code.ShouldBe("no-hand-over");
    }

    [Fact]
    public void Who_cannot_sign_a_look_is_offered_nothing()
    {
        var sheaf = Fitted();
        To(Signe).ShouldBe("new-owner-cannot-sign", "a storekeeper looks at no pipe");
        To(null).ShouldBe("new-owner-cannot-sign");
        To(With(p => p.Disabled = true)).ShouldBe("new-owner-cannot-sign");
        To(With(p => p.AuthorityUntil = new(2026, 2, 1))).ShouldBe("new-owner-cannot-sign");
        To(With(p => p.Sites.Clear())).ShouldBe("new-owner-cannot-sign");
        To(Mara).ShouldBe("owner-already");
        To(Henrik).ShouldBeNull();

        string? To(Person? to) => HandOver.Objection(sheaf.Order, to, Mara, sheaf.Now)?.Code;
    }

    [Fact]
    public void The_owner_hands_over_or_somebody_who_answers_for_the_repair()
    {
        var sheaf = Fitted();
        foreach (var by in new[] { Mara, Olaf, Ines, Henrik })
            HandOver.Objection(sheaf.Order, by, sheaf.Now).ShouldBeNull(by.FullName);
        HandOver.Objection(sheaf.Order, Anton, sheaf.Now)!.Code.ShouldBe("not-yours-to-hand-over");
    }

    private static Person With(Action<Person> change)
    {
        var person = Somebody("Nils Berg", Role.Technician);
        change(person);
        return person;
    }
}
