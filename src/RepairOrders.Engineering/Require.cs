using System.Globalization;

namespace RepairOrders.Engineering;

/// <summary>Guards for impossible input; the field is the wire's name, so the error leads to the box it was typed in.</summary>
internal static class Require
{
    public static double Finite(string field, double value) =>
        double.IsFinite(value) ? value : throw Impossible(field, value, "a finite number");

    public static double Positive(string field, double value) =>
        double.IsFinite(value) && value > 0 ? value : throw Impossible(field, value, "a finite number above 0");

    public static double NotNegative(string field, double value) =>
        double.IsFinite(value) && value >= 0 ? value : throw Impossible(field, value, "a finite number, 0 or more");

    public static double Between(string field, double value, double least, double greatest) =>
        double.IsFinite(value) && value >= least && value <= greatest
            ? value
            : throw Impossible(
                field,
                value,
                string.Create(CultureInfo.InvariantCulture, $"{least:G6} to {greatest:G6}")
            );

    private static ImpossibleInputException Impossible(string field, double value, string allowed) =>
        new(field, value.ToString("G6", CultureInfo.InvariantCulture), allowed);
}
