using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// From the judgement of the pipe to the last signature.
internal sealed partial class Story
{
    private string method = "";
    private string? refusal;
    private RiskClass? riskClass;
    private string owner = "mara";
    private DateOnly fitOn;

    /// <summary>The engineer reads the walls and judges the pipe.</summary>
    public Story Assess(
        Damage damage,
        PeopleNearby people = PeopleNearby.Rarely,
        bool river = false,
        bool isolable = true,
        string? remark = null
    ) =>
        Then(async () =>
        {
            await Minutes(150);
            var by = await As(Engineer);
            await by.Assess(Number, Judged(damage, new(people, isolable, Kg(500), river), remark), await Version());
        });

    /// <summary>The engineer picks a method, and says why not another.</summary>
    public Story Choose(string code, string? whyNotOther = null) =>
        Then(async () =>
        {
            await Minutes(40);
            method = code;
            var (other, why, reason) = Choices[code];
            await (await As(Engineer)).Choose(
                Number,
                new(code, [new(other, whyNotOther ?? why)], reason),
                await Version()
            );
        });

    /// <summary>The engineer sizes it, thickening it until it holds, and names owner, dates and the job that ends it.</summary>
    public Story Size(int fitIn = 1, int life = 180, string fix = "job 4411", int fixIn = 120, string owner = "mara") =>
        Then(async () =>
        {
            this.owner = owner;
            await Minutes(60);
            fitOn = walk.Today.AddDays(fitIn);
            var by = await As(Engineer);
            foreach (var values in Methods.Tries(method, Bar, life))
            {
                var ask = new SizeRepair(
                    values,
                    null,
                    fitOn,
                    await crew.IdOf(owner),
                    new(fix, walk.Today.AddDays(fixIn)),
                    new($"MOC-{Number[(Mill.Site.Length + 1)..]}", walk.Today.AddDays(400)),
                    InterimLimits: new(pipe.OperatingPressure, pipe.OperatingTemperature, null)
                );
                refusal = (await by.PreviewSizing(Number, ask)).Objection?.Sentence;
                if (refusal is not null)
                    continue;
                await by.Size(Number, ask, await Version());
                return;
            }
            throw new InvalidOperationException($"{Number} on {line}: no {method} holds: {refusal}");
        });

    /// <summary>Everybody its class asks for signs, or the first few of them.</summary>
    public Story Approve(int signatures = 3) =>
        Then(async () =>
        {
            var sheet = await Sheet();
            var print = sheet.Fingerprint!;
            riskClass = sheet.Title.SignedClass;
            var grave = riskClass is RiskClass.A or RiskClass.B;
            (string Who, ApprovalCapacity As)[] wanted =
            [
                (Supervisor, ApprovalCapacity.Supervisor),
                (grave ? SecondEngineer : Engineer, ApprovalCapacity.Engineer),
                ("henrik", ApprovalCapacity.Manager),
            ];
            var needed = riskClass switch
            {
                RiskClass.D => 1,
                RiskClass.A => 3,
                _ => 2,
            };
            foreach (var (who, capacity) in wanted.Take(Math.Min(needed, signatures)))
            {
                await Minutes(45);
                await (await As(who)).Approve(Number, new(print, capacity));
            }
        });

    /// <summary>Judged, a method chosen, sized and approved: the common course.</summary>
    public Story Plan(
        Damage damage,
        string code = Methods.Patch,
        int fitIn = 1,
        int life = 180,
        string fix = "job 4411",
        int fixIn = 120,
        string owner = "mara",
        PeopleNearby people = PeopleNearby.Rarely,
        bool river = false
    ) => Assess(damage, people, river).Choose(code).Size(fitIn, life, fix, fixIn, owner).Approve();

    private RecordAssessment Judged(Damage damage, LeakConsequences consequences, string? remark)
    {
        var wall = pipe.NominalWall.Value;
        ThicknessReading Read(ReadingPlace where, string spot, double share) =>
            new(where, spot, Measure.Of(Math.Round(wall * share, 1), "mm"), walk.Today, "UT-0417");
        List<ThicknessReading> walls =
        [
            Read(ReadingPlace.Beside, "upstream", damage.Beside),
            Read(ReadingPlace.Beside, "downstream", damage.Beside + 0.02),
        ];
        if (!damage.Through)
            walls.Add(Read(ReadingPlace.AtDefect, "thinnest", damage.Left));
        return new(
            walls,
            null,
            damage.Measured,
            consequences,
            CorrosionRate: damage.RateMmPerYear is { } rate ? Measure.Of(rate, "mm/y") : null,
            RateBasis: damage.RateMmPerYear is null ? null : "readings of the last survey of this system",
            QualityFactor: 1,
            Remark: remark,
            WallMappedEachSide: Measure.Of(400, "mm")
        );
    }

    private static readonly Dictionary<string, (string Other, string Why, string Reason)> Choices = new()
    {
        [Methods.Patch] = (
            "section-replacement",
            "the line cannot be cut before the stop",
            "small hole, sound metal round it, straight run with room for bands"
        ),
        [Methods.Wrap] = (
            "banded-patch",
            "the wall is thin over a length a plate would not cover",
            "thinned over a length, sound ends, can be drained and dried"
        ),
        [Methods.Clamp] = (
            "banded-patch",
            "the line pulses when the pumps start, bands would work loose",
            "straight run, room for two halves, can be fitted in an hour"
        ),
        [Methods.WeldedPatch] = (
            "banded-patch",
            "hot and lagged, putty would not last",
            "line off for the night, sound wall to weld on"
        ),
        [Methods.Sleeve] = (
            "laminate-wrap",
            "end load and heat are too much for resin",
            "thin all round over a short length, line off at the weekend"
        ),
        [Methods.Plug] = (
            "banded-patch",
            "no room for bands beside the support",
            "one clean hole, thick wall round it, low pressure"
        ),
    };

    private static Measure Kg(double mass) => Measure.Of(mass, "kg");

    private static T Body<T>(RecordView record) => record.Body.Deserialize<T>(RepairOrdersClient.Json)!;
}
