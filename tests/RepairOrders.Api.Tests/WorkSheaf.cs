using RepairOrders.Api.Approving;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Stock;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>
/// An order with its records and no store: what the rules of the work are asked about. A clamp that is mixed in, so that every
/// kind of evidence has its point; the class is the test's choice.
/// </summary>
internal sealed class WorkSheaf
{
    public static readonly DateTimeOffset Monday = new(2026, 3, 2, 7, 0, 0, TimeSpan.Zero);

    public static readonly Person Mara = Somebody("Mara Lindqvist", Role.Supervisor);
    public static readonly Person Olaf = Somebody("Olaf Brekke", Role.Supervisor, Competence.OperationsInCharge);
    public static readonly Person Tove = Somebody("Tove Aune", Role.Technician, Cast.Methods);
    public static readonly Person Anton = Somebody("Anton Reyes", Role.Technician, Cast.Methods);
    public static readonly Person Vera = Somebody(
        "Vera Sand",
        Role.Technician,
        [.. Cast.Methods, Competence.Inspector]
    );
    public static readonly Person Signe = Somebody("Signe Dahl", Role.Storekeeper);
    public static readonly Person Ines = Somebody("Ines Duarte", Role.IntegrityEngineer);
    public static readonly Person Pavel = Somebody("Pavel Horak", Role.IntegrityEngineer, Competence.Inspector);
    public static readonly Person Henrik = Somebody("Henrik Vold", Role.Manager);

    public static Person Somebody(string name, Role role, params string[] competences) =>
        new()
        {
            FullName = name,
            Roles = [role],
            Sites = ["mill"],
            Competences = [.. competences.Select(c => new Competence(c, new DateOnly(2029, 12, 31)))],
        };

    public static readonly MaterialNeedView[] ClampBill =
    [
        new("clamp", "clamp 168 mm, bolted", 1, "pcs", "clamp"),
        new("sealant", "sealant, two parts", 400, "g", "sealant"),
    ];

    public static readonly HoldPointView[] ClampPoints =
    [
        Point("as-described", Evidence.Statement, Evidence.ThicknessReadings, Evidence.Photo),
        Point("diameter", Evidence.DiameterReadings) with
        {
            After = ["as-described"],
        },
        Point("surface", Evidence.SurfaceGrade) with
        {
            After = ["diameter"],
        },
        Point("climate", Evidence.ClimateReading) with
        {
            After = ["surface"],
        },
        Point("mix", Evidence.Mix) with
        {
            After = ["climate"],
        },
        Point("torque", Evidence.TorqueReadings) with
        {
            After = ["mix"],
        },
        Point("cure", Evidence.CureLog, Evidence.HardnessReading) with
        {
            After = ["torque"],
        },
        Point("inspection", Evidence.Statement) with
        {
            ReleasedBy = "inspector",
            After = ["cure"],
        },
        Point("as-left", Evidence.Statement) with
        {
            Kind = HoldKind.Witness,
            After = ["inspection"],
        },
    ];

    public static HoldPointView Point(string code, params Evidence[] evidence) =>
        new(code, $"{code} is right", HoldKind.Hold, "technician", evidence, [], "test");

    private static readonly FactsView Facts = new(
        150,
        168.3,
        7.11,
        "ASTM A106 B",
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
    );

    public static readonly MethodDesignView Clamp = new(
        "bolted-clamp",
        "Bolted clamp",
        true,
        "calc 12",
        [
            new("clampBoltCount", "bolts", 4, "-"),
            new("torqueLeastNm", "least torque", 40, "N m"),
            new("torqueMostNm", "greatest torque", 50, "N m"),
        ],
        10,
        ClampBill,
        ClampPoints,
        [],
        [],
        [],
        2,
        24,
        20,
        180,
        5,
        true,
        []
    );

    private WorkSheaf(RepairOrder order) => Order = order;

    public RepairOrder Order { get; }
    public DateTimeOffset Now { get; private set; } = Monday;
    public WorkPlan Plan => WorkPlan.Of(Order)!;

