using System.Buffers;
using System.Text.Json;
using BenchmarkDotNet.Attributes;
using FormApi.Http.Json;

namespace Forming.Benchmarks.Requests;

/// <summary>The canonical spelling (RFC 8785) of a request with its defaults.</summary>
[MemoryDiagnoser]
[MinColumn]
public class CanonicalJsonBenchmarks
{
    private readonly ArrayBufferWriter<byte> _buffer = new(65536);
    private readonly byte[] _json = LoadRequest.Planned.Shown.Json.Utf8.ToArray();

    /// <summary>Both ways write the same.</summary>
    [GlobalSetup]
    public void Agree() => LoadRequest.MustAgree(Plainly, writer =>
    {
        Service();
        writer.WriteRawValue(_buffer.WrittenSpan);
    });

    /// <summary>By the framework's document, its fields sorted by name.</summary>
    [Benchmark(Baseline = true)]
    public int Plain() => LoadRequest.Written(_buffer, Plainly);

    /// <summary>By the writer of the service.</summary>
    [Benchmark]
    public int Service()
    {
        _buffer.ResetWrittenCount();
        CanonicalJson.Write(_json, _buffer);
        return _buffer.WrittenCount;
    }

    private void Plainly(Utf8JsonWriter writer)
    {
        using var document = JsonDocument.Parse(_json);
        Write(document.RootElement, writer);
    }

    private static void Write(JsonElement value, Utf8JsonWriter writer)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (var field in value.EnumerateObject().OrderBy(field => field.Name, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(field.Name);
                    Write(field.Value, writer);
                }

                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (var item in value.EnumerateArray())
                    Write(item, writer);
                writer.WriteEndArray();
                break;
            case JsonValueKind.Number:
                writer.WriteRawValue(CanonicalJson.Number(value.GetDouble()));
                break;
            default:
                value.WriteTo(writer);
                break;
        }
    }
}
