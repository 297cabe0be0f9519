using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>Any JSON value, as it came.</summary>
/// <param name="Json">Its JSON.</param>
[JsonConverter(typeof(AnyValueConverter))]
internal readonly record struct AnyValue(string Json);

/// <summary>Reads and writes any value, null among them.</summary>
internal sealed class AnyValueConverter : JsonConverter<AnyValue>
{
    /// <inheritdoc/>
    public override bool HandleNull => true;

    /// <inheritdoc/>
    public override AnyValue Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        new(JsonElement.ParseValue(ref reader).GetRawText());

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, AnyValue value, JsonSerializerOptions options) => writer.WriteRawValue(value.Json);
}
