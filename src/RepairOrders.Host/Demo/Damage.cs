using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>What the gauge and the eye found. Walls are shares of the nominal one, so that it can be told of any line.</summary>
internal sealed record Damage(
    DefectKind Kind,
    DefectCause Cause,
    double Left,
    double Beside,
    double AlongMm,
    double RoundMm,
    double? HoleMm,
    double Clock,
    double? RateMmPerYear = null,
    bool Growing = false,
    DefectSide Side = DefectSide.Internal
)
{
    public bool Through => Left <= 0;

    public static Damage Pinhole(double clock, double holeMm = 4, DefectCause cause = DefectCause.InternalCorrosion) =>
        new(DefectKind.Pinhole, cause, 0, 0.9, 15, 15, holeMm, clock) { Side = SideOf(cause) };

    public static Damage Thin(
        double left,
        double clock,
        double rate = 0.15,
        DefectCause cause = DefectCause.InternalCorrosion
    ) => new(DefectKind.GeneralThinning, cause, left, 0.85, 80, 60, null, clock, rate) { Side = SideOf(cause) };

    public static Damage Pitted(double left, double clock, DefectCause cause = DefectCause.InternalCorrosion) =>
        new(DefectKind.Pitting, cause, left, 0.9, 12, 12, null, clock, 0.1) { Side = SideOf(cause) };

    public static Damage Crack(double clock) =>
        new(DefectKind.CrackLike, DefectCause.Fatigue, 0.5, 0.95, 60, 3, null, clock, Growing: true);

    public DefectMeasured Measured =>
        new(
            Kind,
            Side,
            Cause,
            Through,
            Measure.Of(AlongMm, "mm"),
            Measure.Of(RoundMm, "mm"),
            HoleMm is { } hole ? Measure.Of(hole, "mm") : null,
            Clock,
            Growing
        );

    private static DefectSide SideOf(DefectCause cause) =>
        cause switch
        {
            DefectCause.ExternalCorrosion or DefectCause.CorrosionUnderLagging or DefectCause.MechanicalDamage =>
                DefectSide.External,
            DefectCause.Unknown => DefectSide.Unknown,
            _ => DefectSide.Internal,
        };
}
