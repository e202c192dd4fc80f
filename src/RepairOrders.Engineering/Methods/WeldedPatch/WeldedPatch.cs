using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.WeldedPatch;

/// <summary>A plate with rounded corners, fillet-welded over a corrosion pit.</summary>
public sealed class WeldedPatch : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "welded-patch";

    /// <inheritdoc/>
    public string Name => "Welded patch";

    /// <inheritdoc/>
    public bool Welded => true;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => WeldedPatchInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => WeldedPatchHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, WeldedPatchClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) => new WeldedPatchSizing(new Sheet(this, readings)).Design();
}
