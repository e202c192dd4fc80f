using RepairOrders.Api.Assessing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Drawing;

/// <summary>What is to be drawn: the pipe, the defect and the design, as far as each is known. Lengths in mm.</summary>
/// <param name="Number">The order's number.</param>
/// <param name="Outside">Outside diameter.</param>
/// <param name="Nominal">Nominal wall.</param>
/// <param name="Sound">Wall read beside the defect; nothing where it was not read.</param>
/// <param name="Thinnest">Wall read at the defect, 0 where it is through; nothing where it was not read.</param>
/// <param name="Defect">The defect as measured; nothing before it is assessed.</param>
/// <param name="Design">The design; nothing before one is signed.</param>
internal sealed record Subject(
    string Number,
    double Outside,
    double Nominal,
    double? Sound,
    double? Thinnest,
    DefectMeasured? Defect,
    MethodDesignView? Design
)
{
    public double Radius => Outside / 2;

    /// <summary>The wall that carries the repair: as read beside the defect, else as ordered.</summary>
    public double Wall => Sound is { } read && read > 0 ? Math.Min(read, 1.25 * Nominal) : Nominal;

    /// <summary>The defect's clock position, degrees; 12 o'clock where nobody has said.</summary>
    public double Clock => 30 * (Defect?.ClockHours ?? 0) % 360;

    public double Length => Defect?.AxialLength.Value ?? 0;

    /// <summary>Half the angle the defect takes of the girth, degrees.</summary>
    public double HalfAngle => Math.Min(180, (Defect?.CircumferentialLength.Value ?? 0) / 2 / Radius * 180 / Math.PI);

    public double Hole => Defect is { ThroughWall: true } d ? d.HoleDiameter?.Value ?? 0 : 0;

    public bool Outer => Defect?.Side == DefectSide.External;

    /// <summary>A size of the design; nothing where it has none.</summary>
    public double? this[string code] => Design?[code] is { } value && double.IsFinite(value) ? value : null;

    /// <summary>The subject of an order; nothing while neither line list nor assessment tells the pipe's size.</summary>
    public static Subject? Of(RepairOrder order)
    {
        var assessment = order.Last<Assessment>()?.Asked;
        var facts = assessment?.Judgement.Facts;
        if ((facts?.OutsideDiameterMm ?? order.Line?.OutsideDiameterMm) is not { } outside || outside <= 0)
            return null;
        return new(
            order.Number,
            outside,
            facts?.NominalWallMm ?? order.Line!.NominalWallMm,
            assessment?.Judgement.SoundWallMm,
            assessment?.Judgement.ThinnestMm,
            assessment?.Ask.Defect,
            order.PendingDesign?.Asked.Method ?? WorkPlan.Of(order)?.Design
        );
    }
}