    public WorkSheaf Pass(TimeSpan time)
    {
        Now += time;
        return this;
    }

    public static WorkSheaf Approved(
        RiskClass signed = RiskClass.C,
        MethodDesignView? design = null,
        ServiceCategory category = ServiceCategory.D
    )
    {
        var site = new Site
        {
            ShortName = "mill",
            Name = "Board mill",
            TimeZone = "Europe/Oslo",
        };
        var sheaf = new WorkSheaf(new RepairOrder(site, 17, null));
        var order = sheaf.Order;
        order.Sign(new Request(Cast.Weep("mill")), Tove, Monday.AddHours(-8));
        var fingerprint = new string('f', 64);
        order.Sign(
            new Design(
                new(
                    new SizeRepair(
                        new Dictionary<string, InputValue>(),
                        null,
                        new DateOnly(2026, 3, 3),
                        Mara.Id,
                        new("job 4411", new DateOnly(2026, 5, 1)),
                        InterimLimits: new(Measure.Of(6, "bar"), null, null)
                    ),
                    design ?? Clamp,
                    Facts with
                    {
                        Category = category,
                    },
                    Guid.NewGuid(),
                    new RiskView(signed, 2, 3, []),
                    new(new DateOnly(2026, 8, 1), new("class-cap", "class", new DateOnly(2026, 8, 1)), []),
                    Mara.FullName,
                    null,
                    [],
                    fingerprint
                )
            ),
            Ines,
            Monday.AddHours(-6)
        );
        foreach (var place in Signatures.Needed(signed))
            order.Sign(
                new Approval(new ApproveOrder(fingerprint, place)),
                place switch
                {
                    ApprovalCapacity.Supervisor => Mara,
                    ApprovalCapacity.Engineer => Pavel,
                    _ => Henrik,
                },
                Monday.AddHours(-5)
            );
        order.Stage.ShouldBe(Stage.Approved);
        return sheaf;
    }

    /// <summary>One batch of each line of the bill, all of it issued to Tove.</summary>
    public WorkSheaf Issued(MaterialLimits? limits = null)
    {
        var lines = Plan.Bill.Select((n, i) => Line(i + 1, n)).ToList();
        Order.Sign(
            new MaterialIssue(new(new IssueMaterial(Tove.Id, [], true), Tove.FullName, Plan.Id, lines, true, false)),
            Signe,
            Now
        );
        return this;
    }

    public static readonly Guid SealantBatch = Guid.NewGuid();

    private static IssuedLine Line(int line, MaterialNeedView need) =>
        new(
            line,
            need.Words,
            need.Code.ToUpperInvariant(),
            need.Words,
            need.Code == "sealant" ? SealantBatch : Guid.NewGuid(),
            $"lot {line}",
            null,
            null,
            "A-1",
            (decimal)need.Quantity,
            need.Unit,
            need.Quantity,
            false,
            null
        );

    public ReadyOrder Permit() =>
        new(
            ReadinessFor.Fit,
            "PTW 881",
            PermitKind.Cold,
            Now,
            Now.AddHours(8),
            new("IC 204", "V-22 lock 14", "vent open, drain dry", "Olaf Brekke", "Tove Aune", Measure.Of(0, "bar")),
            null,
            new GasTest(Now, "Olaf Brekke", 0, 20.9, 0, true),
            [Tove.Id, Anton.Id],
            [Tove.Id, Anton.Id]
        );

    public WorkSheaf Ready(ReadyOrder? ask = null)
    {
        ask ??= Permit();
        Order.Sign(
            new Readiness(
                new(ask, [new(Tove.Id, Tove.FullName), new(Anton.Id, Anton.FullName)], ask.Isolation is null)
            ),
            Mara,
            Now
        );
        return this;
    }

    public WorkSheaf Climate(double steel = 20, double air = 21, double humidity = 50)
    {
        Order.Sign(
            new ClimateReading(
                ClimateReading.Sign(
                    new RecordClimate(Measure.Of(air, "°C"), humidity, Measure.Of(steel, "°C"), "HY-5"),
                    []
                )
            ),
            Tove,
            Now
        );
        return this;
    }

