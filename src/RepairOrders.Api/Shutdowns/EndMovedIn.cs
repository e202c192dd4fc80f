using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Shutdowns;

/// <summary>A shutdown brought forward, and the end date that moved in with it.</summary>
internal sealed class EndMovedIn : SignedRecord<SignedEndMovedIn>
{
    private EndMovedIn() { }

    public EndMovedIn(SignedEndMovedIn body)
        : base(body) { }

    public override string Kind => "end-date-moved-in";

    public override string Summary =>
        $"{Asked.Shutdown} was brought forward: from {Asked.From:yyyy-MM-dd} to {Asked.To:yyyy-MM-dd}";

    public override Tone Tone => Tone.Watch;
}
