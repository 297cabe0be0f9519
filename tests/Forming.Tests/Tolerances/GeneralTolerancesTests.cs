using Forming.Materials;
using Forming.Results;
using Forming.Tolerances;

namespace Forming.Tests.Tolerances;

/// <summary>The published tables, cell by cell, against a second transcription.</summary>
public class GeneralTolerancesTests
{
    [Theory]
    [Published("iso-2768-1-angles.csv")]
    public void Angles_of_ISO_2768_are_the_printed_ones(string @class, double leg, double minutes) =>
        Workshop.Within(1e-12, minutes / 60 * Workshop.Degree, GeneralTolerances.Find("ISO 2768-1", @class, TolerancedQuantity.Angle, leg)!.Deviation);

    [Theory]
    [Published("iso-2768-1-lengths.csv")]
    public void Lengths_of_ISO_2768_are_the_printed_ones(double length, double? f, double? m, double? c, double? v)
    {
        foreach (var (@class, expected) in new[] { ("f", f), ("m", m), ("c", c), ("v", v) })
            Assert.Equal(expected, GeneralTolerances.Find("ISO 2768-1", @class, TolerancedQuantity.Length, length)?.Deviation);
    }

    [Theory]
    [Published("din-6935-angles.csv")]
    public void Angles_of_DIN_6935_are_those_remembered(double leg, double minutes)
    {
        var cell = GeneralTolerances.Find("DIN 6935", "", TolerancedQuantity.Angle, leg)!;
        Workshop.Within(1e-12, minutes / 60 * Workshop.Degree, cell.Deviation);
        Assert.Equal(Status.FromMemory, cell.Status);
    }

    [Fact]
    public void Every_cell_has_its_source_and_no_size_is_missed_or_taken_twice()
    {
        Assert.All(GeneralTolerances.All, cell => Assert.True(SourceCatalog.TryFind(cell.Source, out _)));
        foreach (var table in GeneralTolerances.All.GroupBy(cell => (cell.Standard, cell.Class, cell.Quantity)))
        {
            var cells = table.OrderBy(cell => cell.OverMm).ToArray();
            for (var i = 1; i < cells.Length; i++)
                Assert.Equal(cells[i - 1].ToMm, cells[i].OverMm);
        }

        Assert.Equal(2, GeneralTolerances.All.Count(cell => cell.Source == "iso-2768-1" && cell.Status == Status.FromMemory));
    }

    [Fact]
    public void Sizes_outside_the_tables_have_none()
    {
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "m", TolerancedQuantity.Length, 0.49));
        Assert.Equal(0.1, GeneralTolerances.Find("ISO 2768-1", "m", TolerancedQuantity.Length, 0.5)!.Deviation);
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "f", TolerancedQuantity.Length, 2001));
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "v", TolerancedQuantity.Length, 4001));
    }
}
