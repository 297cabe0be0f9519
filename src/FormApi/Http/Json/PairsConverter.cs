using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>Writes the points of an answer in one stroke; an answer has hundreds.</summary>
internal sealed class PairsConverter : JsonConverter<Pair[]>
{
    // Two numbers, two brackets, two commas.
    private const int LongestPair = (2 * NumberText.Longest) + 4;

    /// <inheritdoc/>
    public override Pair[] Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Pair[] value, JsonSerializerOptions options)
    {
        var rented = ArrayPool<byte>.Shared.Rent((value.Length * LongestPair) + 2);
        var text = rented.AsSpan();
        var length = 0;
        text[length++] = (byte)'[';
        foreach (var pair in value)
        {
            if (length > 1)
                text[length++] = (byte)',';
            text[length++] = (byte)'[';
            length += NumberText.Write(pair.First, text[length..]);
            text[length++] = (byte)',';
            length += NumberText.Write(pair.Second, text[length..]);
            text[length++] = (byte)']';
        }

        text[length++] = (byte)']';
        writer.WriteRawValue(text[..length], skipInputValidation: true);
        ArrayPool<byte>.Shared.Return(rented);
    }
}
