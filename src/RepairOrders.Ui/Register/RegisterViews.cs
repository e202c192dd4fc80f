using RepairOrders.Contract;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.Register;

/// <summary>The views everybody has, and the words of the register's filters.</summary>
internal static class RegisterViews
{
    /// <summary>Name and filter of each view, as it stands in the address.</summary>
    public static IReadOnlyList<(string Name, string Query)> Given { get; } =
    [
        ("under way or on the pipe", ""),
        ("by end date", "?sort=EndDate"),
        ("past life", "?flag=past-life"),
        ("looks overdue", "?flag=look-overdue&sort=NextLook"),
        ("looks by day", "?stage=InService&sort=NextLook"),
        ("leaking", "?flag=leaking"),
        ("approval owed", "?flag=approval-owed"),
        ("everything there ever was", "?ended=True"),
    ];

    public static IReadOnlyList<(string, string)> Stages { get; } =
    [.. Enum.GetValues<Stage>().Select(s => (s.ToString(), Show.Words(s).ToLowerInvariant()))];

    public static IReadOnlyList<(string, string)> Classes { get; } =
    [.. Enum.GetValues<RiskClass>().Select(c => (c.ToString(), c.ToString()))];

    public static IReadOnlyList<(string, string)> FlagWords { get; } = [.. Flags.All.Select(f => (f, Words(f)))];

    private static string Words(string code) =>
        code == Flags.ReassessmentOwed ? "re-assessment owed" : code.Replace('-', ' ');
}
