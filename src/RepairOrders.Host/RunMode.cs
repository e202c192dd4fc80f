using System.Text.RegularExpressions;

namespace RepairOrders.Host;

/// <summary>What this process is: the setting <c>Run</c>.</summary>
internal enum RunMode
{
    /// <summary>API and screens in one process.</summary>
    Both,

    /// <summary>The API alone.</summary>
    Api,

    /// <summary>The screens alone; they call the API at <c>Api:Address</c>.</summary>
    Ui,

    /// <summary>Brings the store's schema up to date, sets the rights of <c>Store:ServiceRole</c>, then ends.</summary>
    Migrate,

    /// <summary>Prints a one-time link that makes the first administrator of an empty store, then ends.</summary>
    FirstAdministrator,

    /// <summary>Verifies every history in the store, names each broken entry, then ends: with 1 if there was one.</summary>
    Verify,

    /// <summary>Loads the demo into an empty store, then ends.</summary>
    Demo,
}

internal static partial class RunModes
{
    private static readonly Dictionary<string, RunMode> Words = Enum.GetValues<RunMode>().ToDictionary(Word);

    /// <summary>Reads the setting; an unknown word stops the program with a sentence.</summary>
    public static RunMode Read(IConfiguration settings)
    {
        var word = settings["Run"] ?? "both";
        return Words.TryGetValue(word.ToLowerInvariant(), out var mode)
            ? mode
            : throw new InvalidOperationException(
                $"Run is \"{word}\"; allowed is one of {string.Join(", ", Words.Keys)}."
            );
    }

    /// <summary>Whether the process serves until it is stopped; the others do one thing and end.</summary>
    public static bool Serves(this RunMode mode) => mode is RunMode.Both or RunMode.Api or RunMode.Ui;

    private static string Word(RunMode mode) =>
        Hump().Replace(mode.ToString(), hump => (hump.Index > 0 ? "-" : "") + hump.Value.ToLowerInvariant());

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Hump();
}
