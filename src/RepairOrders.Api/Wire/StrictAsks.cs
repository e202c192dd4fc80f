using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using RepairOrders.Contract;

namespace RepairOrders.Api.Wire;

/// <summary>
/// How asks are read: nothing is guessed. A field that must be there and is not, a field nobody knows, one that is given twice
/// and a number where a word belongs are refused; on a safety record a misspelt field must not vanish in silence.
/// </summary>
internal static class StrictAsks
{
    public const int Deepest = 32;

    public static void Set(JsonSerializerOptions options)
    {
        RepairOrdersClient.Written(options);
        options.Converters.Add(new Moments());
        options.MaxDepth = Deepest;
        options.AllowDuplicateProperties = false;
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.TypeInfoResolver = (options.TypeInfoResolver ?? new DefaultJsonTypeInfoResolver()).WithAddedModifier(
            Demand
        );
    }

    private static void Demand(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object)
            return;
        foreach (var property in type.Properties)
        {
            if (property.AssociatedParameter is { HasDefaultValue: false } parameter && !MayBeNothing(parameter))
                property.IsRequired = true;
        }
    }

    private static bool MayBeNothing(JsonParameterInfo parameter) =>
        parameter.ParameterType.IsValueType
            ? Nullable.GetUnderlyingType(parameter.ParameterType) is not null
            : parameter.IsNullable;
}
