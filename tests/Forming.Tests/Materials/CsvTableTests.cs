using Forming.Materials;
using Forming.Results;

namespace Forming.Tests.Materials;

public class CsvTableTests
{
    [Fact]
    public void A_quoted_field_keeps_its_commas_quotes_and_line_breaks()
    {
        var table = Read("a,b\n\"one, two\",\"he said \"\"three\"\"\nfour\"\n");
        Assert.Equal("one, two", table.Rows[0].Text("a"));
        Assert.Equal("he said \"three\"\nfour", table.Rows[0].Text("b"));
    }

    [Fact]
    public void Comment_lines_above_the_header_are_passed_over()
    {
        var table = Read("# printed, page 4\n# read twice\na\n7\n");
        Assert.Equal(["a"], table.Header);
        Assert.Equal(7, table.Rows[0].Number("a"));
    }

    [Theory]
    [InlineData("a,b\r\n1,\r\n")]
    [InlineData("a,b\n1,")]
    public void Line_ends_of_both_kinds_and_a_missing_last_one_read_alike(string text)
    {
        var row = Assert.Single(Read(text).Rows);
        Assert.Equal("1", row.Text("a"));
        Assert.Null(row.OptionalNumber("b"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a,a\n")]
    [InlineData("a,b\n1\n")]
    [InlineData("a\n\"open\n")]
    [InlineData("a\n\"shut\"x\n")]
    public void A_damaged_table_is_refused(string text) => Assert.Throws<FormatException>(() => Read(text));

    [Theory]
    [InlineData("")]
    [InlineData("NaN")]
    [InlineData("1e400")]
    [InlineData("1;5")]
    public void What_is_not_a_finite_number_is_refused(string field) =>
        Assert.Throws<FormatException>(() => Read($"a,b\n{field},\n").Rows[0].Number("a"));

    [Fact]
    public void Words_are_read_as_the_contract_writes_them() =>
        Assert.Equal(Status.PublishedAsQuoted, Read("a\npublished-as-quoted\n").Rows[0].Word<Status>("a"));

    [Theory]
    [InlineData("hearsay")]
    [InlineData("0")]
    public void A_word_outside_the_list_is_refused(string word) =>
        Assert.Throws<FormatException>(() => Read($"a\n{word}\n").Rows[0].Word<Status>("a"));

    private static CsvTable Read(string text) => CsvTable.Read(new StringReader(text), "table");
}
