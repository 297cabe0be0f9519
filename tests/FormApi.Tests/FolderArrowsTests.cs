using System.Text;

namespace FormApi.Tests;

/// <summary>Which folder may know which.</summary>
public sealed class FolderArrowsTests
{
    [Fact]
    public void No_folder_stands_in_a_circle()
    {
        var folders = SourceFolders.All;
        Assert.True(folders.Names.Count() > 50, "The folders were not found.");
        var circle = folders.Names.Where(folder => folders.ReachedFrom(folder).Contains(folder)).ToArray();
        Assert.True(circle.Length == 0, "A circle: " + string.Join(Environment.NewLine, circle.Select(folder =>
            $"{folder} names {string.Join(", ", folders.From(folder).Where(to => folders.ReachedFrom(to).Contains(folder)))}")));
    }

    [Fact]
    public void The_features_know_neither_the_hosting_nor_the_contract()
    {
        var folders = SourceFolders.All;
        Assert.All(
            folders.Names.Where(folder => folder.StartsWith("FormApi.Http", StringComparison.Ordinal) || folder.StartsWith("FormApi.Features", StringComparison.Ordinal)),
            folder => Assert.DoesNotContain(folders.ReachedFrom(folder), to => to is "FormApi.Hosting" or "FormApi.Contract"));
        Assert.All(
            folders.Names.Where(folder => folder.StartsWith("FormApi.Http", StringComparison.Ordinal)),
            folder => Assert.DoesNotContain(folders.ReachedFrom(folder), to => to.StartsWith("FormApi.Features", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_table_of_gauges_needs_few_files()
    {
        var folders = SourceFolders.All;
        var reached = folders.ReachedFrom("FormApi.Features.Gauges").Append("FormApi.Features.Gauges").ToArray();
        Assert.Contains("Forming.Materials", reached);
        Assert.InRange(reached.Sum(folders.FilesIn), 10, 99);
    }

    [Fact]
    public void The_picture_for_contributors_shows_the_arrows_there_are()
    {
        var path = Repository.PathOf("DEVELOPERS.md");
        var text = File.ReadAllText(path);
        text = Shown(text, "Forming", SourceFolders.All.Names.Where(folder => folder.StartsWith("Forming.", StringComparison.Ordinal) && !IsDrawing(folder)));
        text = Shown(text, "FormApi", SourceFolders.All.Names.Where(folder => folder.StartsWith("FormApi.", StringComparison.Ordinal)));
        Repository.Compare(path, Encoding.UTF8.GetBytes(text));
    }

    private static bool IsDrawing(string folder) => folder == "Forming.Drawing" || folder.StartsWith("Forming.Drawing.", StringComparison.Ordinal);

    // Puts the picture of a project's folders between its marks.
    private static string Shown(string text, string project, IEnumerable<string> folders)
    {
        var shown = folders.ToHashSet();
        var picture = new StringBuilder("```mermaid\nflowchart TD\n");
        foreach (var folder in shown.Order(StringComparer.Ordinal))
        {
            var to = SourceFolders.All.ReducedFrom(folder).Where(shown.Contains).Select(NameOf).ToArray();
            picture.Append(System.Globalization.CultureInfo.InvariantCulture, $"  {NameOf(folder)}{(to.Length > 0 ? " --> " + string.Join(" & ", to) : "")}\n");
        }

        picture.Append("```\n");
        var (begin, end) = ($"<!-- arrows of {project} -->\n", $"<!-- end of {project} -->\n");
        var (from, until) = (text.IndexOf(begin, StringComparison.Ordinal) + begin.Length, text.IndexOf(end, StringComparison.Ordinal));
        Assert.True(from >= begin.Length && until >= from, $"The marks around the picture of {project} are missing.");
        return text[..from] + picture + text[until..];
    }

    private static string NameOf(string folder) => folder[(folder.IndexOf('.', StringComparison.Ordinal) + 1)..].Replace('.', '/');
}
