using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Api.Lines;

/// <summary>The engine's tables of sizes and grades, to choose from.</summary>
internal static class PipeLists
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/pipe-sizes", () => Sizes).Needs(Permission.ReadLines).WithSummary("Every listed pipe size");
        api.MapGet("/pipe-grades", () => Grades).Needs(Permission.ReadLines).WithSummary("Every listed grade of pipe");
    }

    /// <summary>A grade by its name in the line list; nothing where it is not listed.</summary>
    public static PipeGrade? Grade(string name) =>
        PipeGrades.All.FirstOrDefault(g => string.Equals(g.Name, name.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? PipeGrades
            .All.Select(g => g.Specification)
            .Distinct()
            .Where(spec => name.StartsWith(spec + " ", StringComparison.OrdinalIgnoreCase))
            .Select(spec => PipeGrades.Find(spec, name[(spec.Length + 1)..]))
            .FirstOrDefault(g => g is not null);

    private static IReadOnlyList<PipeSizeView> Sizes { get; } =
    [
        .. PipeSizes.All.Select(s => new PipeSizeView(
            s.Nps,
            s.Dn,
            s.OutsideDiameter.Millimeters,
            s.EnOutsideDiameter?.Millimeters,
            [.. s.Walls.Select(w => new PipeWallView(w.Schedule, w.Wall.Millimeters))]
        )),
    ];

    private static IReadOnlyList<PipeGradeView> Grades { get; } =
    [
        .. PipeGrades.All.Select(g => new PipeGradeView(
            g.Name,
            Words.Of(g.Family),
            g.YieldStrength?.Megapascals,
            g.TensileStrength?.Megapascals,
            g.Allowable.Count > 0 ? g.Allowable[^1].Temperature.DegreesCelsius : null,
            g.Brittle,
            g.StrengthSource.ToString()
        )),
    ];
}
