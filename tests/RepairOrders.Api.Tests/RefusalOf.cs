using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>A refusal forced over HTTP: 409, its code, a sentence for the person and who can clear it.</summary>
internal static class RefusalOf
{
    /// <summary>The same where the call is still to be made.</summary>
    public static Task<Refused> Refuses(string code, Func<Task> call) => call().ShouldBeRefused(code);

    public static async Task<Refused> ShouldBeRefused(this Task ask, string code)
    {
        var no = await Should.ThrowAsync<Refused>(() => ask);
        no.Code.ShouldBe(code, no.Message);
        no.Status.ShouldBe(409);
        no.Message.Length.ShouldBeGreaterThan(20);
        no.Clears.ShouldNotBeNullOrWhiteSpace();
        return no;
    }
}
