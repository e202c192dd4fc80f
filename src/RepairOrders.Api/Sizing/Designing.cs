using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Risk;
using UnitsNet;
using Readings = RepairOrders.Engineering.Methods.Readings;

namespace RepairOrders.Api.Sizing;

/// <summary>From what the engineer entered to the design that is signed.</summary>
internal static class Designing
{
    /// <summary>The chosen method; sizing is asked only where there is one.</summary>
    public static IRepairMethod Method(RepairOrder order) =>
        MethodCatalogue.Find(order.Last<Choice>()!.Asked.Ask.Method);

    public static SignedDesign Of(RepairOrder order, SizeRepair ask, Person? owner, SurroundingShutdown? shutdown)
    {
        var assessment = order.Last<Assessment>()!;
        var judging = Judging.Of(order, assessment.Asked.Ask);
        var method = Method(order);
        RepairOrder.Refuse(EnteredAlone(order, method, ask));
        var sized = ask.Entered is { } entered
            ? Entered(method, entered)
            : method
                .Size(
                    new Readings(
                        judging.Pipe,
                        judging.Defect,
                        Limited(judging.Facts.Service, ask.InterimLimits),
                        InputValues.Read(method.Inputs, ask.Values)
                    )
                )
                .View(method.Name);
        var risk = Class(judging, assessment.Asked.Judgement, sized, ask.Restraint);
        var end = EndDates.Reckon(order, ask, sized, risk, shutdown?.StartsOn);
        return Fingerprints.Sealed(
            new SignedDesign(
                ask,
                sized,
                judging.Facts.View(judging.Pipe),
                assessment.Id,
                risk.View(),
                end,
                owner?.FullName ?? "",
                shutdown?.Name,
                [.. Remarks(ask, end)],
                "",
                order.Site.FiguresVersionInForce
            )
        );
    }

    /// <summary>The class of a design run again on walls read since; where none were read, those of the assessment count.</summary>
    public static RiskRank ClassAgain(
        RepairOrder order,
        SignedDesign design,
        SignedAssessment assessment,
        IReadOnlyList<ThicknessReading> walls
    )
    {
        var kept = assessment.Ask.Readings.Where(r => walls.All(w => w.Where != r.Where));
        var judging = Judging.Of(order, assessment.Ask with { Readings = [.. walls, .. kept] });
        return Class(judging, assessment.Judgement, design.Method, design.Ask.Restraint);
    }

    private static RiskRank Class(Judging judging, Judgement judged, MethodDesignView sized, Restraint? restraint)
    {
        var carried = judged.AxialShort is not true || sized.CarriesAxialLoad || restraint is not null;
        var strength = Likelihood.StrengthOf(
            sized.Method,
            judging.Defect,
            judging.Facts.Service,
            sized.Holds && carried
        );
        return judging.Class(Length.FromMillimeters(judged.RequiredWallMm!.Value), strength);
    }

    // While the repair is live the line runs at its interim limits: that is what the repair is sized for.
    private static Service Limited(Service service, InterimLimits? limits)
    {
        var pressure = limits?.Pressure is { } p ? Pressure.FromBars(p.Value) : service.DesignPressure;
        var temperature = limits?.Temperature is { } t
            ? Temperature.FromDegreesCelsius(t.Value)
            : service.DesignTemperature;
        return service with
        {
            OperatingPressure = UnitMath.Min(service.OperatingPressure, pressure),
            DesignPressure = UnitMath.Min(service.DesignPressure, pressure),
            OperatingTemperature = UnitMath.Min(service.OperatingTemperature, temperature),
            DesignTemperature = UnitMath.Min(service.DesignTemperature, temperature),
        };
    }

    /// <summary>What the service sizes is entered only where a second engineer has signed for it.</summary>
    private static Objection? EnteredAlone(RepairOrder order, IRepairMethod method, SizeRepair ask)
    {
        if (ask.Entered is null && method.Inputs.Count == 0)
            throw new MalformedAsk(
                "entered",
                $"entered is missing; the {Words.Lower(method.Name)} is not sized by the service, so its design is entered."
            );
        var agreed = Claims.Covered(order, method.Code, order.Last<Choice>()!.ById).Contains(Deviation.EnteredDesign);
        return ask.Entered is not null && method.Inputs.Count > 0 && !agreed
            ? new Objection(
                "entered-not-agreed",
                $"The {Words.Lower(method.Name)} is sized by the service. A design of one's own takes a second engineer's signature: a deviation for an entered design.",
                "a second integrity engineer, by a deviation"
            )
            : null;
    }

    private static MethodDesignView Entered(IRepairMethod method, EnteredDesign e) =>
        new(
            method.Code,
            method.Name,
            Entered: true,
            e.CalculationReference,
            e.Dimensions,
            e.PressureHeld?.Value,
            e.Materials,
            e.HoldPoints.Count > 0 ? e.HoldPoints : [.. method.HoldPoints.Select(h => h.View())],
            e.Cautions,
            [],
            [],
            e.SetForLoadHours,
            e.FullHardnessHours,
            e.CureReference.Value,
            e.DesignLifeDays,
            e.LeastWall.Value,
            e.CarriesAxialLoad,
            []
        );

    private static IEnumerable<FindingView> Remarks(SizeRepair ask, EndDateView end)
    {
        if (ask.PermanentFix is { } fix && fix.On > end.On)
            yield return new(
                "fix-after-end",
                FindingSeverity.Watch,
                $"The permanent fix is planned for {fix.On:yyyy-MM-dd}, after the end date of {end.On:yyyy-MM-dd}: an extension will be needed, or an earlier fix.",
                fix.On.DayNumber - end.On.DayNumber,
                0,
                "d",
                "own rule",
                false
            );
    }
}
