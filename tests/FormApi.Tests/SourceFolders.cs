using System.Collections.Frozen;
using System.Text.RegularExpressions;

namespace FormApi.Tests;

/// <summary>The folders of <c>src</c> and which of them name types of which, read from the text: unused usings do not compile.</summary>
public sealed partial class SourceFolders
{
    private readonly SourceFile[] _files = [.. new[] { "Forming", "Forming.Drawing", "FormApi" }.SelectMany(FilesOf)];
    private readonly FrozenDictionary<string, FrozenSet<string>> _types;
    private readonly FrozenDictionary<string, FrozenSet<string>> _arrows;
    private readonly FrozenDictionary<string, FrozenSet<string>> _reached;

    private SourceFolders()
    {
        _types = _files.GroupBy(file => file.Folder).ToFrozenDictionary(folder => folder.Key, folder => folder.SelectMany(file => file.Types).ToFrozenSet());
        _arrows = _files.GroupBy(file => file.Folder).ToFrozenDictionary(
            folder => folder.Key, folder => folder.SelectMany(ArrowsOf).Where(to => to != folder.Key).ToFrozenSet());
        _reached = _arrows.Keys.ToFrozenDictionary(folder => folder, Walk);
    }

    /// <summary>As they are committed.</summary>
    public static SourceFolders All { get; } = new();

    /// <summary>Names of the folders, as namespaces.</summary>
    public IEnumerable<string> Names => _arrows.Keys.Order(StringComparer.Ordinal);

    /// <summary>The folders that a folder names.</summary>
    public IEnumerable<string> From(string folder) => _arrows[folder].Order(StringComparer.Ordinal);

    /// <summary>Number of files in a folder.</summary>
    public int FilesIn(string folder) => _files.Count(file => file.Folder == folder);

    /// <summary>Everything that a folder reaches over any number of arrows; itself only where it stands in a circle.</summary>
    public FrozenSet<string> ReachedFrom(string folder) => _reached[folder];

    private FrozenSet<string> Walk(string folder)
    {
        var reached = new HashSet<string>();
        var open = new Stack<string>([folder]);
        while (open.TryPop(out var here))
        {
            foreach (var next in _arrows[here].Where(reached.Add))
                open.Push(next);
        }

        return reached.ToFrozenSet();
    }

    /// <summary>The arrows that no longer way replaces; only without circles.</summary>
    public IEnumerable<string> ReducedFrom(string folder) =>
        From(folder).Where(to => !From(folder).Any(between => between != to && ReachedFrom(between).Contains(to)));

    private IEnumerable<string> ArrowsOf(SourceFile file) =>
        file.Usings.Select(FolderIn).Concat(AboveIt(file)).Concat(file.QualifiedNames.Select(name => Qualified(file.Folder, name))).OfType<string>();

    // The folder that a using names: a namespace, or the one that holds the type of a static using or an alias.
    private string? FolderIn(string name)
    {
        while (name.Length > 0 && !_types.ContainsKey(name))
            name = Parent(name);
        return name.Length > 0 ? name : null;
    }

    // What lies in a namespace further out needs no using.
    private IEnumerable<string> AboveIt(SourceFile file) => Ancestors(file.Folder).Where(above => _types.TryGetValue(above, out var types) && types.Overlaps(file.Words));

    // A name with dots is looked up from the inside out.
    private string? Qualified(string folder, string name)
    {
        for (var head = Parent(name); head.Length > 0; head = Parent(head))
        {
            var type = name[(head.Length + 1)..].Split('.')[0];
            foreach (var within in Ancestors(folder).Prepend(folder).Append(""))
            {
                var full = within.Length > 0 ? within + "." + head : head;
                if (_types.TryGetValue(full, out var types) && types.Contains(type))
                    return full;
            }
        }

        return null;
    }

    private static IEnumerable<string> Ancestors(string name)
    {
        for (var above = Parent(name); above.Length > 0; above = Parent(above))
            yield return above;
    }

    private static string Parent(string name) => name.LastIndexOf('.') is > 0 and var dot ? name[..dot] : "";

    private static IEnumerable<SourceFile> FilesOf(string project) => new DirectoryInfo(Repository.PathOf("src", project)).EnumerateDirectories()
        .Where(folder => folder.Name is not ("obj" or "bin"))
        .SelectMany(folder => folder.EnumerateFiles("*.cs", SearchOption.AllDirectories))
        .Concat(new DirectoryInfo(Repository.PathOf("src", project)).EnumerateFiles("*.cs"))
        .Select(file => SourceFile.Of(File.ReadAllText(file.FullName)));

    internal sealed partial record SourceFile(string Folder, string[] Usings, string[] Types, HashSet<string> Words, string[] QualifiedNames)
    {
        public static SourceFile Of(string text)
        {
            var code = CommentsAndTexts().Replace(text, "");
            var folder = Namespaces().Match(code).Groups[1].Value;
            var body = Heads().Replace(code, "");
            return new(
                folder.Length > 0 ? folder : "Program",
                [.. Using().Matches(code).Select(match => match.Groups[1].Value)],
                [.. Declared().Matches(body).Select(match => match.Groups[1].Value)],
                [.. Word().Matches(body).Select(match => match.Value)],
                [.. Dotted().Matches(body).Select(match => match.Value).Distinct()]);
        }

        [GeneratedRegex("//.*|\"(?:[^\"\\\\\\r\\n]|\\\\.)*\"")]
        private static partial Regex CommentsAndTexts();

        [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
        private static partial Regex Namespaces();

        [GeneratedRegex(@"^using (?:static )?(?:\w+ = )?([\w.]+);", RegexOptions.Multiline)]
        private static partial Regex Using();

        [GeneratedRegex(@"^(?:using|namespace) .*$", RegexOptions.Multiline)]
        private static partial Regex Heads();

        [GeneratedRegex(@"^(?:public|internal)[\w ]*? (?:class|record struct|record|struct|enum|interface|delegate [\w<>\[\]?]+) (\w+)", RegexOptions.Multiline)]
        private static partial Regex Declared();

        [GeneratedRegex(@"\w+")]
        private static partial Regex Word();

        [GeneratedRegex(@"\b[A-Z]\w*(?:\.\w+)+")]
        private static partial Regex Dotted();
    }
}
