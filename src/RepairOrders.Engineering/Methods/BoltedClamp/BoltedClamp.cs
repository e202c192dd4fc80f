using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>
/// A split shell bolted round the pipe with a seal at its edges. It seals; only tie rods or grips hold the pipe together, and
/// they are sized apart.
/// </summary>
public sealed class BoltedClamp : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "bolted-clamp";

    /// <inheritdoc/>
    public string Name => "Bolted clamp";

    /// <inheritdoc/>
    public bool Welded => false;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => BoltedClampInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => BoltedClampHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, BoltedClampClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) => new BoltedClampSizing(new Sheet(this, readings)).Design();
}
