using System.Globalization;
using System.Text.Json;
using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Consenting;

/// <summary>
/// An entry of the emergency list, good for a year from its second signature. What it says is never changed: a change is a new
/// entry, an old one is withdrawn.
/// </summary>
internal sealed class EmergencyMethod : IKept
{
    private ListEmergencyMethod? entry;

    private EmergencyMethod() { }

    public EmergencyMethod(Site site, ListEmergencyMethod entry, Person by, DateTimeOffset at)
    {
        SiteId = site.Id;
        Site = site;
        this.entry = entry;
        Body = JsonSerializer.Serialize(entry, RepairOrdersClient.Json);
        (FirstById, FirstBy, FirstAt, FirstIsEngineer) = (by.Id, by.FullName, at, by.Is(Role.IntegrityEngineer));
    }

    public Guid Id { get; private set; } = Guid.CreateVersion7();
    public Guid SiteId { get; private set; }
    public Site Site { get; private set; } = null!;
    public string Body { get; private set; } = "{}";
    public Guid FirstById { get; private set; }
    public string FirstBy { get; private set; } = "";
    public DateTimeOffset FirstAt { get; private set; }
    public bool FirstIsEngineer { get; private set; }
    public Guid? SecondById { get; private set; }
    public string? SecondBy { get; private set; }
    public DateTimeOffset? SecondAt { get; private set; }
    public DateTimeOffset? WithdrawnAt { get; private set; }
    public string? WithdrawnWhy { get; private set; }
    public string Kind => "emergency method";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";

    public ListEmergencyMethod Entry =>
        entry ??= JsonSerializer.Deserialize<ListEmergencyMethod>(Body, RepairOrdersClient.Json)!;

    public DateOnly? GoodUntil => SecondAt is { } second ? Site.Today(second).AddYears(1) : null;

    public void Second(Person by, DateTimeOffset at) => (SecondById, SecondBy, SecondAt) = (by.Id, by.FullName, at);

    public void Withdraw(string why, DateTimeOffset at) => (WithdrawnAt, WithdrawnWhy) = (at, why);

    public EmergencyMethodView View(DateTimeOffset at) =>
        new(
            Id,
            Entry,
            [
                new(FirstBy, FirstAt),
                .. SecondAt is { } second ? [new ListSignature(SecondBy!, second)] : Array.Empty<ListSignature>(),
            ],
            GoodUntil,
            WithdrawnWhy,
            NotGood(Site.Today(at))?.View
        );

    public static Objection? SecondObjection(EmergencyMethod method, Person by)
    {
        if (method.SecondAt is not null || method.WithdrawnAt is not null)
            return new Objection(
                "list-entry-complete",
                $"The entry {(method.WithdrawnAt is null ? "has both signatures" : "is withdrawn")}. Put a new one on the list.",
                "integrity engineer"
            );
        return by.Id == method.FirstById || !(by.Is(Role.IntegrityEngineer) || method.FirstIsEngineer)
            ? new Objection(
                "list-second-signature",
                "An entry is signed by two engineers, or by an engineer and the manager: two persons, one of them an engineer.",
                "another integrity engineer, or the manager"
            )
            : null;
    }

    /// <summary>Why it cannot be used today.</summary>
    public Objection? NotGood(DateOnly today)
    {
        if (WithdrawnAt is not null)
            return new Objection(
                "list-entry-withdrawn",
                $"{Entry.Name} is off the emergency list: {WithdrawnWhy}",
                "integrity engineer, by another entry"
            );
        if (GoodUntil is not { } until)
            return new Objection(
                "list-entry-unsigned",
                $"{Entry.Name} has one signature only; it is not on the emergency list yet.",
                "another integrity engineer, or the manager"
            );
        return until < today
            ? new Objection(
                "list-entry-expired",
                $"{Entry.Name} was good until {until:yyyy-MM-dd}. It must be signed afresh.",
                "two integrity engineers, or one and the manager"
            )
            : null;
    }

    /// <summary>Why it is not for this pipe and service.</summary>
    public Objection? DoesNotFit(LineFacts facts)
    {
        var limit = Outside(facts).FirstOrDefault();
        return limit is null
            ? null
            : new Objection(
                "list-entry-does-not-fit",
                $"{Entry.Name} is not for this pipe: {limit} Take an entry that is, or isolate.",
                "nobody; another entry, or shut down"
            );
    }

    private IEnumerable<string> Outside(LineFacts facts)
    {
        var diameter = facts.Source.OutsideDiameter.Value;
        var service = facts.Service;
        if (diameter < Entry.SmallestDiameter.Value || diameter > Entry.GreatestDiameter.Value)
            yield return Number(
                $"its outside diameter is {diameter:0.#} mm; allowed is {Entry.SmallestDiameter.Value:0.#} to {Entry.GreatestDiameter.Value:0.#} mm."
            );
        if (service.OperatingPressure.Bars > Entry.GreatestPressure.Value)
            yield return Number(
                $"it runs at {service.OperatingPressure.Bars:0.##} bar; allowed is {Entry.GreatestPressure.Value:0.##} bar."
            );
        if (service.OperatingTemperature.DegreesCelsius > Entry.GreatestTemperature.Value)
            yield return Number(
                $"it runs at {service.OperatingTemperature.DegreesCelsius:0.#} °C; allowed is {Entry.GreatestTemperature.Value:0.#} °C."
            );
        if (!Entry.Fluids.Any(f => string.Equals(f, service.Fluid, StringComparison.OrdinalIgnoreCase)))
            yield return $"it carries {service.Fluid}; the entry is for {string.Join(", ", Entry.Fluids)}.";
    }

    private static string Number(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
