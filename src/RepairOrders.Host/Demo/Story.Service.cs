using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// The life of a repair: looks, extensions, hand-overs, failures.
internal sealed partial class Story
{
    private Guid survey;
    private int looks;

    /// <summary>Looks on the day each falls due, until a day; walls are read when they are due. An engineer countersigns where the class asks.</summary>
    public Story Looks(double until = 0, bool readWalls = true) =>
        Then(async () =>
        {
            while (await Sheet() is { NextLook: { } next } sheet && DayOf(next) < until)
            {
                await walk.Until(Math.Max(DayOf(next), walk.Day + 0.5), 10);
                await GoAndLook(walls: readWalls && sheet.NextThickness <= walk.Today.AddDays(4));
            }
        });

    /// <summary>One look now.</summary>
    public Story Look(
        bool walls = false,
        VisitResult result = VisitResult.FitToStay,
        LeakState state = LeakState.Dry,
        string? action = null,
        string? excursions = null,
        double share = 0.9,
        string? remark = null
    ) => Then(() => GoAndLook(walls, share, result, state, action, excursions, remark));

    /// <summary>The supervisor asks for more time on a fresh survey, and who may decide grants or refuses it.</summary>
    public Story Extend(
        SlipReason reason,
        string why,
        int fixIn,
        bool grant = true,
        string? refusedWhy = null,
        string fix = "job 4411"
    ) =>
        Then(async () =>
        {
            await GoAndLook(walls: true);
            await Minutes(90);
            var asked = await (await As("mara")).AskExtension(
                Number,
                new(
                    reason,
                    why,
                    survey,
                    new(fix, walk.Today.AddDays(fixIn)),
                    new($"MOC-{Number}", walk.Today.AddDays(400))
                )
            );
            var needed = Body<SignedExtension>(asked).Needed;
            foreach (var place in needed)
            {
                await Minutes(120);
                var who = place switch
                {
                    ExtensionCapacity.Manager or ExtensionCapacity.ManagerOrSecondEngineer => "henrik",
                    ExtensionCapacity.SecondEngineer => SecondEngineer,
                    _ => Engineer,
                };
                await (await As(who)).DecideExtension(Number, new(asked.Id, grant, refusedWhy));
                if (!grant)
                    return;
            }
        });

    /// <summary>The owner hands it over, and the new one accepts.</summary>
    public Story HandOver(string to, string why) =>
        Then(async () =>
        {
            var offer = await (await As("mara")).OfferHandOver(Number, new(await crew.IdOf(to), why));
            await Minutes(180);
            await (await As(to)).AcceptHandOver(Number, new(offer.Id), await Version());
        });

    /// <summary>A technician sees it leak.</summary>
    public Story Fail(string seen, LeakState state = LeakState.Weep, string by = "vera", string? atOnce = null) =>
        Then(async () =>
        {
            var photo = await Photograph(by, PhotoOf.Failure, "it leaks");
            await (await As(by)).ReportFailure(Number, new(state, seen, atOnce, null, photo));
        });

    /// <summary>Operations isolate the line, or contain what leaks.</summary>
    public Story MakeSafe(FailureMode mode, string? controls = null, string? standIn = null) =>
        Then(async () =>
        {
            await Minutes(35);
            await (await As(InCharge)).MakeSafe(
                Number,
                controls is null
                    ? new(SafeBy.Isolation, $"IC {800 + turn}", null, false, null, standIn, mode)
                    : new(SafeBy.Containment, null, controls, true, "shift round, every hour", standIn, mode)
            );
        });

    /// <summary>The line is taken off: isolated, blinded, two signatures.</summary>
    public Story LineOff(string why) =>
        Then(async () =>
        {
            var exit = await (await As(InCharge)).Exit(
                Number,
                new(
                    ExitKind.LineOutOfService,
                    ExitCapacity.OperationsInCharge,
                    why,
                    IsolationReference: $"IC {900 + turn}",
                    Blinded: true
                )
            );
            await Minutes(60);
            await (await As(Engineer)).SignExit(Number, new(exit.Id, ExitCapacity.Engineer));
        });

    /// <summary>A step of the ladder is answered.</summary>
    public Story Answer(string by, int onInDays, string why) =>
        Then(async () =>
            await (await As(by)).AnswerLadder(Number, new(LadderAnswerKind.DateSet, walk.Today.AddDays(onInDays), why))
        );

    /// <summary>The engineers' weekly review.</summary>
    public Story Review(ReviewDecision decision, string minutes) =>
        Then(async () => await (await As("ines")).ReviewOrder(Number, new(decision, minutes)));

    private async Task GoAndLook(
        bool walls,
        double share = 0.9,
        VisitResult result = VisitResult.FitToStay,
        LeakState state = LeakState.Dry,
        string? action = null,
        string? excursions = null,
        string? remark = null
    )
    {
        var by = Pairs[(turn + looks++) % Pairs.Length][0];
        var photo = await Photograph(by, PhotoOf.Visit, "as it stands", covered: Covered);
        ThicknessReading Read(string spot, double more) =>
            new(ReadingPlace.Beside, spot, Wall(share + more), walk.Today, "UT-0417");
        var visit = await (await As(by)).Visit(
            Number,
            new(
                Number,
                null,
                state,
                Moved: false,
                EdgesState.Sound,
                photo,
                result,
                action,
                excursions,
                walls ? [Read("upstream", 0), Read("downstream", 0.02)] : null,
                Remark: remark
            )
        );
        survey = visit.Id;
        if (!Body<SignedVisit>(visit).CountersignNeeded)
            return;
        await Minutes(45);
        await (await As(SecondEngineer)).CountersignVisit(Number, new(visit.Id));
    }

    private bool Covered { get; set; } = true;
}
