using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>The methods the mill uses, and the values its engineers try in turn until the sizing holds.</summary>
internal static class Methods
{
    public const string Patch = "banded-patch";
    public const string Wrap = "laminate-wrap";
    public const string Clamp = "bolted-clamp";
    public const string WeldedPatch = "welded-patch";
    public const string Sleeve = "welded-sleeve";
    public const string Plug = "plug";

    public static IEnumerable<Dictionary<string, InputValue>> Tries(string method, double bar, int life) =>
        method switch
        {
            Patch => Plates.Select(p => Banded(bar, life, p)),
            Wrap => [Laminate(bar, life)],
            Clamp => [Simple(bar, life), Hot(bar, life)],
            _ => [Simple(bar, life)],
        };

    private static readonly (double Plate, int Turns, int Fasteners)[] Plates =
    [
        (0.6, 1, 2),
        (1, 1, 2),
        (1.5, 1, 3),
        (1.5, 2, 3),
        (2, 2, 4),
        (3, 2, 6),
    ];

    private static Dictionary<string, InputValue> Simple(double bar, int life) =>
        new() { ["pressureBar"] = bar, ["designLifeDays"] = life };

    private static Dictionary<string, InputValue> Hot(double bar, int life) =>
        new(Simple(bar, life)) { ["sealTemperatureC"] = 200 };

    // Certified bands, greased screws, a plate stiff enough between the bands.
    private static Dictionary<string, InputValue> Banded(
        double bar,
        int life,
        (double Plate, int Turns, int Fasteners) p
    ) =>
        new(Simple(bar, life))
        {
            ["bandYieldMpa"] = 500,
            ["nutFactorLow"] = 0.14,
            ["nutFactorHigh"] = 0.18,
            ["plateThicknessMm"] = p.Plate,
            ["wraps"] = p.Turns,
            ["fastenersRound"] = p.Fasteners,
        };

    private static Dictionary<string, InputValue> Laminate(double bar, int life) =>
        new()
        {
            ["pressureBar"] = bar,
            ["softeningC"] = 110,
            ["lapShearMpa"] = 5,
            ["toughnessJm2"] = 200,
            ["growthMmPerYear"] = 0.1,
            ["designLifeYears"] = Math.Max(1, life / 365.0),
        };
}
