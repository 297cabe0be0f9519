using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http;

/// <summary>JSON that was written before and goes into an answer as it stands.</summary>
/// <param name="Utf8">The text.</param>
[JsonConverter(typeof(RawJsonConverter))]
internal readonly record struct RawJson(ReadOnlyMemory<byte> Utf8);

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
