using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;

namespace RepairOrders.Engineering.Tests;

// The engine's public surface as a text, so that a change of it is seen in review. To approve a change, run this test with
// APPROVE=1 in the environment and commit the text.
public sealed class PublicApi
{
    private static readonly NullabilityInfoContext Nullability = new();

    [Fact]
    public void The_public_surface_is_the_approved_one()
    {
        var surface = Surface();
        if (Environment.GetEnvironmentVariable("APPROVE") == "1")
        {
            File.WriteAllText(ApprovedPath(), surface);
        }
        File.ReadAllText(ApprovedPath()).ShouldBe(surface, "run with APPROVE=1 to approve the change");
    }

    [Fact]
    public void The_surface_is_written_out_member_by_member()
    {
        var lines = Surface().Split('\n');
        lines.Length.ShouldBeGreaterThan(1000);
        lines.ShouldContain(
            "    static Length Barlow(Pressure pressure, Length outsideDiameter, Pressure allowableStress)"
        );
        lines.ShouldContain("    MetalFamily Metal");
    }

    private static string ApprovedPath([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "PublicApi.approved.txt");

    private static string Surface()
    {
        var text = new StringBuilder();
        foreach (
            var space in typeof(Calculated<>)
                .Assembly.GetExportedTypes()
                .GroupBy(t => t.Namespace)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
        )
        {
            text.Append(space.Key).Append('\n');
            foreach (var type in space.OrderBy(NameOf, StringComparer.Ordinal))
            {
                text.Append("  ").Append(Kind(type)).Append(' ').Append(NameOf(type)).Append('\n');
                foreach (var member in Members(type))
                {
                    text.Append("    ").Append(member).Append('\n');
                }
            }
        }
        return text.ToString();
    }

    private static string Kind(Type type) =>
        type switch
        {
            { IsInterface: true } => "interface",
            { IsEnum: true } => "enum",
            { IsValueType: true } => "struct",
            { IsAbstract: true, IsSealed: true } => "static",
            _ => "class",
        };

    private static IEnumerable<string> Members(Type type)
    {
        if (type.IsEnum)
        {
            return [string.Join(", ", Enum.GetNames(type))];
        }
        const BindingFlags Own =
            BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;
        var shown = type.GetMembers(Own)
            .Where(m => m is not Type && m.GetCustomAttribute<CompilerGeneratedAttribute>() is null)
            .Where(m =>
                m is not MethodInfo { IsSpecialName: true } || m.Name.StartsWith("op_", StringComparison.Ordinal)
            );
        return shown.Select(Line).Where(l => l.Length > 0).Order(StringComparer.Ordinal);
    }

    private static string Line(MemberInfo member) =>
        member switch
        {
            ConstructorInfo made => $"new({Parameters(made)})",
            MethodInfo method =>
                $"{Static(method.IsStatic)}{Returned(method)} {method.Name}{Generic(method)}({Parameters(method)})",
            PropertyInfo property =>
                $"{Static(property.GetMethod!.IsStatic)}{Shown(Nullability.Create(property))} {Index(property)}",
            FieldInfo field =>
                $"{Static(field.IsStatic)}{Shown(Nullability.Create(field))} {field.Name}{Constant(field)}",
            _ => "",
        };

    private static string Index(PropertyInfo property) =>
        property.GetIndexParameters() is { Length: > 0 } index
            ? $"this[{string.Join(", ", index.Select(Parameter))}]"
            : property.Name;

    private static string Constant(FieldInfo field) =>
        field.IsLiteral
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $" = {field.GetRawConstantValue()}")
            : "";

    private static string Returned(MethodInfo method) => Shown(Nullability.Create(method.ReturnParameter));

    private static string Generic(MethodInfo method) =>
        method.IsGenericMethod ? $"<{string.Join(", ", method.GetGenericArguments().Select(a => a.Name))}>" : "";

    private static string Static(bool isStatic) => isStatic ? "static " : "";

    private static string Parameters(MethodBase method) => string.Join(", ", method.GetParameters().Select(Parameter));

    private static string Parameter(ParameterInfo parameter) =>
        $"{Shown(Nullability.Create(parameter))} {parameter.Name}{(parameter.HasDefaultValue ? "?" : "")}";

    private static string Shown(NullabilityInfo info)
    {
        var name = NameOf(info.Type);
        return info is { Type.IsValueType: false, ReadState: NullabilityState.Nullable } ? $"{name}?" : name;
    }

    private static string NameOf(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } bare)
        {
            return $"{NameOf(bare)}?";
        }
        if (type.HasElementType)
        {
            return $"{NameOf(type.GetElementType()!)}{(type.IsArray ? "[]" : "&")}";
        }
        var outer = type is { IsNested: true, IsGenericParameter: false } ? $"{NameOf(type.DeclaringType!)}." : "";
        var name = outer + type.Name.Split('`')[0];
        return type.IsGenericType ? $"{name}<{string.Join(", ", type.GetGenericArguments().Select(NameOf))}>" : name;
    }
}
