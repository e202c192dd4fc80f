using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using UnitsNet;

namespace RepairOrders.Engineering.Tests;

// What counts as a formula: every public static method of a public engine type that returns a UnitsNet quantity, a double,
// either of them nullable, or a Calculated<T>. Operators and property accessors do not count. A table look-up returns a row,
// not a number, and so is not a formula.
//
// How a formula is documented, always in this order:
//
//     /// <summary>What it computes, by whose method.</summary>
//     /// <remarks>
//     /// <para>Formula: t = P D / (2 (S E W + P Y))</para>
//     /// <para>Symbols: t required wall, mm; P gauge pressure, MPa; …</para>
//     /// <para>Validity: t &lt; D/6 and P/(S E) ≤ 0.385.</para>            "Validity: none given by the source." is allowed
//     /// <para>Reference: ASME B31.3-2012, 304.1.2, eq. (3a).</para>       from memory? say so here
//     /// </remarks>
//     /// <param name="pressure">Gauge design pressure P.</param>
//     /// <param name="qualityFactor">Quality factor E [-].</param>        a plain double names its unit in square brackets
//     /// <returns>Required wall t, without allowances.</returns>          so does a double that is returned
//     /// <exception cref="ImpossibleInputException">…</exception>         where there is anything to put in
//     /// <example>P 3 MPa, D 219.1 mm, S 137.9 MPa, E = W = 1, Y 0.4: t = 2.36 mm.</example>
//
// A function that returns Calculated<T> (the same with working and findings) carries the same parts; its paragraphs may point
// at the bare formula: "Formula: see <see cref="…"/>.", "Symbols: those of <see cref="…"/>." The example is the first test.
public sealed partial class FormulaDocs
{
    private static readonly Assembly Engine = typeof(Calculated<>).Assembly;

    private static readonly Dictionary<string, XElement> Docs = XDocument
        .Load(Path.ChangeExtension(Engine.Location, ".xml"))
        .Descendants("member")
        .ToDictionary(m => m.Attribute("name")!.Value);

    [Fact]
    public void Every_formula_has_its_seven_parts()
    {
        var wanting = Formulas().SelectMany(m => Missing(m).Select(part => $"{NameOf(m)}: {part}")).ToList();
        wanting.ShouldBeEmpty(string.Join('\n', wanting));
    }

    // That the test above would fail: a formula of many, and its documentation with one part taken out after the other.
    [Fact]
    public void A_part_that_is_taken_out_is_missed()
    {
        Formulas().Count().ShouldBeGreaterThan(150);
        var formula = Formulas().Single(m => NameOf(m) == "RequiredWall.B313");
        var doc = Docs[DocId.Of(formula)];
        Missing(formula, doc).ShouldBeEmpty();
        var parts = doc.Descendants()
            .Where(e => e.Name.LocalName is "summary" or "para" or "param" or "returns" or "exception" or "example")
            .ToList();
        parts.Count.ShouldBe(14);
        for (var i = 0; i < parts.Count; i++)
        {
            var without = new XElement(doc);
            var part = without.Descendants().Single(e => Place(e) == Place(parts[i]));
            part.RemoveNodes();
            Missing(formula, without).ShouldNotBeEmpty(parts[i].ToString());
        }
        var unitless = XElement.Parse(doc.ToString().Replace('[', '(').Replace(']', ')'));
        Missing(formula, unitless).Count().ShouldBe(3);
    }

    private static string Place(XElement element) =>
        string.Join(
            '/',
            element
                .AncestorsAndSelf()
                .TakeWhile(e => e.Name.LocalName is not ("member" or "members"))
                .Select(e => $"{e.Name}{e.ElementsBeforeSelf().Count()}")
        );

    private static IEnumerable<MethodInfo> Formulas() =>
        Engine
            .GetExportedTypes()
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(m => !m.IsSpecialName && IsAnswer(m.ReturnType));

    private static bool IsAnswer(Type type)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        return IsNumber(type)
            || typeof(IQuantity).IsAssignableFrom(bare)
            || (bare.IsGenericType && bare.GetGenericTypeDefinition() == typeof(Calculated<>));
    }

    private static bool IsNumber(Type type) => (Nullable.GetUnderlyingType(type) ?? type) == typeof(double);

    private static IEnumerable<string> Missing(MethodInfo formula) =>
        Docs.TryGetValue(DocId.Of(formula), out var doc) ? Missing(formula, doc) : ["no documentation found"];

    private static IEnumerable<string> Missing(MethodInfo formula, XElement doc) =>
        SaysWhat(doc).Concat(Paragraphs(doc)).Concat(Parameters(formula, doc)).Concat(Rest(formula, doc));

    private static IEnumerable<string> SaysWhat(XElement doc) => Filled(doc.Element("summary")) ? [] : ["<summary>"];

    private static IEnumerable<string> Paragraphs(XElement doc)
    {
        var paragraphs = doc.Elements("remarks").Elements("para").Select(Text).ToList();
        return new[] { "Formula:", "Symbols:", "Validity:", "Reference:" }
            .Where(head => !paragraphs.Any(p => p.StartsWith(head, StringComparison.Ordinal) && p.Length > head.Length))
            .Select(head => $"<remarks> paragraph that starts \"{head}\"");
    }

    private static IEnumerable<string> Parameters(MethodInfo formula, XElement doc)
    {
        foreach (var parameter in formula.GetParameters())
        {
            var text = doc.Elements("param").FirstOrDefault(p => p.Attribute("name")?.Value == parameter.Name);
            if (!Filled(text))
            {
                yield return $"<param name=\"{parameter.Name}\">";
            }
            else if (IsNumber(parameter.ParameterType) && !Bracketed().IsMatch(Text(text!)))
            {
                yield return $"<param name=\"{parameter.Name}\"> names no unit in square brackets";
            }
        }
    }

    private static IEnumerable<string> Rest(MethodInfo formula, XElement doc)
    {
        var returns = doc.Element("returns");
        if (!Filled(returns))
        {
            yield return "<returns>";
        }
        else if (IsNumber(formula.ReturnType) && !Bracketed().IsMatch(Text(returns!)))
        {
            yield return "<returns> names no unit in square brackets";
        }
        if (!Filled(doc.Element("example")))
        {
            yield return "<example>";
        }
        if (formula.GetParameters().Length > 0 && !doc.Elements("exception").Any(Filled))
        {
            yield return "<exception>";
        }
    }

    private static bool Filled(XElement? element) => element is not null && Text(element).Length > 0;

    private static string Text(XElement element) =>
        Spaces().Replace(string.Concat(element.DescendantNodes().Select(Word)), " ").Trim();

    private static string Word(XNode node) =>
        node switch
        {
            XText text => text.Value,
            XElement { IsEmpty: true } reference => reference.Attribute("cref")?.Value
                ?? reference.Attribute("name")?.Value
                ?? "",
            _ => "",
        };

    private static string NameOf(MethodInfo method) => $"{method.DeclaringType!.Name}.{method.Name}";

    [GeneratedRegex(@"\[[^\]]+\]")]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
