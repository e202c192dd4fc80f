using Bunit;
using Microsoft.AspNetCore.Components;
using RepairOrders.Contract;
using RepairOrders.Ui.Forms;

namespace RepairOrders.Ui.Tests.Forms;

public sealed class AskFormTests : BunitContext
{
    private readonly List<ApproveOrder> sent = [];

    public AskFormTests()
    {
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Setup<Dictionary<string, string>?>("drafts.read", _ => true).SetResult(null);
        JSInterop.SetupVoid("drafts.keep", _ => true).SetVoidResult();
        JSInterop.SetupVoid("drafts.forget", _ => true).SetVoidResult();
    }

    private IRenderedComponent<AskForm<ApproveOrder>> Form(
        Func<ApproveOrder, string, Task>? send = null,
        ObjectionView? no = null
    ) =>
        Render<AskForm<ApproveOrder>>(form =>
            form.Add(f => f.DraftName, "mill-17 approve-order")
                .Add(f => f.Heading, "Approve")
                .Add(f => f.Button, "Sign the approval")
                .Add(f => f.Hidden, ["fingerprint"])
                .Add(f => f.Known, new ApproveOrder(new string('a', 64), ApprovalCapacity.Engineer))
                .Add(f => f.Objection, no)
                .Add(
                    f => f.OnSend,
                    send
                        ?? (
                            (ask, _) =>
                            {
                                sent.Add(ask);
                                return Task.CompletedTask;
                            }
                        )
                )
        );

    [Fact]
    public void It_draws_the_contracts_fields_and_not_the_hidden_ones()
    {
        var form = Form();
        form.Find("#f-as").TagName.ShouldBe("SELECT");
        form.Find("#f-remark").TagName.ShouldBe("TEXTAREA");
        form.FindAll("#f-fingerprint").ShouldBeEmpty();
    }

    [Fact]
    public void What_is_typed_is_sent_as_the_ask()
    {
        var form = Form();
        form.Find("#f-remark").Input("looked at the drawing");
        form.Find("form").Submit();
        sent.Single()
            .ShouldBe(new ApproveOrder(new string('a', 64), ApprovalCapacity.Engineer, "looked at the drawing"));
    }

    [Fact]
    public void The_services_no_stands_where_the_button_is_and_what_was_typed_stays()
    {
        var form = Form(
            (_, _) =>
                throw new Refused(
                    409,
                    "own-request",
                    "You raised this request.",
                    "another supervisor",
                    new Dictionary<string, string[]>(),
                    null
                )
        );
        form.Find("#f-remark").Input("mine");
        form.Find("form").Submit();
        form.Find(".refusal").TextContent.ShouldContain("You raised this request.");
        form.Find(".refusal").TextContent.ShouldContain("another supervisor");
        form.Find("#f-remark").GetAttribute("value").ShouldBe("mine");
    }

    [Fact]
    public void A_malformed_field_is_named_at_the_field()
    {
        var form = Form(
            (_, _) =>
                throw new Refused(
                    400,
                    "malformed",
                    "",
                    null,
                    new Dictionary<string, string[]> { ["remark"] = ["remark is too long."] },
                    null
                )
        );
        form.Find("form").Submit();
        form.Find(".field.wrong .error").TextContent.ShouldContain("remark is too long.");
    }

    [Fact]
    public void An_objection_greys_the_button_and_says_why()
    {
        var form = Form(no: new ObjectionView("own-request", "You raised this request.", "another supervisor"));
        form.Find("button[type=submit]").HasAttribute("disabled").ShouldBeTrue();
        form.Markup.ShouldContain("It can be cleared by: another supervisor.");
    }

    [Fact]
    public void A_second_tick_does_not_undo_the_first()
    {
        var (tove, anton) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var form = Render<AskForm<ReadyOrder>>(f =>
            f.Add(x => x.DraftName, "mill-17 ready-order")
                .Add(x => x.Heading, "Ready the job")
                .Add(x => x.Button, "Sign the job ready")
                .Add(
                    x => x.Options,
                    new Choices { ["fitters"] = [new($"{tove}", "Tove Aune"), new($"{anton}", "Anton Reyes")] }
                )
                .Add(x => x.OnSend, (_, _) => Task.CompletedTask)
        );
        form.Find($"input[value='{tove}']").Change(true);
        form.Find($"input[value='{anton}']").Change(true);
        form.Find($"input[value='{tove}']").HasAttribute("checked").ShouldBeTrue();
        form.Find($"input[value='{anton}']").HasAttribute("checked").ShouldBeTrue();
    }

    [Fact]
    public void A_moment_that_was_filled_in_and_left_alone_keeps_its_seconds()
    {
        var fields = FieldPlan.Of(typeof(GasTest));
        var at = new DateTimeOffset(2026, 3, 2, 6, 30, 42, TimeSpan.Zero);
        var draft = new Draft();
        draft.Fill(new GasTest(at, "Olaf Brekke", 0, 20.9, null, true), fields);
        draft["at"].ShouldBe("2026-03-02T06:30");
        draft.ToJson(fields, new Dictionary<string, string>())["at"]!.GetValue<DateTimeOffset>().ShouldBe(at);
        draft["at"] = "2026-03-02T06:31";
        draft.ToJson(fields, new Dictionary<string, string>())["at"]!
            .GetValue<DateTimeOffset>()
            .ShouldBe(new DateTimeOffset(2026, 3, 2, 6, 31, 0, TimeSpan.Zero));
    }
}
