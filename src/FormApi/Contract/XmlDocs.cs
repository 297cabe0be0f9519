using System.Collections.Frozen;
using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace FormApi.Contract;

/// <summary>The documentation of types in the code, which is the contract's too.</summary>
internal static partial class XmlDocs
{
    private static readonly FrozenDictionary<string, XElement> Members = Read("FormApi.xml").Concat(Read("Forming.xml"))
        .ToFrozenDictionary(member => (string)member.Attribute("name")!, StringComparer.Ordinal);

    /// <summary>What a type is, or null.</summary>
    /// <param name="type">The type.</param>
    public static string? Summary(Type type) => Text(Find(type)?.Element("summary"));

    /// <summary>What a field of a record is, or null.</summary>
    /// <param name="type">The record.</param>
    /// <param name="parameter">The field, as it is called in the code or on the wire.</param>
    public static string? Field(Type type, string parameter) => Text(Find(type)?.Elements("param")
        .FirstOrDefault(element => string.Equals((string?)element.Attribute("name"), parameter, StringComparison.OrdinalIgnoreCase)));

    /// <summary>What a property is, or null.</summary>
    /// <param name="property">The property.</param>
    public static string? Summary(PropertyInfo property) =>
        Text(Members.GetValueOrDefault($"P:{property.DeclaringType!.FullName}.{property.Name}")?.Element("summary"));

    private static XElement? Find(Type type) => Members.GetValueOrDefault("T:" + type.FullName!.Replace('+', '.'));

    private static IEnumerable<XElement> Read(string file) =>
        XDocument.Load(Path.Combine(AppContext.BaseDirectory, file)).Descendants("member");

    private static string? Text(XElement? element)
    {
        if (element is null)
            return null;
        var text = string.Concat(element.Nodes().Select(node => node switch
        {
            XElement { Name.LocalName: "c" } code => "`" + code.Value + "`",
            XElement inner => inner.Value,
            XText plain => plain.Value,
            _ => "",
        }));
        return Space().Replace(text, " ").Trim();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
