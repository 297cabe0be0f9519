using System.Text;

namespace FormApi.Tests;

public sealed class PlainWordsTests
{
    [Fact]
    public void Every_text_of_the_source_is_listed_once() =>
        Repository.Compare(Repository.PathOf("tests", "FormApi.Tests", "texts.txt"), Encoding.UTF8.GetBytes(string.Join("\n", SourceTexts.All.Select(text => text.ReplaceLineEndings("\\n"))) + "\n"));
}
