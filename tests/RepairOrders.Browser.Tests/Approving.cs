using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests;

/// <summary>Supervisor and engineer approve a class C design, each in a browser of his own, in one process and in two.</summary>
public sealed class Approving(Service service)
{
    [Theory]
    [InlineData(true, 1440)]
    [InlineData(true, 390)]
    [InlineData(false, 1440)]
    [InlineData(false, 390)]
    public async Task Two_people_sign_and_the_order_is_approved(bool both, int width)
    {
        var number = await AnOrder.Sized(service);
        var at = both ? service.Both : service.Split;
        await Sign(await service.SignIn(at, "mara", width), number, "supervisor", "Mara Lindqvist");
        var reader = await service.Client("henrik");
        (await reader.Order(number)).Title.Stage.ShouldBe(Stage.Sized, "one of two has signed");

        var pavel = await service.SignIn(at, "pavel", width);
        await Sign(pavel, number, "engineer", "Pavel Horak");
        (await reader.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public async Task A_storekeeper_is_not_asked_to_sign()
    {
        var number = await AnOrder.Sized(service);
        var page = await service.SignIn(service.Both, "signe");
        await page.Open($"/orders/{number}");
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync("cooling water");
        await Assertions.Expect(page.Locator("text=Sign the approval")).ToHaveCountAsync(0);
    }

    private static async Task Sign(IPage page, string number, string capacity, string signer)
    {
        await page.Open($"/orders/{number}");
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync("cooling water");
        await page.SelectOptionAsync("#f-as", capacity);
        await page.ClickAsync("text=Sign the approval");
        // The page shows what was signed, and asks for nothing more.
        await Assertions.Expect(page.Locator("section[aria-label='The sheaf']")).ToContainTextAsync(signer);
        await Assertions.Expect(page.Locator("text=Sign the approval")).ToHaveCountAsync(0);
    }
}
