using RepairOrders.Contract;
using RepairOrders.Engineering.Axial;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class AxialLoad
{
    public static CalculationAnswer<AxialLoadResult> Calculate(CalculateAxialLoad ask)
    {
        var sheet = new Worksheet();
        var pipe = ask.Pipe.Pipe();
        var axial = sheet.Take(
            Engineering.Axial.AxialLoad.Check(
                new AxialCase(
                    pipe,
                    ask.Defect.Defect(),
                    Bar(ask.PressureBar),
                    Bar(ask.SurgeRiseBar),
                    Mm(ask.SealDiameterMm),
                    Force.FromKilonewtons(ask.OutsidePullKn),
                    Torque.FromNewtonMeters(ask.BendingMomentNm),
                    ask.Unrestrained,
                    ask.ConditionUnknown,
                    ask.RepairCarriesAxialLoad
                )
            )
        );
        var crushing = ask.Crushing is { } c
            ? sheet.Take(
                Crushing.Check(
                    new CrushingCase(
                        pipe.OutsideDiameter,
                        Mm(c.LeastWallMm),
                        pipe.Metal,
                        pipe.YieldStrength,
                        Mpa(c.ModulusMpa),
                        c.Ovality,
                        Bar(c.OutsidePressureBar),
                        Bar(c.LeastInsidePressureBar)
                    )
                )
            )
            : null;
        return sheet.Answer(
            new AxialLoadResult(
                axial.EndLoad.Kilonewtons,
                axial.Thrust.Kilonewtons,
                axial.Capacity.Kilonewtons,
                axial.WallNeeded.Millimeters,
                axial.AssumeFullThrust,
                axial.RestraintNeeded.Kilonewtons,
                crushing is null
                    ? null
                    : new CrushingResult(
                        crushing.Allowed.Bars,
                        crushing.Net.Bars,
                        crushing.Collapse.Bars,
                        crushing.Elastic.Bars
                    )
            )
        );
    }
}
