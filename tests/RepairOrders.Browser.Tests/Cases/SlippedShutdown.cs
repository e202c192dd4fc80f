using System.Text.Json;
using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>
/// A thinned heating-oil line of class B under a laminate wrap. The shutdown that is to replace it lies five months off and slips
/// by four: two extensions, each only on a fresh survey, and a third is refused. Walked with the keyboard alone at a desk, and with
/// a finger on a phone. The weekly looks between are signed by the product's client: one is walked, thirty more show nothing new.
/// </summary>
public sealed class SlippedShutdown(Service service)
{
    [Theory]
    [InlineData(true, 1440, true)]
    [InlineData(false, 390, false)]
    public async Task Two_extensions_on_fresh_surveys_and_a_third_is_refused(bool inOne, int width, bool keyboard)
    {
        await using var mill = await CaseMill.Open(service, inOne, width, keyboard);
        var started = mill.Clock.Today;
        var mara = await mill.Person("mara");
        await mara.Opens("/shutdowns");
        await mara.Sends("Put a shutdown on the list", new { name = "summer stop", start = started.AddDays(150) });
        await mara.Page.WaitForURLAsync("**/shutdowns/*-*");
        var stop = new Uri(mara.Page.Url).AbsolutePath;

        var tove = await mill.Person("tove");
        var number = await tove.Raises(
            new
            {
                line = "HO-100-0450",
                place = "Boiler house, pipe bridge, support 7",
                fluid = "heating oil",
                seen = "thinned under the old support shoe",
                foundHow = FoundHow.Round,
                leakState = LeakState.Dry,
                operatingPressure = "7",
                operatingTemperature = "45",
                immediateMeasures = "support lifted and packed",
                whyNotPermanent = "the boilers need the line until the summer stop",
            }
        );
        await mill.Planned(
            number,
            Thinned,
            (
                "laminate-wrap",
                "thinned from outside, no leak, sound ends",
                "welded-patch",
                "no hot work on a heating-oil line in service"
            ),
            new
            {
                values = new
                {
                    softeningC = "110",
                    designLifeYears = "2",
                    lapShearMpa = "5",
                    growthMmPerYear = "0.1",
                },
                plannedFitOn = started.AddDays(1),
                owner = await mill.IdOf("mara"),
                permanentFix = new { reference = "job 5120", on = started.AddDays(150) },
                changeControl = new { reference = "MOC-3", endsOn = started.AddDays(170) },
            }
        );
        await mill.IntoService(number, "7");
        var order = await mill.Order(number);
        order.Title.SignedClass.ShouldBe(RiskClass.B);
        order.Title.EndDate.ShouldBe(started.AddDays(150), "the shutdown ends it before the cap of 180 days");

        await Looks(mill, number, until: started.AddDays(100));
        await mara.Opens(stop);
        await mara.Unfolds(mara.Page.Locator("form[aria-label='Move the shutdown']"));
        await mara.Sends("Move the shutdown", new { start = started.AddDays(270), why = "the turbine rotor is late" });
        await Assertions.Expect(mara.Page.Locator("main")).ToContainTextAsync("one order loses out");
        await mara.Sees(number, $"{started.AddDays(150):yyyy-MM-dd}");

        // Without a fresh survey it is refused: none at all, then one too old.
        (await mara.IsRefused(number, "ask-extension", Later(mill, null, 180))).ShouldContain(
            "survey",
            Case.Insensitive
        );
        var pavel = await mill.Person("pavel");
        var old = await Survey(mill, number, tove, pavel);
        await Looks(mill, number, until: started.AddDays(134));
        (await mara.IsRefused(number, "ask-extension", Later(mill, old, 180))).ShouldContain(
            "survey",
            Case.Insensitive
        );

        await Extended(mill, number, tove, pavel, mara, started.AddDays(240));
        await Looks(mill, number, until: started.AddDays(225));
        await Extended(mill, number, tove, pavel, mara, started.AddDays(270));

        await Looks(mill, number, until: started.AddDays(258));
        await Survey(mill, number, tove, pavel);
        (await mara.MayNot(number, "ask-extension")).ShouldContain("Class B allows 2");
        mill.Clock.Pass(TimeSpan.FromDays(20));
        await mara.Sees(number, "Past life for");
        await ComesOff(mill, number, tove, pavel, mara);
        (await (await mill.Client("rune")).Journal(number)).BrokenAt.ShouldBeNull();
    }

    private static readonly object Thinned = new
    {
        readings = new[]
        {
            new
            {
                where = ReadingPlace.AtDefect,
                spot = "centre",
                wall = "3.4",
                instrument = "UT-0417",
            },
            new
            {
                where = ReadingPlace.Beside,
                spot = "upstream",
                wall = "5.8",
                instrument = "UT-0417",
            },
            new
            {
                where = ReadingPlace.Beside,
                spot = "downstream",
                wall = "5.7",
                instrument = "UT-0417",
            },
        },
        defect = new DefectMeasured(
            DefectKind.GeneralThinning,
            DefectSide.External,
            DefectCause.ExternalCorrosion,
            ThroughWall: false,
            Measure.Of(60, "mm"),
            Measure.Of(40, "mm"),
            Measure.Of(2.6, "mm"),
            ClockHours: 6,
            Growing: true
        ),
        consequences = new LeakConsequences(
            PeopleNearby.MannedArea,
            IsolableWithinTenMinutes: true,
            Measure.Of(800, "kg"),
            DrainsToWater: false
        ),
        qualityFactor = "1",
    };

