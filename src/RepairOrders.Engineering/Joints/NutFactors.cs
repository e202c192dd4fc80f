using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Joints;

/// <summary>Nut factor of a surface and lubricant, as one source prints it.</summary>
/// <param name="Condition">Surface and lubricant.</param>
/// <param name="Low">Least nut factor, without unit; nothing where the source gives none.</param>
/// <param name="Typical">Typical nut factor.</param>
/// <param name="High">Greatest nut factor.</param>
/// <param name="Source">Where it is printed.</param>
public sealed record NutFactor(string Condition, double? Low, double? Typical, double? High, Clause Source);

/// <summary>Published nut factors. Sources disagree: each row stands by itself and nothing is averaged.</summary>
public static class NutFactors
{
    /// <summary>All rows, in the order of the table.</summary>
    public static IReadOnlyList<NutFactor> All { get; } =
    [.. EmbeddedTable.Read("nut-factors.csv").Rows.Where(r => !r["condition"].Contains("scatter")).Select(Read)];

    private static NutFactor Read(EmbeddedTable.Row row) =>
        new(
            row["condition"],
            row.Number("K_low"),
            row.Number("K_typ"),
            row.Number("K_high"),
            new Clause(row["source"], "", row["provenance"] == "memory" ? Provenance.FromMemory : Provenance.Published)
        );
}
