using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>
/// Somebody of the mill in a browser of his own. He fills the forms the way the contract names their fields, says in words what he
/// was refused, and is done with a step when the page in front of him shows its record.
/// </summary>
internal sealed class Person(CaseMill mill, string name, IPage page, Hand hand)
{
    /// <summary>In a form: a picture is taken here.</summary>
    public const string Picture = "a picture";

    public IPage Page => page;

    /// <summary>Opens an address; a session that has ended is begun again.</summary>
    public async Task Opens(string path)
    {
        await page.GotoAsync(new Uri(mill.Address, path).ToString());
        if (new Uri(page.Url).AbsolutePath == "/sign-in")
        {
            await hand.Write(page.Locator("#name"), name);
            await hand.Write(page.Locator("#password"), mill.PasswordOf(name));
            await hand.Press(page.Locator("button[type=submit]"));
            await page.WaitForURLAsync(new Regex($"{Regex.Escape(path)}$"));
        }
        await page.Live();
        await page.Settled();
    }

    /// <summary>Raises a request and says the number of its order.</summary>
    public async Task<string> Raises(object request)
    {
        await Opens("/raise");
        var form = page.Locator("form.ask");
        await Fills(form, request);
        await hand.Press(form.Locator("button[type=submit]"));
        await page.WaitForURLAsync("**/orders/mill-*");
        await page.Live();
        return new Uri(page.Url).Segments[^1];
    }

    /// <summary>Opens the order, does an action and signs it.</summary>
    public async Task Signs(string number, string action, object says)
    {
        var form = await Asked(number, action);
        await Fills(form, says);
        await SendsOff(number, form);
    }

    /// <summary>Opens the order and tries an action; says what stands at the fields and where the button is.</summary>
    public async Task<string> IsRefused(string number, string action, object says)
    {
        var form = await Asked(number, action);
        await Fills(form, says);
        await hand.Press(form.Locator("button[type=submit]"));
        var refusal = form.Locator(".refusal");
        await Assertions.Expect(refusal).ToBeVisibleAsync();
        return string.Join(" ", await form.Locator("[role=alert]").AllInnerTextsAsync());
    }

    /// <summary>Mends what was refused, in the form as it stands, and signs it.</summary>
    public async Task Corrects(string number, object says)
    {
        var form = page.Locator("#do form.ask").Last;
        await Fills(form, says);
        // What was refused is no longer what stands there, and the form says so.
        await Assertions.Expect(form.Locator("[role=alert]")).ToHaveCountAsync(0);
        await SendsOff(number, form);
    }

    /// <summary>Why a method is not his to pick, as its claim says it.</summary>
    public async Task<string> MayNotChoose(string number, string method)
    {
        var claim = (await Asked(number, "choose-method")).Locator($".claim:has(input[value='{method}'])");
        await Assertions.Expect(claim.Locator("input[name=method]")).ToBeDisabledAsync();
        return await claim.InnerTextAsync();
    }

    /// <summary>Why an action is not his now, as the order page says it.</summary>
    public async Task<string> MayNot(string number, string action)
    {
        await Opens($"/orders/{number}");
        var line = page.Locator($".maynot li:has([data-action='{action}'])");
        await Unfolds(line);
        await Assertions.Expect(line.Locator("button")).ToBeDisabledAsync();
        return await line.InnerTextAsync();
    }

    /// <summary>Picks a method out of the claims, with a reason, and says why not another.</summary>
    public async Task Chooses(string number, string method, string reason, string instead, string whyNot)
    {
        var form = await Asked(number, "choose-method");
        await hand.Choose(form.Locator($"input[name=method][value='{method}']"));
        await hand.Write(form.Locator($"#why-{instead}"), whyNot);
        await Fills(form, new { reason });
        await SendsOff(number, form);
    }

    /// <summary>Signs every hold point in turn with what it asks for, the witness beside him where one is called.</summary>
    public async Task Fits(string number, Guid? witness = null)
    {
        while (true)
        {
            var client = await mill.Client(name);
            var fitting = await client.Fitting(number);
            if (fitting.Points.FirstOrDefault(p => p.ReleasedAt is null) is not { Point: var point } state)
                return;
            await Asked(number, "release-hold-point");
            await Assertions.Expect(page.Locator(".step .title")).ToHaveTextAsync(point.Title);
            if (point.Evidence.Contains(Evidence.Photo))
                await Gains(number, () => hand.Photograph(page.Locator("#f-step-photo")));
            if (point.Evidence.Contains(Evidence.ClimateReading) || point.Evidence.Contains(Evidence.Mix))
                await Aside(
                    number,
                    "Read the climate",
                    new
                    {
                        air = "21",
                        humidityPercent = 50,
                        steel = "20 °C",
                        instrument = "HY-0077",
                    }
                );
            if (point.Evidence.Contains(Evidence.Mix))
            {
                await Aside(
                    number,
                    "Start a mix",
                    new
                    {
                        batch = (await client.AtThePipe(number))
                            .Batches.First(b => b.Limits?.PotLife is not null)
                            .Batch,
                        mixTemperature = "68 °F",
                    }
                );
                mill.Clock.Pass(TimeSpan.FromMinutes(5));
                await Gains(
                    number,
                    () => hand.Press(page.GetByRole(AriaRole.Button, new() { Name = "It is on the pipe" }))
                );
            }
            if (point.Evidence.Contains(Evidence.CureLog))
                await LetsSet(number);
            var form = page.Locator("section[aria-label=Sign] form");
            await Fills(form, Read(point, await mill.Design(number), state.AsksWitness ? witness : null));
            await SendsOff(number, form);
        }
    }