    /// <summary>A look every week, countersigned: class B.</summary>
    private static async Task Looks(CaseMill mill, string number, DateOnly until)
    {
        while (mill.Clock.Today < until)
        {
            mill.Clock.Pass(TimeSpan.FromDays(Math.Min(7, until.DayNumber - mill.Clock.Today.DayNumber)));
            var tove = await mill.Client("tove");
            var photo = await tove.AddPhoto(number, AtThePipe.APipe.Picture, PhotoOf.Visit);
            var visit = await tove.Visit(
                number,
                new(number, null, LeakState.Dry, Moved: false, EdgesState.Sound, photo.Id, VisitResult.FitToStay)
            );
            await (await mill.Client("pavel")).CountersignVisit(number, new(visit.Id));
        }
    }

    /// <summary>A look with the walls read, countersigned by an engineer.</summary>
    private static async Task<Guid> Survey(CaseMill mill, string number, Person tove, Person pavel)
    {
        await tove.Signs(
            number,
            "record-visit",
            new
            {
                tagScan = number,
                state = LeakState.Dry,
                edges = EdgesState.Sound,
                photo = Person.Picture,
                result = VisitResult.FitToStay,
                readings = new[]
                {
                    new
                    {
                        where = ReadingPlace.Beside,
                        spot = "upstream",
                        wall = "5.8",
                        on = mill.Clock.Today,
                        instrument = "UT-0417",
                    },
                    new
                    {
                        where = ReadingPlace.Beside,
                        spot = "downstream",
                        wall = "5.7",
                        on = mill.Clock.Today,
                        instrument = "UT-0417",
                    },
                },
            }
        );
        await pavel.Signs(number, "countersign-visit", new { });
        return (await mill.Order(number)).Records.Last(r => r.Kind == "visit").Id;
    }

    private static async Task Extended(
        CaseMill mill,
        string number,
        Person tove,
        Person pavel,
        Person mara,
        DateOnly expected
    )
    {
        var survey = await Survey(mill, number, tove, pavel);
        await mara.Signs(number, "ask-extension", Later(mill, survey, 300));
        var asked = (await mill.Order(number))
            .Records.Last(r => r.Kind == "extension")
            .Body.Deserialize<SignedExtension>(RepairOrdersClient.Json)!;
        var henrik = await mill.Person("henrik");
        await henrik.Signs(number, "decide-extension", new { grant = true });
        (await mill.Order(number)).Title.EndDate.ShouldBe(asked.From, "one signature of two moves nothing");
        var ines = await mill.Person("ines");
        await ines.Signs(number, "decide-extension", new { grant = true });
        await ines.Sees(number, $"{expected:yyyy-MM-dd}");
        (await mill.Order(number)).Title.EndDate.ShouldBe(expected);
    }

    /// <summary>With no extension left it comes off: ordered, readied, taken off, looked at, replaced, closed by two.</summary>
    private static async Task ComesOff(CaseMill mill, string number, Person tove, Person pavel, Person mara)
    {
        var olaf = await mill.Person("olaf");
        await mara.Signs(
            number,
            "order-removal",
            new
            {
                why = "no extension is left",
                by = mill.Clock.Today.AddDays(2),
                instead = "spool 5120, welded in",
            }
        );
        await olaf.Signs(number, "ready-order", await CaseSteps.Isolated(mill, ReadinessFor.Removal));
        await tove.Signs(
            number,
            "record-removal",
            new
            {
                photo = Person.Picture,
                condition = "laminate sound, steel beneath as thin as at the last survey",
                tagBack = true,
            }
        );
        await pavel.Signs(
            number,
            "inspect-removal",
            new { found = "general thinning under the shoe", cause = DefectCause.ExternalCorrosion }
        );
        await mara.Signs(
            number,
            "record-permanent-fix",
            new
            {
                kind = PermanentFixKind.Replacement,
                reference = "job 5120",
                partCertificates = "3.1 no. 88213, pipe",
                welds = "two butt welds, radiographed, no finding",
                tests = "water, 18 bar for 30 min, tight",
                drawings = "isometric 0450 revision C",
            }
        );
        await olaf.Signs(
            number,
            "close-order",
            new
            {
                cause = DefectCause.ExternalCorrosion,
                causeFound = "water stood under the shoe",
                changeControlClosed = "MOC-3",
                tagBack = true,
                lessons = "no shoe without a drain hole",
            }
        );
        await pavel.Signs(number, "countersign-close-out", new { });
        await pavel.Sees(number, "Closed");
    }

    private static object Later(CaseMill mill, Guid? survey, int days) =>
        new
        {
            reason = SlipReason.ShutdownPutOff,
            why = "the summer stop was put off by four months",
            survey,
            permanentFix = new { reference = "job 5120", on = mill.Clock.Today.AddDays(120) },
            changeControl = new { reference = "MOC-3", endsOn = mill.Clock.Today.AddDays(days) },
        };
}
