using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>Text or a number, given back as it came.</summary>
/// <param name="Json">Its JSON.</param>
[JsonConverter(typeof(TextOrNumberConverter))]
internal readonly record struct TextOrNumber(string Json)
{
    /// <summary>Whether a value is one of the two.</summary>
    /// <param name="value">The value.</param>
    public static bool IsOne(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Number => true,
        JsonValueKind.String => IsText(value),
        _ => false,
    };

    // Half a surrogate pair cannot be written again.
    private static bool IsText(JsonElement value)
    {
        try
        {
            return value.GetString() is not null;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }
}

/// <summary>Reads and writes text or a number.</summary>
internal sealed class TextOrNumberConverter : JsonConverter<TextOrNumber>
{
    /// <inheritdoc/>
    public override TextOrNumber Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var value = JsonElement.ParseValue(ref reader);
        return TextOrNumber.IsOne(value) ? new(value.GetRawText()) : throw new JsonException();
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TextOrNumber value, JsonSerializerOptions options) =>
        writer.WriteRawValue(value.Json);
}
