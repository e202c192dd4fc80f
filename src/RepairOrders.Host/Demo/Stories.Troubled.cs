using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// Repairs that failed, went into a second round, or stand on a line that is off.
internal static partial class Stories
{
    private static Story[] Troubled => [.. Leaks, .. Over];

    private static Story[] Leaks =>
        [
            new Story("CW-250-3120", "Pump house 1, suction header, north end")
                .Raise(-33, "weep at the bottom, paint blistered", by: "anton")
                .Plan(Damage.Pinhole(clock: 6), Methods.Clamp, fix: "job 4515", fixIn: 100, owner: "olaf")
                .IntoService()
                .Looks(until: -3)
                .HoursAgo(9)
                .Fail(
                    "water from the lower seal, a litre a minute",
                    LeakState.Drip,
                    atOnce: "roped off, pump 2 stopped"
                ),
            new Story("EF-400-6101", "Effluent plant, main to the basin, 3 m before the flume")
                .Raise(-47, "seep along the bottom, ground soft", by: "vera")
                .Plan(Damage.Pinhole(clock: 6, cause: DefectCause.Erosion), fix: "job 4507", fixIn: 120, owner: "tove")
                .IntoService()
                .Looks(until: -6)
                .On(-5, 11)
                .Fail("weep at the edge of the plate")
                .MakeSafe(FailureMode.Seal, "tray and hose to the sump, flow cut to one pump"),
            new Story("AIR-50-5011", "Warehouse, drop to the dock, behind the charger")
                .Raise(-39, "hiss at the dock, pinhole in the drop", by: "tove")
                .Plan(Damage.Pinhole(clock: 3, holeMm: 2), fix: "job 4509", fixIn: 100, owner: "vera")
                .IntoService()
                .Looks(until: -10)
                .On(-8, 13)
                .Fail(
                    "a fork truck pulled the drop, band slipped, blowing hard",
                    LeakState.Jet,
                    atOnce: "valve shut at the header"
                )
                .MakeSafe(FailureMode.Movement),
            new Story("FM-200-0012", "Yard, east leg, 12 m from hydrant 5")
                .Raise(-84, "weep at 6 o'clock, main charged", by: "anton", whyNot: "the main stays charged")
                .Plan(
                    Damage.Pinhole(clock: 6, holeMm: 5),
                    Methods.Clamp,
                    life: 170,
                    fix: "job 4462",
                    fixIn: 150,
                    owner: "olaf"
                )
                .IntoService()
                .Looks(until: -62)
                .On(-60, 14)
                .Fail("clamp weeps at the lower seal")
                .MakeSafe(
                    FailureMode.Seal,
                    "tray and drain hose, pressure cut to 4 bar",
                    "mobile pump at hydrant 4, fire watch"
                )
                .Plan(
                    Damage.Pinhole(clock: 6, holeMm: 6),
                    Methods.WeldedPatch,
                    fitIn: 1,
                    fix: "job 4462",
                    fixIn: 120,
                    owner: "olaf"
                )
                .IntoService()
                .Looks(),
        ];

    private static Story[] Over
    {
        get
        {
            var sleeve = new Story("ST-300-2240", "Stock preparation, blend chest outlet, under the platform")
                .Raise(
                    -14,
                    "patch sound, but the bottom has gone thin along a metre",
                    LeakState.Dry,
                    by: "vera",
                    found: FoundHow.Inspection
                )
                .Plan(
                    Damage.Thin(0.45, clock: 6, cause: DefectCause.Erosion),
                    Methods.Sleeve,
                    fitIn: 3,
                    life: 500,
                    fix: "job 4488",
                    fixIn: 205,
                    owner: "mara"
                )
                .IntoService()
                .Looks();
            return
            [
                new Story("ST-300-2240", "Stock preparation, blend chest outlet, under the platform")
                    .Raise(-92, "drip from the bottom, stock on the beam", LeakState.Drip)
                    .Plan(Damage.Pinhole(clock: 6, cause: DefectCause.Erosion), fix: "job 4488", fixIn: 140)
                    .IntoService()
                    .Looks(until: -10)
                    .Supersede(-9, sleeve, "the sleeve covers the patch and a metre of thin wall with it"),
                sleeve,
                new Story("LS-200-0920", "Boiler house, header to the machine, expansion loop")
                    .Raise(
                        -66,
                        "thin at the bottom of the loop",
                        LeakState.Dry,
                        found: FoundHow.Inspection,
                        by: "anton"
                    )
                    .Plan(
                        Damage.Pitted(0.5, clock: 6, cause: DefectCause.Erosion),
                        Methods.WeldedPatch,
                        fitIn: 2,
                        life: 300,
                        fix: "job 4485",
                        fixIn: 150
                    )
                    .IntoService()
                    .Looks(until: -22)
                    .On(-20, 9)
                    .LineOff("boiler 1 is laid up for the winter, the header is cold"),
            ];
        }
    }
}
