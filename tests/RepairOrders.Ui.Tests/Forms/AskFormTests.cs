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
        var keeper = JSInterop.SetupModule("/_content/RepairOrders.Ui/drafts.js");
        keeper.Setup<Dictionary<string, string>?>("read", _ => true).SetResult(null);
        keeper.SetupVoid("keep", _ => true).SetVoidResult();
        keeper.SetupVoid("forget", _ => true).SetVoidResult();
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
}
