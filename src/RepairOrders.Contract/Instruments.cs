using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What an instrument measures.</summary>
public enum InstrumentKind
{
    /// <summary>Wall thickness.</summary>
    ThicknessGauge,

    /// <summary>Pressure.</summary>
    PressureGauge,

    /// <summary>Tightening torque.</summary>
    TorqueWrench,

    /// <summary>Hardness of a resin or a metal.</summary>
    HardnessTester,

    /// <summary>Temperature of a surface.</summary>
    SurfaceThermometer,

    /// <summary>Temperature and humidity of the air.</summary>
    Hygrometer,

    /// <summary>Diameter or girth.</summary>
    Calliper,

    /// <summary>Surface profile.</summary>
    ProfileGauge,

    /// <summary>Gas in the air.</summary>
    GasDetector,
}

/// <summary>Describes an instrument: adds it, or replaces what is said of it.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Serial">The serial number on it; it never changes.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Words">What it is.</param>
/// <param name="CalibrationDue">Last day its calibration is good for.</param>
/// <param name="CalibrationReference">Reference of the calibration certificate.</param>
/// <param name="GreatestReading">For a pressure gauge, the end of its scale, bar.</param>
/// <param name="Withdrawn">Why it may not be used; nothing while it may.</param>
public sealed record DescribeInstrument(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(60, MinimumLength = 1)] string Serial,
    InstrumentKind Kind,
    [property: Required, StringLength(200, MinimumLength = 2)] string Words,
    DateOnly CalibrationDue,
    [property: StringLength(100)] string? CalibrationReference = null,
    [property: MeasuredIn("bar", Least = 0.01, Greatest = 5000)] Measure? GreatestReading = null,
    [property: StringLength(300)] string? Withdrawn = null
);

/// <summary>An instrument.</summary>
/// <param name="Id">The instrument.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
/// <param name="Said">What is said of it.</param>
/// <param name="Objection">Why it may not be used today; nothing when it may.</param>
public sealed record InstrumentView(Guid Id, string Version, DescribeInstrument Said, ObjectionView? Objection);

/// <summary>A page of instruments.</summary>
/// <param name="Rows">The instruments, by serial number.</param>
/// <param name="Next">The key to ask for what follows; nothing at the end.</param>
public sealed record InstrumentsView(IReadOnlyList<InstrumentView> Rows, string? Next);

public sealed partial class RepairOrdersClient
{
    /// <summary>Adds an instrument.</summary>
    /// <param name="ask">What is said of it.</param>
    /// <returns>The instrument.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the serial number is taken.</exception>
    public Task<InstrumentView> AddInstrument(DescribeInstrument ask) => Post<InstrumentView>("instruments", ask);

    /// <summary>The changes of an instrument, oldest first.</summary>
    /// <param name="id">Which one.</param>
    /// <param name="stop">Ends the reading.</param>
    /// <returns>Who changed what, when.</returns>
    /// <exception cref="Refused">404 when there is none that one may see.</exception>
    public Task<IReadOnlyList<ChangeView>> InstrumentChanges(Guid id, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChangeView>>($"instruments/{id}/changes", stop);

    /// <summary>Replaces what is said of an instrument, after a calibration for one.</summary>
    /// <param name="instrument">The instrument.</param>
    /// <param name="ask">What is said of it from now on.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The instrument.</returns>
    /// <exception cref="Refused">400 with fields, 409, 412 when it changed since.</exception>
    public Task<InstrumentView> ChangeInstrument(Guid instrument, DescribeInstrument ask, string version) =>
        Put<InstrumentView>($"instruments/{instrument}", ask, version);

    /// <summary>A page of instruments.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="search">A part of the serial number or the words.</param>
    /// <param name="after">The key of the page before.</param>
    /// <param name="limit">Rows wanted, at most 200.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The page.</returns>
    public Task<InstrumentsView> Instruments(
        string site,
        InstrumentKind? kind = null,
        string? search = null,
        string? after = null,
        int limit = 50,
        CancellationToken stop = default
    ) =>
        Get<InstrumentsView>(
            $"instruments?site={Escaped(site)}&limit={limit}"
                + (kind is null ? "" : $"&kind={Word(kind.Value)}")
                + Searched(search)
                + After(after),
            stop
        );
}