    // Readings more than two hours apart count for nothing.
    private async Task LetsSet(string number)
    {
        while ((await (await mill.Client(name)).Fitting(number)).Cures.Any(c => !c.SetForLoad))
        {
            mill.Clock.Pass(TimeSpan.FromMinutes(110));
            await Asked(number, "release-hold-point");
            await Aside(
                number,
                "Read the pipe temperature",
                new { readings = new[] { new { pipe = "20" } }, instrument = "ST-0220" }
            );
        }
    }

    /// <summary>What stands in the title block, the flags and the panel, as it is read.</summary>
    public async Task Sees(string number, params string[] words)
    {
        await Opens($"/orders/{number}");
        foreach (var word in words)
            await Assertions.Expect(page.Locator("main")).ToContainTextAsync(word);
    }

    private static JsonObject Read(HoldPointView point, MethodDesignView? design, Guid? witness)
    {
        var says = new JsonObject();
        foreach (var evidence in point.Evidence)
            switch (evidence)
            {
                case Evidence.ThicknessReadings:
                    says["walls"] = Json(new[] { new { wall = "6.5" }, new { wall = "6.4 mm" } });
                    says["instrument"] = "UT-0417";
                    break;
                case Evidence.DiameterReadings:
                    says["diameters"] = Json(
                        new[] { 168.4, 168.1 }.Select(d => new { diameter = d.ToString(CultureInfo.InvariantCulture) })
                    );
                    break;
                case Evidence.SurfaceGrade:
                    says["surface"] = Json(
                        new
                        {
                            grade = "st3",
                            profileUm = new[] { 58, 62, 60 },
                            saltMgM2 = 15,
                        }
                    );
                    break;
                case Evidence.TorqueReadings:
                    says["tightening"] = Json(Tightened(design));
                    says["instrument"] = "TW-0031";
                    break;
                case Evidence.HardnessReading:
                    says["shoreD"] = Json(new[] { 82, 84, 83 });
                    says["instrument"] = "HT-0009";
                    break;
            }
        if (witness is { } who)
            says["witness"] = Json(new { person = who, came = true });
        return says;
    }

    // Two passes over every fastener, the last one in the middle of the window; the rows stand there already.
    private static IEnumerable<object> Tightened(MethodDesignView? design)
    {
        var count = (int)(design?["clampBoltCount"] ?? design?["bandCount"] * (design?["fastenersPerBand"] ?? 1) ?? 1);
        var torque = (design?["torqueLeastNm"] + design?["torqueMostNm"]) / 2;
        var tension = (design?["bandTensionLowN"] + design?["bandTensionHighN"]) / 2;
        for (var i = 0; i < 2 * count; i++)
        {
            var reached = (torque ?? tension ?? 12) * (i < count ? 0.5 : 1);
            var text = reached.ToString("0.##", CultureInfo.InvariantCulture);
            yield return torque is null && tension is not null ? new { tension = text } : new { torque = text };
        }
    }

    private static JsonNode Json(object value) => JsonSerializer.SerializeToNode(value, RepairOrdersClient.Json)!;

    /// <summary>Fills a form of the page he is at and sends it.</summary>
    public async Task Sends(string heading, object says)
    {
        var form = page.Locator($"form[aria-label='{heading}']");
        await Fills(form, says);
        await hand.Press(form.Locator("button[type=submit]"));
    }

    // A form of the step that is signed before the step itself.
    private async Task Aside(string number, string heading, object says)
    {
        var form = page.Locator($"form[aria-label='{heading}']");
        await Fills(form, says);
        await SendsOff(number, form);
    }

