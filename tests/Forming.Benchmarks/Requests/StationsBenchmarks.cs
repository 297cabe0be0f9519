using System.Buffers;
using System.Text.Json;
using BenchmarkDotNet.Attributes;
using FormApi.Features.Forms;

namespace Forming.Benchmarks.Requests;

/// <summary>Writing the stations of an answer.</summary>
[MemoryDiagnoser]
[MinColumn]
public class StationsBenchmarks
{
    private static readonly StationsConverter ByHandWriter = new();

    private readonly ArrayBufferWriter<byte> _buffer = new(65536);
    private readonly StationResult[] _stations = LoadRequest.Answer.Form.Stations;

    /// <summary>Both ways write the same.</summary>
    [GlobalSetup]
    public void Agree() => LoadRequest.MustAgree(Plainly, ByHand);

    /// <summary>By the framework's serializer.</summary>
    [Benchmark(Baseline = true)]
    public int Plain() => LoadRequest.Written(_buffer, Plainly);

    /// <summary>By the writer of the service.</summary>
    [Benchmark]
    public int Service() => LoadRequest.Written(_buffer, ByHand);

    private void Plainly(Utf8JsonWriter writer) => JsonSerializer.Serialize(writer, _stations, PlainJson.Default.StationResultArray);

    private void ByHand(Utf8JsonWriter writer) => ByHandWriter.Write(writer, _stations, PlainJson.Default.Options);
}
