using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace RepairOrders.Contract;

/// <summary>
/// A measured value, kept as it was entered. On the wire it may be sent as a number in the field's own unit (<c>10.3</c>), as
/// text with any unit of the same kind (<c>"150 psi"</c>), or as the object it comes back as.
/// </summary>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The field's own unit: <c>bar</c>, <c>mm</c>, <c>°C</c>.</param>
/// <param name="Entered">What was typed, unit included.</param>
public sealed record Measure(double Value, string Unit, string Entered)
{
    /// <summary>A value entered in the field's own unit.</summary>
    /// <param name="value">The value.</param>
    /// <param name="unit">The unit.</param>
    /// <returns>The measure.</returns>
    public static Measure Of(double value, string unit) =>
        new(value, unit, string.Create(CultureInfo.InvariantCulture, $"{value:0.######} {unit}"));

    /// <summary>Reads what a person typed.</summary>
    /// <param name="text">A number, with or without a unit: <c>6.1 mm</c>, <c>2 in</c>, <c>150 psi</c>, <c>7</c>.</param>
    /// <param name="unit">The field's own unit; a bare number is read in it.</param>
    /// <param name="measure">The measure, when the text can be read.</param>
    /// <returns>Whether the text could be read as this kind of quantity.</returns>
    public static bool TryRead(string? text, string unit, out Measure? measure)
    {
        measure = null;
        var typed = (text ?? "").Trim().Replace('−', '-');
        var digits = 0;
        while (digits < typed.Length && (char.IsAsciiDigit(typed[digits]) || typed[digits] is '.' or ',' or '-' or '+'))
            digits++;
        if (
            digits < typed.Length
            && typed[digits] is 'e' or 'E'
            && digits + 1 < typed.Length
            && !char.IsLetter(typed[digits + 1])
        )
        {
            digits++;
            while (digits < typed.Length && (char.IsAsciiDigit(typed[digits]) || typed[digits] is '-' or '+'))
                digits++;
        }
        var number = typed[..digits].Replace(',', '.');
        if (
            !double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            || !double.IsFinite(value)
        )
            return false;
        var given = typed[digits..].Trim();
        if (given.Length == 0 || given == unit)
        {
            measure = new Measure(value, unit, given.Length == 0 ? $"{number} {unit}" : typed);
            return true;
        }
        if (!Units.TryConvert(value, given, unit, out var converted))
            return false;
        measure = new Measure(converted, unit, typed);
        return true;
    }

    /// <inheritdoc/>
    public override string ToString() => Entered;
}

/// <summary>Conversion between the units a field accepts.</summary>
public static class Units
{
    private static readonly Dictionary<string, Enum> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = UnitsNet.Units.LengthUnit.Millimeter,
        ["cm"] = UnitsNet.Units.LengthUnit.Centimeter,
        ["m"] = UnitsNet.Units.LengthUnit.Meter,
        ["um"] = UnitsNet.Units.LengthUnit.Micrometer,
        ["µm"] = UnitsNet.Units.LengthUnit.Micrometer,
        ["μm"] = UnitsNet.Units.LengthUnit.Micrometer,
        ["mil"] = UnitsNet.Units.LengthUnit.Mil,
        ["in"] = UnitsNet.Units.LengthUnit.Inch,
        ["inch"] = UnitsNet.Units.LengthUnit.Inch,
        ["\""] = UnitsNet.Units.LengthUnit.Inch,
        ["ft"] = UnitsNet.Units.LengthUnit.Foot,
        ["bar"] = UnitsNet.Units.PressureUnit.Bar,
        ["barg"] = UnitsNet.Units.PressureUnit.Bar,
        ["mbar"] = UnitsNet.Units.PressureUnit.Millibar,
        ["kPa"] = UnitsNet.Units.PressureUnit.Kilopascal,
        ["MPa"] = UnitsNet.Units.PressureUnit.Megapascal,
        ["Pa"] = UnitsNet.Units.PressureUnit.Pascal,
        ["psi"] = UnitsNet.Units.PressureUnit.PoundForcePerSquareInch,
        ["psig"] = UnitsNet.Units.PressureUnit.PoundForcePerSquareInch,
        ["ksi"] = UnitsNet.Units.PressureUnit.KilopoundForcePerSquareInch,
        ["N/mm2"] = UnitsNet.Units.PressureUnit.Megapascal,
        ["°C"] = UnitsNet.Units.TemperatureUnit.DegreeCelsius,
        ["C"] = UnitsNet.Units.TemperatureUnit.DegreeCelsius,
        ["degC"] = UnitsNet.Units.TemperatureUnit.DegreeCelsius,
        ["°F"] = UnitsNet.Units.TemperatureUnit.DegreeFahrenheit,
        ["F"] = UnitsNet.Units.TemperatureUnit.DegreeFahrenheit,
        ["degF"] = UnitsNet.Units.TemperatureUnit.DegreeFahrenheit,
        ["K"] = UnitsNet.Units.TemperatureUnit.Kelvin,
        ["N m"] = UnitsNet.Units.TorqueUnit.NewtonMeter,
        ["Nm"] = UnitsNet.Units.TorqueUnit.NewtonMeter,
        ["N·m"] = UnitsNet.Units.TorqueUnit.NewtonMeter,
        ["lbf ft"] = UnitsNet.Units.TorqueUnit.PoundForceFoot,
        ["ft lbf"] = UnitsNet.Units.TorqueUnit.PoundForceFoot,
        ["ft-lb"] = UnitsNet.Units.TorqueUnit.PoundForceFoot,
        ["N"] = UnitsNet.Units.ForceUnit.Newton,
        ["kN"] = UnitsNet.Units.ForceUnit.Kilonewton,
        ["lbf"] = UnitsNet.Units.ForceUnit.PoundForce,
        ["g"] = UnitsNet.Units.MassUnit.Gram,
        ["kg"] = UnitsNet.Units.MassUnit.Kilogram,
        ["lb"] = UnitsNet.Units.MassUnit.Pound,
        ["min"] = UnitsNet.Units.DurationUnit.Minute,
        ["h"] = UnitsNet.Units.DurationUnit.Hour,
        ["d"] = UnitsNet.Units.DurationUnit.Day,
        ["s"] = UnitsNet.Units.DurationUnit.Second,
        ["y"] = UnitsNet.Units.DurationUnit.Year365,
        ["cm3"] = UnitsNet.Units.VolumeUnit.CubicCentimeter,
        ["ml"] = UnitsNet.Units.VolumeUnit.Milliliter,
        ["l"] = UnitsNet.Units.VolumeUnit.Liter,
        ["l/min"] = UnitsNet.Units.VolumeFlowUnit.LiterPerMinute,
        ["kg/h"] = UnitsNet.Units.MassFlowUnit.KilogramPerHour,
        ["%"] = UnitsNet.Units.RatioUnit.Percent,
    };

    /// <summary>Converts a value between two units of the same kind.</summary>
    /// <param name="value">The value.</param>
    /// <param name="from">Its unit as typed.</param>
    /// <param name="to">The unit wanted.</param>
    /// <param name="converted">The value in the unit wanted.</param>
    /// <returns>Whether both are known and of the same kind.</returns>
    public static bool TryConvert(double value, string from, string to, out double converted)
    {
        converted = value;
        if (string.Equals(from, to, StringComparison.OrdinalIgnoreCase))
            return true;
        if (
            !Known.TryGetValue(from, out var fromUnit)
            || !Known.TryGetValue(to, out var toUnit)
            || fromUnit.GetType() != toUnit.GetType()
        )
            return false;
        converted = (double)UnitConverter.Convert(value, fromUnit, toUnit);
        return double.IsFinite(converted);
    }

    /// <summary>The units a field of this unit accepts, for the hint beside it.</summary>
    /// <param name="unit">The field's own unit.</param>
    /// <returns>Units of the same kind, its own first.</returns>
    public static IReadOnlyList<string> AcceptedFor(string unit) =>
        Known.TryGetValue(unit, out var own)
            ? [unit, .. Known.Where(k => k.Value.GetType() == own.GetType() && k.Key != unit).Select(k => k.Key)]
            : [unit];
}

