using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>
/// Putty under a plate, held by tensioned bands. The bands press the plate everywhere with the fluid's pressure and a seal
/// stress on top; neither bond nor a small hole is credited, and the bands carry no end load.
/// </summary>
public sealed class BandedPatch : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "banded-patch";

    /// <inheritdoc/>
    public string Name => "Banded patch";

    /// <inheritdoc/>
    public bool Welded => false;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => BandedPatchInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => BandedPatchHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, BandedPatchClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) => new BandedPatchSizing(new Sheet(this, readings)).Design();
}
