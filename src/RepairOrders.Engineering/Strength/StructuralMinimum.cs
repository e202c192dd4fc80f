using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The wall a pipe needs to carry itself, whatever its pressure.</summary>
/// <param name="UpToNps">The largest size the row is for.</param>
/// <param name="UpToOutsideDiameter">Its outside diameter.</param>
/// <param name="Least">Default minimum structural thickness.</param>
/// <param name="Alert">Thickness at which the inspector is told.</param>
public sealed record StructuralMinimum(string UpToNps, Length UpToOutsideDiameter, Length Least, Length Alert)
{
    /// <summary>Where the table comes from.</summary>
    public static readonly Clause Source = new(
        "API RP 574",
        "default minimum structural thickness",
        Provenance.FromMemory
    );

    /// <summary>The hottest the table is good for.</summary>
    public static readonly Temperature Hottest = Temperature.FromDegreesCelsius(205);

    // A size that is not printed (1-1/4, 2-1/2, 3-1/2, 5) takes the next larger one that is.
    private static readonly StructuralMinimum[] Table =
    [
        Row("1", 33.4, 1.8, 2.0),
        Row("1-1/2", 48.3, 1.8, 2.3),
        Row("2", 60.3, 1.8, 2.5),
        Row("3", 88.9, 2.0, 2.8),
        Row("4", 114.3, 2.3, 3.1),
        Row("18", 457, 2.8, 3.3),
        Row("24", 610, 3.1, 3.6),
    ];

    internal static Length Largest => Table[^1].UpToOutsideDiameter;

    /// <summary>Looks up the row for a pipe.</summary>
    /// <param name="metal">Family of the metal: the table is for carbon and low-alloy steel.</param>
    /// <param name="outsideDiameter">Outside diameter.</param>
    /// <param name="temperature">Design temperature: the table ends at <see cref="Hottest"/>.</param>
    /// <returns>The row; nothing where the table does not apply and an engineer must give the value.</returns>
    public static StructuralMinimum? Find(MetalFamily metal, Length outsideDiameter, Temperature temperature)
    {
        var D = Shell.Diameter(outsideDiameter);
        var steel = metal is MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel;
        return steel && temperature.DegreesCelsius <= Hottest.DegreesCelsius
            ? Table.FirstOrDefault(r => r.UpToOutsideDiameter.Millimeters * 1.005 >= D)
            : null;
    }

    private static StructuralMinimum Row(string nps, double D, double least, double alert) =>
        new(nps, Length.FromMillimeters(D), Length.FromMillimeters(least), Length.FromMillimeters(alert));
}
