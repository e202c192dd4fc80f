using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>An order and the cast in memory: for rules that need neither store nor service.</summary>
internal sealed class Sheaf
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 30, 0, TimeSpan.Zero);

    private static readonly Site Mill = new()
    {
        ShortName = "mill",
        Name = "Board mill",
        TimeZone = "Europe/Oslo",
    };

    private readonly Dictionary<string, Person> people = Cast.People.ToDictionary(m => m.Name, Somebody);
    private DateTimeOffset now = Start;

    public Sheaf(string line = "CW-150-3104", string raisedBy = "tove", LeakState leak = LeakState.Weep)
    {
        Order = new RepairOrder(Mill, 17, Cast.Lines(Mill.Id).Single(l => l.Number == line));
        Order.Surroundings = Surroundings.None with { Supervisors = [this["mara"].Id, this["olaf"].Id] };
        Order.Sign(
            new Request(Cast.Weep("mill") with { Line = line, Fluid = Order.Line!.Fluid, LeakState = leak }),
            this[raisedBy],
            Now
        );
    }

    public RepairOrder Order { get; }

    /// <summary>A moment later than the one before, so that records have an order.</summary>
    public DateTimeOffset Now => now = now.AddMinutes(1);

    public DateOnly Today => DateOnly.FromDateTime(now.DateTime);

    public Person this[string name] => people[name];

    public void Pass(TimeSpan time) => now += time;

    public Person Join(Cast.Member member)
    {
        people[member.Name] = Somebody(member);
        return people[member.Name];
    }

    public Sheaf Assessed(RecordAssessment? ask = null, string by = "ines")
    {
        var judged = ask ?? Judged;
        Order.SignAgain(new Assessment(new(judged, Judging.Of(Order, judged).Judge(now), [])), this[by], Now);
        return this;
    }

    public Sheaf Chosen(string by = "ines")
    {
        Order.SignAgain(new Choice(new(AnOrder.BandedPatch, Claims.Of(Order))), this[by], Now);
        return this;
    }

    /// <summary>A design of this class, whatever the pipe would give.</summary>
    public Sheaf Sized(RiskClass risk, string by = "ines", SizeRepair? sizing = null)
    {
        var design = Designing.Of(Order, sizing ?? Measures, this["mara"], null);
        var ofClass = Fingerprints.Sealed(design with { Risk = design.Risk with { Class = risk } });
        Order.SignAgain(new Design(ofClass), this[by], Now);
        return this;
    }

    /// <summary>Request to design in one go.</summary>
    public static Sheaf SizedAs(RiskClass risk, string raisedBy = "tove") =>
        new Sheaf(raisedBy: raisedBy).Assessed().Chosen().Sized(risk);

    public string Print => (Order.PendingDesign ?? Order.ApprovedDesign)!.Asked.Fingerprint;

    public Objection? ToApprove(string by, ApprovalCapacity place) =>
        Approval.Objection(Order, new ApproveOrder(Print, place), this[by], now);

    public Sheaf Approved(string by, ApprovalCapacity place)
    {
        ToApprove(by, place).ShouldBeNull();
        Order.Sign(new Approval(new(Print, place)), this[by], Now);
        return this;
    }

    /// <summary>He is named as fitter under a permit.</summary>
    public Sheaf Fits(string name)
    {
        var permit = new ReadyOrder(
            ReadinessFor.Fit,
            "PTW 881",
            PermitKind.Cold,
            now,
            now.AddHours(8),
            null,
            Measure.Of(6, "bar"),
            new GasTest(now, "Olaf Brekke", 0, 20.9, 0, true),
            [this[name].Id],
            [this[name].Id]
        );
        Order.Sign(
            new Readiness(new(permit, [new(this[name].Id, this[name].FullName)], Live: true)),
            this["mara"],
            Now
        );
        return this;
    }

    /// <summary>One of the two consents, for a banded patch on the line's own fluid.</summary>
    public Sheaf Consented(string giver, ConsentCapacity place, string writtenBy = "tove")
    {
        var entry = Emergency.Patch("mill") with { Fluids = [Order.Line!.Fluid] };
        var ask = Emergency.Spoken(Guid.Empty, this[giver].Id, place, now);
        Order.Sign(
            new Consent(new(ask, this[giver].FullName, entry, new(RiskClass.C, 1, 5, []))),
            this[writtenBy],
            Now
        );
        return this;
    }

    public RecordAssessment Judged =>
        new(
            [
                new(ReadingPlace.Beside, "3 o'clock", Measure.Of(6.4, "mm"), Today, "UT-7"),
                new(ReadingPlace.Beside, "5 o'clock", Measure.Of(6.6, "mm"), Today, "UT-7"),
            ],
            null,
            AnOrder.Pinhole,
            AnOrder.FewPeople,
            QualityFactor: 1
        );

    public SizeRepair Measures =>
        new(
            AnOrder.PatchValues,
            null,
            Today.AddDays(1),
            this["mara"].Id,
            new("job 4411", Today.AddDays(60)),
            new("MOC-12", Today.AddDays(400)),
            InterimLimits: new(Measure.Of(6, "bar"), null, null)
        );

    private static Person Somebody(Cast.Member member) =>
        new()
        {
            UserName = member.Name,
            FullName = member.FullName,
            Roles = [.. member.Roles],
            Sites = ["mill"],
            Competences = [.. member.Competences.Select(c => new Competence(c, new DateOnly(2029, 12, 31)))],
        };
}
