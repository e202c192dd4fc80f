using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.Plug;

/// <summary>A screw plug in a small hole that is drilled and tapped in sound wall.</summary>
public sealed class Plug : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "plug";

    /// <inheritdoc/>
    public string Name => "Plug";

    /// <inheritdoc/>
    public bool Welded => false;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => PlugInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => PlugHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, PlugClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) => new PlugSizing(new Sheet(this, readings)).Design();
}
