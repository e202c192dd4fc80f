using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Tests.Orders;

/// <summary>An order with a record of every kind that a panel reads, and the lists that panels look up.</summary>
internal static class CannedOrder
{
    public static readonly DateTimeOffset At = new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);
    public static readonly Guid Me = Guid.Parse("11111111-1111-1111-1111-111111111111");
    private static readonly Guid Batch = Guid.Parse("22222222-2222-2222-2222-222222222222");
    private static readonly DateOnly Today = new(2026, 3, 14);

    private static readonly FindingView Finding = new(
        "size",
        FindingSeverity.Pass,
        "DN 150 is inside 25 to 600",
        150,
        600,
        "mm",
        "common practice, no source",
        false
    );

    private static readonly DefectMeasured Defect = new(
        DefectKind.Pinhole,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        true,
        Measure.Of(15, "mm"),
        Measure.Of(15, "mm"),
        Measure.Of(4, "mm"),
        4,
        false
    );

    private static readonly LeakConsequences Leak = new(PeopleNearby.Rarely, true, Measure.Of(500, "kg"), false);

    private static readonly IReadOnlyList<ThicknessReading> Walls =
    [
        new(ReadingPlace.Beside, "3 o'clock", new Measure(6.35, "mm", "0.25 in"), Today, "UT-7"),
    ];

    public static readonly HoldPointView Everything = new(
        "mix",
        "Putty mixed and on the pipe",
        HoldKind.Hold,
        "technician",
        Enum.GetValues<Evidence>(),
        [],
        "common practice, no source"
    );

    private static readonly RiskView Risk = new(RiskClass.C, 2, 3, ["water, few people"]);

    private static readonly EndTermView Term = new("class-cap", "365 days, class C", Today.AddDays(365));

    public static readonly SizeRepair Sized = new(
        new Dictionary<string, InputValue> { ["pressureBar"] = 6 },
        null,
        Today.AddDays(1),
        Me,
        new PermanentFixPlan("job 4411", Today.AddDays(60)),
        InterimLimits: new InterimLimits(Measure.Of(6, "bar"), null, null)
    );

    public static readonly SignedDesign Design = new(
        Sized,
        new MethodDesignView(
            "banded-patch",
            "Banded patch",
            false,
            null,
            [
                new DimensionView("bandCount", "Bands", 5, ""),
                new DimensionView("torqueLeastNm", "Least torque", 8, "N m"),
            ],
            6.8,
            [new MaterialNeedView("putty", "putty, one stick", 1, "pcs", "putty")],
            [Everything],
            ["Stay out of the line of band ends."],
            [new WorkingStepView("n", "bands", "n = F / f", "5 = 10 / 2", 5, "", "common practice, no source")],
            [Finding],
            1,
            24,
            20,
            180,
            2.8,
            false,
            []
        ),
        new FactsView(
            150,
            168.3,
            7.11,
            "A106 B",
            MetalFamily.CarbonSteel,
            138,
            1,
            "cooling water",
            FluidState.Liquid,
            ServiceCategory.D,
            2,
            4,
            false,
            false,
            false,
            6,
            10,
            18,
            50,
            false,
            false
        ),
        Guid.Empty,
        Risk,
        new EndDateView(Term.On, Term, [Term]),
        "Mara Lindqvist",
        null,
        [],
        new string('a', 64)
    );

    private static readonly ListEmergencyMethod Listed = new(
        "mill",
        "Banded patch on cooling water",
        "banded-patch",
        Measure.Of(60, "mm"),
        Measure.Of(300, "mm"),
        Measure.Of(8, "bar"),
        Measure.Of(50, "°C"),
        ["cooling water"],
        [],
        [Everything],
        ["Gloves."],
        1,
        24,
        Measure.Of(20, "°C"),
        "sheet 12"
    );

    private static readonly RequestRepair Request = new(
        "mill",
        "CW-150-3104",
        "Pump house 2, north wall",
        "cooling water",
        "pinhole weeping",
        FoundHow.Round,
        LeakState.Weep,
        false,
        new Measure(6.2, "bar", "90 psi"),
        Measure.Of(18, "°C"),
        null,
        "the turbine needs it",
        null
    );

    public static OrderSheet Sheet(params ActionView[] actions) =>
        new(
            new TitleBlock(
                "mill-17",
                "Board mill",
                "CW-150-3104",
                "Pump house 2, north wall",
                "cooling water",
                "90 psi · 18 °C",
                "Banded patch",
                RiskClass.C,
                RiskClass.C,
                Term.On,
                365,
                "Mara Lindqvist",
                Stage.Fitting,
                2,
                9
            ),
            "7",
            [],
            [new KeyFigure("Holds", "6.8 bar", "sized here")],
            [],
            null,
            null,
            null,
            actions,
            Records(),
            [],
            Design.Fingerprint,
            At
        );

    public static IReadOnlyList<RecordView> Records() =>
        [
            Record("request", Request, round: 1),
            Record("photo", new SignedPhoto(PhotoOf.Request, null, "from the stairs", "image/jpeg", 9, 4, 3, "00"), 1),
            Record("assessment", new { Ask = new RecordAssessment(Walls, null, Defect, Leak) }),
            Record(
                "choice",
                new SignedChoice(
                    new ChooseMethod("banded-patch", [new ConsideredMethod("plug", "no thread holds")]),
                    []
                )
            ),
            Record("design", Design),
            Record("approval", new ApproveOrder(Design.Fingerprint, ApprovalCapacity.Engineer)),
            Record(
                "consent",
                new SignedConsent(
                    new RecordConsent(
                        Guid.NewGuid(),
                        Me,
                        ConsentCapacity.EngineerOnCall,
                        At,
                        "go ahead",
                        false,
                        true,
                        false,
                        Leak
                    ),
                    "Ines Duarte",
                    Listed,
                    Risk
                )
            ),
            Record(
                "material-issue",
                new SignedIssue(
                    new IssueMaterial(Me, [], true),
                    "Tove Aune",
                    Guid.Empty,
                    [
                        new IssuedLine(
                            1,
                            "putty",
                            "PUTTY-W",
                            "putty",
                            Batch,
                            "P-0291",
                            Today.AddDays(200),
                            "c-1",
                            "C1",
                            1,
                            "pcs",
                            1,
                            false,
                            null
                        ),
                    ],
                    true,
                    false
                )
            ),
            Record("stop", new SignedStop(new StopJob("the alarm went"), false)),
            Record(
                "proof",
                new SignedProof(new RecordProof(null, Measure.Of(20, "°C"), "T-118", null), false, null, null, [])
            ),
            Record(
                "visit",
                new SignedVisit(
                    new RecordVisit(
                        "mill-17",
                        null,
                        LeakState.Dry,
                        false,
                        EdgesState.Sound,
                        null,
                        VisitResult.FitToStay,
                        Readings: Walls
                    ),
                    At,
                    true,
                    [],
                    0.1,
                    900,
                    null,
                    null
                )
            ),
            Record(
                "extension",
                new SignedExtension(
                    new AskExtension(SlipReason.PartsLate, "spool late", Guid.Empty, Sized.PermanentFix!),
                    false,
                    false,
                    Risk,
                    Today,
                    Design.EndDate,
                    1,
                    [],
                    [ExtensionCapacity.Manager]
                )
            ),
            Record("failure", new ReportFailure(LeakState.Weep, "weeps at the lower edge")),
            Record(
                "made-safe",
                new SignedMadeSafe(
                    new MakeSafe(SafeBy.Containment, null, "tray", true, "fire watch", null, FailureMode.Seal),
                    true
                )
            ),
            Record("removal", new RecordRemoval(null, "sound beneath", true)),
            Record("removal-inspection", new InspectRemoval("pitting", DefectCause.InternalCorrosion)),
            Record("close-out", new CloseOrder(DefectCause.InternalCorrosion, "pitting", null, true)),
            Record("hand-over", new SignedHandOver(new OfferHandOver(Me, "off shift"), "Ines Duarte")),
            Record("exit", new ExitOrder(ExitKind.Returned, ExitCapacity.Engineer, "no photograph", ["photograph"])),
        ];

    /// <summary>What the service answers to a read, by the end of its path.</summary>
    public static object? Answer(string path) =>
        path switch
        {
            "version" => new OrderVersion(Sheet().Version),
            "people" => new PeopleView(
                [
                    new PersonRow(
                        Me,
                        "ines",
                        "Ines Duarte",
                        [Role.IntegrityEngineer, Role.Technician],
                        ["mill"],
                        [],
                        null,
                        false
                    ),
                ],
                null
            ),
            "instruments" => new InstrumentsView(
                [
                    .. Enum.GetValues<InstrumentKind>()
                        .Select(k => new InstrumentView(
                            Guid.NewGuid(),
                            "1",
                            new DescribeInstrument("mill", $"{k}-1", k, "for the bench", Today.AddDays(90)),
                            null
                        )),
                ],
                null
            ),
            "claims" => new ClaimView[]
            {
                new("banded-patch", "Banded patch", false, 1, "a pinhole in sound metal", true, false, [Finding], null),
                new(
                    "plug",
                    "Plug",
                    false,
                    2,
                    "the wall is thin",
                    false,
                    true,
                    [Finding with { Severity = FindingSeverity.Fail, Absolute = true }],
                    new ObjectionView("barred", "The wall holds no thread.", "nobody")
                ),
            },
            "sizing-inputs" => new InputView[]
            {
                new("pressureBar", "p", "pressure the patch is sized for", "bar", 0, 100, 6, "none", null),
                new("surface", "s", "state of the surface", "", 0, 1, 0, "none", ["dry", "wet"]),
            },
            "sizing-previews" => new SizingPreview(Design with { EndDate = Sooner }, null),
            "pick-list" => new PickListView(
                "mill-17",
                "banded-patch",
                Today.AddDays(1),
                Today.AddDays(3),
                [
                    new PickLineView(
                        1,
                        "putty",
                        "putty, one stick",
                        1,
                        "pcs",
                        0,
                        [
                            new PickView(
                                "C1",
                                Batch,
                                "P-0291",
                                "PUTTY-W",
                                "putty",
                                Today.AddDays(200),
                                "c-1",
                                1,
                                "pcs",
                                Tone.Go
                            ),
                        ],
                        0
                    ),
                ],
                [new OutView(Batch, "P-0291", "PUTTY-W", "putty", 1, "pcs")]
            ),
            "bins" => new[]
            {
                new BinView(
                    Guid.NewGuid(),
                    "1",
                    new DescribeBin("mill", "C1", "cabinet one", false),
                    null,
                    null,
                    false,
                    []
                ),
            },
            "batches" => new BatchesView(
                [
                    new BatchView(
                        Batch,
                        "mill",
                        "PUTTY-W",
                        "putty",
                        "pcs",
                        "P-0291",
                        Today.AddDays(200),
                        "c-1",
                        BatchStanding.Good,
                        null,
                        false,
                        new BatchBalance(4, 3, 1, 0, 0)
                    ),
                ],
                null
            ),
            "fitting" => new FittingView(
                [new HoldPointState(Everything, null, null, null, AsksWitness: true)],
                null,
                "PTW 881",
                At.AddHours(8),
                [new NamedPerson(Me, "Ines Duarte")],
                null,
                null,
                null,
                [],
                [],
                At
            ),
            "items" => new StockItemsView([], null),
            "emergency-methods" => new[] { new EmergencyMethodView(Guid.NewGuid(), Listed, [], Today, null, null) },
            _ => null,
        };

    private static EndDateView Sooner => new(Today.AddDays(90), Term with { On = Today.AddDays(90) }, [Term]);

    private static RecordView Record(string kind, object body, int round = 2) =>
        new(
            Guid.NewGuid(),
            kind,
            round,
            "Ines Duarte",
            At,
            $"{kind} in one line",
            Tone.Go,
            JsonSerializer.SerializeToElement(body, body.GetType(), RepairOrdersClient.Json),
            null,
            null,
            null
        );
}
