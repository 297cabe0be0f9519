using System.Text;

namespace Forming.Drawing.Tests;

public class SvgSheetTests
{
    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Sheet_is_the_one_that_was_looked_at(string name) => Golden.Matches($"{name}.svg", Sheet(Examples.All[name]()));

    private static string Sheet(DrawingJob job)
    {
        using var stream = new MemoryStream();
        SvgSheet.Write(job, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
