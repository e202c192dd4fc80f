using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// From the stores to the accepted repair.
internal sealed partial class Story
{
    /// <summary>Issued, readied, fitted, proved and accepted on the day planned for it.</summary>
    public Story IntoService() => Issue().Ready().Fit().Prove().Accept();

    /// <summary>The storekeeper issues what the bill asks for, the evening before the fit or the same day.</summary>
    public Story Issue() =>
        Then(async () =>
        {
            var signe = await As("signe");
            await (fitOn > walk.Today ? walk.Until(DayOf(fitOn) - 1, 14) : Minutes(30));
            var list = await signe.PickList(Number);
            if (list.Lines.FirstOrDefault(l => l.Wanting > 0) is { } wanting)
                throw new InvalidOperationException($"{Number}: the stores lack {wanting.Wanting} of {wanting.Words}.");
            var lines = list.Lines.SelectMany(l =>
                l.Picks.Select(p => new IssueLine(l.Line, p.Batch, p.Bin, p.Quantity))
            );
            await signe.IssueMaterial(Number, new(await crew.IdOf(Fitters[0]), [.. lines], HazardSheetsGiven: true));
        });

    /// <summary>Permit, isolation, gas test and talk.</summary>
    public Story Ready(double permitHours = 60, double? hoursAgo = null) =>
        Then(async () =>
        {
            await (
                hoursAgo is { } ago ? walk.HoursAgo(ago)
                : fitOn > walk.Today ? walk.Until(DayOf(fitOn), 6.25)
                : Minutes(20)
            );
            await (await As(InCharge)).ReadyOrder(Number, await Readiness(ReadinessFor.Fit, permitHours));
        });

    /// <summary>The hold points in turn; all of them, or the first few.</summary>
    public Story Fit(int points = 99) =>
        Then(async () =>
        {
            var tove = await As(Fitters[0]);
            foreach (var point in (await tove.Fitting(Number)).Points.Take(points))
            {
                await Minutes(20);
                await Release(Fitters[0], point.Point);
            }
        });

    /// <summary>The test, its witness and the tag.</summary>
    public Story Prove(string? departure = null) =>
        Then(async () =>
        {
            await Minutes(30);
            await LetSet(Fitters[0]);
            var proof = await (await As(Fitters[0])).RecordProof(
                Number,
                new(Tested(), Celsius(19), $"T-{Number[(Mill.Site.Length + 1)..]}", await Tag(Fitters[0]), departure)
            );
            if (riskClass != RiskClass.D)
                await (await As("pavel")).WitnessProof(Number, proof.Id, new("dry all round for the whole hold"));
        });

    /// <summary>The books closed, the first look taken on, the line handed back to operations.</summary>
    public Story Accept() =>
        Then(async () =>
        {
            await Account(Fitters[0]);
            await Minutes(25);
            await (await As(owner)).AcceptFirstLook(Number, new());
            await (await As(InCharge)).AcceptRepair(
                Number,
                new("day shift, by the board in the control room", IsolationsRemoved: true)
            );
        });

    /// <summary>Somebody stops the job.</summary>
    public Story Stop(string reason, string by = "anton", bool notAsWritten = false, string? found = null) =>
        Then(async () =>
        {
            await Minutes(15);
            await (await As(by)).StopJob(Number, new(reason, notAsWritten, found));
        });

    private int DayOf(DateOnly day) => walk.Day + day.DayNumber - walk.Today.DayNumber;

    private async Task<ReadyOrder> Readiness(ReadinessFor what, double hours)
    {
        var now = walk.GetUtcNow();
        var pair = new[] { await crew.IdOf(Fitters[0]), await crew.IdOf(Fitters[1]) };
        var hot = what == ReadinessFor.Fit && method is Methods.WeldedPatch or Methods.Sleeve;
        return new(
            what,
            $"PTW {2000 + Math.Abs(walk.Day) * 3 + turn}",
            hot ? PermitKind.Hot : PermitKind.Cold,
            now,
            now.AddHours(hours),
            new(
                $"IC {700 + turn}",
                "upstream and downstream valve locked shut, keys in box 4",
                "vent open at the high point, drain runs dry",
                Crew.FullNameOf(InCharge),
                Crew.FullNameOf(Fitters[0]),
                Measure.Of(0, "bar")
            ),
            null,
            new(now, Crew.FullNameOf(InCharge), 0, 20.9, 0, WithinPermit: true),
            pair,
            pair
        );
    }

