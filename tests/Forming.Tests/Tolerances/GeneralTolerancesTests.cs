using Forming.Materials;
using Forming.Results;
using Forming.Tolerances;

namespace Forming.Tests.Tolerances;

/// <summary>What the tables cover and how they were read; cell by cell they are checks of the engine.</summary>
public class GeneralTolerancesTests
{
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

        Assert.All(GeneralTolerances.All.Where(cell => cell.Standard == "DIN 6935"), cell => Assert.Equal(Status.FromMemory, cell.Status));
        Assert.Equal(2, GeneralTolerances.All.Count(cell => cell.Source == "iso-2768-1" && cell.Status == Status.FromMemory));
    }

    [Fact]
    public void Sizes_outside_the_tables_have_none()
    {
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "m", TolerancedQuantity.Length, 0.49));
        Assert.Equal(0.1, GeneralTolerances.Find("ISO 2768-1", "m", TolerancedQuantity.Length, 0.5)!.Deviation);
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "f", TolerancedQuantity.Length, 2001));
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "f", TolerancedQuantity.Length, 4000));
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "v", TolerancedQuantity.Length, 3));
        Assert.Null(GeneralTolerances.Find("ISO 2768-1", "v", TolerancedQuantity.Length, 4001));
    }
}
