using Forming.Materials;

namespace Forming.Tests;

/// <summary>Printed tables beside the tests; the head of each file is its full citation.</summary>
internal static class PublishedTable
{
    public static CsvTable Read(string fileName)
    {
        using var reader = new StreamReader(Path.Combine(AppContext.BaseDirectory, "Published", fileName));
        return CsvTable.Read(reader, fileName);
    }
}
