using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>The fictional board mill on a tidal river: its people, areas, lines, stores, instruments and planned stops.</summary>
internal static class Mill
{
    public const string Site = "mill";

    public static async Task Build(Crew crew, string firstAdministratorToken)
    {
        var nobody = crew.Client();
        await nobody.MakeFirstAdministrator(
            new MakeFirstAdministrator(firstAdministratorToken, "ada", "Ada Mensah", crew.Passwords["ada"])
        );
        var ada = await crew.As("ada");
        await ada.AddSite(new AddSite(Site, new SiteDetails("Board mill", "Europe/Oslo", [.. Areas])));
        foreach (var member in Crew.Members)
            await Enrol(crew, ada, member);
        foreach (var (number, details) in MillLines.All)
            await ada.AddLine(new AddLine(Site, number, details));
        await Stores(await crew.As("signe"));
        await Tools(await crew.As("signe"));
    }

    /// <summary>Planned stops, the emergency list, and who leaves, while the stories go on.</summary>
    public static async Task Plan(Crew crew, Walk walk)
    {
        var mara = await crew.As("mara");
        await walk.Until(-400, 6);
        await mara.AddShutdown(new(Site, "last year's annual stop", null, walk.Today.AddDays(235)));
        await walk.Until(-330, 8);
        await Story.ListNightPatch(crew);
        await walk.Until(-160, 8);
        await mara.AddShutdown(new(Site, "annual stop", null, walk.Today.AddDays(360)));
        await mara.AddShutdown(new(Site, "boiler inspection", "Boiler house", walk.Today.AddDays(255)));
        var dryer = await mara.AddShutdown(
            new(Site, "dryer cylinder change", "Dryer section", walk.Today.AddDays(140))
        );
        await walk.Until(-48, 9);
        await mara.MoveShutdown(dryer.Id, new(walk.Today.AddDays(108), "the cylinders are late"), dryer.Version);
        await walk.Until(-30, 15);
        var ada = await crew.As("ada");
        var nils = await ada.Person("nils");
        await ada.ChangePerson("nils", nils.Details with { Disabled = true }, nils.Version);
        crew.Forget("nils");
    }

    private static IEnumerable<AreaDetails> Areas =>
        MillLines
            .All.GroupBy(l => l.Details.Area)
            .Select(a => new AreaDetails(a.Key, [.. a.Select(l => l.Details.Section).Distinct()], "olaf"));

    private static async Task Enrol(Crew crew, RepairOrdersClient ada, Member member)
    {
        var details = new PersonDetails(
            member.FullName,
            member.Roles,
            [Site],
            [
                .. member.Competences.Select(c => new HeldCompetence(
                    c,
                    DateOnly.FromDateTime(DateTime.UtcNow).AddYears(2)
                )),
            ]
        );
        if (member.Name == "ada")
        {
            var known = await ada.Person("ada");
            await ada.ChangePerson("ada", details, known.Version);
            return;
        }
        var oneTime = Convert.ToHexStringLower(System.Security.Cryptography.RandomNumberGenerator.GetBytes(8));
        await ada.AddPerson(new AddPerson(member.Name, details));
        await ada.SetOneTimePassword(member.Name, new SetOneTimePassword(oneTime));
        var self = crew.Client();
        var session = await self.SignIn(new SignIn(member.Name, oneTime));
        await self.ChangePassword(new ChangePassword(oneTime, crew.Passwords[member.Name]));
        crew.Keep(member.Name, self, session.Until);
    }

    private static async Task Stores(RepairOrdersClient signe)
    {
        await signe.AddBin(new DescribeBin(Site, "A1", "Bands, fasteners and plates", false));
        await signe.AddBin(new DescribeBin(Site, "A2", "Clamps, patches, plugs and bolting", false));
        await signe.AddBin(new DescribeBin(Site, "C1", "Resins, 5 to 25 °C", false));
        await signe.AddBin(new DescribeBin(Site, "N1", "Emergency locker, pump house 2", true));
        foreach (var item in MillStock.Items)
            await signe.AddStockItem(item);
    }

    private static async Task Tools(RepairOrdersClient signe)
    {
        var due = DateOnly.FromDateTime(DateTime.UtcNow).AddMonths(8);
        (string Serial, InstrumentKind Kind, string Words, double? Greatest)[] tools =
        [
            ("UT-0417", InstrumentKind.ThicknessGauge, "ultrasonic gauge, 5 MHz twin probe", null),
            ("UT-0418", InstrumentKind.ThicknessGauge, "ultrasonic gauge, hot probe to 300 °C", null),
            ("PG-1102", InstrumentKind.PressureGauge, "test gauge 0 to 2.5 bar", 2.5),
            ("PG-1104", InstrumentKind.PressureGauge, "test gauge 0 to 6 bar", 6),
            ("PG-1107", InstrumentKind.PressureGauge, "test gauge 0 to 16 bar", 16),
            ("TW-0031", InstrumentKind.TorqueWrench, "torque wrench 1 to 200 N m", null),
            ("HT-0009", InstrumentKind.HardnessTester, "hardness tester, Shore D", null),
            ("ST-0220", InstrumentKind.SurfaceThermometer, "contact thermometer", null),
            ("HY-0077", InstrumentKind.Hygrometer, "air temperature and humidity", null),
            ("CA-0150", InstrumentKind.Calliper, "calliper and girth tape", null),
            ("PR-0012", InstrumentKind.ProfileGauge, "surface profile gauge", null),
            ("GD-0300", InstrumentKind.GasDetector, "four-gas detector", null),
        ];
        foreach (var tool in tools)
            await signe.AddInstrument(
                new DescribeInstrument(
                    Site,
                    tool.Serial,
                    tool.Kind,
                    tool.Words,
                    due,
                    $"cal-{tool.Serial}",
                    tool.Greatest is { } greatest ? Measure.Of(greatest, "bar") : null
                )
            );
    }
}
