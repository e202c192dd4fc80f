using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>The drawing of an order and its bill of material mark each other.</summary>
public sealed class Drawing(Service service)
{
    [Fact]
    public async Task A_part_pointed_at_marks_its_line_and_a_line_reached_marks_its_part()
    {
        var page = await service.SignIn(service.Both, "ines");
        await page.Open($"/orders/{await AnOrder.Sized(service)}");
        var line = page.Locator(".drawing li[data-part=band]");
        var other = page.Locator(".drawing li[data-part=putty]");
        await Assertions.Expect(line).ToHaveCSSAsync("outline-style", "none");

        var at = await page.EvaluateAsync<double[]>(OnTop, "band");
        await page.Mouse.MoveAsync((float)at[0], (float)at[1]);
        await Assertions.Expect(line).ToHaveCSSAsync("outline-style", "solid");
        await Assertions.Expect(other).ToHaveCSSAsync("outline-style", "none");

        await page.Mouse.MoveAsync(0, 0);
        await line.FocusAsync();
        await Assertions
            .Expect(page.Locator(".drawing svg path[data-part=band]").First)
            .ToHaveCSSAsync("stroke-width", "1.2px");
    }

    // A point of the part's outline that nothing covers, in the middle of the window.
    private const string OnTop = """
        part => {
          for (const path of document.querySelectorAll(`.drawing svg path[data-part=${part}]`)) {
            path.scrollIntoView({ block: "center" });
            const box = path.getBoundingClientRect();
            for (let i = 1; i < 12; i++)
              for (let j = 1; j < 12; j++) {
                const at = [box.left + (box.width * i) / 12, box.top + (box.height * j) / 12];
                if (document.elementFromPoint(...at)?.closest("[data-part]")?.dataset.part === part) return at;
              }
          }
          throw new Error(`no point of ${part} lies open`);
        }
        """;
}
