using RepairOrders.Engineering.Damage;
using UnitsNet;

namespace RepairOrders.Engineering.Methods.WeldedPatch;

/// <summary>The published rule for fillet-welded patches on gas transmission lines; used as the guide for all lines.</summary>
public static class WeldedPatchRule
{
    /// <summary>Greatest specified minimum yield: 40 000 psi.</summary>
    public static readonly Pressure GreatestYield = Pressure.FromPoundsForcePerSquareInch(40_000);

    /// <summary>Puts a patch to the rule of 49 CFR 192.717(b)(3); outside it 192.711(c) bars a welded patch.</summary>
    /// <param name="yield">Specified minimum yield of the pipe; nothing where it is not known.</param>
    /// <param name="kind">Kind of damage: the rule is for a leak from a corrosion pit.</param>
    /// <param name="pipeWall">Nominal wall of the pipe.</param>
    /// <param name="patchThickness">Thickness of the patch.</param>
    /// <param name="patchSize">Greatest size of the patch, along or round the pipe.</param>
    /// <param name="outsideDiameter">Outside diameter of the pipe.</param>
    /// <param name="limit">Whether a deviation can pass it: not on a gas line.</param>
    /// <returns>A finding for each part of the rule.</returns>
    public static IReadOnlyList<Finding> Findings(
        Pressure? yield,
        DefectKind kind,
        Length pipeWall,
        Length patchThickness,
        Length patchSize,
        Length outsideDiameter,
        LimitKind limit
    ) =>
        [
            Yield(yield, limit),
            Pit(kind, limit),
            Finding.AtLeast(
                "patch-thickness",
                "Patch thickness",
                patchThickness.Millimeters,
                pipeWall.Millimeters,
                "mm",
                Sources.WeldedPatch,
                limit
            ),
            Finding.AtMost(
                "patch-size",
                "Greatest size of the patch",
                patchSize.Millimeters,
                outsideDiameter.Millimeters / 2,
                "mm",
                Sources.WeldedPatch,
                limit
            ),
        ];

    internal static Finding Yield(Pressure? yield, LimitKind limit) =>
        yield is { } known
            ? Finding.AtMost(
                "patch-yield",
                "Specified minimum yield of the pipe",
                known.Megapascals,
                GreatestYield.Megapascals,
                "MPa",
                Sources.WeldedPatch,
                limit
            )
            : Finding.Refuse(
                "yield-not-known",
                "Yield of the pipe is not known: no welded patch.",
                Sources.WeldedPatch
            );

    internal static Finding Pit(DefectKind kind, LimitKind limit) =>
        kind is DefectKind.Pitting or DefectKind.Pinhole
            ? Finding.Pass("corrosion-pit", "The damage is a corrosion pit.", Sources.WeldedPatch)
            : new(
                "not-a-pit",
                Severity.Fail,
                "A welded patch is for a corrosion pit only.",
                null,
                null,
                null,
                Sources.NoWeldedPatch,
                limit
            );
}
