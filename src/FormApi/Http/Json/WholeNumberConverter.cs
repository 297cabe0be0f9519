using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>
/// A whole number in any spelling JSON allows (20, 20.0, 2e1); beyond the range of an int it reads as the largest, which every rule
/// refuses.
/// </summary>
internal sealed class WholeNumberConverter : JsonConverter<int>
{
    /// <summary>Whether a JSON number is whole.</summary>
    /// <param name="reader">A reader that is on a number.</param>
    /// <param name="whole">The number.</param>
    public static bool TryRead(ref Utf8JsonReader reader, out int whole)
    {
        if (reader.TryGetInt32(out whole))
            return true;
        if (!reader.TryGetDouble(out var number) || number != Math.Floor(number))
            return false;
        whole = (int)Math.Clamp(number, int.MinValue, int.MaxValue);
        return true;
    }

    /// <inheritdoc/>
    public override int Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.Number && TryRead(ref reader, out var whole) ? whole : throw new JsonException();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, int value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value);
}
