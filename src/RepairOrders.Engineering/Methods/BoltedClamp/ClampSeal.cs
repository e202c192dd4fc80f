using RepairOrders.Engineering.Joints;
using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>The seal loop in the split plane and the bolt loads it asks for: mm², mm, N; the load for each MPa in N.</summary>
internal sealed record ClampSeal(
    double Inside,
    double Face,
    double Factor,
    double Operating,
    double Seating,
    double PerMpa
)
{
    public static readonly Clause Form = new("ASME VIII-1 Appendix 2 form", "", Provenance.FromMemory);

    public double Load => Math.Max(Operating, Seating);

    public static ClampSeal Read(Sheet s, ClampCase c)
    {
        var seal = BoltedClampInputs.Seals[s.Count("seal")];
        var b = s["sealEffectiveWidthMm"];
        var inside = s.Step(
            "A",
            "area inside the seal loop",
            "Ds Ls",
            $"{c.Ds} × {c.Ls}",
            c.Ds * c.Ls,
            "mm²",
            Sources.Geometry
        );
        var loop = s.Step(
            "U",
            "seal loop",
            "2 (Ds + Ls)",
            $"2 × ({c.Ds} + {c.Ls})",
            2 * (c.Ds + c.Ls),
            "mm",
            Sources.Geometry
        );
        var m = s.Given("m", "gasket factor", seal.Factor, "-", Form);
        var operating = s.Step(
            "W op",
            "bolt load under pressure",
            "P A + 2 b m P U",
            $"{c.P} × {inside} + 2 × {b} × {m} × {c.P} × {loop}",
            Operation(c.P),
            "N",
            Form
        );
        var seating = s.Step(
            "W seat",
            "bolt load to seat the seal",
            "b y U",
            $"{b} × {seal.SeatingMpa} × {loop}",
            BoltLoad.Seating(Mm(b), Mpa(seal.SeatingMpa), Mm(loop)).Newtons,
            "N",
            Form
        );
        return new(inside, loop * s["sealWidthMm"], m, operating, seating, Operation(1));

        double Operation(double P) =>
            BoltLoad.Operating(Mpa(P), Area.FromSquareMillimeters(inside), Mm(b), m, Mm(loop)).Newtons;
    }
}
