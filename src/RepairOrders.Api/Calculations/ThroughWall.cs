using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.ThroughWall;
using static RepairOrders.Api.Calculations.Quantities;
using RepairInMind = RepairOrders.Engineering.ThroughWall.RepairInMind;

namespace RepairOrders.Api.Calculations;

internal static class ThroughWall
{
    public static CalculationAnswer<ThroughWallResult> Calculate(CalculateThroughWall ask)
    {
        var sheet = new Worksheet();
        var pipe = ask.Pipe.Pipe();
        var critical = sheet.Take(
            CriticalLength.Check(
                new ThroughWallCase(
                    pipe,
                    Mm(ask.ThinnestAlongLineMm),
                    Mm(ask.FlawLengthMm),
                    Mm(ask.GrowthByNextVisitMm),
                    Bar(ask.Service.OperatingPressureBar),
                    Mpa(ask.FlowStressMpa)
                )
            )
        );
        var decision = sheet.Take(TemporaryRepairDecision.Decide(Case(ask)));
        var holes =
            ask.Defect.HoleDiameterMm > 0 ? HoleClasses.Of(Mm(ask.Defect.HoleDiameterMm), pipe.OutsideDiameter) : [];
        return sheet.Answer(
            new ThroughWallResult(
                [.. holes.Select(h => new HoleClassResult(h.Scheme, h.Code, h.Words, h.Source.ToString()))],
                critical.CriticalLength?.Millimeters,
                critical.Length.Millimeters,
                critical.HoopStress.Megapascals,
                critical.ShareOfYield,
                decision.Verdict.As<RepairVerdict>(),
                [
                    .. decision.Reasons.Select(r => new DecisionReason(
                        r.Code,
                        r.Condition,
                        r.Verdict.As<RepairVerdict>(),
                        r.Reason,
                        r.Basis.ToString()
                    )),
                ]
            )
        );
    }

    private static DecisionCase Case(CalculateThroughWall ask) =>
        new(ask.Pipe.Pipe(), ask.Defect.Defect(), ask.Service.Service(), Mm(ask.StructuralMinimumMm))
        {
            Repair = ask.Repair.As<RepairInMind>(),
            GrowthExcluded = ask.GrowthExcluded,
            BelowMinimumTemperature = ask.BelowMinimumTemperature,
            HydrogenDamage = ask.HydrogenDamage,
            CreepRange = ask.CreepRange,
            AxialStrengthSuffices = ask.AxialStrengthSuffices,
            RestraintDesigned = ask.RestraintDesigned,
            WallMappedEachSide = Mm(ask.WallMappedEachSideMm),
            NuclearClass = ask.NuclearClass,
            WrittenRelief = ask.WrittenRelief,
            MarineClass = ask.MarineClass,
            GasTransmission = ask.GasTransmission,
            FireRated = ask.FireRated,
            PatchThickness = Mm(ask.PatchThicknessMm),
            PatchSize = Mm(ask.PatchSizeMm),
            PatchCornersRounded = ask.PatchCornersRounded,
        };
}
