using RepairOrders.Api.Drawing;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;
using Defects = RepairOrders.Engineering.Damage.DefectKind;
using Metal = RepairOrders.Engineering.Pipework.MetalFamily;

namespace RepairOrders.Api.Tests.Drawing;

/// <summary>Pipes from DN 50 to DN 1200 with a defect, each repaired by each method as the engine sizes it.</summary>
internal static class Subjects
{
    /// <summary>Outside diameter and wall, mm: ASME B36.10M, standard weight (DN 1200: 12.7 mm).</summary>
    private static readonly Dictionary<int, (double Outside, double Wall)> Pipes = new()
    {
        [50] = (60.3, 3.91),
        [150] = (168.3, 7.11),
        [600] = (610, 9.53),
        [1200] = (1219, 12.7),
    };

    public static TheoryData<int, string> All
    {
        get
        {
            var data = new TheoryData<int, string>();
            foreach (var dn in Pipes.Keys)
            foreach (var method in MethodCatalogue.All)
                data.Add(dn, method.Code);
            return data;
        }
    }

    public static Subject Of(int dn, string code)
    {
        var method = MethodCatalogue.Find(code);
        var readings = Readings(dn, code);
        var defect = readings.Defect;
        return new Subject(
            $"mill-{dn}",
            readings.Pipe.OutsideDiameter.Millimeters,
            readings.Pipe.NominalWall.Millimeters,
            defect.SoundWallBeside.Millimeters,
            defect.ThroughWall ? 0 : defect.RemainingWall.Millimeters,
            Measured(defect),
            method.Size(readings).View(method.Name)
        );
    }

    public static DefectMeasured Measured(Defect d) =>
        new(
            d.Kind.As<Contract.DefectKind>(),
            d.Side.As<Contract.DefectSide>(),
            d.Cause.As<Contract.DefectCause>(),
            d.ThroughWall,
            Measure.Of(d.AxialLength.Millimeters, "mm"),
            Measure.Of(d.CircumferentialLength.Millimeters, "mm"),
            d.ThroughWall ? Measure.Of(d.HoleDiameter.Millimeters, "mm") : null,
            d.ClockHours,
            d.Growing
        );

    private static Readings Readings(int dn, string code)
    {
        var (outside, wall) = Pipes[dn];
        var pipe = new Pipe(
            Length.FromMillimeters(outside),
            Length.FromMillimeters(wall),
            Metal.CarbonSteel,
            Pressure.FromMegapascals(240),
            Pressure.FromMegapascals(415),
            Pressure.FromMegapascals(137.9),
            1
        );
        var bar = code == "banded-patch" ? 2.5 : 8;
        var service = new Service(
            "cooling water",
            Engineering.Pipework.FluidState.Liquid,
            Engineering.Pipework.ServiceCategory.D,
            2,
            4,
            false,
            false,
            false,
            Pressure.FromBars(bar),
            Pressure.FromBars(bar),
            Temperature.FromDegreesCelsius(18),
            Temperature.FromDegreesCelsius(40),
            false,
            false,
            false
        );
        return new(pipe, Defect(dn, code, wall), service, Values(code));
    }

    private static Defect Defect(int dn, string code, double wall)
    {
        var hole = new Defect(
            Defects.Pinhole,
            Engineering.Damage.DefectSide.Internal,
            Engineering.Damage.DefectCause.InternalCorrosion,
            true,
            Length.FromMillimeters(15),
            Length.FromMillimeters(15),
            Length.Zero,
            Length.FromMillimeters(4),
            Length.FromMillimeters(Math.Round(wall * 0.9, 1)),
            dn == 600 ? 11.5 : 4,
            false
        );
        return code switch
        {
            "laminate-wrap" or "section-replacement" or "welded-sleeve" => hole with
            {
                Kind = Defects.GeneralThinning,
                Side = dn == 150 ? Engineering.Damage.DefectSide.External : Engineering.Damage.DefectSide.Internal,
                ThroughWall = false,
                HoleDiameter = Length.Zero,
                RemainingWall = Length.FromMillimeters(Math.Round(wall * 0.45, 1)),
                AxialLength = Length.FromMillimeters(40 + dn / 6.0),
                CircumferentialLength = Length.FromMillimeters(30 + dn / 5.0),
                ClockHours = 6,
            },
            "welded-patch" => hole with
            {
                Kind = Defects.Pitting,
                ThroughWall = false,
                HoleDiameter = Length.Zero,
                RemainingWall = Length.FromMillimeters(Math.Round(wall * 0.5, 1)),
                AxialLength = Length.FromMillimeters(10),
                CircumferentialLength = Length.FromMillimeters(10),
                ClockHours = 1.5,
            },
            _ => hole,
        };
    }

    private static Dictionary<string, double> Values(string code) =>
        code switch
        {
            "laminate-wrap" => new()
            {
                ["softeningC"] = 100,
                ["lapShearMpa"] = 5,
                ["toughnessJm2"] = 200,
            },
            "bolted-clamp" => new() { ["restraint"] = 1, ["restraintKn"] = 100 },
            _ => [],
        };
}
