using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.People;

/// <summary>People who sign in for real, with a password, each from an address of his own.</summary>
internal static class SignedIn
{
    public const string Password = "seven herons at low tide";
    private static int addresses;

    /// <summary>A client nobody is signed in on, at an address of its own.</summary>
    public static RepairOrdersClient Device(this Scene scene)
    {
        var http = scene.Workshop.Http(scene.Clock);
        var n = Interlocked.Increment(ref addresses);
        http.DefaultRequestHeaders.Add("X-Forwarded-For", $"10.77.{n / 250}.{n % 250 + 1}");
        return new RepairOrdersClient(http);
    }

    public static string NameOf(this Scene scene, string name) => $"{name}.{scene.Site}";

    /// <summary>Signs in with a password of his own, set the way people get one.</summary>
    public static async Task<RepairOrdersClient> SignIn(this Scene scene, string name)
    {
        const string OneTime = "one time and no more";
        await scene.Ada.SetOneTimePassword(scene.NameOf(name), new SetOneTimePassword(OneTime));
        var client = scene.Device();
        await client.SignIn(new SignIn(scene.NameOf(name), OneTime, "desk in the shift office"));
        await client.ChangePassword(new ChangePassword(OneTime, Password));
        return client;
    }

    public static SignIn Right(this Scene scene, string name) => new(scene.NameOf(name), Password);

    public static SignIn Wrong(this Scene scene, string name) => new(scene.NameOf(name), "not the right one at all");
}
