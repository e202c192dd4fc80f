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

    /// <summary>Brings the store's schema up to date, then ends.</summary>
    Migrate,

    /// <summary>Loads the demo into an empty store, then ends.</summary>
    Demo,
}

internal static class RunModes
{
    /// <summary>Reads the setting; an unknown word stops the program with a sentence.</summary>
    public static RunMode Read(IConfiguration settings)
    {
        var word = settings["Run"] ?? "both";
        return Enum.TryParse<RunMode>(word, ignoreCase: true, out var mode) && Enum.IsDefined(mode)
            ? mode
            : throw new InvalidOperationException(
                $"Run is \"{word}\"; allowed is one of {string.Join(", ", Enum.GetNames<RunMode>()).ToLowerInvariant()}."
            );
    }
}
