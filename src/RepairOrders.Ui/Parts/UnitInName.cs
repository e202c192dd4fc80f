namespace RepairOrders.Ui.Parts;

/// <summary>The contract puts the unit of a plain number at the end of its name; a reader wants it behind the figure.</summary>
internal static class UnitInName
{
    // The longer ends first: "BarAbs" is no "Abs" of anything.
    private static readonly (string End, string Unit)[] Ends =
    [
        ("MmPerYear", "mm/y"),
        ("BarAbs", "bar abs"),
        ("KgM3", "kg/m³"),
        ("MpaS", "mPa·s"),
        ("KjMol", "kJ/mol"),
        ("GMol", "g/mol"),
        ("KgH", "kg/h"),
        ("LMin", "l/min"),
        ("Percent", "%"),
        ("Hours", "h"),
        ("Days", "d"),
        ("Min", "min"),
        ("Mm2", "mm²"),
        ("Cm3", "cm³"),
        ("Mpa", "MPa"),
        ("Ppm", "ppm"),
        ("Bar", "bar"),
        ("Mm", "mm"),
        ("Um", "µm"),
        ("Kn", "kN"),
        ("Nm", "N m"),
        ("Kg", "kg"),
        ("Kj", "kJ"),
        ("M3", "m³"),
        ("C", "°C"),
        ("K", "K"),
        ("H", "h"),
        ("S", "s"),
        ("M", "m"),
        ("T", "t"),
        ("N", "N"),
    ];

    /// <summary>The name without its unit, and the unit; nothing where the name carries none.</summary>
    public static (string Stem, string Unit)? Of(string name)
    {
        foreach (var (end, unit) in Ends)
            if (
                name.EndsWith(end, StringComparison.Ordinal)
                && name.Length > end.Length
                && char.IsLower(name[^(end.Length + 1)])
            )
                return (name[..^end.Length], unit);
        return null;
    }
}
