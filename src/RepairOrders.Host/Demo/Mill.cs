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
        await self.SignIn(new SignIn(member.Name, oneTime));
        await self.ChangePassword(new ChangePassword(oneTime, crew.Passwords[member.Name]));
    }

    private static async Task Stores(RepairOrdersClient signe)
    {
        await signe.AddBin(new DescribeBin(Site, "A1", "Bands, fasteners and plates", false));
        await signe.AddBin(new DescribeBin(Site, "C1", "Resins, 5 to 25 °C", false));
        await signe.AddBin(new DescribeBin(Site, "N1", "Emergency locker, pump house 2", true));
        foreach (var item in MillStock.Items)
            await signe.AddStockItem(item);
        foreach (var batch in MillStock.Batches)
            await signe.ReceiveBatch(batch);
    }

    private static async Task Tools(RepairOrdersClient signe)
    {
        var due = DateOnly.FromDateTime(DateTime.UtcNow).AddMonths(8);
        (string Serial, InstrumentKind Kind, string Words, double? Greatest)[] tools =
        [
            ("UT-0417", InstrumentKind.ThicknessGauge, "ultrasonic gauge, 5 MHz twin probe", null),
            ("UT-0418", InstrumentKind.ThicknessGauge, "ultrasonic gauge, hot probe to 300 °C", null),
            ("PG-1102", InstrumentKind.PressureGauge, "test gauge 0 to 25 bar", 25),
            ("TW-0031", InstrumentKind.TorqueWrench, "torque wrench 1 to 60 N m", null),
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
