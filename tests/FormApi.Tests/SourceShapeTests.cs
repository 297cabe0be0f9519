using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Forming.Drawing;
using Forming.Jobs;

namespace FormApi.Tests;

/// <summary>How the source is cut into files and named.</summary>
public sealed partial class SourceShapeTests
{
    private const int MostLines = 350;
    private const int MostColumns = 140;

    private static readonly string[] Projects = ["Forming", "Forming.Drawing", "FormApi"];

    [Fact]
    public void No_file_is_longer_than_one_idea()
    {
        var files = Files().Select(path => (Path: path, Lines: File.ReadLines(path).Count())).ToArray();
        Assert.True(files.Length > 300, "The files were not found.");
        var tooLong = files.Where(file => file.Lines > MostLines).Select(file => $"{file.Path} has {file.Lines} lines");
        Assert.True(!tooLong.Any(), string.Join(Environment.NewLine, tooLong));
    }

    // A text stays on one line, so that a search for it finds it whole.
    [Fact]
    public void No_line_of_code_is_wider_than_a_page()
    {
        var lines = Files().SelectMany(path => File.ReadLines(path).Select((text, i) => (Place: $"{path}:{i + 1}", Text: text)));
        var tooWide = lines
            .Where(line => line.Text.Length > MostColumns && Literal().Replace(line.Text, "\"\"").Length > MostColumns)
            .Select(line => line.Place)
            .ToArray();
        Assert.True(tooWide.Length == 0, string.Join(Environment.NewLine, tooWide));
    }

    [Theory]
    [InlineData("""Say($"{a} of \"{b}\""); // c""", """Say(""); // c""")]
    [InlineData("""Say("a", "b")""", """Say("", "")""")]
    [InlineData("""""Say("""a "b" c""", "d")""""", """Say("", "")""")]
    [InlineData("""var a = b + c;""", """var a = b + c;""")]
    public void Only_texts_are_left_out_of_the_width(string line, string code) => Assert.Equal(code, Literal().Replace(line, "\"\""));

    // A type and its like with type parameters are one idea; what stands inside another type is read there.
    [Fact]
    public void No_two_types_share_a_name()
    {
        var types = new[] { typeof(FormJob).Assembly, typeof(DrawingJob).Assembly, typeof(Program).Assembly }
            .SelectMany(assembly => assembly.GetTypes())
            .Where(type => !type.IsNested && !type.IsDefined(typeof(CompilerGeneratedAttribute)) && IsOurs(type))
            .ToArray();
        Assert.True(types.Length > 500, "The types were not found.");
        var shared = types
            .GroupBy(type => type.Name.Split('`')[0], StringComparer.Ordinal)
            .Where(group => group.Select(type => type.Namespace).Distinct().Count() > 1)
            .Select(group => string.Join(" and ", group.Select(type => type.FullName)));
        Assert.True(!shared.Any(), string.Join(Environment.NewLine, shared));
    }

    private static IEnumerable<string> Files() => Projects
        .SelectMany(project => Directory.EnumerateFiles(Repository.PathOf("src", project), "*.cs", SearchOption.AllDirectories))
        .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    [GeneratedRegex("""\$*["]{3}.*?["]{3}|\$?"(?:[^"\\]|\\.)*["]""")]
    private static partial Regex Literal();

    private static bool IsOurs(Type type) => type.Namespace?.Split('.')[0] is "Forming" or "FormApi";
}
