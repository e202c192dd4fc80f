using System.Text.RegularExpressions;
using System.Xml.Linq;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Forms;

/// <summary>The contract's own documentation as the form's hints, so that a field is explained in one place.</summary>
internal static partial class ContractDocs
{
    private static readonly Lazy<Dictionary<string, XElement>> Members = new(Read);

    /// <summary>What the contract says of a positional record's parameter; nothing where it says nothing.</summary>
    public static string? Parameter(Type record, string name) =>
        Members.Value.TryGetValue($"T:{record.FullName}", out var member)
        && member.Elements("param").FirstOrDefault(p => p.Attribute("name")?.Value == name) is { } parameter
            ? Text(parameter)
            : null;

    /// <summary>What the contract says of a choice: the summary of an enumeration's member.</summary>
    public static string? Choice(Type type, string name) =>
        Members.Value.TryGetValue($"F:{type.FullName}.{name}", out var member)
        && member.Element("summary") is { } summary
            ? Text(summary)
            : null;

    private static Dictionary<string, XElement> Read()
    {
        var file = Path.ChangeExtension(typeof(Measure).Assembly.Location, ".xml");
        return File.Exists(file)
            ? XDocument.Load(file).Descendants("member").ToDictionary(m => m.Attribute("name")!.Value)
            : [];
    }

    private static string Text(XElement element)
    {
        var text = string.Concat(
            element
                .Nodes()
                .Select(n =>
                    n switch
                    {
                        XText t => t.Value,
                        // Another field is named by its label, as the person sees it.
                        XElement { Name.LocalName: "see" or "paramref" } e => FieldPlan
                            .LabelOf((e.Attribute("cref")?.Value ?? e.Attribute("name")?.Value ?? "").Split('.')[^1])
                            .ToLowerInvariant(),
                        XElement e => e.Value,
                        _ => "",
                    }
                )
        );
        return Spaces().Replace(text, " ").Trim();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
