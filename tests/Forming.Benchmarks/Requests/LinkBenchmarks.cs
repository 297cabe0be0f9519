using System.Buffers.Text;
using System.IO.Compression;
using BenchmarkDotNet.Attributes;
using FormApi.Http.Links;

namespace Forming.Benchmarks.Requests;

/// <summary>The text of one link; a form has two. The length of the text is what is paid for.</summary>
[MemoryDiagnoser]
[MinColumn]
public class LinkBenchmarks
{
    private readonly byte[] _json = LoadRequest.Planned.Shown.Canonical.ToArray();

    /// <summary>Shows what the ways come to.</summary>
    [GlobalSetup]
    public void Show() => Console.WriteLine($"// characters: plain {Plain().Length}, fastest {Fastest()!.Length}, smallest {Smallest()!.Length}");

    /// <summary>The request as it is.</summary>
    [Benchmark(Baseline = true)]
    public string Plain() => Base64Url.EncodeToString(_json);

    /// <summary>Compressed for an answer.</summary>
    [Benchmark]
    public string? Fastest() => LinkText.Of(_json);

    /// <summary>Compressed for paper.</summary>
    [Benchmark]
    public string? Smallest() => LinkText.Of(_json, CompressionLevel.SmallestSize);
}
