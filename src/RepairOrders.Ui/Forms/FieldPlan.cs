using System.Collections.Concurrent;
using System.ComponentModel.DataAnnotations;
using System.Reflection;
using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Forms;

/// <summary>How a field is asked for.</summary>
public enum FieldKind
{
    Text,
    LongText,
    Measure,
    Number,
    YesNo,
    Choice,
    Day,
    Moment,
    Lines,
    Rows,
    Group,
    Values,
    Given,
}

/// <summary>One field of an ask, as the form draws it: read once from the contract's type, its annotations and its documentation.</summary>
public sealed record FieldPlan(
    string Name,
    string Label,
    string? Hint,
    FieldKind Kind,
    bool Required,
    string? Unit,
    string? Allowed,
    int? Longest,
    IReadOnlyList<string> Choices,
    IReadOnlyList<FieldPlan> Columns,
    Type Type
)
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<FieldPlan>> Plans = [];

    /// <summary>The fields of an ask in the order of its constructor.</summary>
    public static IReadOnlyList<FieldPlan> Of(Type ask) =>
        Plans.GetOrAdd(
            ask,
            type =>
            {
                var constructor = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
                var nullable = new NullabilityInfoContext();
                return
                [
                    .. constructor
                        .GetParameters()
                        .Where(p => type.GetProperty(p.Name!) is not null)
                        .Select(p => One(type, type.GetProperty(p.Name!)!, p, nullable)),
                ];
            }
        );

    private static FieldPlan One(
        Type owner,
        PropertyInfo property,
        ParameterInfo parameter,
        NullabilityInfoContext nullable
    )
    {
        var inner = Nullable.GetUnderlyingType(property.PropertyType);
        var type = inner ?? property.PropertyType;
        var measured = property.GetCustomAttribute<MeasuredInAttribute>();
        var length = property.GetCustomAttribute<StringLengthAttribute>();
        var range = property.GetCustomAttribute<RangeAttribute>();
        var absent = inner is not null || nullable.Create(property).WriteState == NullabilityState.Nullable;
        var kind = KindOf(type, length);
        var element = ElementOf(type);
        return new FieldPlan(
            JsonNamingPolicy.CamelCase.ConvertName(property.Name),
            property.GetCustomAttribute<DisplayAttribute>()?.Name ?? LabelOf(property.Name),
            ContractDocs.Parameter(owner, property.Name),
            kind,
            property.GetCustomAttribute<RequiredAttribute>() is not null
                || (!absent && !parameter.HasDefaultValue && kind != FieldKind.YesNo),
            measured?.Unit,
            measured?.Allowed ?? (range is null ? null : $"{range.Minimum} to {range.Maximum}"),
            length?.MaximumLength,
            (type.IsEnum ? type : element) is { IsEnum: true } choices
                ? [.. Enum.GetNames(choices).Select(n => Wire(choices, n))]
                : [],
            kind is FieldKind.Rows ? Of(element!)
                : kind is FieldKind.Group ? Of(type)
                : [],
            type
        );
    }

    private static FieldKind KindOf(Type type, StringLengthAttribute? length)
    {
        if (type == typeof(string))
            return length is { MaximumLength: > 300 } ? FieldKind.LongText : FieldKind.Text;
        if (type == typeof(Measure))
            return FieldKind.Measure;
        if (type == typeof(bool))
            return FieldKind.YesNo;
        if (type.IsEnum)
            return FieldKind.Choice;
        if (type == typeof(DateOnly))
            return FieldKind.Day;
        if (type == typeof(DateTimeOffset))
            return FieldKind.Moment;
        if (type == typeof(int) || type == typeof(double) || type == typeof(decimal))
            return FieldKind.Number;
        if (type == typeof(Guid))
            return FieldKind.Text;
        if (
            typeof(IEnumerable<KeyValuePair<string, double>>).IsAssignableFrom(type)
            || typeof(IEnumerable<KeyValuePair<string, InputValue>>).IsAssignableFrom(type)
        )
            return FieldKind.Values;
        if (ElementOf(type) is { } element)
            return element.IsClass && element != typeof(string) && element != typeof(Measure)
                ? FieldKind.Rows
                : FieldKind.Lines;
        return type.Namespace == typeof(Measure).Namespace ? FieldKind.Group : FieldKind.Given;
    }

    public static Type? ElementOf(Type type) =>
        type == typeof(string)
            ? null
            : type.GetInterfaces()
                .Append(type)
                .FirstOrDefault(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IEnumerable<>))
                ?.GetGenericArguments()[0];

    /// <summary>A choice as the wire spells it.</summary>
    public static string Wire(Type type, string name) =>
        type == typeof(RiskClass) ? name : JsonNamingPolicy.CamelCase.ConvertName(name);

    /// <summary>A field's name as a label in sentence case: <c>OperatingPressure</c> is "Operating pressure".</summary>
    public static string LabelOf(string name)
    {
        var words = new System.Text.StringBuilder();
        foreach (var letter in name)
            if (words.Length == 0)
                words.Append(char.ToUpperInvariant(letter));
            else if (char.IsUpper(letter))
                words.Append(' ').Append(char.ToLowerInvariant(letter));
            else
                words.Append(letter);
        return words.ToString();
    }
}
