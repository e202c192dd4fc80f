using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Forms;

/// <summary>
/// What has been typed into a form: text by path (<c>readings[2].wall</c>), exactly as typed. It turns into the ask only when it
/// is sent, so nothing is lost to a value that cannot be read yet, and it can be kept in the browser as it is.
/// </summary>
public sealed class Draft
{
    public Dictionary<string, string> Typed { get; init; } = [];

    /// <summary>The clock on the site's wall: moments are typed and shown in it.</summary>
    public TimeZoneInfo Zone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>Something changed without a key pressed: the page's script has not seen it, and has to be told.</summary>
    public bool Unseen { get; set; }

    /// <summary>Whether anything was typed at a path or inside it.</summary>
    public bool Has(string path) =>
        Typed.Keys.Any(k =>
            k.StartsWith(path, StringComparison.Ordinal) && (k.Length == path.Length || k[path.Length] is '.' or '[')
        );

    public string this[string path]
    {
        get => Typed.GetValueOrDefault(path, "");
        set
        {
            if (string.IsNullOrEmpty(value))
                Typed.Remove(path);
            else
                Typed[path] = value;
        }
    }

    /// <summary>How many rows a list has.</summary>
    public int Rows(string path) =>
        Typed
            .Keys.Where(k => k.StartsWith(path + "[", StringComparison.Ordinal))
            .Select(k =>
                int.Parse(
                    k.AsSpan(path.Length + 1, k.IndexOf(']', path.Length) - path.Length - 1),
                    CultureInfo.InvariantCulture
                ) + 1
            )
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>Takes a row out; those after it move up.</summary>
    public void RemoveRow(string path, int row)
    {
        var kept = new Dictionary<string, string>();
        foreach (var (key, text) in Typed)
        {
            if (!key.StartsWith(path + "[", StringComparison.Ordinal))
            {
                kept[key] = text;
                continue;
            }
            var end = key.IndexOf(']', path.Length);
            var at = int.Parse(key.AsSpan(path.Length + 1, end - path.Length - 1), CultureInfo.InvariantCulture);
            if (at != row)
                kept[$"{path}[{(at > row ? at - 1 : at)}{key[end..]}"] = text;
        }
        Typed.Clear();
        foreach (var (key, text) in kept)
            Typed[key] = text;
    }

    /// <summary>The ask as JSON; fields that cannot be read are added to <paramref name="wrong"/> by path.</summary>
    public JsonObject ToJson(IReadOnlyList<FieldPlan> fields, IDictionary<string, string> wrong, string under = "")
    {
        var json = new JsonObject();
        foreach (var field in fields)
            if (Value(field, under + field.Name, wrong) is { } value)
                json[field.Name] = value;
        return json;
    }

    private JsonNode? Value(FieldPlan field, string path, IDictionary<string, string> wrong)
    {
        switch (field.Kind)
        {
            case FieldKind.Rows:
                var rows = new JsonArray();
                for (var i = 0; i < Rows(path); i++)
                    rows.Add(ToJson(field.Columns, wrong, $"{path}[{i}]."));
                return rows;
            case FieldKind.Group:
                // A group that may be left out is left out whole: nothing inside it is missing then.
                return field.Required || Typed.Keys.Any(k => k.StartsWith(path + ".", StringComparison.Ordinal))
                    ? ToJson(field.Columns, wrong, path + ".")
                    : null;
            case FieldKind.Lines:
                return new JsonArray([
                    .. this[path]
                        .Split(
                            field.Type.IsAssignableTo(typeof(IEnumerable<string>)) ? ['\n'] : Between,
                            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
                        )
                        .Select(l => (JsonNode)l),
                ]);
            case FieldKind.Values:
                var values = new JsonObject();
                foreach (var (key, text) in Typed.Where(t => t.Key.StartsWith(path + ".", StringComparison.Ordinal)))
                    // A method's input may be typed with a unit; the service reads it. Plain numbers are read here.
                    values[key[(path.Length + 1)..]] = field.Type.IsAssignableTo(
                        typeof(IEnumerable<KeyValuePair<string, InputValue>>)
                    )
                        ? text
                        : Number(text, key, wrong);
                return values;
            case FieldKind.YesNo:
                return this[path] == "true";
        }
        var typed = this[path].Trim();
        if (typed.Length == 0)
        {
            if (field.Required)
                wrong[path] =
                    $"{field.Label} is missing{(field.Allowed is null ? "" : $"; allowed is {field.Allowed}")}.";
            return null;
        }
        return field.Kind switch
        {
            FieldKind.Number => Number(typed, path, wrong),
            FieldKind.Measure => Measured(field, typed, path, wrong),
            FieldKind.Moment => Moment(field, typed, path, wrong),
            _ => typed,
        };
    }

