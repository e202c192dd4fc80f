using Bunit;
using RepairOrders.Ui.WhatIf;

namespace RepairOrders.Ui.Tests.WhatIf;

public sealed class WhatIfFieldTests : BunitContext
{
    private const string Path = "pipe.outsideDiameterMm";
    private readonly Inquiry inquiry = new(Subjects.Find("wall-thickness")!);

    private IRenderedComponent<WhatIfField> Field() =>
        Render<WhatIfField>(field =>
            field
                .Add(
                    f => f.Field,
                    inquiry.Fields.Single(f => f.Name == "pipe").Columns.Single(f => f.Name == "outsideDiameterMm")
                )
                .Add(f => f.Path, Path)
                .Add(f => f.Inquiry, inquiry)
                .Add(f => f.Changed, _ => Task.CompletedTask)
        );

    [Fact]
    public void A_unit_typed_behind_the_number_is_not_taken_from_the_hand()
    {
        var field = Field();
        foreach (var typed in new[] { "8", "8.", "8.6", "8.6 ", "8.6 i", "8.6 in" })
        {
            field.Find("input").Input(typed);
            field.Find("input").GetAttribute("value").ShouldBe(typed);
        }
        inquiry.Draft[Path].ShouldBe("8.6 in");
        field.Find("select").Change("mm");
        field.Find("input").GetAttribute("value").ShouldBe("218.44");
    }
}
