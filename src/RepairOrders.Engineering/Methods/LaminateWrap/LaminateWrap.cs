using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>
/// Cloth and resin laid round the pipe: type A reinforces wall that still holds, type B holds over a hole. Forms of ISO 24817
/// and ASME PCC-2 Art. 401 from memory; a licensed engineer checks them against the current print.
/// </summary>
public sealed class LaminateWrap : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "laminate-wrap";

    /// <inheritdoc/>
    public string Name => "Laminate wrap";

    /// <inheritdoc/>
    public bool Welded => false;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => LaminateWrapInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => LaminateWrapHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, LaminateWrapClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) => new LaminateWrapSizing(new Sheet(this, readings)).Design();
}
