using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>A number of a short answer: four decimals, which no tape and no protractor reads.</summary>
internal sealed class ShortNumberConverter : JsonConverter<double>
{
    private const int Decimals = 4;

    /// <inheritdoc/>
    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(Math.Round(value, Decimals) + 0.0);
}
