namespace RepairOrders.Engineering.Methods;

/// <summary>One line of a bill of material.</summary>
/// <param name="Code">The kind of thing, stable: <c>band</c>, <c>fastener</c>, <c>putty</c>, <c>plate</c>.</param>
/// <param name="Words">What it is, with its size, as the storekeeper reads it.</param>
/// <param name="Quantity">How much, waste included.</param>
/// <param name="Unit">The unit of the quantity: <c>pcs</c>, <c>mm</c>, <c>g</c>, <c>m2</c>.</param>
/// <param name="Part">The part of the drawing it belongs to; the same word as in the drawing.</param>
public sealed record MaterialNeed(string Code, string Words, double Quantity, string Unit, string Part);
