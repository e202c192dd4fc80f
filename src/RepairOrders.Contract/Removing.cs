using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Orders the repair off the pipe.</summary>
/// <param name="Why">Why.</param>
/// <param name="By">The day it must be off.</param>
/// <param name="Instead">What takes its place: permanent fix, new round, line out of use.</param>
public sealed record OrderRemoval(
    [property: Required, StringLength(2000, MinimumLength = 3)] string Why,
    DateOnly By,
    [property: Required, StringLength(500, MinimumLength = 3)] string Instead
);

/// <summary>Records the removal.</summary>
/// <param name="Photo">Photograph of the bare pipe.</param>
/// <param name="Condition">What was found under the repair.</param>
/// <param name="TagBack">The tag is back.</param>
/// <param name="Readings">Walls read on the bare pipe.</param>
/// <param name="Remark">What the next reader should know.</param>
public sealed record RecordRemoval(
    Guid? Photo,
    [property: Required, StringLength(4000, MinimumLength = 3)] string Condition,
    bool TagBack,
    [property: MaxLength(400)] IReadOnlyList<ThicknessReading>? Readings = null,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>The inspector's entry on the bare pipe; asked for on classes A, B and C.</summary>
/// <param name="Found">What he found.</param>
/// <param name="Cause">The cause as he sees it.</param>
/// <param name="Readings">Walls he read.</param>
public sealed record InspectRemoval(
    [property: Required, StringLength(4000, MinimumLength = 3)] string Found,
    DefectCause Cause,
    [property: MaxLength(400)] IReadOnlyList<ThicknessReading>? Readings = null
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Orders removal.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Why and by when.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The removal order.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> OrderRemoval(string number, OrderRemoval ask, string version) =>
        Put<RecordView>($"orders/{number}/removal-order", ask, version);

    /// <summary>Records the removal.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Photograph and condition found.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The removal.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> RecordRemoval(string number, RecordRemoval ask, string version) =>
        Put<RecordView>($"orders/{number}/removal", ask, version);

    /// <summary>Enters the inspector's finding on the bare pipe.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What was found.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> InspectRemoval(string number, InspectRemoval ask, string version) =>
        Put<RecordView>($"orders/{number}/removal-inspection", ask, version);
}