    private async Task<RecordView> Release(string by, HoldPointView point)
    {
        var client = await As(by);
        var asked = point.Evidence;
        if (asked.Contains(Evidence.Photo))
            await Photograph(by, PhotoOf.HoldPoint, point.Code, point.After.Count > 3, point.Code);
        if (asked.Contains(Evidence.ClimateReading))
            await client.RecordClimate(
                Number,
                new(Celsius(17 + turn % 4), 44 + turn % 13, Celsius(16 + turn % 4), "HY-0077")
            );
        if (asked.Contains(Evidence.Mix))
            await Mix(by);
        if (asked.Contains(Evidence.CureLog))
            await LetSet(by);
        return await client.ReleaseHoldPoint(
            Number,
            new(
                point.Code,
                Walls: asked.Contains(Evidence.ThicknessReadings)
                    ? [new("upstream end", Wall(0.9)), new("downstream end", Wall(0.92))]
                    : null,
                Diameters: asked.Contains(Evidence.DiameterReadings)
                    ? [new("horizontal", Across(0.3)), new("vertical", Across(-0.2))]
                    : null,
                Surface: asked.Contains(Evidence.SurfaceGrade) ? new(SurfaceGrade.St3, [58, 63, 60], 12) : null,
                Tightening: asked.Contains(Evidence.TorqueReadings) ? await Tightening() : null,
                ShoreD: asked.Contains(Evidence.HardnessReading) ? [82, 84, 83] : null,
                Instrument: asked.Contains(Evidence.ThicknessReadings) ? "UT-0417"
                    : asked.Contains(Evidence.TorqueReadings) ? "TW-0031"
                    : asked.Contains(Evidence.HardnessReading) ? "HT-0009"
                    : null,
                Witness: new(await crew.IdOf("pavel"), walk.GetUtcNow(), Came: true)
            )
        );
    }

    // Two passes over every fastener, the last one in the middle of the window.
    private async Task<IReadOnlyList<Tightened>> Tightening()
    {
        var design = (await Sheet()).Records.Last(r => r.Kind == "design" && r.SetAsideAt is null);
        var sheet = Body<SignedDesign>(design).Method;
        var count = (int)(sheet["clampBoltCount"] ?? sheet["bandCount"] * (sheet["fastenersPerBand"] ?? 1) ?? 1);
        var torque = sheet["torqueLeastNm"] is { } least ? (least + sheet["torqueMostNm"]!.Value) / 2 : 20;
        return
        [
            .. from pass in Enumerable.Range(1, 2)
            from fastener in Enumerable.Range(1, count)
            select new Tightened(
                fastener,
                pass,
                Torque: Measure.Of(Math.Round(pass == 1 ? torque / 2 : torque, 2), "N m")
            ),
        ];
    }

    private async Task Mix(string by)
    {
        var mixed = (await Sheet())
            .Records.Where(r => r.Kind == "material-issue" && r.SetAsideAt is null)
            .SelectMany(r => Body<SignedIssue>(r).Lines)
            .First(l => l.Need is "putty" or "resin" || l.Item is "PUTTY-W" or "RESIN-1");
        var mix = await (await As(by)).StartMix(Number, new(mixed.Batch, null, null, null, Celsius(19)));
        await Minutes(7);
        await (await As(by)).UseMix(Number, mix.Id, new("on the pipe, spread to the edges"));
    }

    // The logger's readings, an hour apart, until everything that cures has set.
    private async Task LetSet(string by)
    {
        var client = await As(by);
        while ((await client.Fitting(Number)).Cures.Where(c => !c.SetForLoad).ToList() is { Count: > 0 } open)
        {
            var hours = (int)Math.Max(1, Math.Ceiling(open.Max(c => (c.SetForLoadHours - c.EquivalentHours) / 2)));
            var from = walk.GetUtcNow();
            await walk.After(TimeSpan.FromHours(hours));
            var readings = Enumerable
                .Range(0, hours + 1)
                .Select(h => new CureTemperature(from.AddHours(h), Celsius(28)));
            await client.RecordCure(Number, new([.. readings], "ST-0220", "heating blanket"));
        }
    }

    private TestMade Tested()
    {
        var gauge =
            Bar * 1.5 <= 2.5 ? "PG-1102"
            : Bar * 1.5 <= 6 ? "PG-1104"
            : "PG-1107";
        return new(
            TestKind.Hydrostatic,
            Measure.Of(Bar, "bar"),
            Measure.Of(15, "min"),
            "water",
            Celsius(14),
            gauge,
            Tight: true
        );
    }

    private Task<Guid> Tag(string by) => Photograph(by, PhotoOf.Tag, "the tag");

    // What came back to the stores, what is in the repair, and what was spoilt.
    private async Task Account(string by)
    {
        var rest = (await (await As("signe")).PickList(Number)).Out;
        if (rest.Count == 0)
            return;
        UseLine Used(OutView o)
        {
            var spoilt = o.Item == "PUTTY-W" && o.Quantity >= 2 ? 1 : 0;
            return new(o.Batch, o.Quantity - spoilt, spoilt);
        }
        await (await As(by)).AccountForMaterial(Number, new([.. rest.Select(Used)]));
    }

    private Measure Wall(double share) => Measure.Of(Math.Round(pipe.NominalWall.Value * share, 1), "mm");

    private Measure Across(double more) => Measure.Of(pipe.OutsideDiameter.Value + more, "mm");

    private static Measure Celsius(double value) => Measure.Of(value, "°C");
}
