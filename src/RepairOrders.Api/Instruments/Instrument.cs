using RepairOrders.Api.Orders;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Instruments;

/// <summary>Something that measures, with the day its calibration ends.</summary>
internal sealed class Instrument : IKept
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid SiteId { get; init; }
    public string Serial { get; init; } = "";
    public InstrumentKind Kind { get; set; }
    public string Words { get; set; } = "";

    /// <summary>The last day its calibration is good for.</summary>
    public DateOnly CalibrationDue { get; set; }
    public string? CalibrationReference { get; set; }
    public Measure? GreatestReading { get; set; }
    public string? Withdrawn { get; set; }
    public uint Version { get; private set; }
    string IKept.Kind => "instrument";
    public int Revision { get; set; }
    public string ChangesHash { get; set; } = "";

    public void Describe(DescribeInstrument said)
    {
        Kind = said.Kind;
        Words = said.Words;
        CalibrationDue = said.CalibrationDue;
        CalibrationReference = said.CalibrationReference;
        GreatestReading = said.GreatestReading;
        Withdrawn = string.IsNullOrWhiteSpace(said.Withdrawn) ? null : said.Withdrawn;
    }

    public DescribeInstrument Said(string site) =>
        new(site, Serial, Kind, Words, CalibrationDue, CalibrationReference, GreatestReading, Withdrawn);
}

/// <summary>Whether a reading may be taken with an instrument. Every step that takes a serial number asks here.</summary>
internal static class InstrumentRules
{
    /// <param name="instrument">The instrument.</param>
    /// <param name="on">The day at the site.</param>
    /// <param name="kinds">What it must measure; nothing when any kind will do.</param>
    public static Objection? Objection(Instrument instrument, DateOnly on, params InstrumentKind[] kinds)
    {
        if (instrument.Withdrawn is not null)
            return new Objection(
                "instrument-withdrawn",
                $"Instrument {instrument.Serial} is withdrawn: {instrument.Withdrawn}. Take another one.",
                "whoever keeps the instruments"
            );
        if (instrument.CalibrationDue < on)
            return new Objection(
                "instrument-out-of-calibration",
                $"Calibration of instrument {instrument.Serial} ended on {instrument.CalibrationDue:yyyy-MM-dd}. Take one in calibration and read again.",
                "whoever keeps the instruments, once it is calibrated"
            );
        if (kinds.Length > 0 && !kinds.Contains(instrument.Kind))
            return new Objection(
                "instrument-wrong-kind",
                $"Instrument {instrument.Serial} is a {Words.Of(instrument.Kind)}; this reading takes a {string.Join(" or ", kinds.Select(k => Words.Of(k)))}.",
                "the person who reads, with the right instrument"
            );
        return null;
    }

    public static Objection NotListed(string serial) =>
        new Objection(
            "instrument-not-listed",
            $"Instrument {serial} is not in the instrument list, so nobody knows its calibration. Read the serial number again, or have it listed.",
            "whoever keeps the instruments"
        );

    /// <summary>The instrument with this serial number at the site.</summary>
    /// <exception cref="ProcedureRefusal">It is not listed.</exception>
    public static async Task<Instrument> Instrument(this RepairStore store, Guid site, string serial) =>
        await store
            .Set<Instrument>()
            .AsNoTracking()
            .SingleOrDefaultAsync(i => i.SiteId == site && i.Serial == serial, CancellationToken.None)
        ?? throw new ProcedureRefusal(NotListed(serial));
}
