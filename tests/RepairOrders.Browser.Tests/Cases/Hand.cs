using System.Globalization;
using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>How a person works a page. With a mouse or a finger, unless it is said otherwise.</summary>
internal class Hand(IPage page)
{
    protected IPage Page => page;

    /// <summary>A button, a link or the line of something folded.</summary>
    public virtual Task Press(ILocator what) => what.ClickAsync();

    /// <summary>Writes into a field in place of what stands there.</summary>
    public virtual Task Write(ILocator field, string text) => field.FillAsync(text);

    public virtual Task Pick(ILocator list, string value) => list.SelectOptionAsync(value);

    public virtual Task Tick(ILocator box, bool on) => box.SetCheckedAsync(on);

    /// <summary>One of several.</summary>
    public virtual Task Choose(ILocator one) => one.CheckAsync();

    /// <summary>Takes a picture into a field.</summary>
    public virtual Task Photograph(ILocator field) => field.SetInputFilesAsync(AtThePipe.APipe.Photograph);
}

/// <summary>
/// A person who has only a keyboard: he goes from field to field with the tab key, and whatever he cannot reach so he cannot use.
/// </summary>
internal sealed class Keyboard : Hand
{
    private TaskCompletionSource<IFileChooser> asked = new();

    // Listened to from the beginning: the browser hands its chooser over only once it has been told to.
    public Keyboard(IPage page)
        : base(page) => page.FileChooser += (_, chooser) => asked.TrySetResult(chooser);

    // More stops than any page has.
    private const int MostStops = 600;

    public override async Task Press(ILocator what)
    {
        await Reach(what);
        await Page.Keyboard.PressAsync("Enter");
    }

    public override async Task Write(ILocator field, string text)
    {
        await Reach(field);
        var type = await field.GetAttributeAsync("type");
        if (type is "date" or "datetime-local")
        {
            await TypeMoment(text);
        }
        else
        {
            await Page.Keyboard.PressAsync("Control+A");
            await Page.Keyboard.TypeAsync(text);
        }
        await Assertions.Expect(field).ToHaveValueAsync(text);
    }

    public override async Task Pick(ILocator list, string value)
    {
        // What is offered may come after the field.
        await Assertions.Expect(list.Locator($"option[value='{value}']")).ToHaveCountAsync(1);
        await Reach(list);
        await Page.Keyboard.PressAsync("Home");
        while (await list.InputValueAsync() != value)
        {
            var before = await list.InputValueAsync();
            await Page.Keyboard.PressAsync("ArrowDown");
            await Assertions.Expect(list).Not.ToHaveValueAsync(before);
        }
    }

    public override async Task Tick(ILocator box, bool on)
    {
        await Reach(box);
        if (await box.IsCheckedAsync() != on)
            await Page.Keyboard.PressAsync("Space");
        await Assertions.Expect(box).ToBeCheckedAsync(new() { Checked = on });
    }

    // The tab key stops once in a group of buttons; the arrows go on from there.
    public override async Task Choose(ILocator one)
    {
        var name = await one.GetAttributeAsync("name");
        await Reach(Page.Locator($"input[type=radio][name='{name}']"));
        await Page.Keyboard.PressAsync("Space");
        for (var i = 0; i < MostStops && !await one.EvaluateAsync<bool>("e => e === document.activeElement"); i++)
            await Page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(one).ToBeCheckedAsync();
    }

    public override async Task Photograph(ILocator field)
    {
        await Reach(field);
        asked = new();
        await Page.Keyboard.PressAsync("Enter");
        var chooser = await asked.Task.WaitAsync(TimeSpan.FromMinutes(1));
        await chooser.SetFilesAsync(AtThePipe.APipe.Photograph);
    }

    // Forwards first, as a person goes on in a form; round the page where it lies behind.
    private async Task Reach(ILocator what)
    {
        await what.First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        for (var i = 0; i < MostStops; i++)
        {
            if (await what.EvaluateAllAsync<bool>("all => all.includes(document.activeElement)"))
                return;
            await Page.Keyboard.PressAsync("Tab");
        }
        throw new InvalidOperationException($"The tab key never stops at {what}.");
    }

    // Month, day and year, then the hour of twelve, as the browser's own field takes them in.
    private async Task TypeMoment(string text)
    {
        var at = DateTime.Parse(text, CultureInfo.InvariantCulture);
        await Page.Keyboard.TypeAsync(at.ToString("MMddyyyy", CultureInfo.InvariantCulture));
        if (!text.Contains('T', StringComparison.Ordinal))
            return;
        await Page.Keyboard.PressAsync("ArrowRight");
        await Page.Keyboard.TypeAsync(at.ToString("hhmmtt", CultureInfo.InvariantCulture));
    }
}
