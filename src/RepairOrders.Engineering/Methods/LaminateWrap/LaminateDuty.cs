using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>What the laminate is up against at the end of its life: mm, MPa, N, °C, years.</summary>
internal sealed record LaminateDuty(
    double D,
    double P,
    double Axial,
    double Td,
    double Years,
    double WallAtEnd,
    double RingAtEnd,
    double Hole,
    double Slot,
    bool ThroughWall,
    double Ec,
    double Ea
)
{
    public static LaminateDuty Read(Sheet s, double leastWall)
    {
        var D = s.Given("D", "outside diameter", s.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        var P = s.GreatestPressure();
        var axial = AxialLoad(s, D, P);
        var Td = Math.Max(
            s.Optional("temperatureC") ?? s.Service.DesignTemperature.DegreesCelsius,
            s.Service.OperatingTemperature.DegreesCelsius
        );
        s.Given("Td", "greatest temperature", Td, "°C", Sources.Pipe);
        var (years, growth) = (s["designLifeYears"], s["growthMmPerYear"]);
        if (s.Defect.Growing && growth <= 0)
            s.Add(
                Finding.Fail(
                    "growth-not-given",
                    "The damage grows and no growth was given: the wall at the end of life is not known.",
                    Sources.Wrap
                )
            );
        var now = s.Defect.ThroughWall ? 0 : s.Defect.RemainingWall.Millimeters;
        var wall = AtEnd(s, "ts", "wall at the end of life", now, growth, years);
        var ring = AtEnd(
            s,
            "tr",
            "least wall of the ring at the end of life",
            PipeFacts.RingWallMm(s.Defect),
            growth,
            years
        );
        var through = s.Defect.ThroughWall || wall < leastWall;
        s.Add(
            through
                ? Finding.Watch(
                    "type-b",
                    "Through, or less than 1 mm left at the end of life: sized over a hole (type B).",
                    Sources.Wrap
                )
                : Finding.Pass(
                    "type-a",
                    "Wall is left at the end of life: sized as reinforcement (type A).",
                    Sources.Wrap
                )
        );
        return new(
            D,
            P,
            axial,
            Td,
            years,
            wall,
            ring,
            through ? HoleAtEnd(s, growth, years) : 0,
            s.Optional("slotWidthMm") ?? 0,
            through,
            s["hoopModulusGpa"] * 1000,
            s["axialModulusGpa"] * 1000
        );
    }

    private static double AxialLoad(Sheet s, double D, double P) =>
        s.Optional("axialLoadKn") is { } given
            ? given * 1000
            : s.Step(
                "F",
                "axial tension, pressure thrust",
                "P π D²/4",
                $"{P} × π × {D}²/4",
                Joints.BoltLoad.EndThrust(Mpa(P), Mm(D)).Newtons,
                "N",
                Sources.Balance
            );

    private static double AtEnd(Sheet s, string symbol, string words, double now, double growth, double years) =>
        s.Step(
            symbol,
            words,
            "max(0, t − CR y)",
            $"max(0, {now} − {growth} × {years})",
            Math.Max(0, now - growth * years),
            "mm",
            Sources.Wrap
        );

    // A hole that is not there yet is taken as large as the damage it will open in.
    private static double HoleAtEnd(Sheet s, double growth, double years)
    {
        if (s.Optional("holeAtEndMm") is { } given)
            return Math.Max(given, s.Defect.HoleDiameter.Millimeters);
        var now = s.Defect.ThroughWall
            ? s.Defect.HoleDiameter.Millimeters
            : Math.Max(1, Math.Max(s.Defect.AxialLength.Millimeters, s.Defect.CircumferentialLength.Millimeters));
        return s.Step(
            "d",
            "hole at the end of life",
            "d0 + 2 CR y",
            $"{now} + 2 × {growth} × {years}",
            now + 2 * growth * years,
            "mm",
            Sources.Wrap
        );
    }
}

/// <summary>Strains the laminate may be given, and the factors they come from; no unit.</summary>
internal sealed record LaminateStrain(double Hoop, double Axial, double Temperature, double Cycles, bool Refused)
{
    private const double AxialOfWeakSide = 0.0010;

    public static LaminateStrain Read(Sheet s, LaminateDuty duty)
    {
        var Tm = LaminateDerating
            .GreatestTemperature(
                UnitsNet.Temperature.FromDegreesCelsius(s["softeningC"]),
                s.Count("softeningBasis") == 1,
                duty.ThroughWall
            )
            .DegreesCelsius;
        s.Given("Tm", "greatest temperature allowed", Tm, "°C", Sources.Wrap);
        s.Add(
            Finding.AtMost(
                "temperature-above-resin",
                "Design temperature",
                duty.Td,
                Tm,
                "°C",
                Sources.Wrap,
                LimitKind.Absolute
            )
        );
        var fT = LaminateDerating.TemperatureFactor(
            UnitsNet.Temperature.FromDegreesCelsius(Tm),
            UnitsNet.Temperature.FromDegreesCelsius(duty.Td)
        );
        if (fT is not { } factor)
            return new(0, 0, 0, 0, Refused: true);
        s.Step(
            "fT",
            "temperature factor",
            "min(1, 6 × 10⁻⁵ x² + 0.001 x + 0.7014), x = Tm − Td",
            $"x = {Tm} − {duty.Td}",
            factor,
            "-",
            Sources.Wrap
        );
        var fc = LaminateDerating.CyclicFactor(s["cycles"], s["pressureRatio"]);
        s.Step(
            "fc",
            "factor for cycles",
            "√(Rc² + (1 − Rc²)/(2.888 log N − 7.108))",
            $"N = {s["cycles"]}, Rc = {s["pressureRatio"]}",
            fc,
            "-",
            Sources.Wrap
        );
        var hoop = s.Optional("strainPercent") / 100 ?? LaminateDerating.SustainedStrain(duty.Years);
        var axial = duty.Ea < 0.5 * duty.Ec ? Math.Min(hoop, AxialOfWeakSide) : hoop;
        var strains = (
            Hoop: Allowed(s, duty, "εc", hoop, factor, fc),
            Axial: Allowed(s, duty, "εa", axial, factor, fc)
        );
        var none = strains.Hoop <= 0 || strains.Axial <= 0;
        if (none)
            s.Add(
                Finding.Refuse(
                    "no-strain-left",
                    "Unequal expansion uses up all the strain the laminate may be given.",
                    Sources.Wrap
                )
            );
        return new(strains.Hoop, strains.Axial, factor, fc, none);
    }

    private static double Allowed(Sheet s, LaminateDuty duty, string symbol, double strain, double fT, double fc)
    {
        var (pipe, laminate) = (PipeFacts.Expansion(s.Pipe.Metal), s["laminateExpansion"] * 1e-6);
        var cure = s["cureTemperatureC"];
        var cold = Math.Min(s.Service.OperatingTemperature.DegreesCelsius, duty.Td);
        var swing = Math.Max(Math.Abs(duty.Td - cure), Math.Abs(cold - cure));
        var eps = LaminateDerating.AllowableStrain(
            fT,
            strain * fc,
            TemperatureDelta.FromKelvins(swing),
            pipe,
            laminate
        );
        return s.Step(
            symbol,
            symbol == "εc" ? "allowable hoop strain" : "allowable axial strain",
            "fT fc ε0 − |ΔT (αs − αc)|",
            $"{fT} × {fc} × {strain} − |{swing} × ({pipe * 1e6} − {laminate * 1e6}) × 10⁻⁶|",
            eps,
            "-",
            Sources.Wrap
        );
    }
}
