using System.Buffers;
using System.Text.Json;
using FormApi.Features.Forms;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Rules;

namespace Forming.Benchmarks.Requests;

/// <summary>The request that the load test sends, at each step of its way through the service.</summary>
internal static class LoadRequest
{
    // Rules keep the names of fields from when they were made.
    static LoadRequest()
    {
        FieldNames.SpellAsOnTheWire();
        using var file = typeof(LoadRequest).Assembly.GetManifestResourceStream("request.json")!;
        using var bytes = new MemoryStream();
        file.CopyTo(bytes);
        Body = bytes.ToArray();
        Read = JsonBody<FormRequest>.Of(Body).Value;
        Planned = PlannedJob.Of(Read, null, CancellationToken.None);
        Answer = FormAnswer.From(Planned);
    }

    /// <summary>The body as it comes.</summary>
    public static byte[] Body { get; }

    /// <summary>The request read and checked.</summary>
    public static FormRequest Read { get; }

    /// <summary>The request planned.</summary>
    public static PlannedJob Planned { get; }

    /// <summary>The answer, not yet written.</summary>
    public static FormAnswer Answer { get; }

    /// <summary>Writes JSON into a buffer that is used again.</summary>
    /// <param name="buffer">The buffer.</param>
    /// <param name="write">Writes it.</param>
    /// <returns>Bytes written.</returns>
    public static int Written(ArrayBufferWriter<byte> buffer, Action<Utf8JsonWriter> write)
    {
        buffer.ResetWrittenCount();
        using var writer = new Utf8JsonWriter(buffer, WireJson.Writing);
        write(writer);
        writer.Flush();
        return buffer.WrittenCount;
    }

    /// <summary>Refuses two ways that do not write the same bytes.</summary>
    /// <param name="one">Writes by one way.</param>
    /// <param name="other">Writes by the other.</param>
    public static void MustAgree(Action<Utf8JsonWriter> one, Action<Utf8JsonWriter> other)
    {
        ArrayBufferWriter<byte> first = new(), second = new();
        Written(first, one);
        Written(second, other);
        if (!first.WrittenSpan.SequenceEqual(second.WrittenSpan))
            throw new InvalidOperationException("The two ways do not write the same bytes.");
    }
}
