using System.Globalization;
using System.Reflection;
using System.Text.Json;
using RepairOrders.Contract;
using RepairOrders.Ui.Forms;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.Orders;

/// <summary>One field of a signed record as a person reads it: a text, a list, a table, findings, or a part with fields of its own.</summary>
public sealed record Readable(
    string Label,
    string? Hint,
    string? Text = null,
    IReadOnlyList<string>? Lines = null,
    IReadOnlyList<IReadOnlyList<Readable>>? Rows = null,
    IReadOnlyList<Readable>? Inside = null,
    IReadOnlyList<FindingView>? Findings = null
)
{
    // Machine words, and what the row says already: of no use to a reader.
    private static readonly HashSet<string> Silent = ["fingerprint", "sha256", "plan", "assessment", "key", "series"];

    /// <summary>
    /// The fields of a body that say something. Names of persons and records stand for their identities, moments on the clock of
    /// the zone.
    /// </summary>
    public static IReadOnlyList<Readable> Of(
        JsonElement body,
        Type? type,
        IReadOnlyDictionary<Guid, string> names,
        TimeZoneInfo? zone
    )
    {
        // The ask is what the person said; what the service reckoned stands after it, not around it.
        List<Readable> fields = [];
        foreach (var property in body.EnumerateObject())
        {
            var inner = PropertyOf(type, property.Name);
            if (property.Name == "ask" && property.Value.ValueKind == JsonValueKind.Object)
                fields.AddRange(Of(property.Value, inner, names, zone));
            else if (
                !Silent.Contains(property.Name)
                && One(property.Name, property.Value, type, inner, names, zone) is { } field
                && !fields.Any(f => f.Label == field.Label && f.Text == field.Text && f.Text is not null)
            )
                fields.Add(field);
        }
        return fields;
    }

    private static Readable? One(
        string name,
        JsonElement value,
        Type? owner,
        Type? type,
        IReadOnlyDictionary<Guid, string> names,
        TimeZoneInfo? zone
    )
    {
        var label = LabelOf(name);
        var hint = owner is null ? null : ContractDocs.Parameter(owner, Property(owner, name)?.Name ?? name);
        switch (value.ValueKind)
        {
            case JsonValueKind.Object when Measured(value) is { } entered:
                return new(label, hint, entered);
            case JsonValueKind.Object:
                var inside = Of(value, type, names, zone);
                return inside.Count == 0 ? null : new(label, hint, Inside: inside);
            case JsonValueKind.Array when value.GetArrayLength() == 0:
                return null;
            case JsonValueKind.Array when type is not null && FieldPlan.ElementOf(type) == typeof(FindingView):
                return new(
                    label,
                    hint,
                    Findings: value.Deserialize<IReadOnlyList<FindingView>>(RepairOrdersClient.Json)
                );
            case JsonValueKind.Array when value[0].ValueKind == JsonValueKind.Object && Measured(value[0]) is null:
                var element = type is null ? null : FieldPlan.ElementOf(type);
                return new(label, hint, Rows: [.. value.EnumerateArray().Select(v => Of(v, element, names, zone))]);
            case JsonValueKind.Array:
                List<string> lines =
                [
                    .. value.EnumerateArray().Select(v => Plain(v, null, names, zone)).OfType<string>(),
                ];
                return lines.Count == 0 ? null : new(label, hint, Lines: lines);
            default:
                return Plain(value, type, names, zone) is { } text ? new(label, hint, text + UnitIn(name)) : null;
        }
    }

    private static string? Measured(JsonElement value) =>
        value.ValueKind == JsonValueKind.Object
        && value.TryGetProperty("entered", out var entered)
        && value.TryGetProperty("unit", out _)
            ? entered.GetString()
            : null;

    private static string? Plain(
        JsonElement value,
        Type? type,
        IReadOnlyDictionary<Guid, string> names,
        TimeZoneInfo? zone
    ) =>
        value.ValueKind switch
        {
            JsonValueKind.True => "yes",
            JsonValueKind.False => "no",
            JsonValueKind.Number => value.GetDouble().ToString("0.####", CultureInfo.InvariantCulture),
            JsonValueKind.Object => Measured(value),
            JsonValueKind.String when value.TryGetGuid(out var id) => names.GetValueOrDefault(id),
            JsonValueKind.String when value.GetString() is { Length: > 0 } text => Words(text, type, zone),
            _ => null,
        };

    private static string Words(string text, Type? type, TimeZoneInfo? zone)
    {
        var kind = type is null ? null : Nullable.GetUnderlyingType(type) ?? type;
        if (kind is { IsEnum: true } && kind != typeof(RiskClass))
            return FieldPlan.LabelOf(text);
        return kind == typeof(DateTimeOffset) && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, out var at)
            ? Show.Moment(at, zone)
            : text;
    }

    private static string LabelOf(string name) => FieldPlan.LabelOf(UnitInName.Of(name)?.Stem ?? name);

    private static string UnitIn(string name) => UnitInName.Of(name) is { } end ? " " + end.Unit : "";

    private static PropertyInfo? Property(Type owner, string name) =>
        owner.GetProperty(name, BindingFlags.IgnoreCase | BindingFlags.Public | BindingFlags.Instance);

    private static Type? PropertyOf(Type? owner, string name) =>
        owner is null ? null : Property(owner, name)?.PropertyType;
}
