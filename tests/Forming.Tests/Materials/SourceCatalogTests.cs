using Forming.Materials;
using Forming.Results;

namespace Forming.Tests.Materials;

public class SourceCatalogTests
{
    [Fact]
    public void Keys_are_unique_lower_case_and_in_order()
    {
        var keys = SourceCatalog.All.Select(source => source.Key).ToArray();
        Assert.Equal(keys.Distinct().Order(StringComparer.Ordinal), keys);
        Assert.All(keys, key => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", key));
    }

    [Fact]
    public void Every_source_has_a_title() =>
        Assert.All(SourceCatalog.All, source => Assert.NotEmpty(source.Title));

    [Fact]
    public void A_text_that_was_not_read_is_never_called_published()
    {
        foreach (var source in SourceCatalog.All)
        {
            var unread = source.Access.Contains("Not read for this project", StringComparison.OrdinalIgnoreCase);
            Assert.Equal(unread, source.Status == Status.FromMemory);
        }
    }

    [Fact]
    public void A_text_whose_name_was_not_kept_counts_as_quoted() =>
        Assert.All(
            SourceCatalog.All.Where(source => source.Author == "not recorded"),
            source => Assert.Equal(Status.PublishedAsQuoted, source.Status));

    [Theory]
    [InlineData("gardiner-1957", Status.PublishedAsQuoted)]
    [InlineData("marciniak-duncan-hu", Status.Published)]
    [InlineData("kalpakjian-schmid", Status.Published)]
    [InlineData("kalpakjian-schmid-springback", Status.FromMemory)]
    [InlineData("machinery-handbook", Status.FromMemory)]
    [InlineData("considere", Status.FromMemory)]
    [InlineData("von-mises", Status.Computed)]
    [InlineData("wrap-model", Status.Model)]
    [InlineData("common-practice", Status.CommonPractice)]
    [InlineData("assumption", Status.Assumption)]
    [InlineData("caller", Status.Caller)]
    public void A_source_says_how_it_was_read(string key, Status status) =>
        Assert.Equal(status, SourceCatalog.Find(key).Status);

    [Theory]
    [InlineData("din-6935")]
    [InlineData("faa-h-8083-31")]
    [InlineData("faa-ac-43-13-1b")]
    [InlineData("usn-structural-mechanic")]
    [InlineData("aa-adm-2005")]
    [InlineData("abramowitz-stegun")]
    [InlineData("niosh-94-110")]
    [InlineData("push-pull-1986")]
    [InlineData("nist-hb-44")]
    [InlineData("iso-2768-1")]
    [InlineData("usc-15-206")]
    [InlineData("astm-b258")]
    [InlineData("msg-charts")]
    [InlineData("duct-gauge-table")]
    [InlineData("osha-1910-212")]
    [InlineData("osha-1910-138")]
    [InlineData("osha-1910-147")]
    [InlineData("iso-12100")]
    [InlineData("en-12622")]
    [InlineData("nfpa-484")]
    [InlineData("tabellenbuch-metall")]
    public void The_texts_that_methods_cite_are_listed(string key) => Assert.True(SourceCatalog.TryFind(key, out _));

    [Fact]
    public void An_unknown_key_is_a_fault_of_the_project() =>
        Assert.Throws<KeyNotFoundException>(() => SourceCatalog.Find("hearsay"));
}
