namespace RepairOrders.Engineering.Methods;

/// <summary>How far a statement can be relied on.</summary>
public enum Provenance
{
    /// <summary>Seen in the named public source.</summary>
    Published,

    /// <summary>Recalled from the named document; to be checked against the current edition before it is relied on.</summary>
    FromMemory,

    /// <summary>Derived or computed here from first principles.</summary>
    Derived,

    /// <summary>Common practice of the trade, no source.</summary>
    CommonPractice,

    /// <summary>A rule of our own; a site may change it.</summary>
    OwnRule,

    /// <summary>Entered by a person with an attached calculation.</summary>
    Entered,
}

/// <summary>Where a formula, a limit or a value comes from.</summary>
/// <param name="Document">The standard, paper or table, with its edition where known.</param>
/// <param name="Paragraph">The clause, equation or table number; empty when the document has none.</param>
/// <param name="Provenance">How far the statement can be relied on.</param>
public sealed record Clause(string Document, string Paragraph, Provenance Provenance = Provenance.Published)
{
    /// <summary>A fact of the trade that no source was found for.</summary>
    public static readonly Clause CommonPractice = new("common practice, no source", "", Provenance.CommonPractice);

    /// <summary>A value taken because nobody measured one.</summary>
    /// <param name="why">Why this value is on the safe side.</param>
    /// <returns>The clause, marked as a rule of our own.</returns>
    public static Clause Default(string why) => new($"default, not measured: {why}", "", Provenance.OwnRule);

    /// <summary>The clause as it is printed on screen and paper.</summary>
    /// <returns>Document, paragraph and, where it is not published, the provenance in words.</returns>
    public override string ToString()
    {
        var place = Paragraph.Length == 0 ? Document : $"{Document}, {Paragraph}";
        return Provenance switch
        {
            Provenance.FromMemory => $"{place} (from memory)",
            Provenance.Derived => $"{place} (derived here)",
            Provenance.OwnRule => $"{place} (own rule)",
            Provenance.Entered => $"{place} (entered)",
            _ => place,
        };
    }
}
