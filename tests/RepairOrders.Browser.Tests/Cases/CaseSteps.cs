using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>What the cases have in common: from the request to the approval, and from the approval into service.</summary>
internal static class CaseSteps
{
    /// <summary>A pinhole, sound metal beside it; one wall is read in inches.</summary>
    public static readonly object Pinhole = new
    {
        readings = new[]
        {
            new
            {
                where = ReadingPlace.Beside,
                spot = "3 o'clock",
                wall = "6.4",
                instrument = "UT-0417",
            },
            new
            {
                where = ReadingPlace.Beside,
                spot = "5 o'clock",
                wall = "0.26 in",
                instrument = "UT-0417",
            },
        },
        defect = AnOrder.Pinhole,
        consequences = AnOrder.FewPeople,
        qualityFactor = "1",
    };

    /// <summary>Approved with the method, by Mara and Pavel, and by Henrik where it is of class A.</summary>
    public static async Task Planned(
        this CaseMill mill,
        string number,
        object assessment,
        (string Method, string Reason, string Instead, string WhyNot) choice,
        object sizing
    )
    {
        var ines = await mill.Person("ines");
        await ines.Signs(number, "record-assessment", assessment);
        await ines.Chooses(number, choice.Method, choice.Reason, choice.Instead, choice.WhyNot);
        await ines.Signs(number, "size-repair", sizing);
        await (await mill.Person("mara")).Signs(number, "approve-order", new { @as = ApprovalCapacity.Supervisor });
        await (await mill.Person("pavel")).Signs(number, "approve-order", new { @as = ApprovalCapacity.Engineer });
    }

    /// <summary>Issued by Signe, readied by Olaf, fitted and proved by Tove, witnessed by Pavel, accepted.</summary>
    public static async Task IntoService(this CaseMill mill, string number, string testBar)
    {
        var tove = await mill.Person("tove");
        var olaf = await mill.Person("olaf");
        var pavel = await mill.Person("pavel");
        Guid[] crew = [await mill.IdOf("tove"), await mill.IdOf("anton")];
        await (await mill.Person("signe")).Signs(
            number,
            "issue-material",
            new { receiver = crew[0], hazardSheetsGiven = true }
        );
        await olaf.Signs(number, "ready-order", await Isolated(mill, ReadinessFor.Fit));
        await tove.Fits(number, await mill.IdOf("pavel"));
        await tove.Signs(
            number,
            "record-proof",
            new
            {
                test = new
                {
                    kind = TestKind.Hydrostatic,
                    pressure = testBar,
                    hold = "15",
                    medium = "water",
                    mediumTemperature = "59 °F",
                    gauge = "PG-1107",
                    tight = true,
                },
                pipeTemperature = "20",
                tag = "T-118",
                tagPhoto = Person.Picture,
            }
        );
        await pavel.Signs(number, "witness-proof", new { remark = "tight" });
        await tove.Signs(number, "account-for-material", new { });
        await (await mill.Person("mara")).Signs(number, "accept-first-look", new { });
        await olaf.Signs(
            number,
            "accept-repair",
            new { operatorsTold = "day shift, by the board", isolationsRemoved = true }
        );
        await olaf.Sees(number, "In service");
    }

    /// <summary>A permit of three days on the isolated line, for Tove and Anton.</summary>
    public static async Task<object> Isolated(CaseMill mill, ReadinessFor what)
    {
        Guid[] crew = [await mill.IdOf("tove"), await mill.IdOf("anton")];
        return new
        {
            @for = what,
            permit = "PTW 881",
            permitKind = PermitKind.Hot,
            permitUntil = LaterClock.Typed(mill.Clock.Now.AddDays(3)),
            isolation = new
            {
                certificate = "IC 204",
                points = "V-22 lock 14, V-23 lock 15",
                provedDeadHow = "vent opened at the low point, drain runs dry",
                provedDeadBy = "Olaf Brekke",
                provedDeadWith = "Tove Aune",
                reading = "0",
            },
            gasTest = new
            {
                by = "Olaf Brekke",
                lowerExplosivePercent = "0",
                oxygenPercent = "20.9",
                withinPermit = true,
            },
            fitters = crew,
            talkSignedBy = crew,
        };
    }
}
