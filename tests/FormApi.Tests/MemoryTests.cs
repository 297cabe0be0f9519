namespace FormApi.Tests;

/// <summary>What a caller may send takes no more memory for being long.</summary>
[Collection(Alone.Name)]
public sealed class MemoryTests(Service service) : IClassFixture<Service>
{
    [Fact]
    [Trait("Category", "Long")]
    public async Task Twenty_thousand_lines_take_no_more_memory_than_two_thousand()
    {
        const int lines = 20_000;
        var arc = BatchesTests.Line("form", Requests.Arc());
        // A line that is answered in full now and then, and many that are refused: every path of a line, at little cost.
        var bad = BatchesTests.Line("form", Requests.Arc().With("/panel/thickness", "-1"));
        using var content = new LineContent(Enumerable.Range(0, lines).Select(i => i % 10 == 0 ? arc : bad));
        using var response = await BatchesTests.Send(content, service);
        using var reader = new StreamReader(await response.Content.ReadAsStreamAsync());
        long early = 0;
        var count = 0;
        while (await reader.ReadLineAsync() is { } line)
        {
            Assert.StartsWith($"{{\"line\":{++count},", line, StringComparison.Ordinal);
            if (count == 2000)
                early = GC.GetTotalMemory(forceFullCollection: true);
        }

        Assert.Equal(lines, count);
        // Kept answers would be 50 MB, kept lines 20 MB.
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - early, long.MinValue, 8_000_000);
    }

    [Fact]
    public async Task A_link_that_inflates_without_end_takes_constant_memory()
    {
        const int times = 100;
        var link = $"/v1/links/{LinksTests.Bomb()}/form";
        using (await service.Client.GetAsync(link)) { }
        var before = GC.GetTotalAllocatedBytes(precise: true);
        for (var i = 0; i < times; i++)
            using (await service.Client.GetAsync(link)) { }
        // Inflated whole, each would be 2 MB.
        Assert.InRange((GC.GetTotalAllocatedBytes(precise: true) - before) / times, 0, 150_000);
    }
}
