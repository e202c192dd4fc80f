using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>Where putty under a plate and bands may go.</summary>
internal static class BandedPatchClaims
{
    public const double CeilingBar = 20.7;

    private const double CeilingC = 93;
    private const double HoleMm = 25;
    private const double SmallestPipeMm = 60.3;

    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. CommonLimits.Known(pipe, defect, service),
            CommonLimits.NoCrack(defect),
            .. CommonLimits.StraightPipe(defect),
            .. CommonLimits.Pressure(service, CeilingBar, Sources.PuttyManual),
            .. CommonLimits.Temperature(service, CeilingC, Sources.PuttyManual),
            Finding.AtMost(
                "hole-above-limit",
                "Hole",
                defect.HoleDiameter.Millimeters,
                HoleMm,
                "mm",
                Sources.PuttyManual
            ),
            .. Medium(service),
            .. CommonLimits.Steam(service),
            .. Metal(pipe),
            .. Size(pipe),
            .. CommonLimits.Growing(defect),
            .. CommonLimits.Brittle(pipe),
            .. CommonLimits.Axial(pipe, defect, service),
            .. CommonLimits.Fire(service),
            .. CommonLimits.Review(pipe, defect, service),
            Ceiling,
        ];
    }

    private static Finding Ceiling =>
        Finding.Watch(
            "ceiling-not-rating",
            "The pressure limit is a ceiling on use, not a rating: what the bands hold is usually far less, and governs.",
            Sources.Balance
        );

    private static IEnumerable<Finding> Medium(Service s)
    {
        if (s.Flammable)
            yield return Finding.Refuse(
                "flammable",
                "Flammable fluid: no putty, rubber or resin without a fire rating.",
                Sources.NavyPatches
            );
        if (s.Toxic || s.Category == ServiceCategory.M)
            yield return Finding.Refuse("toxic", "Toxic fluid: a patch that only seals is not for it.", Sources.Own);
        if (s is { FluidGroup: 1, Flammable: false, Toxic: false })
            yield return Finding.Fail(
                "group-one-fluid",
                "Group 1 fluid: show that the putty stands it; strong acids attack resins.",
                Sources.PuttyManual
            );
        if (s.State == FluidState.Gas && !s.Flammable)
            yield return Finding.Watch(
                "stored-energy",
                "Gas stores energy: fit it depressurised and test with liquid where that can be done.",
                Sources.Own
            );
        if (s.Cyclic)
            yield return Finding.Watch(
                "cyclic",
                "Vibration or hammer loosens bands: support the line, and look sooner.",
                Sources.Own
            );
    }

    private static IEnumerable<Finding> Metal(Pipe pipe)
    {
        yield return pipe.Metal == MetalFamily.Other
            ? Finding.Watch(
                "substrate",
                "The putty's hold on this metal is not listed: try it first.",
                Sources.PuttySubstrate
            )
            : Finding.Pass("substrate", "Putty is used on this metal.", Sources.PuttySubstrate);
    }

    private static IEnumerable<Finding> Size(Pipe pipe)
    {
        if (pipe.OutsideDiameter.Millimeters < SmallestPipeMm)
            yield return Finding.Watch(
                "small-pipe",
                "Banded patches are used from about DN 50 up.",
                Clause.CommonPractice
            );
    }
}
