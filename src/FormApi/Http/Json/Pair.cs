using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>Two numbers written as a JSON array: a point [x, y], or the two sides of a fold.</summary>
/// <param name="First">First number.</param>
/// <param name="Second">Second number.</param>
[JsonConverter(typeof(PairConverter))]
internal readonly record struct Pair(double First, double Second);

/// <summary>Reads and writes exactly two numbers in an array.</summary>
internal sealed class PairConverter : JsonConverter<Pair>
{
    /// <inheritdoc/>
    public override Pair Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.StartArray)
            throw new JsonException();
        var first = ReadNumber(ref reader);
        var second = ReadNumber(ref reader);
        if (!reader.Read() || reader.TokenType != JsonTokenType.EndArray)
            throw new JsonException();
        return new(first, second);
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Pair value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(value.First);
        writer.WriteNumberValue(value.Second);
        writer.WriteEndArray();
    }

    private static double ReadNumber(ref Utf8JsonReader reader) =>
        reader.Read() && reader.TokenType == JsonTokenType.Number ? reader.GetDouble() : throw new JsonException();
}
