namespace RepairOrders.Engineering.Methods.WeldedPatch;

/// <summary>What must be signed while a patch is welded.</summary>
internal static class WeldedPatchHoldPoints
{
    public static readonly IReadOnlyList<HoldPoint> All = WeldHoldPoints.For(
        "Patch lies close, gap within the procedure; corners round; damage in its middle"
    );
}
