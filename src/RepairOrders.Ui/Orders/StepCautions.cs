namespace RepairOrders.Ui.Orders;

/// <summary>What can hurt somebody, at the step where it can. Common practice of the trade; the site's own rules decide.</summary>
internal static class StepCautions
{
    private const string Decides =
        "Local codes, the site's permit system and licensed engineers decide; this record does not.";

    public static readonly string[] AtThePipe =
    [
        "A thin pipe can break at a touch. Do not hammer, pry, grind or stand on it to measure.",
        "Stay out of the line of a leak; if it grows, leave and report.",
    ];

    public static readonly string[] Emergency =
    [
        "Two spoken consents make a start possible, not safe: permit, gas test and tag as always.",
        "Never on crack-like damage, nor where this spot has failed before.",
    ];

    public static readonly string[] Live =
    [
        "The pipe stays under pressure while people touch it. A seal does not hold the pipe together.",
        "Agree before who closes which valve, and the way out.",
    ];

    public static readonly string[] Readying =
    [
        "Prove the line dead at the pipe; a gauge that reads zero may not be connected.",
        "A gas test holds for its place and hour. Test again after a break.",
        "This signature is no permit. " + Decides,
    ];

    public static readonly string[] Fitting =
    [
        "Stop if the pipe, the defect, the pressure or the fluid is not as written.",
        "Stay out of the line of the leak and of band and clamp ends; bolts and plugs can fly.",
        "If the leak grows, the sound changes or the alarm goes: leave, report, do not try once more.",
    ];

    public static readonly string[] Mixing =
    [
        "Resin and hardener sensitise the skin: gloves and eye cover.",
        "Measure both parts; the clock starts at first contact; scrap what is left when it runs out.",
        "A big mix gets hot and can smoke: mix what one plate needs.",
    ];

    public static readonly string[] Resuming =
    [
        "Go on only when the cause is cleared at the pipe, not on paper.",
        "Resin that stood is scrap: start a new mix.",
    ];

    public static readonly string[] Waiving =
    [
        "Without a test nothing has shown that the repair holds. The examination instead must be able to find a leak.",
        Decides,
    ];

    public static readonly string[] Proving =
    [
        "Nobody in line with bolts, bands or the defect while the pressure rises. Raise it in steps, watch from a distance.",
        "Never above what the thinned wall holds. Gas under pressure stores far more than water: barriers, few people.",
        "Not before the material is set for load at the temperature of the pipe.",
    ];

    public static readonly string[] IntoService =
    [
        "Operators keep to the limits while the repair is live, and report any wetness at once.",
        "All locks off and all people clear before the valve is opened, slowly.",
    ];

    public static readonly string[] Visiting =
    [
        "Do not touch, tap or tighten. A weep is a failure: leave and report it.",
        "Never retighten a repair in service to stop a weep.",
    ];

    public static readonly string[] Leaking =
    [
        "Keep clear and keep others clear. Isolate from a distance where you can.",
        "Do not tighten, tap or touch what leaks.",
    ];

    public static readonly string[] Removing =
    [
        "The repair may be all that closes the hole: isolate, drain and prove the line dead at the pipe first.",
        "Pressure can stand under plate and wrap. Loosen from the far side, in steps, never in line with bands or bolts.",
        "The pipe beneath is thinner than when it was covered: support it before the repair comes off.",
        Decides,
    ];
}
