namespace RepairOrders.Engineering.Methods;

/// <summary>Makes hold points that follow one on another.</summary>
internal static class Hold
{
    /// <summary>A hold point the technician signs.</summary>
    public static HoldPoint Point(string code, string title, Clause source, params Evidence[] evidence) =>
        new(code, title, HoldKind.Hold, "technician", evidence, [], source);

    /// <summary>Puts each point after the one before it.</summary>
    public static IReadOnlyList<HoldPoint> InOrder(params HoldPoint[] points) =>
        [.. points.Select((p, i) => i == 0 ? p : p with { After = [points[i - 1].Code] })];
}
