using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Ui.Parts;

/// <summary>Why something is taken away; the client's methods take the reason as a word of its own.</summary>
/// <param name="Why">The reason.</param>
internal sealed record Reason([property: Required, StringLength(500, MinimumLength = 5)] string Why);
