using System.Reflection;

namespace RepairOrders.Engineering.Tests;

/// <summary>The name under which the compiler files a method's documentation.</summary>
internal static class DocId
{
    public static string Of(MethodInfo method)
    {
        var generic = method.IsGenericMethod ? $"``{method.GetGenericArguments().Length}" : "";
        var parameters = string.Join(',', method.GetParameters().Select(p => Of(p.ParameterType)));
        var list = parameters.Length == 0 ? "" : $"({parameters})";
        return $"M:{Of(method.DeclaringType!)}.{method.Name}{generic}{list}";
    }

    private static string Of(Type type)
    {
        if (type.IsByRef)
        {
            return $"{Of(type.GetElementType()!)}@";
        }
        if (type.IsArray)
        {
            return $"{Of(type.GetElementType()!)}[]";
        }
        if (type.IsGenericParameter)
        {
            return (type.DeclaringMethod is null ? "`" : "``") + type.GenericParameterPosition;
        }
        var name = (type.IsNested ? Of(type.DeclaringType!) : type.Namespace) + "." + type.Name.Split('`')[0];
        return type.IsConstructedGenericType ? $"{name}{{{Arguments(type)}}}" : WithArity(type, name);
    }

    private static string Arguments(Type type) => string.Join(',', type.GetGenericArguments().Select(Of));

    private static string WithArity(Type type, string name) =>
        type.IsGenericTypeDefinition ? $"{name}`{type.GetGenericArguments().Length}" : name;
}
