using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.Tests.Orders;

/// <summary>Every panel, drawn on an order that has what it needs.</summary>
public sealed partial class Sampler : BunitContext
{
    private readonly CannedService service = new();

    public Sampler()
    {
        JSInterop.Setup<Dictionary<string, string>?>("drafts.read", _ => true).SetResult(null);
        JSInterop.SetupVoid("drafts.keep", _ => true).SetVoidResult();
        JSInterop.SetupVoid("drafts.forget", _ => true).SetVoidResult();
        JSInterop.Mode = JSRuntimeMode.Loose;
        this.AddAuthorization().SetAuthorized("Ines Duarte");
        Services.AddSingleton<IHttpClientFactory>(service);
        Services.AddSingleton<TimeProvider>(new StoppedClock(CannedOrder.At));
        Services.AddSingleton<IConfiguration>(
            new ConfigurationBuilder()
                .AddInMemoryCollection(new Dictionary<string, string?> { ["Api:Address"] = "http://canned/" })
                .Build()
        );
        Services.AddSingleton<IServer, NoServer>();
        Services.AddScoped<ApiAddress>();
        Services.AddScoped<ApiConnection>();
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
    }

    public static TheoryData<string> Actions => [.. StepPanels.Actions];

    private IRenderedComponent<IComponent> Open(string action)
    {
        var desk = new OrderDesk(
            Services.GetRequiredService<ApiConnection>(),
            new MeView(CannedOrder.Me, "ines", "Ines Duarte", [Role.IntegrityEngineer], ["mill"], []),
            new SiteView(Guid.Empty, "mill", new SiteDetails("Board mill", "Europe/Oslo", []), "1")
        );
        var step = StepPanels.For(action)!;
        var view = new ActionView("step", action, "Do it", null);
        var parameters = new Dictionary<string, object>(step.Parameters)
        {
            [nameof(StepPanel.Sheet)] = CannedOrder.Sheet(view),
            [nameof(StepPanel.Action)] = view,
            [nameof(StepPanel.Done)] = EventCallback.Factory.Create(this, () => { }),
        };
        return Render(page =>
        {
            page.OpenComponent<CascadingValue<OrderDesk>>(0);
            page.AddAttribute(1, "Value", desk);
            page.AddAttribute(
                2,
                "ChildContent",
                (RenderFragment)(
                    inside =>
                    {
                        inside.OpenComponent(0, step.Type);
                        inside.AddMultipleAttributes(1, parameters!);
                        inside.CloseComponent();
                    }
                )
            );
            page.CloseComponent();
        });
    }

    [Theory]
    [MemberData(nameof(Actions))]
    public void Every_panel_opens_with_a_button_and_every_field_has_a_label(string action)
    {
        var panel = Open(action);
        panel.WaitForAssertion(() => panel.FindAll("form.ask button[type=submit]").ShouldNotBeEmpty(), Patience);
        foreach (var field in panel.FindAll("input, select, textarea"))
            (
                field.HasAttribute("aria-label")
                || field.Closest("label") is not null
                || panel.FindAll("label").Any(l => l.GetAttribute("for") == field.Id)
            ).ShouldBeTrue($"{action}: {field.OuterHtml}");
        panel
            .FindAll("[id]")
            .GroupBy(e => e.ParentElement?.Closest("form")?.GetAttribute("aria-label") + e.Id)
            .Where(g => g.Count() > 1)
            .Select(g => g.Key)
            .ShouldBeEmpty();
    }

    [Fact]
    public void Every_action_of_the_procedure_has_its_panel() =>
        Asked()
            .Matches(File.ReadAllText(NextActions()))
            .Select(m => m.Groups[1].Value)
            .Except(StepPanels.Actions)
            .ShouldBeEmpty();

    [Fact]
    public void Sizing_shows_its_result_while_the_inputs_change_and_what_changed()
    {
        var panel = Open("size-repair");
        panel.WaitForAssertion(() => panel.Find(".result").TextContent.ShouldContain("can be signed"), Patience);
        panel.Find("#f-values-pressureBar").GetAttribute("value").ShouldBe("6");
        panel.Find(".result").TextContent.ShouldContain("Changed against the signed design");
        panel.Find(".result").TextContent.ShouldContain("2026-06-12");
    }

    [Fact]
    public void Reasons_against_a_method_are_kept_with_the_draft_and_put_back()
    {
        JSInterop
            .Setup<Dictionary<string, string>?>("drafts.read", "mill-17 choose-method")
            .SetResult(new() { ["method"] = "banded-patch", ["whyNot.plug"] = "the wall is too thin to tap" });
        var panel = Open("choose-method");
        panel.WaitForAssertion(() => panel.Find(".kept"), Patience);
        panel.FindAll("button").First(b => b.TextContent == "Put it back").Click();
        panel.Find("#why-plug").GetAttribute("value").ShouldBe("the wall is too thin to tap");
        panel.Find("[data-path='whyNot.plug'] textarea").Input("no thread holds in it");
        panel.Find("#why-plug").GetAttribute("value").ShouldBe("no thread holds in it");
        panel.Find("[data-path=method] input[value=banded-patch]").HasAttribute("checked").ShouldBeTrue();
    }

    [Fact]
    public void Issuing_sends_the_pick_list_as_it_stands()
    {
        var panel = Open("issue-material");
        panel.WaitForAssertion(() => panel.Find("#f-receiver"), Patience);
        panel.Find("#f-receiver").Change(CannedOrder.Me.ToString());
        panel.Find("form").Submit();
        panel.WaitForAssertion(() => service.Written.ShouldBe(["POST material-issues"]), Patience);
    }

    [Fact]
    public void A_hold_point_asks_for_its_evidence_and_says_which_step_it_is()
    {
        var panel = Open("release-hold-point");
        panel.WaitForAssertion(() => panel.Find(".step").TextContent.ShouldContain("Step 1 of 1"), Patience);
        panel.FindAll("section.evidence").Count.ShouldBe(5);
        panel.Find("input[aria-label='Torque, row 10']").ShouldNotBeNull("five bands, two passes");
    }

    [Fact]
    public void A_witness_the_class_calls_for_is_asked_for_in_the_open_and_missed()
    {
        var panel = Open("release-hold-point");
        panel.WaitForAssertion(() => panel.Find("#f-witness-person"), Patience);
        panel.Find("[data-path=witness]").Closest("details").ShouldBeNull();
        panel.Find("section.sign form").Submit();
        panel.Find("[data-path='witness.person'] .error").TextContent.ShouldContain("Person is missing");
        service.Written.ShouldBeEmpty();
    }

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private sealed class NoServer : IServer
    {
        public IFeatureCollection Features { get; } = new FeatureCollection();

        public Task StartAsync<T>(IHttpApplication<T> application, CancellationToken cancellationToken)
            where T : notnull => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public void Dispose() { }
    }

    private static string NextActions([CallerFilePath] string here = "") =>
        Path.Combine(
            Path.GetDirectoryName(here)!,
            "..",
            "..",
            "..",
            "src",
            "RepairOrders.Api",
            "OrderSheets",
            "NextActions.cs"
        );

    // An ask names its step, its action and its words in this order.
    [GeneratedRegex("Ask\\(\\s*\"[a-z-]+\",\\s*\"([a-z-]+)\"")]
    private static partial Regex Asked();
}
