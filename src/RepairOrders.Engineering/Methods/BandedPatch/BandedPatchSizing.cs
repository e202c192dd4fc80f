using RepairOrders.Engineering.Joints;
using static RepairOrders.Engineering.Methods.Sheet;
using K = RepairOrders.Engineering.Methods.DimensionKinds;

namespace RepairOrders.Engineering.Methods.BandedPatch;

/// <summary>Sizes one banded patch, in the order a hand calculation goes.</summary>
internal sealed class BandedPatchSizing(Sheet s)
{
    private static readonly string[] OwnCautions =
    [
        "The bands carry no end load: where the pipe may part, stop.",
        "Keep the fastener near the leak, not over it and not opposite.",
        "Cut band and plate edges are sharp; a band under tension whips when it lets go.",
    ];

    public MethodDesign Design()
    {
        var p = Patch.Read(s);
        var blank = PatchBlank.Size(s, p);
        var friction = PatchFriction.Read(s, blank);
        var limits = TensionLimits.Read(s, p);
        var (tension, bands) = Lay(p, blank, friction, limits);
        var checks = new PatchChecks(s, p, blank, friction, limits, tension, bands);
        checks.Run();
        var bill = PatchBill.Count(s, p, blank, friction, bands);
        var contact = BandTension.ContactPressure(N(tension.High), Mm(p.r), Mm(p.w)).Megapascals;
        return s.Design(
            [
                .. Plate(p, blank, bands),
                .. Bands(p, friction, bands, bill),
                .. Tension(tension, limits, checks, contact),
            ],
            Math.Min(BandedPatchClaims.CeilingBar, checks.Held * 10),
            bill.Lines(s, p, blank, bands),
            [.. Cautions.Resin, .. Cautions.Bolts, .. OwnCautions],
            new CureTimes(s["setForLoadH"], s["fullHardnessH"], s["cureReferenceC"]),
            s["designLifeDays"],
            LeastWall(p, contact),
            carriesAxialLoad: false
        ) with
        {
            Series = RoundTheArc(p, friction, tension),
        };
    }

    // First the tension that spares the pipe too; where its bands do not hold, the tension the bands themselves bear.
    private (PatchTension, PatchBands) Lay(Patch p, PatchBlank blank, PatchFriction friction, TensionLimits limits)
    {
        var gentle = PatchTension.Set(s, limits, Math.Min(limits.Allowed, limits.Pipe));
        var bands = PatchBands.Lay(s, p, blank, friction, limits, gentle);
        if (bands.Holds || limits.Pipe >= limits.Allowed || PatchTension.IsGiven(s))
            return (gentle, bands);
        var full = PatchTension.Set(s, limits, limits.Allowed);
        var other = PatchBands.Lay(s, p, blank, friction, limits, full);
        return other.Holds ? (full, other) : (gentle, bands);
    }

    // The wall at which a third of the collapse pressure is just what the bands press with.
    private double LeastWall(Patch p, double contact)
    {
        var (E, nu) = (PipeFacts.ModulusMpa(s.Pipe.Metal), PipeFacts.Poisson);
        return s.Step(
            "t least",
            "least wall the bands may press on",
            "D (3 p (1 − ν²)/(2 E))^(1/3)",
            $"{p.D} × (3 × {contact} × (1 − {nu}²)/(2 × {E}))^(1/3)",
            p.D * Math.Cbrt(3 * contact * (1 - nu * nu) / (2 * E)),
            "mm",
            Sources.Ring
        );
    }

    private static Dimension[] Plate(Patch p, PatchBlank blank, PatchBands bands) =>
        [
            K.PlateLength.Of(bands.PlateLength),
            K.PlateArc.Of(blank.Arc),
            K.PlateHalfAngle.Of(blank.HalfAngle * 180 / Math.PI),
            K.PlateThickness.Of(p.t),
            K.PlateGap.Of(blank.Gap),
            K.FullCircle.Of(blank.Full ? 1 : 0),
        ];

    private Dimension[] Bands(Patch p, PatchFriction friction, PatchBands bands, PatchBill bill) =>
        [
            K.PuttyThickness.Of(p.tp),
            K.PuttyVolume.Of(bill.PuttyCm3),
            K.PuttyMass.Of(bill.PuttyG),
            K.BandCount.Of(bands.Count),
            K.BandsNeeded.Of(bands.Needed),
            K.BandsThatFit.Of(bands.Fit),
            K.BandWidth.Of(p.w),
            K.BandThickness.Of(p.tb),
            K.BandPitch.Of(Math.Round(p.w + bands.Gap, 1)),
            K.PlateOverhang.Of(bands.Overhang),
            K.Wraps.Of(s.Count("wraps")),
            K.BandPieceLength.Of(bill.PieceMm),
            K.PiecesPerBand.Of(bill.PiecesPerBand),
            K.FastenersPerBand.Of(bill.PiecesPerBand),
            K.FastenerAngle.Of(friction.AngleDeg),
        ];

    private static IEnumerable<Dimension> Tension(
        PatchTension tension,
        TensionLimits limits,
        PatchChecks checks,
        double contact
    )
    {
        yield return K.BoltDiameter.Of(limits.ScrewDiameterMm);
        yield return K.TensionLow.Of(tension.Low);
        yield return K.TensionHigh.Of(tension.High);
        yield return K.ContactPressure.Of(contact);
        if (tension.Torque is not { } torque || checks.Window is not { } window)
            yield break;
        yield return K.Torque.Of(torque);
        yield return K.TorqueLeast.Of(window.Least);
        yield return K.TorqueMost.Of(window.Most);
    }

    private static Series[] RoundTheArc(Patch p, PatchFriction friction, PatchTension tension)
    {
        var round = BandTension.RoundTheArc(N(tension.Low), friction.Coefficient, friction.Away, Mm(p.r), Mm(p.w), 36);
        const string across = "angle from the fastener, °";
        const string where = ", low estimate, from the fastener to the farthest edge of the plate";
        return
        [
            new(
                "tension-round-the-arc",
                "tension of a band" + where,
                across,
                "tension, N",
                [.. round.Select(a => new Point(a.Away.Degrees, a.Tension.Newtons))]
            ),
            new(
                "pressure-round-the-arc",
                "pressure under it" + where,
                across,
                "pressure, MPa",
                [.. round.Select(a => new Point(a.Away.Degrees, a.Contact.Megapascals))]
            ),
        ];
    }
}