    /// <summary>
    /// What a field is heard to hold. A moment comes with seconds its field does not have; kept with them, the field would be set
    /// anew under the hand that types in it.
    /// </summary>
    public static string Heard(FieldKind kind, string? text) =>
        kind == FieldKind.Moment && text is { Length: 19 } ? text[..16] : text ?? "";

    // A field shows whole minutes; a moment that was filled in and left alone is sent as it is, or it would lie before itself.
    private readonly Dictionary<string, (string Shown, DateTimeOffset Exact)> filled = [];

    private static readonly char[] Between = ['\n', ' ', ';', '\t'];

    private JsonValue? Moment(FieldPlan field, string typed, string path, IDictionary<string, string> wrong)
    {
        if (filled.TryGetValue(path, out var known) && known.Shown == typed)
            return JsonValue.Create(known.Exact);
        if (DateTime.TryParse(typed, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
            return JsonValue.Create(new DateTimeOffset(local, Zone.GetUtcOffset(local)));
        wrong[path] = $"{field.Label} is \"{typed}\"; allowed is a day and a time.";
        return null;
    }

    private static JsonValue? Measured(FieldPlan field, string typed, string path, IDictionary<string, string> wrong)
    {
        if (Measure.TryRead(typed, field.Unit!, out _))
            return JsonValue.Create(typed);
        wrong[path] =
            $"{field.Label} is \"{typed}\"; allowed is {field.Allowed}, in {string.Join(", ", Units.AcceptedFor(field.Unit!).Take(6))}.";
        return null;
    }

    private static JsonValue? Number(string typed, string path, IDictionary<string, string> wrong)
    {
        if (
            double.TryParse(typed.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number)
        )
            return number == Math.Truncate(number) && Math.Abs(number) < 1e9
                ? JsonValue.Create((int)number)
                : JsonValue.Create(number);
        wrong[path] = $"\"{typed}\" is not a number.";
        return null;
    }

    /// <summary>Fills the draft from something known, so that nobody types a thing twice.</summary>
    public void Fill(object known, IReadOnlyList<FieldPlan> fields) =>
        Fill(JsonSerializer.SerializeToNode(known, known.GetType(), RepairOrdersClient.Json)!.AsObject(), fields, "");

    private void Fill(JsonObject known, IReadOnlyList<FieldPlan> fields, string under)
    {
        foreach (var field in fields)
        {
            var path = under + field.Name;
            switch (known[field.Name])
            {
                case null:
                    break;
                case JsonArray list when field.Kind == FieldKind.Rows:
                    for (var i = 0; i < list.Count; i++)
                        Fill(list[i]!.AsObject(), field.Columns, $"{path}[{i}].");
                    break;
                case JsonArray list:
                    this[path] = string.Join('\n', list.Select(l => l!.ToString()));
                    break;
                case JsonObject measure when field.Kind == FieldKind.Measure:
                    // The unit stands beside the field; only another one is shown in it.
                    var entered = measure["entered"]?.ToString() ?? "";
                    this[path] = entered.EndsWith(" " + field.Unit, StringComparison.Ordinal)
                        ? entered[..^(field.Unit!.Length + 1)]
                        : entered;
                    break;
                case JsonObject inside when field.Kind == FieldKind.Group:
                    Fill(inside, field.Columns, path + ".");
                    break;
                case JsonObject values when field.Kind == FieldKind.Values:
                    foreach (var (key, value) in values)
                        this[$"{path}.{key}"] = value!.ToString();
                    break;
                case JsonValue value
                    when field.Kind == FieldKind.Moment && value.Deserialize<DateTimeOffset>() == default:
                    break;
                case JsonValue value when field.Kind == FieldKind.Moment:
                    var exact = value.Deserialize<DateTimeOffset>();
                    this[path] = TimeZoneInfo
                        .ConvertTime(exact, Zone)
                        .ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);
                    filled[path] = (this[path], exact);
                    break;
                case JsonValue value when field.Kind == FieldKind.YesNo:
                    this[path] = value.GetValue<bool>() ? "true" : "";
                    break;
                // What a known ask leaves open (no person, no day) is for the person to say.
                case var value when value.ToString() is "00000000-0000-0000-0000-000000000000" or "0001-01-01":
                    break;
                case var value:
                    this[path] = value.ToString();
                    break;
            }
        }
    }
}
