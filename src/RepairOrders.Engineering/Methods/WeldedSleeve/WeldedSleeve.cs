using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.WeldedSleeve;

/// <summary>Two half shells welded to each other round the pipe: type A reinforces, type B is welded to the pipe at its ends and holds pressure.</summary>
public sealed class WeldedSleeve : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "welded-sleeve";

    /// <inheritdoc/>
    public string Name => "Welded sleeve";

    /// <inheritdoc/>
    public bool Welded => true;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => WeldedSleeveInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => WeldedSleeveHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, WeldedSleeveClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) => new WeldedSleeveSizing(new Sheet(this, readings)).Design();
}
