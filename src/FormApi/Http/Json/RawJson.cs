using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace FormApi.Http.Json;

/// <summary>JSON that was written before and goes into an answer unchanged.</summary>
/// <param name="Utf8">The text.</param>
[JsonConverter(typeof(RawJsonConverter))]
internal readonly record struct RawJson(ReadOnlyMemory<byte> Utf8)
{
    /// <summary>Writes a value now, for its fingerprint and for the answer.</summary>
    /// <typeparam name="T">Type of the value.</typeparam>
    /// <param name="value">The value.</param>
    /// <param name="type">How it is written.</param>
    public static RawJson Of<T>(T value, JsonTypeInfo<T> type)
    {
        var buffer = new ArrayBufferWriter<byte>(2048);
        using var writer = new Utf8JsonWriter(buffer, WireJson.Writing);
        JsonSerializer.Serialize(writer, value, type);
        writer.Flush();
        return new(buffer.WrittenMemory);
    }
}

/// <summary>Writes raw JSON; never reads it.</summary>
internal sealed class RawJsonConverter : JsonConverter<RawJson>
{
    /// <inheritdoc/>
    public override RawJson Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, RawJson value, JsonSerializerOptions options) =>
        writer.WriteRawValue(value.Utf8.Span, skipInputValidation: true);
}
