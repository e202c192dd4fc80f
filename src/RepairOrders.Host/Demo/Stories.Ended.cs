using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// Repairs that came off again.
internal static partial class Stories
{
    private static Story[] Ended => [.. LastYear, .. ThisYear];

    private static Story[] LastYear =>
        [
            new Story("CW-150-3105", "Pump house 2, south wall, 2 m from the elbow")
                .Raise(-395, "pinhole weeping on the outside of the elbow")
                .Plan(Damage.Pinhole(clock: 3), life: 180, fix: "job 4102", fixIn: 120)
                .IntoService()
                .Looks(until: -285)
                .Finish(
                    -280,
                    "plate tight, putty whole, no growth under it",
                    "pitting under barnacles",
                    DefectCause.InternalCorrosion
                ),
            new Story("EF-150-6131", "Effluent plant, dosing bay, at the flow meter")
                .Raise(-380, "drip beside the meter", LeakState.Drip, by: "anton")
                .Plan(Damage.Pinhole(clock: 6), life: 180, fix: "job 4110", fixIn: 150, owner: "tove")
                .IntoService()
                .Looks(until: -240)
                .Finish(
                    -236,
                    "one band had slackened, putty sound",
                    "acid carry-over from the dosing point",
                    DefectCause.InternalCorrosion
                ),
            new Story("LS-150-0910", "Boiler house, pressure-reducing station, bypass")
                .Raise(-372, "thin at the bypass tee", LeakState.Dry, by: "vera", found: FoundHow.Inspection)
                .Plan(
                    Damage.Pitted(0.5, clock: 6, cause: DefectCause.Erosion),
                    Methods.WeldedPatch,
                    fitIn: 4,
                    life: 300,
                    fix: "job 4115",
                    fixIn: 200
                )
                .IntoService()
                .Looks(until: -172)
                .Finish(
                    -163,
                    "patch sound, wall beside it thinner",
                    "wet steam across a worn valve",
                    DefectCause.Erosion
                ),
            new Story("CW-250-3111", "Pump house 2, discharge header, east end")
                .Raise(-360, "bottom thin over a hand's length", LeakState.Dry, found: FoundHow.Inspection)
                .Plan(
                    Damage.Thin(0.45, clock: 6),
                    Methods.Wrap,
                    fitIn: 5,
                    life: 700,
                    fix: "job 4121",
                    fixIn: 190,
                    owner: "ines"
                )
                .IntoService()
                .Looks(until: -172)
                .Finish(
                    -162,
                    "laminate bonded to the edge, no water under it",
                    "sand settled in the dead end",
                    DefectCause.Erosion
                ),
            new Story("ST-200-2207", "Stock preparation, refiner inlet, lower bend")
                .Raise(-340, "weep on the outside of the bend", by: "vera")
                .Plan(
                    Damage.Pinhole(clock: 6, cause: DefectCause.Erosion),
                    life: 180,
                    fix: "job 4133",
                    fixIn: 100,
                    owner: "anton"
                )
                .IntoService()
                .Looks(until: -255)
                .Fail("stock from under the plate")
                .MakeSafe(FailureMode.PipeBeneath)
                .Remove(-249, "hole grown to 12 mm under the plate", "failed; the bend is in stock")
                .Inspect("hole grown, wall beside it half gone", DefectCause.Erosion)
                .MendForGood()
                .Close(
                    DefectCause.Erosion,
                    "stock thrown against the outer bend",
                    "A seal over moving damage buys weeks, not months: survey the far side before choosing a patch."
                ),
            new Story("AIR-50-5010", "Board machine, drive side, drop 4")
                .Raise(-320, "hiss at the drop", by: "anton")
                .Plan(Damage.Pinhole(clock: 4, holeMm: 2), life: 150, fix: "job 4140", fixIn: 80, owner: "vera")
                .IntoService()
                .Looks(until: -245)
                .Finish(-241, "dry, bands tight", "water standing in the drop", DefectCause.InternalCorrosion),
            new Story("CW-100-3018", "Turbine hall, north aisle, below the header")
                .Raise(-300, "pinhole at night, spray over the walkway", LeakState.Jet, hour: 1, atOnce: "walkway shut")
                .NightPatch()
                .Confirm()
                .Plan(Damage.Pinhole(clock: 6), fitIn: 0, life: 150, fix: "job 4151", fixIn: 90, owner: "tove")
                .Looks(until: -210)
                .Finish(
                    -205,
                    "night patch held, one edge damp",
                    "pitting along the bottom",
                    DefectCause.InternalCorrosion
                ),
            new Story("CO-100-0430", "Boiler house, pump discharge, at the check valve")
                .Raise(-285, "thin at the check valve", LeakState.Dry, by: "vera", found: FoundHow.Inspection)
                .Plan(Damage.Thin(0.5, clock: 6), Methods.Sleeve, fitIn: 5, life: 500, fix: "job 4160", fixIn: 118)
                .IntoService()
                .Looks(until: -172)
                .Finish(
                    -161,
                    "sleeve sound, cut out with the valve",
                    "oxygen in the return",
                    DefectCause.InternalCorrosion
                ),
            new Story("CW-200-3201", "Pump house 1, discharge of pump 1")
                .Raise(-262, "weep at the weld of the gauge boss", by: "tove")
                .Plan(Damage.Pinhole(clock: 12), life: 120, fix: "job 4171", fixIn: 60)
                .IntoService()
                .Looks(until: -205)
                .Finish(-200, "plate and putty whole", "boss welded without drainage", DefectCause.InternalCorrosion),
        ];

