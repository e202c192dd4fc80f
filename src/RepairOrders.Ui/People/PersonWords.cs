using RepairOrders.Contract;
using RepairOrders.Ui.Forms;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.People;

/// <summary>Roles and competences in words, and what runs out before long.</summary>
internal static class PersonWords
{
    private const int SoonDays = 30;

    public static IReadOnlyList<KeyValuePair<string, string>> Roles { get; } =
    [
        .. Enum.GetValues<Role>()
            .Select(r => KeyValuePair.Create(FieldPlan.Wire(typeof(Role), r.ToString()), Show.Words(r))),
    ];

    public static IReadOnlyList<KeyValuePair<string, string>> Kinds { get; } =
    [.. Competences.All.Select(c => KeyValuePair.Create(c, Kind(c)))];

    /// <summary><c>operations-in-charge</c> is "operations in charge".</summary>
    public static string Kind(string code) => code.Replace('-', ' ');

    /// <summary>Competences in one line; those with the same last day share it.</summary>
    public static string Held(IEnumerable<HeldCompetence> held, DateOnly today) =>
        string.Join(
            "; ",
            held.Where(c => c.ValidUntil >= today)
                .GroupBy(c => c.ValidUntil)
                .OrderBy(g => g.Key)
                .Select(g => $"{string.Join(", ", g.Select(c => Kind(c.Kind)))} until {Show.Day(g.Key)}")
        );

    public static IEnumerable<(string Words, Tone Tone)> Mind(
        IEnumerable<HeldCompetence> held,
        OutsideAuthority? outside,
        DateOnly today
    )
    {
        foreach (var gone in held.Where(c => c.ValidUntil < today))
            yield return ($"{Kind(gone.Kind)} ended {Show.Day(gone.ValidUntil)}", Tone.Stop);
        foreach (var soon in held.Where(c => c.ValidUntil >= today && c.ValidUntil <= today.AddDays(SoonDays)))
            yield return (
                $"{Kind(soon.Kind)} ends {Show.DaysLeft(soon.ValidUntil.DayNumber - today.DayNumber)}",
                Tone.Watch
            );
        if (outside is not null)
            yield return outside.Until < today
                ? ($"outside authority ended {Show.Day(outside.Until)}", Tone.Stop)
                : ($"outside signer until {Show.Day(outside.Until)}: {outside.Scope}", Tone.Watch);
    }
}
