using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.Replacement;

/// <summary>Replacement is the first choice wherever the line can be taken out; cracks and joints go with what is cut out.</summary>
internal static class ReplacementClaims
{
    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. Known(pipe, service),
            Finding.Pass("first-choice", "Replacement like for like is the first choice.", Sources.OrderOfPreference),
            Finding.Watch("isolation", "The line must be isolated, drained and proved dead at the pipe.", Sources.Own),
            Finding.Watch("test-as-new", "The new pipe is tested as a new line.", Sources.NewPipeTest),
            .. Metal(pipe),
            .. Unknown(defect),
        ];
    }

    private static IEnumerable<Finding> Known(Pipe pipe, Service service)
    {
        if (string.IsNullOrWhiteSpace(service.Fluid) || pipe.NominalWall.Millimeters <= 0)
            yield return Finding.Refuse(
                "not-selectable",
                "Not selectable until fluid and nominal wall are known.",
                Sources.Own
            );
    }

    private static IEnumerable<Finding> Metal(Pipe pipe)
    {
        if (pipe.Metal is MetalFamily.GrayIron or MetalFamily.DuctileIron)
            yield return Finding.Watch(
                "not-weldable",
                "Cast iron: joined by couplings or flanges, not by welds.",
                Sources.BrittlePipe
            );
    }

    private static IEnumerable<Finding> Unknown(Defect defect)
    {
        if (defect.Cause == DefectCause.Unknown)
            yield return Finding.Watch(
                "cause-unknown",
                "Cause unknown: keep what is cut out and have it examined.",
                Sources.OrderOfPreference
            );
    }
}