    public Mix Mixed(MaterialLimits? limits = null)
    {
        limits ??= Stores.WetPutty;
        var ask = new StartMix(SealantBatch, null, null, null, Measure.Of(20, "°C"));
        var life = Mix.Clock(limits, ask, 20, Now).Result;
        return Order.Sign(
            new Mix(
                new(
                    ask,
                    "SEALANT",
                    "sealant",
                    "lot 2",
                    null,
                    Guid.NewGuid(),
                    20,
                    life.UsableUntil,
                    life.PlaceBy,
                    limits
                )
            ),
            Tove,
            Now
        );
    }

    public MixUse Used(Mix mix) => Order.Sign(new MixUse(new(mix.Id, "SEALANT", "lot 2", null)), Tove, Now);

    public WorkSheaf Warm(double pipe)
    {
        Order.Sign(new CureReading(new([new(null, Measure.Of(pipe, "°C"))], "ST-3")), Tove, Now);
        return this;
    }

    public Photo Photographed(PhotoOf of, string? key = null) =>
        Order.Sign(
            new Photo(Guid.CreateVersion7(), new(of, key, null, "image/jpeg", 1000, 64, 48, new string('0', 64))),
            Tove,
            Now
        );

    public HoldPointRelease Release(string code, string? departure = null, Person? by = null)
    {
        var place = Plan.HoldPoints.ToList().FindIndex(p => p.Code == code);
        var record = Order.Sign(
            new HoldPointRelease(
                new(
                    new ReleaseHoldPoint(code, Departure: departure),
                    Plan.HoldPoints[place].Title,
                    $"{place + 1} of {Plan.HoldPoints.Count}",
                    Plan.HoldPoints.Count,
                    Plan.Id,
                    null,
                    null,
                    [],
                    null
                )
            ),
            by ?? Tove,
            Now
        );
        Pass(TimeSpan.FromMinutes(1));
        return record;
    }

    public HoldPointView PointOf(string code) => Plan.HoldPoints.Single(p => p.Code == code);

    /// <summary>Every point signed, and set for load.</summary>
    public static WorkSheaf Fitted(RiskClass signed = RiskClass.C)
    {
        var sheaf = Approved(signed).Issued().Ready().Climate();
        foreach (var point in sheaf.Plan.HoldPoints)
        {
            if (point.Code == "mix")
                sheaf.Used(sheaf.Mixed());
            for (var hours = 0; point.Code == "cure" && hours < 4; hours++)
                sheaf.Pass(TimeSpan.FromHours(1)).Warm(20);
            sheaf.Release(point.Code, by: point.Code == "inspection" ? Pavel : Tove);
        }
        sheaf.Order.Stage.ShouldBe(Stage.Fitted);
        return sheaf;
    }

    /// <summary>Proved and accepted; the proof itself has tests of its own.</summary>
    public static WorkSheaf InService(RiskClass signed = RiskClass.C)
    {
        var sheaf = Fitted(signed).Pass(TimeSpan.FromMinutes(1));
        var accepted = new AcceptRepair("day shift", IsolationsRemoved: true);
        sheaf.Order.Sign(new Acceptance(new(accepted, Guid.NewGuid(), "T-1", null)), Olaf, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.InService);
        return sheaf.Pass(TimeSpan.FromMinutes(1));
    }

    public static Batch Lot(
        string number = "7",
        DateOnly? expiry = null,
        MaterialLimits? limits = null,
        DescribeStockItem? item = null,
        string? certificate = null
    )
    {
        item ??= Stores.Putty("mill") with { Need = "sealant", Limits = limits };
        var described = new StockItem { Code = item.Code };
        described.Describe(item);
        return new Batch
        {
            Id = SealantBatch,
            Item = described,
            Number = number,
            Expiry = expiry,
            Certificate = certificate,
        };
    }
}
