using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>How a leak or thin spot was found.</summary>
public enum FoundHow
{
    /// <summary>Seen on a round.</summary>
    Round,

    /// <summary>By a planned inspection.</summary>
    Inspection,

    /// <summary>By an alarm or a loss of pressure.</summary>
    Alarm,

    /// <summary>During other work.</summary>
    OtherWork,

    /// <summary>Reported by somebody else.</summary>
    Report,
}

/// <summary>What comes out.</summary>
public enum LeakState
{
    /// <summary>Nothing: a thin spot.</summary>
    Dry,

    /// <summary>A stain.</summary>
    Stain,

    /// <summary>A weep.</summary>
    Weep,

    /// <summary>A drip.</summary>
    Drip,

    /// <summary>A stream or jet.</summary>
    Jet,
}

/// <summary>Asks for a temporary repair.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Line">The line's number; nothing when it is not in the line list, then the place has to do.</param>
/// <param name="Place">Where on the line, so that another shift finds it.</param>
/// <param name="Fluid">What flows.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="FoundHow">How it was found.</param>
/// <param name="LeakState">What comes out.</param>
/// <param name="Hazardous">The leak can hurt somebody: hot, flammable, toxic, corrosive or hard to keep away from.</param>
/// <param name="OperatingPressure">Gauge pressure in operation.</param>
/// <param name="OperatingTemperature">Temperature in operation.</param>
/// <param name="ImmediateMeasures">What was done at once: barred off, pressure cut, drained …</param>
/// <param name="WhyNotPermanent">Why it is not put right for good now.</param>
/// <param name="WantedBy">The day it is wanted by.</param>
public sealed record RequestRepair(
    [property: Required, StringLength(20)] string Site,
    [property: StringLength(60)] string? Line,
    [property: Required, StringLength(300, MinimumLength = 3)] string Place,
    [property: Required, StringLength(100)] string Fluid,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Seen,
    FoundHow FoundHow,
    LeakState LeakState,
    bool Hazardous,
    [property: Required, MeasuredIn("bar", Least = 0, Greatest = 1000)] Measure OperatingPressure,
    [property: Required, MeasuredIn("°C", Least = -200, Greatest = 900)] Measure OperatingTemperature,
    [property: StringLength(2000)] string? ImmediateMeasures,
    [property: Required, StringLength(2000, MinimumLength = 3)] string WhyNotPermanent,
    DateOnly? WantedBy
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Asks for a temporary repair.</summary>
    /// <param name="ask">The request.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The new order's sheet.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection.</exception>
    public Task<OrderSheet> Request(RequestRepair ask, string? key = null) => Post<OrderSheet>("orders", ask, key);
}
