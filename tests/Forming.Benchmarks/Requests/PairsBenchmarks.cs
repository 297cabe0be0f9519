using System.Buffers;
using System.Text.Json;
using BenchmarkDotNet.Attributes;
using FormApi.Http.Json;

namespace Forming.Benchmarks.Requests;

/// <summary>Writing all the points of an answer.</summary>
[MemoryDiagnoser]
[MinColumn]
public class PairsBenchmarks
{
    private static readonly PairsConverter ByHandWriter = new();

    private readonly ArrayBufferWriter<byte> _buffer = new(65536);
    private readonly Pair[] _points =
    [
        .. LoadRequest.Answer.Form.Section.Vertices,
        .. LoadRequest.Answer.Form.Section.ContactCurve,
        .. LoadRequest.Answer.Form.Section.InsideProfile,
        .. LoadRequest.Answer.Form.Blank.Outline,
        .. LoadRequest.Answer.Panel.Blank.Outline,
    ];

    /// <summary>Both ways write the same.</summary>
    [GlobalSetup]
    public void Agree() => LoadRequest.MustAgree(Plainly, ByHand);

    /// <summary>By the framework's serializer.</summary>
    [Benchmark(Baseline = true)]
    public int Plain() => LoadRequest.Written(_buffer, Plainly);

    /// <summary>By the writer of the service.</summary>
    [Benchmark]
    public int Service() => LoadRequest.Written(_buffer, ByHand);

    private void Plainly(Utf8JsonWriter writer) => JsonSerializer.Serialize(writer, _points, PlainJson.Default.PairArray);

    private void ByHand(Utf8JsonWriter writer) => ByHandWriter.Write(writer, _points, PlainJson.Default.Options);
}