/// <summary>States the unit of a <see cref="Measure"/> field and the values it may have.</summary>
/// <param name="unit">The field's own unit.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class MeasuredInAttribute(string unit) : JsonConverterAttribute
{
    /// <summary>The field's own unit.</summary>
    public string Unit { get; } = unit;

    /// <summary>Least value allowed, in the unit.</summary>
    public double Least { get; init; } = double.NegativeInfinity;

    /// <summary>Greatest value allowed, in the unit.</summary>
    public double Greatest { get; init; } = double.PositiveInfinity;

    /// <summary>What is allowed, in words: <c>0 to 400 bar</c>.</summary>
    public string Allowed =>
        (double.IsFinite(Least), double.IsFinite(Greatest)) switch
        {
            (true, true) => string.Create(CultureInfo.InvariantCulture, $"{Least:0.###} to {Greatest:0.###} {Unit}"),
            (true, false) => string.Create(CultureInfo.InvariantCulture, $"{Least:0.###} {Unit} or more"),
            (false, true) => string.Create(CultureInfo.InvariantCulture, $"at most {Greatest:0.###} {Unit}"),
            _ => $"a value in {Unit}",
        };

    /// <inheritdoc/>
    public override JsonConverter CreateConverter(Type typeToConvert) => new Converter(this);

    private sealed class Converter(MeasuredInAttribute field) : JsonConverter<Measure>
    {
        public override Measure? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var text = reader.TokenType switch
            {
                JsonTokenType.Null => null,
                JsonTokenType.Number => reader.GetDouble().ToString("R", CultureInfo.InvariantCulture),
                JsonTokenType.String => reader.GetString(),
                JsonTokenType.StartObject => FromObject(ref reader),
                _ => throw new JsonException($"allowed is {field.Allowed}, as a number or as text with a unit."),
            };
            if (string.IsNullOrWhiteSpace(text))
                return null;
            if (!Measure.TryRead(text, field.Unit, out var measure))
                throw new JsonException(
                    $"is \"{text}\"; allowed is {field.Allowed}, as a number or as text with a unit."
                );
            if (measure!.Value < field.Least || measure.Value > field.Greatest)
                throw new JsonException($"is {measure.Entered}; allowed is {field.Allowed}.");
            return measure;
        }

        public override void Write(Utf8JsonWriter writer, Measure value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            writer.WriteNumber("value", value.Value);
            writer.WriteString("unit", value.Unit);
            writer.WriteString("entered", value.Entered);
            writer.WriteEndObject();
        }

        private static string? FromObject(ref Utf8JsonReader reader)
        {
            using var document = JsonDocument.ParseValue(ref reader);
            var root = document.RootElement;
            if (root.TryGetProperty("entered", out var entered) && entered.ValueKind == JsonValueKind.String)
                return entered.GetString();
            if (root.TryGetProperty("value", out var value) && value.ValueKind == JsonValueKind.Number)
                return value.GetRawText() + " " + (root.TryGetProperty("unit", out var unit) ? unit.GetString() : "");
            return null;
        }
    }
}
