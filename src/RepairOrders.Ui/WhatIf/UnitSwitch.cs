using System.Globalization;
using RepairOrders.Contract;

namespace RepairOrders.Ui.WhatIf;

/// <summary>The two units a field may be typed in: the contract's own and the customary one.</summary>
internal static class UnitSwitch
{
    private static readonly Dictionary<string, string> Customary = new()
    {
        ["mm"] = "in",
        ["m"] = "ft",
        ["bar"] = "psi",
        ["MPa"] = "ksi",
        ["°C"] = "°F",
        ["kN"] = "lbf",
        ["N"] = "lbf",
        ["N m"] = "lbf ft",
        ["kg"] = "lb",
        ["g"] = "lb",
    };

    /// <summary>The customary unit of a field's own; nothing where both worlds use the same.</summary>
    public static string? Other(string unit) => Customary.GetValueOrDefault(unit);

    /// <summary>A text as typed, in number and unit.</summary>
    public static (string Number, string Unit) Parts(string typed, string own)
    {
        var text = typed.Trim();
        var at = text.Length;
        while (at > 0 && !char.IsAsciiDigit(text[at - 1]) && text[at - 1] is not ('.' or ','))
            at--;
        var unit = text[at..].Trim();
        return at == 0 ? (text, own) : (text[..at].Trim(), unit.Length == 0 ? own : unit);
    }

    /// <summary>A number with its unit, which is left away where it is the field's own.</summary>
    public static string Typed(string number, string unit, string own) =>
        number.Trim().Length == 0 || unit == own ? number : $"{number.Trim()} {unit}";

    /// <summary>The same quantity in another unit, to five figures; nothing where it cannot be read.</summary>
    public static string? Converted(string number, string from, string to) =>
        double.TryParse(number.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
        && Units.TryConvert(value, from, to, out var converted)
            ? converted.ToString("G5", CultureInfo.InvariantCulture)
            : null;
}
