using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// Reported, judged, sized or sent back: nothing is on the pipe yet.
internal static partial class Stories
{
    private static Story[] Waiting => [.. New, .. Judged, .. Planned, .. NotToBe];

    private static Story[] New =>
        [
            new Story("CW-50-3040", "Turbine hall, sample cooler supply, at the bracket")
                .HoursAgo(2.5)
                .Raise(
                    "spray from a pinhole beside the bracket",
                    LeakState.Jet,
                    by: "vera",
                    hazardous: true,
                    atOnce: "walkway shut, valve throttled"
                ),
            new Story("AIR-80-5002", "Compressor room, receiver outlet, first elbow").Raise(
                -2,
                "pitted outside where the paint is gone",
                LeakState.Dry,
                by: "anton",
                found: FoundHow.Inspection
            ),
            new Story("CO-100-0430", "Boiler house, condensate tank return, at the roof").Raise(
                -1,
                "drip on the roof sheet when the pumps run",
                LeakState.Drip,
                by: "greta",
                found: FoundHow.Report,
                hour: 5
            ),
            new Story("FM-200-0013", "Yard, west leg, at the road crossing")
                .HoursAgo(5)
                .Raise(
                    "wet patch beside the crossing, main pressure drops slowly",
                    LeakState.Weep,
                    by: "tove",
                    found: FoundHow.Alarm
                )
                .HoursAgo(4)
                .Consents(),
        ];

    private static Story[] Judged =>
        [
            new Story("HO-100-0450", "Boiler house, pipe bridge, support 7")
                .Raise(
                    -3,
                    "thinned under the old support shoe",
                    LeakState.Dry,
                    by: "anton",
                    atOnce: "support lifted and packed"
                )
                .Assess(
                    Damage.Thin(0.55, clock: 6, rate: 0.1, cause: DefectCause.ExternalCorrosion),
                    PeopleNearby.MannedArea
                ),
            new Story("ST-200-2207", "Stock preparation, refiner bypass, upper bend")
                .Raise(-2, "weep on the outside of the bend", by: "vera")
                .Assess(Damage.Pinhole(clock: 12, cause: DefectCause.Erosion)),
            new Story("EF-150-6131", "Effluent plant, dosing bay, upper run")
                .Raise(-3, "stain at the hanger, pinhole when scraped", LeakState.Weep)
                .Assess(Damage.Pinhole(clock: 11, cause: DefectCause.ExternalCorrosion))
                .Choose(Methods.Patch),
            new Story("AIR-100-5001", "Compressor room, cooler inlet, at the drain boss")
                .Raise(-3, "pinhole at the drain boss", by: "tove")
                .Assess(Damage.Pinhole(clock: 6, holeMm: 2))
                .Choose(Methods.Clamp),
        ];

    private static Story[] Planned =>
        [
            new Story("EF-300-6110", "Effluent plant, rising main, at the road bridge")
                .Raise(-3, "drip over the bridge, people pass below", LeakState.Drip, by: "vera")
                .Assess(Damage.Pinhole(clock: 6, cause: DefectCause.Erosion), PeopleNearby.PublicWay, river: true)
                .Choose(Methods.Patch)
                .Size(fitIn: 4, life: 90, fix: "job 4561", fixIn: 60, owner: "mara")
                .Approve(signatures: 2),
            new Story("CW-150-3105", "Pump house 2, south wall, at the drain valve")
                .Raise(-3, "weep above the drain valve", by: "anton")
                .Assess(Damage.Pinhole(clock: 5))
                .Choose(Methods.Patch)
                .Size(fitIn: 5, fix: "job 4560", fixIn: 100, owner: "mara"),
            new Story("CO-50-0441", "Dryer section, fifth bay, return from cylinder 22")
                .Raise(-4, "drip from the lagging", LeakState.Drip, by: "tove")
                .Assess(Damage.Pinhole(clock: 7, holeMm: 3, cause: DefectCause.CorrosionUnderLagging))
                .Choose(Methods.Clamp)
                .Size(fitIn: 6, life: 120, fix: "job 4558", fixIn: 55, owner: "vera")
                .Approve(signatures: 1),
            new Story("AIR-80-5002", "Compressor room, ring main, behind compressor 2")
                .Raise(-4, "pinhole on the bottom, oil mist on the floor", by: "vera")
                .Plan(Damage.Pinhole(clock: 6, holeMm: 2), fitIn: 6, fix: "job 4559", fixIn: 110, owner: "vera"),
            new Story("CW-250-3120", "Pump house 1, suction header, at the manhole")
                .Raise(-4, "thin ring beside the manhole weld", LeakState.Dry, found: FoundHow.Inspection, by: "tove")
                .Plan(
                    Damage.Thin(0.5, clock: 3),
                    Methods.Wrap,
                    fitIn: 8,
                    life: 500,
                    fix: "job 4557",
                    fixIn: 190,
                    owner: "ines"
                ),
        ];

    private static Story[] NotToBe =>
        [
            new Story("ST-100-2230", "Board machine, white water line at the pit")
                .Raise(-2, "leaks somewhere at the pit", LeakState.Weep, by: "anton")
                .Return(
                    "no spot and no picture of it: nobody could find it again",
                    "place on the line to the metre",
                    "photograph of the leak",
                    "what was done at once"
                ),
            new Story("LS-80-0907", "Dryer section, drive side, first tee")
                .Raise(
                    -12,
                    "line of rust from the tee, steam when the load changes",
                    LeakState.Weep,
                    by: "vera",
                    hazardous: true,
                    atOnce: "bay shut, load held"
                )
                .Assess(Damage.Crack(clock: 2))
                .Refuse("crack-like at the tee: nothing is put over it; shut down and cut out"),
            new Story("CW-80-3022", "Turbine hall, gland cooler return")
                .Raise(-21, "sweating taken for a weep", LeakState.Weep, by: "anton")
                .Withdraw("dew on a cold pipe; wiped dry, it came back everywhere", "there was no leak"),
            new Story("CW-200-3201", "Pump house 1, bypass of pump 3")
                .Raise(-58, "thin spot at the bypass", LeakState.Dry, by: "tove", found: FoundHow.Inspection)
                .Assess(Damage.Pitted(0.6, clock: 6))
                .Choose(Methods.Wrap)
                .Withdraw("the bypass was cut out with the valve change"),
        ];
}
