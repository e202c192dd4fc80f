using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// Between approval and service, today.
internal static partial class Stories
{
    private static Story[] AtWork =>
        [
            new Story("CO-80-0418", "Board machine, drive side, third bay")
                .Raise(
                    -6,
                    "steaming drip from under the lagging",
                    LeakState.Drip,
                    by: "vera",
                    hazardous: true,
                    atOnce: "walkway shut, hot-water sign up"
                )
                .Plan(
                    Damage.Pinhole(clock: 5, cause: DefectCause.CorrosionUnderLagging),
                    Methods.Clamp,
                    fitIn: 5,
                    fix: "job 4550",
                    fixIn: 90,
                    owner: "tove"
                )
                .Issue()
                .Ready()
                .Fit(points: 4),
            new Story("CW-300-3001", "Intake, valve chamber, at the wall flange")
                .Raise(-5, "weep beside the wall, chamber floor wet", by: "anton")
                .Plan(Damage.Pinhole(clock: 8), Methods.Clamp, fitIn: 4, fix: "job 4552", fixIn: 120)
                .Issue()
                .Ready()
                .Fit(points: 3)
                .Stop("tide gate leaks, water rising in the chamber"),
            new Story("ST-100-2230", "Board machine, broke line at the couch pit")
                .Raise(-9, "weep at the bend, stock on the ladder", by: "tove")
                .Plan(
                    Damage.Pinhole(clock: 10, cause: DefectCause.Erosion),
                    fitIn: 6,
                    fix: "job 4547",
                    fixIn: 120,
                    owner: "vera"
                )
                .Issue()
                .Ready(permitHours: 10)
                .Fit(points: 3),
            new Story("FM-150-1103", "Board machine, wet end, riser 2 at the landing")
                .Raise(
                    -4,
                    "weep at the landing, rust run below",
                    by: "vera",
                    whyNot: "the riser stays charged while the machine runs"
                )
                .Plan(Damage.Pinhole(clock: 7, holeMm: 3), fitIn: 4, fix: "job 4556", fixIn: 90, owner: "olaf")
                .Issue()
                .Ready(hoursAgo: 9)
                .Fit(),
            new Story("CO-50-0412", "Board machine, tending side, trap station 7")
                .Raise(-8, "drip at the trap outlet", LeakState.Drip, by: "anton")
                .Plan(
                    Damage.Pinhole(clock: 6, holeMm: 3),
                    Methods.Clamp,
                    fitIn: 6,
                    fix: "job 4548",
                    fixIn: 80,
                    owner: "tove"
                )
                .Issue()
                .Ready()
                .Fit(),
            new Story("EF-300-6110", "Effluent plant, rising main, in the crossing below the road")
                .Raise(
                    -6,
                    "stain on the concrete, wall thin by gauge",
                    LeakState.Stain,
                    by: "tove",
                    found: FoundHow.Inspection
                )
                .Plan(
                    Damage.Thin(0.5, clock: 6),
                    Methods.Wrap,
                    fitIn: 5,
                    life: 500,
                    fix: "job 4553",
                    fixIn: 180,
                    owner: "ines"
                )
                .Issue()
                .Ready(),
            new Story("HO-50-0460", "Boiler house, burner 2 supply, at the pipe clip")
                .Raise(-7, "rubbed thin under the clip", LeakState.Dry, found: FoundHow.OtherWork, by: "anton")
                .Plan(
                    Damage.Thin(0.55, clock: 9, rate: 0.05, cause: DefectCause.ExternalCorrosion),
                    Methods.Wrap,
                    fitIn: 7,
                    life: 365,
                    fix: "job 5133",
                    fixIn: 90,
                    owner: "ines"
                )
                .Issue(),
            new Story("LS-100-0915", "Board machine, steam box supply, low point")
                .Raise(
                    -6,
                    "thin at the low point, found at the trap survey",
                    LeakState.Dry,
                    found: FoundHow.Inspection,
                    by: "vera"
                )
                .Plan(
                    Damage.Pitted(0.55, clock: 6, cause: DefectCause.Erosion),
                    Methods.WeldedPatch,
                    fitIn: 6,
                    life: 300,
                    fix: "job 4555",
                    fixIn: 120
                )
                .Issue(),
        ];
}
