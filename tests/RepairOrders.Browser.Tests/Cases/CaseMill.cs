using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>A mill on a clock of its own, worked through its screens. What stands before a case begins comes by the product's client.</summary>
internal sealed class CaseMill : IAsyncDisposable
{
    private readonly Service service;
    private readonly Mill mill;
    private readonly bool keyboard;
    private readonly int width;

    private CaseMill(Service service, Mill mill, LaterClock clock, int width, bool keyboard) =>
        (this.service, this.mill, Clock, this.width, this.keyboard) = (service, mill, clock, width, keyboard);

    public LaterClock Clock { get; }

    /// <summary>Where the screens are.</summary>
    public Uri Address { get; private set; } = null!;

    private Uri Api { get; set; } = null!;

    public static async Task<CaseMill> Open(Service service, bool inOne, int width, bool keyboard = false)
    {
        var clock = LaterClock.Make();
        var mill = new CaseMill(service, await Mill.Build(clock.Settings), clock, width, keyboard);
        mill.Api = inOne ? await mill.mill.Both() : await mill.mill.Api();
        mill.Address = inOne ? mill.Api : await mill.mill.Screens(mill.Api);
        await mill.Stock();
        return mill;
    }

    public async Task<Person> Person(string name)
    {
        var page = await service.Browser(width);
        return new Person(this, name, page, keyboard ? new Keyboard(page) : new Hand(page));
    }

    /// <summary>The product's own client; a session of its own each time, as the clock ends them.</summary>
    public Task<RepairOrdersClient> Client(string name) => mill.Client(Api, name);

    public string PasswordOf(string name) => mill.PasswordOf(name);

    public async Task<Guid> IdOf(string name) => (await (await Client("ada")).Person(name)).Id;

    public async Task<OrderSheet> Order(string number) => await (await Client("rune")).Order(number);

    /// <summary>The design that was signed last; nothing for a method of the emergency list.</summary>
    public async Task<MethodDesignView?> Design(string number) =>
        (await Order(number))
            .Records.LastOrDefault(r => r.Kind == "design" && r.SetAsideAt is null)
            ?.Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!
            .Method;

    // Something of everything, good for two years, and instruments that stay in calibration as long.
    private async Task Stock()
    {
        var signe = await Client("signe");
        foreach (var item in (await signe.StockItems("mill")).Rows.Select(i => i.Said))
            await signe.ReceiveBatch(
                new(
                    "mill",
                    item.Code,
                    $"{item.Code} lot 1",
                    item.Expires ? Clock.Today.AddYears(2) : null,
                    "3.1 no. 4471",
                    "A1",
                    50_000
                )
            );
        foreach (var item in new[] { "BAND-30", "PUTTY-W" })
            await signe.ReceiveBatch(
                new("mill", item, $"{item} locker", Clock.Today.AddYears(1), "3.1 no. 4472", "N1", 10_000)
            );
        foreach (var tool in (await signe.Instruments("mill")).Rows)
            await signe.ChangeInstrument(
                tool.Id,
                tool.Said with
                {
                    CalibrationDue = Clock.Today.AddYears(2),
                },
                tool.Version
            );
    }

    public async ValueTask DisposeAsync()
    {
        await mill.DisposeAsync();
        Clock.Dispose();
    }
}
