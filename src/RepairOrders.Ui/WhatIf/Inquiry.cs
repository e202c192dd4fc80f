using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Contract;
using RepairOrders.Ui.Forms;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.WhatIf;

/// <summary>
/// A calculation as it is typed: each value as entered, in the unit it was entered in, by its path in the ask. It can stand in an
/// address and turns into the ask when it is sent.
/// </summary>
public sealed class Inquiry(Subject subject)
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<FieldPlan>> Plans = new();

    /// <summary>Longer than this, some programs cut an address off.</summary>
    public const int LongestAddress = 6000;

    public Subject Subject { get; } = subject;

    public Draft Draft { get; } = new();

    public Dictionary<string, string> Wrong { get; } = [];

    /// <summary>What a method must be told, where the subject is one.</summary>
    public IReadOnlyList<InputView> Inputs { get; set; } = [];

    /// <summary>The contract's fields, a plain number with a unit in its name as a measure in that unit.</summary>
    public IReadOnlyList<FieldPlan> Fields => Plans.GetOrAdd(Subject.Ask, t => [.. FieldPlan.Of(t).Select(WithUnit)]);

    // What the wire calls by an abbreviation, the form spells out.
    private static readonly Dictionary<string, string> Spelled = new()
    {
        ["csv"] = "Readings of the wall",
        ["maopBar"] = "Established pressure",
    };

    private static FieldPlan WithUnit(FieldPlan field)
    {
        var inner = field with
        {
            Label = Spelled.GetValueOrDefault(field.Name, field.Label),
            Columns = [.. field.Columns.Select(WithUnit)],
        };
        if (field.Type == typeof(ulong))
            return inner with { Kind = FieldKind.Number };
        return field.Kind == FieldKind.Number && UnitInName.Of(field.Name) is { } name
            ? inner with
            {
                Label = Spelled.GetValueOrDefault(field.Name) ?? FieldPlan.LabelOf(name.Stem),
                Unit = name.Unit,
                Allowed = "a number",
                Kind = Units.AcceptedFor(name.Unit).Count > 1 ? FieldKind.Measure : FieldKind.Number,
            }
            : inner;
    }

    /// <summary>Fills the form from an ask as the contract reads it: what it leaves out stands there at its default.</summary>
    public void Fill(JsonObject known) => Draft.Fill(known.Deserialize(Subject.Ask, RepairOrdersClient.Json)!, Fields);

    /// <summary>Takes what an address carries; nothing of it is judged before it is sent.</summary>
    public void Take(string query)
    {
        foreach (var (path, values) in Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(query))
            if (
                Fields.Any(f =>
                    path == f.Name || path.StartsWith(f.Name + ".", StringComparison.Ordinal) || Rowed(path, f.Name)
                )
            )
                Draft[path] = values.ToString();
    }

    // A row past any survey would make the form draw millions of them.
    private static bool Rowed(string path, string field) =>
        path.StartsWith(field + "[", StringComparison.Ordinal)
        && path.IndexOf(']', field.Length) is > 0 and var end
        && int.TryParse(
            path.AsSpan(field.Length + 1, end - field.Length - 1),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var row
        )
        && row < 500;

    /// <summary>The address of the page with these values; nothing while it would be too long for one.</summary>
    public string? Address()
    {
        var query = string.Join(
            '&',
            Draft
                .Typed.OrderBy(t => t.Key, StringComparer.Ordinal)
                .Select(t => $"{Uri.EscapeDataString(t.Key)}={Uri.EscapeDataString(t.Value)}")
        );
        return query.Length <= LongestAddress ? $"what-if/{Subject.Code}?{query}" : null;
    }

    /// <summary>The ask; nothing while a field is missing or cannot be read, and those are marked.</summary>
    public JsonObject? Ask()
    {
        Wrong.Clear();
        var json = Draft.ToJson([.. Fields.Where(f => f.Kind != FieldKind.Values)], Wrong);
        if (Wrong.Count == 0)
            Plain(json, Fields);
        foreach (var field in Fields.Where(f => f.Kind == FieldKind.Values))
            json[field.Name] = Told(field.Name);
        return Wrong.Count == 0 ? json : null;
    }

    // The contract wants the number in its own unit; the draft keeps it as it was typed.
    private static void Plain(JsonObject json, IReadOnlyList<FieldPlan> fields)
    {
        foreach (var field in fields)
            switch (json[field.Name])
            {
                case JsonValue value
                    when field.Kind == FieldKind.Measure && Measure.TryRead(value.ToString(), field.Unit!, out var m):
                    json[field.Name] = m!.Value;
                    break;
                case JsonObject inside:
                    Plain(inside, field.Columns);
                    break;
                case JsonArray rows when field.Kind == FieldKind.Rows:
                    foreach (var row in rows)
                        Plain(row!.AsObject(), field.Columns);
                    // An empty list says nothing more than no list.
                    if (rows.Count == 0 && !field.Required)
                        json.Remove(field.Name);
                    break;
                case JsonArray { Count: 0 } when !field.Required:
                    json.Remove(field.Name);
                    break;
            }
    }

    private JsonObject Told(string under)
    {
        var told = new JsonObject();
        foreach (var input in Inputs)
        {
            var path = $"{under}.{input.Code}";
            if (Draft[path].Trim() is not { Length: > 0 } typed)
                continue;
            if (input.Choices is { } choices && choices.ToList().IndexOf(typed) is >= 0 and var index)
                told[input.Code] = index;
            else if (Measure.TryRead(typed, input.Unit, out var m))
                told[input.Code] = m!.Value;
            else
                Wrong[path] =
                    $"{input.Words} is \"{typed}\"; allowed is {Show.Figure(input.Minimum)} to {Show.Figure(input.Maximum)} {input.Unit}.";
        }
        return told;
    }

    /// <summary>Marks what the service refused, by its field.</summary>
    public void Mark(Refused no)
    {
        foreach (var (path, words) in no.Fields)
            Wrong[path] = string.Join(" ", words);
    }
}
