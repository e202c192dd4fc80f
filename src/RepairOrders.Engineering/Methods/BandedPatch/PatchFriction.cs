using RepairOrders.Engineering.Joints;
using UnitsNet;
using static RepairOrders.Engineering.Methods.Sheet;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>What friction takes between the nearest tightened fastener and the farthest edge of the plate.</summary>
internal sealed record PatchFriction(double Coefficient, int Fasteners, double AngleDeg, Angle Away, double Share)
{
    public static PatchFriction Read(Sheet s, PatchBlank blank)
    {
        var (mu, k) = (s["friction"], s.Count("fastenersRound"));
        var middle = Math.Min(s["fastenerAngleDeg"], 180.0 / k);
        var theta = middle * Math.PI / 180;
        var phi = Math.Min(Math.PI / k, theta + blank.HalfAngle);
        s.Step(
            "φ",
            "nearest fastener to the farthest edge of the plate",
            "min(π/k, θ + a)",
            $"min(π/{k}, {theta} + {blank.HalfAngle})",
            phi,
            "rad",
            Sources.Geometry
        );
        var share = 1 / BandTension.CapstanRatio(mu, Rad(phi));
        s.Step("c", "share of the tension left there", "exp(−μ φ)", $"exp(−{mu} × {phi})", share, "-", Capstan);
        return new(mu, k, middle, Rad(phi), share);
    }

    private static Clause Capstan => new("capstan equation", "");
}
