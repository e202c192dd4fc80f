using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.WeldedSleeve;

/// <summary>Where a welded sleeve may go.</summary>
internal static class WeldedSleeveClaims
{
    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. CommonLimits.Known(pipe, defect, service),
            CommonLimits.NoCrack(defect),
            .. CommonLimits.StraightPipe(defect),
            .. WeldLimits.Metal(pipe, defect),
            .. Type(defect),
            .. Fatigue(defect, service),
            .. CommonLimits.Review(pipe, defect, service),
        ];
    }

    /// <summary>A leak, or damage that will go through, needs the pressure-containing type.</summary>
    public static bool NeedsTypeB(Defect defect) =>
        defect.ThroughWall || (defect.Growing && defect.Side != DefectSide.External);

    private static IEnumerable<Finding> Type(Defect defect)
    {
        yield return defect.ThroughWall
            ? Finding.Watch(
                "type-b-only",
                "The wall is through: type B only, and the leak isolated before welding.",
                Sources.Sleeves
            )
            : Finding.Pass("type-a-or-b", "Not leaking: type A or B.", Sources.Sleeves);
        if (defect.CircumferentialLength > defect.AxialLength)
            yield return Finding.Watch(
                "circumferential",
                "The damage runs round the pipe: type A may not suit, it carries no end load.",
                Sources.Sleeves
            );
    }

    private static IEnumerable<Finding> Fatigue(Defect defect, Service service)
    {
        if (service.Cyclic)
            yield return Finding.Fail(
                "fatigue",
                "Cyclic duty: end fillets need a fatigue check that a second engineer signs.",
                Sources.Sleeves
            );
        if (defect.Growing)
            yield return Finding.Watch(
                "growing",
                "The damage grows on under the sleeve: type B, with an allowance.",
                Sources.Sleeves
            );
    }
}
