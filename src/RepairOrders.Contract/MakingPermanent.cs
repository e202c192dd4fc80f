using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What the permanent fix was.</summary>
public enum PermanentFixKind
{
    /// <summary>Replaced like for like.</summary>
    Replacement,

    /// <summary>Mended to code for the life of the line.</summary>
    MendToCode,

    /// <summary>The line was taken out of use for good.</summary>
    LineRetired,
}

/// <summary>Records the permanent fix.</summary>
/// <param name="Kind">What it was.</param>
/// <param name="Reference">Number of the job that did it.</param>
/// <param name="DoneOn">The day it was done.</param>
/// <param name="PartCertificates">Certificates of the new parts.</param>
/// <param name="Welds">Weld numbers with their examination; nothing without welds.</param>
/// <param name="Tests">The tests: kind, pressure, result, report.</param>
/// <param name="Drawings">Drawings and line list brought up to date, by number.</param>
/// <param name="Remark">What the next reader should know.</param>
public sealed record RecordPermanentFix(
    PermanentFixKind Kind,
    [property: Required, StringLength(100, MinimumLength = 2)] string Reference,
    DateOnly DoneOn,
    [property: StringLength(1000)] string? PartCertificates,
    [property: StringLength(1000)] string? Welds,
    [property: StringLength(1000)] string? Tests,
    [property: Required, StringLength(1000, MinimumLength = 2)] string Drawings,
    [property: StringLength(2000)] string? Remark = null
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Records the permanent fix.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What was done.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The record.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> RecordPermanentFix(string number, RecordPermanentFix ask, string version) =>
        Put<RecordView>($"orders/{number}/permanent-fix", ask, version);
}
