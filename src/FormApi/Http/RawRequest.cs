using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http;

/// <summary>A normalised request that was written before and goes into an answer as it stands.</summary>
/// <typeparam name="T">The request.</typeparam>
/// <param name="Utf8">The text.</param>
internal readonly record struct RawRequest<T>(ReadOnlyMemory<byte> Utf8)
    where T : IRequestBody<T>;

/// <summary>Writes a raw request; never reads it.</summary>
/// <typeparam name="T">The request.</typeparam>
internal sealed class RawRequestConverter<T> : JsonConverter<RawRequest<T>>
    where T : IRequestBody<T>
{
    /// <inheritdoc/>
    public override RawRequest<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, RawRequest<T> value, JsonSerializerOptions options) =>
        writer.WriteRawValue(value.Utf8.Span, skipInputValidation: true);
}
