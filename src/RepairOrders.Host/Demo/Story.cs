using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>
/// One repair order told in moves: each queues what somebody does and how long it takes, and the walk goes on with whichever story
/// comes next. Days count from the day the demo is loaded; hours are UTC.
/// </summary>
/// <param name="line">The line's number.</param>
/// <param name="place">Where on the line.</param>
internal sealed partial class Story(string line, string place)
{
    private static readonly string[][] Pairs =
    [
        ["tove", "anton"],
        ["anton", "vera"],
        ["vera", "tove"],
    ];

    private static readonly string[] Supervisors = ["mara", "greta", "olaf"];

    private readonly List<Func<Task>> moves = [];
    private readonly LineDetails pipe = MillLines.All.Single(l => l.Number == line).Details;
    private Crew crew = null!;
    private Walk walk = null!;
    private int turn;
    private string requester = "tove";

    /// <summary>The order's number, once it is raised.</summary>
    public string Number { get; private set; } = "";

    // Who is on shift differs from story to story, and stays for one.
    private string[] Fitters => Pairs[turn % Pairs.Length];
    private string Supervisor => Supervisors.Where(s => s != requester).ElementAt(turn % 3 == 2 ? 1 : 0);
    private string InCharge => turn % 2 == 0 ? "olaf" : "greta";
    private string Engineer => turn % 4 == 3 ? "pavel" : "ines";
    private string SecondEngineer => Engineer == "ines" ? "pavel" : "ines";
    private double Bar => pipe.OperatingPressure.Value;

    public async Task Tell(Crew cast, Walk days, int place)
    {
        (crew, walk, turn) = (cast, days, place);
        foreach (var move in moves)
            try
            {
                await move();
            }
            catch (Refused e)
            {
                throw new InvalidOperationException(
                    $"{Number} on {line}, day {walk.Day}: {e.Message} ({e.Code}) {string.Join("; ", e.Fields.Select(f => $"{f.Key}: {string.Join(' ', f.Value)}"))}",
                    e
                );
            }
    }

    /// <summary>Lets days pass.</summary>
    public Story Wait(double days) => Then(() => walk.After(TimeSpan.FromDays(days)));

    /// <summary>Waits for a day.</summary>
    public Story On(double day, double hour = 7) => Then(() => walk.Until(day, hour));

    /// <summary>Goes on some hours before the demo is loaded.</summary>
    public Story HoursAgo(double hours) => Then(() => walk.HoursAgo(hours));

    /// <summary>Somebody reports it on a day.</summary>
    public Story Raise(
        double day,
        string seen,
        LeakState leak = LeakState.Weep,
        string by = "tove",
        FoundHow found = FoundHow.Round,
        bool hazardous = false,
        string? atOnce = null,
        string? whyNot = null,
        double hour = 6.5
    ) => On(day, hour).Raise(seen, leak, by, found, hazardous, atOnce, whyNot);

    /// <summary>Somebody reports it.</summary>
    public Story Raise(
        string seen,
        LeakState leak = LeakState.Weep,
        string by = "tove",
        FoundHow found = FoundHow.Round,
        bool hazardous = false,
        string? atOnce = null,
        string? whyNot = null
    ) =>
        Then(async () =>
        {
            requester = by;
            var order = await (await As(by)).Request(Asked(seen, leak, found, hazardous, atOnce, whyNot));
            Number = order.Title.Number;
            await Photograph(by, PhotoOf.Request, "as found", covered: false);
        });

    private RequestRepair Asked(
        string seen,
        LeakState leak,
        FoundHow found,
        bool hazardous,
        string? atOnce,
        string? whyNot
    ) =>
        new(
            Mill.Site,
            line,
            place,
            pipe.Fluid,
            seen,
            found,
            leak,
            hazardous,
            pipe.OperatingPressure,
            pipe.OperatingTemperature,
            atOnce ?? (leak >= LeakState.Weep ? "drip tray, area roped off" : null),
            whyNot ?? "the line cannot be taken off before the next stop",
            null
        );

    private Story Then(Func<Task> move)
    {
        moves.Add(move);
        return this;
    }

    private Task<RepairOrdersClient> As(string name) => crew.As(name);

    private Task Minutes(double minutes) => walk.After(TimeSpan.FromMinutes(minutes));

    private Task<OrderSheet> Sheet() => Read("mara");

    private async Task<OrderSheet> Read(string by) => await (await As(by)).Order(Number);

    private async Task<string> Version() => (await Sheet()).Version;

    private async Task<Guid> Photograph(string by, PhotoOf of, string shows, bool covered = true, string? key = null)
    {
        var picture = new MemoryStream(Placeholder.Draw(Number, shows, walk.Today, covered));
        return (await (await As(by)).AddPhoto(Number, picture, of, key, $"placeholder: {shows}")).Id;
    }
}
