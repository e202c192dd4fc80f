using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// Repairs that are live today.
internal static partial class Stories
{
    private static Story[] InService =>
        [
            new Story("CW-150-3104", "Pump house 2, north wall, 4.2 m from valve V-22")
                .Raise(-62, "pinhole weeping at 4 o'clock under the old paint", whyNot: "the line cools the turbine")
                .Plan(Damage.Pinhole(clock: 4), fitIn: 2, life: 240, fix: "job 4411", fixIn: 150)
                .IntoService()
                .Looks(),
            new Story("CW-250-3111", "Pump house 2, below the grating, 1 m from the strainer")
                .Raise(-130, "scale lifting, wall thin by the finger test", LeakState.Dry, found: FoundHow.Inspection)
                .Plan(
                    Damage.Thin(0.5, clock: 6),
                    Methods.Wrap,
                    fitIn: 3,
                    life: 700,
                    fix: "job 4390",
                    fixIn: 320,
                    owner: "ines"
                )
                .IntoService()
                .Looks(),
            new Story("CW-100-3018", "Turbine hall, north aisle, above oil cooler 2")
                .Raise(-45, "drip on the cooler lagging, hole the size of a match head", LeakState.Drip, by: "anton")
                .Plan(Damage.Pinhole(clock: 6, holeMm: 3), fix: "job 4502", fixIn: 130, owner: "greta")
                .IntoService()
                .Looks(),
            new Story("CW-100-3019", "Turbine hall, south aisle, second bend from the header")
                .Raise(-30, "weep below the bend, salt crust", by: "vera")
                .Plan(Damage.Pinhole(clock: 5), fix: "job 4502", fixIn: 120, owner: "greta")
                .IntoService()
                .Looks(),
            new Story("CW-80-3022", "Turbine hall, under the stairs to the deck")
                .Raise(
                    -19,
                    "pinhole, fine spray against the wall",
                    LeakState.Jet,
                    by: "anton",
                    atOnce: "sheet tied round it, walkway shut"
                )
                .Plan(Damage.Pinhole(clock: 9, holeMm: 2), fix: "job 4502", fixIn: 110, owner: "greta")
                .IntoService()
                .Looks(),
            new Story("CW-200-3201", "Pump house 1, discharge of pump 3, 0.6 m above the floor")
                .Raise(-76, "stain grew to a weep since the last round", by: "anton")
                .Plan(Damage.Pinhole(clock: 7), fix: "job 4438", fixIn: 140)
                .IntoService()
                .Looks(until: -12)
                .On(-4, 9)
                .Answer("olaf", 3, "the round was short of a man; it is on Friday's list"),
            new Story("ST-200-2207", "Stock preparation, refiner outlet, at the sample valve")
                .Raise(-70, "stock weeping under the clip of the sample valve", by: "vera")
                .Plan(Damage.Pinhole(clock: 3, cause: DefectCause.Erosion), fix: "job 4447", fixIn: 110, owner: "tove")
                .IntoService()
                .Looks(until: -5),
            new Story("FM-200-0013", "Yard, west leg, 12 m from hydrant 3")
                .Raise(
                    -104,
                    "weep at the bottom of the pipe, ground wet",
                    by: "anton",
                    whyNot: "the main stays charged"
                )
                .Plan(
                    Damage.Pinhole(clock: 6, holeMm: 5),
                    Methods.Clamp,
                    fitIn: 2,
                    life: 170,
                    fix: "job 4460",
                    fixIn: 150,
                    owner: "olaf"
                )
                .IntoService()
                .Looks(readWalls: false),
            new Story("EF-200-6120", "Effluent plant, feed to clarifier 2, by the ladder")
                .Raise(-118, "drip into the channel, pipe grooved along the bottom", LeakState.Drip)
                .Plan(
                    Damage.Pinhole(clock: 6, cause: DefectCause.Erosion),
                    life: 90,
                    fix: "job 4455",
                    fixIn: 85,
                    owner: "anton"
                )
                .IntoService()
                .Looks(until: -28)
                .On(-14, 9)
                .Answer("henrik", 10, "the new section is cut; the crew is at the dryer until next week")
                .Review(ReviewDecision.Remove, "past its life; cut out as soon as the crew is free, no extension"),
            new Story("ST-150-2201", "Stock preparation, chest 4 outlet, at knee height")
                .Raise(
                    -1,
                    "pinhole in the bend, stock across the floor",
                    LeakState.Jet,
                    hour: 0.5,
                    atOnce: "pump slowed, floor roped off"
                )
                .NightPatch(),
            new Story("EF-150-6131", "Effluent plant, dosing bay, behind the tank")
                .Raise(-52, "stain and a slow drip at the support", LeakState.Drip, by: "nils")
                .Plan(Damage.Pinhole(clock: 6), life: 200, fix: "job 4471", fixIn: 160, owner: "nils")
                .IntoService()
                .Looks(),
            new Story("AIR-50-5010", "Board machine, drive side, above winder 1")
                .Raise(-58, "hissing at the low point, soap shows a pinhole", by: "vera")
                .Plan(Damage.Pinhole(clock: 6, holeMm: 2), fix: "job 4480", fixIn: 120)
                .IntoService()
                .Looks(until: -25)
                .On(-18, 10)
                .Look(
                    result: VisitResult.StayWithAction,
                    action: "regulator changed, limit told again",
                    excursions: "line ran to 8.4 bar for an hour, regulator stuck"
                ),
            new Story("EF-250-6107", "Effluent plant, pump 2 discharge, over the walkway")
                .Raise(-88, "weep at the weld toe of the old saddle")
                .Plan(Damage.Pinhole(clock: 12), fix: "job 4493", fixIn: 84, owner: "tove", river: false)
                .IntoService()
                .Looks(until: -4)
                .OrderRemoval(-3, "the new section is in the yard, the crew has two days"),
            new Story("CO-80-0419", "Dryer section, third bay, return header")
                .Raise(
                    -150,
                    "thin under wet lagging, found at the spot check",
                    LeakState.Dry,
                    found: FoundHow.Inspection,
                    by: "vera"
                )
                .Plan(
                    Damage.Thin(0.5, clock: 8, cause: DefectCause.CorrosionUnderLagging),
                    Methods.Sleeve,
                    fitIn: 2,
                    life: 360,
                    fix: "job 4401",
                    fixIn: 130
                )
                .IntoService()
                .Looks(until: -60)
                .On(-42, 9)
                .Extend(
                    SlipReason.ShutdownPutOff,
                    "the cylinder change slipped by two and a half months, the header goes with it",
                    fixIn: 100,
                    fix: "job 4401"
                )
                .Looks(),
            new Story("HO-80-0452", "Boiler house, pump skid, return line at the wall")
                .Raise(
                    -140,
                    "thinned where the old shoe rubbed",
                    LeakState.Dry,
                    found: FoundHow.Inspection,
                    by: "anton"
                )
                .Plan(
                    Damage.Thin(0.55, clock: 6, rate: 0.05, cause: DefectCause.ExternalCorrosion),
                    Methods.Wrap,
                    fitIn: 2,
                    life: 365,
                    fix: "job 5120",
                    fixIn: 235,
                    owner: "ines"
                )
                .IntoService()
                .Looks(until: -25)
                .On(-20, 9)
                .Extend(
                    SlipReason.PartsLate,
                    "the fittings come six weeks after the boiler inspection",
                    fixIn: 200,
                    grant: false,
                    refusedWhy: "fit bends from stock at the inspection; no more time on an oil line",
                    fix: "job 5120"
                )
                .Looks(),
            new Story("AIR-100-5001", "Compressor room, dryer outlet, at the wall sleeve")
                .Raise(-40, "corroded in the wall sleeve, whistles", by: "anton")
                .Plan(
                    Damage.Pinhole(clock: 2, holeMm: 3, cause: DefectCause.ExternalCorrosion),
                    fix: "job 4511",
                    fixIn: 130,
                    owner: "tove"
                )
                .IntoService()
                .Looks(until: -20)
                .On(-16, 8)
                .HandOver("vera", "Tove is on the machine rebuild until spring")
                .Looks(),
            new Story("LS-150-0910", "Boiler house, pressure-reducing station, bottom of the drip leg")
                .Raise(
                    -55,
                    "thin at the drip leg, found by the hot probe",
                    LeakState.Dry,
                    found: FoundHow.Inspection,
                    by: "vera"
                )
                .Plan(
                    Damage.Pitted(0.55, clock: 6, cause: DefectCause.Erosion),
                    Methods.WeldedPatch,
                    fitIn: 3,
                    life: 300,
                    fix: "job 4499",
                    fixIn: 145,
                    owner: "ines"
                )
                .IntoService()
                .Looks(),
            new Story("ST-250-2210", "Stock preparation, mixing chest, beside support 11")
                .Raise(-24, "one clean hole, stock dripping on the beam", LeakState.Drip, by: "vera")
                .Plan(
                    Damage.Pinhole(clock: 4, holeMm: 6, cause: DefectCause.Erosion),
                    Methods.Plug,
                    life: 30,
                    fix: "job 4520",
                    fixIn: 25,
                    owner: "anton"
                )
                .IntoService()
                .Looks(),
            new Story("CW-500-3000", "Intake, screen house, crown of the rising main")
                .Raise(-34, "wall down to half over the crown, tide side", LeakState.Dry, found: FoundHow.Inspection)
                .Plan(
                    Damage.Thin(0.5, clock: 12, cause: DefectCause.ExternalCorrosion),
                    Methods.Wrap,
                    fitIn: 4,
                    life: 600,
                    fix: "job 4531",
                    fixIn: 220,
                    owner: "ines",
                    river: true
                )
                .IntoService()
                .Looks(),
            new Story("FM-100-1140", "Warehouse, row C, above the sprinkler alarm valve")
                .Raise(
                    -13,
                    "weep above the alarm valve, pallet wet",
                    by: "vera",
                    whyNot: "the sprinklers stay in service"
                )
                .Plan(Damage.Pinhole(clock: 6, holeMm: 3), fix: "job 4540", fixIn: 90, owner: "olaf")
                .IntoService()
                .Looks(),
        ];
}
