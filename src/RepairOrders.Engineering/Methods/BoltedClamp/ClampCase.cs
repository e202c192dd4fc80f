using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>What the clamp is up against: mm, MPa, mm/year, days.</summary>
internal sealed record ClampCase(
    double D,
    double P,
    double Injection,
    double Ds,
    double Ls,
    double ClampLength,
    bool Restrained,
    double Growth,
    double LifeDays
)
{
    public static ClampCase Read(Sheet s)
    {
        var D = s.Given("D", "outside diameter", s.Pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        var injection = (s.Optional("injectionPressureBar") ?? 0) / 10;
        var P = Math.Max(s.GreatestPressure(), injection);
        var Ds = s.Optional("sealDiameterMm") ?? D;
        if (Ds < D)
            throw new ImpossibleInputException(
                "sealDiameterMm",
                Text($"{Ds:G6}"),
                Text($"0, or the outside diameter of {D:G6} mm and more")
            );
        var (damage, cover) = (s.Defect.AxialLength.Millimeters, s["sealCoverMm"]);
        var Ls = s.Step(
            "Ls",
            "between the end seals",
            "d + 2 c",
            $"{damage} + 2 × {cover}",
            Math.Ceiling(damage + 2 * cover),
            "mm",
            Sources.Geometry
        );
        return new(
            D,
            P,
            injection,
            Ds,
            Ls,
            Ls + 2 * s["sealWidthMm"],
            s.Count("restraint") == 1,
            s["growthMmPerYear"],
            s["designLifeDays"]
        );
    }
}
