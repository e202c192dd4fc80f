using Google.OrTools.Sat;

namespace RepairOrders.Engineering.Cutting;

/// <summary>A cut plan as a model for CP-SAT: what each aim is, and how to read a plan out of a solution.</summary>
internal abstract class CutModel
{
    public CpModel Model { get; } = new();

    public abstract LinearExpr StockLengths { get; }

    public abstract LinearExpr CoilsOpened { get; }

    public abstract LinearExpr Splices { get; }

    /// <summary>Adds the choice of one remnant to keep; asked for last, because it makes the model larger.</summary>
    /// <returns>Its length, tenths of a millimetre; 0 where none is worth it.</returns>
    public abstract LinearExpr KeepOneRemnant();

    public abstract void Hint(IReadOnlyList<Load> plan);

    public abstract IReadOnlyList<Load> Read(CpSolver solver);

    /// <summary>The path model where it stays small, for it is far stronger; else bands against stock lengths one by one.</summary>
    public static CutModel Of(CutProblem problem, int atMost) =>
        problem.LongBands.Count == 0 && PathGraph.Of(problem) is { } graph
            ? new PathModel(problem, graph)
            : new AssignmentModel(problem, atMost);
}
