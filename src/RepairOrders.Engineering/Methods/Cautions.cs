namespace RepairOrders.Engineering.Methods;

/// <summary>What can hurt somebody, in the words printed on screen and paper.</summary>
internal static class Cautions
{
    public static readonly string[] General =
    [
        "This is a temporary repair. It ends on the date above.",
        "Stop if the pipe, the defect, the pressure or the fluid is not as written. Call the supervisor.",
        "Do not start without permit, isolation certificate or live-fit consent, and gas test.",
        "Prove the line dead at the pipe. A gauge that reads zero may not be connected.",
        "Thin pipe can break at a touch. Do not hammer, pry, grind, step on, tighten or strip lagging unless this sheet says so.",
        "Stay out of the line of a leak and of clamp and band ends; bolts and plugs can fly.",
        "If the leak grows, the sound changes or the alarm goes: leave, report, do not try once more.",
        "Know where to isolate and your way out before you begin.",
        "Local codes, the site's permit system and licensed engineers decide; this sheet does not.",
    ];

    public static readonly string[] Resin =
    [
        "Check steel temperature and dew point before every mix; no-go means no mix.",
        "Weigh or measure both parts; start the clock at first contact; scrap what is left when it runs out.",
        "Never mix other resins or hardeners: they can react violently. A big mix gets hot and can smoke.",
        "Resin and hardener sensitise the skin: gloves and eye cover, no solvent on hands.",
        "No load, pressure or heat before the cure time and the hardness are reached.",
    ];

    public static readonly string[] Bolts =
    [
        "A seal does not hold the pipe together. If the sheet says restraint, fit it before the test.",
        "Tighten in the order and passes shown, with the lubricant named; do not pull a gap shut by force.",
        "Never retighten a repair in service to stop a weep: leave, report a failure.",
    ];

    public static readonly string[] Welding =
    [
        "No weld on a live line without checks of wall, flow, fluid and procedure signed.",
        "No weld on crack-like damage.",
        "Hot work: gas test, fire watch during and 30 minutes after, combustibles 11 m away.",
    ];

    public static readonly string[] After =
    [
        "No service without a leak test or a signed waiver. Raise the pressure in steps and watch from a distance.",
        "Fit the tag and photograph it.",
        "Operators: keep to the limits while this repair is live, and report any wetness at once.",
    ];
}