    private static Story[] ThisYear =>
        [
            new Story("EF-300-6110", "Effluent plant, rising main, at the air valve")
                .Raise(-155, "drip below the air valve", LeakState.Drip, by: "anton")
                .Plan(
                    Damage.Pinhole(clock: 6, cause: DefectCause.Erosion),
                    life: 180,
                    fix: "job 4395",
                    fixIn: 90,
                    owner: "vera"
                )
                .IntoService()
                .Looks(until: -72)
                .Finish(
                    -70,
                    "putty sound, plate grooved from the outside",
                    "grit at the air valve",
                    DefectCause.Erosion
                ),
            new Story("HO-100-0450", "Boiler house, pipe bridge, support 3")
                .Raise(-148, "thinned under the shoe", LeakState.Dry, by: "anton", found: FoundHow.Inspection)
                .Plan(
                    Damage.Thin(0.55, clock: 6, rate: 0.05, cause: DefectCause.ExternalCorrosion),
                    Methods.Wrap,
                    fitIn: 3,
                    life: 365,
                    fix: "job 5102",
                    fixIn: 90,
                    owner: "ines"
                )
                .IntoService()
                .Looks(until: -62)
                .Finish(-60, "laminate sound, pipe dry", "water held by the shoe", DefectCause.ExternalCorrosion),
            new Story("CW-100-3019", "Turbine hall, south aisle, at the strainer")
                .Raise(-120, "weep behind the strainer", by: "vera")
                .Plan(Damage.Pinhole(clock: 8), fix: "job 4420", fixIn: 70, owner: "greta")
                .IntoService()
                .Looks(until: -58)
                .Finish(-55, "dry under the plate", "crevice at the strainer flange", DefectCause.InternalCorrosion),
            new Story("ST-100-2230", "Board machine, broke line at the pump")
                .Raise(-98, "weep below the pump outlet", by: "tove")
                .Plan(Damage.Pinhole(clock: 6, cause: DefectCause.Erosion), fix: "job 4444", fixIn: 80, owner: "vera")
                .IntoService()
                .Looks(until: -14)
                .Remove(-9, "plate grooved, putty whole")
                .Inspect("groove along the bottom, wall else sound", DefectCause.Erosion)
                .MendForGood(),
            new Story("AIR-80-5002", "Compressor room, receiver outlet, at the gauge")
                .Raise(-80, "pinhole below the gauge", by: "anton")
                .Plan(Damage.Pinhole(clock: 6, holeMm: 2), fix: "job 4441", fixIn: 75, owner: "tove")
                .IntoService()
                .Looks(until: -8)
                .Remove(-6, "bands tight, pitted along the bottom")
                .Inspect("pits to half the wall along the bottom", DefectCause.InternalCorrosion)
                .MendForGood(),
            new Story("EF-250-6107", "Effluent plant, pump 1 discharge")
                .Raise(-64, "weep at the saddle", by: "vera")
                .Plan(Damage.Pinhole(clock: 12), fix: "job 4492", fixIn: 60, owner: "anton")
                .IntoService()
                .Looks(until: -5)
                .Remove(-2, "plate sound, saddle weld cracked open"),
        ];
}
