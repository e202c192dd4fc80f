using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.Replacement;

/// <summary>The damaged length is cut out and new pipe put in: like for like, or a temporary spool that ends on a date too.</summary>
public sealed class Replacement : IRepairMethod
{
    /// <inheritdoc/>
    public string Code => "section-replacement";

    /// <inheritdoc/>
    public string Name => "Section replacement";

    /// <inheritdoc/>
    public bool Welded => true;

    /// <inheritdoc/>
    public IReadOnlyList<Input> Inputs => ReplacementInputs.All;

    /// <inheritdoc/>
    public IReadOnlyList<HoldPoint> HoldPoints => ReplacementHoldPoints.All;

    /// <inheritdoc/>
    public Claim Claims(Pipe pipe, Defect defect, Service service) =>
        new(Code, Name, ReplacementClaims.Of(pipe, defect, service));

    /// <inheritdoc/>
    public MethodDesign Size(Readings readings) =>
        new ReplacementSizing(new Sheet(this, readings, damageIsCutOut: true)).Design();
}