    // The form of an action: open already where it waits for him, else he asks for it.
    private async Task<ILocator> Asked(string number, string action)
    {
        await Opens($"/orders/{number}");
        var open = page.Locator($"#do[data-action='{action}']");
        if (await open.CountAsync() == 0)
        {
            var asked = page.Locator($"#do .actions button[data-action='{action}']");
            if (await asked.CountAsync() == 0 || await asked.IsDisabledAsync())
                throw new InvalidOperationException(
                    $"{name} may not {action}: {string.Join(" ", await page.Locator("#do, .now").AllTextContentsAsync())}"
                );
            await hand.Press(asked);
        }
        await Assertions.Expect(open).ToBeVisibleAsync();
        await page.Settled();
        return open.Locator("form.ask").Last;
    }

    private async Task SendsOff(string number, ILocator form) =>
        await Gains(number, () => hand.Press(form.Locator("button[type=submit]")), form);

    // The sheaf in front of him has one record more; or he is told why not.
    private async Task Gains(string number, Func<Task> act, ILocator? form = null)
    {
        var sheaf = page.Locator("section[aria-label='The sheaf'] li");
        var before = await sheaf.CountAsync();
        await act();
        var no = (form ?? page.Locator("#do")).Locator("[role=alert]");
        await Assertions.Expect(sheaf.Nth(before).Or(no.First).First).ToBeAttachedAsync();
        if (await sheaf.CountAsync() == before)
            throw new InvalidOperationException(
                $"{name} was refused: {string.Join(" ", await no.AllInnerTextsAsync())}"
            );
        await page.Settled();
    }

    /// <summary>Writes what is said into the form, field by field.</summary>
    public async Task Fills(ILocator form, object says)
    {
        foreach (var (name, value) in Json(says).AsObject())
            await Fill(form, name, value);
    }

    private async Task Fill(ILocator form, string path, JsonNode? value)
    {
        switch (value)
        {
            case null:
                break;
            case JsonObject measure when measure["entered"] is { } entered:
                await Set(form, path, entered.ToString());
                break;
            case JsonObject group:
                foreach (var (name, inside) in group)
                    await Fill(form, $"{path}.{name}", inside);
                break;
            case JsonArray { Count: > 0 } rows when rows[0] is JsonObject:
                await Rows(form, path, rows.Count);
                for (var i = 0; i < rows.Count; i++)
                    await Fill(form, $"{path}[{i}]", rows[i]);
                break;
            case JsonArray several:
                await Several(form, path, [.. several.Select(s => s!.ToString())]);
                break;
            default:
                await Set(form, path, value.ToString());
                break;
        }
    }

    private async Task Rows(ILocator form, string path, int count)
    {
        var rows = form.Locator($"[data-path='{path}'] > fieldset.rows");
        await Unfolds(rows);
        for (var have = await rows.Locator("tbody tr").CountAsync(); have != count; )
        {
            await hand.Press(
                have < count ? rows.GetByText("Add a row") : rows.Locator($"[aria-label='Remove row {have}']")
            );
            have += have < count ? 1 : -1;
            await Assertions.Expect(rows.Locator("tbody tr")).ToHaveCountAsync(have);
        }
    }

    private async Task Several(ILocator form, string path, string[] values)
    {
        var place = form.Locator($"[data-path='{path}']");
        await Unfolds(place);
        if (await place.Locator("textarea").CountAsync() > 0)
            await hand.Write(place.Locator("textarea"), string.Join('\n', values));
        else
            foreach (var value in values)
                await hand.Tick(place.Locator($"input[value='{value}']"), true);
    }

    private async Task Set(ILocator form, string path, string text)
    {
        var place = form.Locator($"[data-path='{path}']");
        await Unfolds(place);
        var field = place.Locator("input, select, textarea").First;
        var kind = await field.EvaluateAsync<string>("e => e.tagName === 'INPUT' ? e.type : e.tagName.toLowerCase()");
        switch (kind)
        {
            case "select":
                await hand.Pick(field, text);
                break;
            case "checkbox":
                await hand.Tick(field, text == "true");
                break;
            case "file":
                await hand.Photograph(field);
                await Assertions.Expect(place.GetByText("on the order")).ToBeVisibleAsync();
                break;
            default:
                await hand.Write(field, text);
                break;
        }
    }

    /// <summary>Opens what a place is folded into, outermost first: what is inside cannot be reached before.</summary>
    public async Task Unfolds(ILocator place)
    {
        await place.First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        var folded = place.First.Locator("xpath=ancestor-or-self::*/ancestor::details[not(@open)]");
        while (await folded.CountAsync() is > 0 and var count)
        {
            await hand.Press(folded.First.Locator("xpath=./summary"));
            await Assertions.Expect(folded).Not.ToHaveCountAsync(count);
        }
        var inside = place.First.Locator("xpath=./details[not(@open)]");
        if (await inside.CountAsync() > 0)
            await hand.Press(inside.Locator("xpath=./summary"));
    }
}
