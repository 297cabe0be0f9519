using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Http.Requests;

/// <summary>
/// A body with values as people write them, put into the words of the contract: lengths in inches and fractions, gauges with their unit,
/// words of the trade. The slow path, after strict reading failed; what it does not know it leaves as it is.
/// </summary>
internal static class WrittenByPeople
{
    private const string Gauge = "gauge";

    /// <summary>The body in the words of the contract, or null where nothing is to be put otherwise.</summary>
    /// <param name="body">The body.</param>
    /// <param name="type">What it should be.</param>
    public static ReadOnlyMemory<byte>? Reworded(ReadOnlyMemory<byte> body, JsonTypeInfo type)
    {
        try
        {
            using var document = JsonDocument.Parse(body, new JsonDocumentOptions { MaxDepth = WireJson.MaxDepth });
            var root = document.RootElement;
            var isInch = root.ValueKind == JsonValueKind.Object
                && root.TryGetProperty("units", out var units) && units.ValueKind == JsonValueKind.String && units.ValueEquals("in"u8);
            var output = new ArrayBufferWriter<byte>(body.Length);
            using var writer = new Utf8JsonWriter(output, WireJson.Writing);
            var rewording = new Rewording(isInch, writer);
            rewording.Write(root, type);
            writer.Flush();
            return rewording.HasChanged ? output.WrittenMemory : default(ReadOnlyMemory<byte>?);
        }
        catch (Exception unreadable) when (unreadable is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private sealed class Rewording(bool isInch, Utf8JsonWriter writer)
    {
        public bool HasChanged { get; private set; }

        public void Write(JsonElement element, JsonTypeInfo? type)
        {
            switch (element.ValueKind)
            {
                case JsonValueKind.Object when type?.Kind == JsonTypeInfoKind.Object:
                    WriteObject(element, KindOf(element, type));
                    break;
                case JsonValueKind.Array when type?.Kind == JsonTypeInfoKind.Enumerable:
                    writer.WriteStartArray();
                    var items = type.Options.GetTypeInfo(type.ElementType!);
                    foreach (var item in element.EnumerateArray())
                        Write(item, items);
                    writer.WriteEndArray();
                    break;
                case JsonValueKind.Array when isInch && type?.Type == typeof(Pair):
                    writer.WriteStartArray();
                    foreach (var item in element.EnumerateArray())
                        WriteNumber(item, ShopText.Inches);
                    writer.WriteEndArray();
                    break;
                default:
                    element.WriteTo(writer);
                    break;
            }
        }

        private void WriteObject(JsonElement element, JsonTypeInfo type)
        {
            writer.WriteStartObject();
            foreach (var property in element.EnumerateObject())
            {
                writer.WritePropertyName(property.Name);
                var field = type.Properties.FirstOrDefault(known => known.Name == property.Name);
                if (field is null)
                    property.Value.WriteTo(writer);
                else
                    WriteField(property.Value, type, field);
            }

            writer.WriteEndObject();
        }

        private void WriteField(JsonElement value, JsonTypeInfo type, JsonPropertyInfo field)
        {
            var leaf = Nullable.GetUnderlyingType(field.PropertyType) ?? field.PropertyType;
            if (leaf == typeof(double) && isInch && FieldRanges.Of(type.Type, field.Name).Any(range => range.Measure == Measure.Length))
                WriteNumber(value, ShopText.Inches);
            else if (leaf == typeof(int) && field.Name == Gauge)
                WriteNumber(value, text => ShopText.Gauge(text));
            else if (leaf.IsEnum && value.ValueKind == JsonValueKind.String && type.Options.GetTypeInfo(leaf).Converter is IWords words
                && words.MeantBy(value.GetString()!) is { } word)
                WriteWord(word);
            else
                Write(value, type.Options.GetTypeInfo(field.PropertyType));
        }

        private void WriteNumber(JsonElement value, Func<string, double?> read)
        {
            if (value.ValueKind == JsonValueKind.String && read(value.GetString()!) is { } number)
            {
                writer.WriteNumberValue(number);
                HasChanged = true;
            }
            else
            {
                value.WriteTo(writer);
            }
        }

        private void WriteWord(string word)
        {
            writer.WriteStringValue(word);
            HasChanged = true;
        }

        private static JsonTypeInfo KindOf(JsonElement element, JsonTypeInfo type)
        {
            if (type.PolymorphismOptions is not { } union
                || !element.TryGetProperty(union.TypeDiscriminatorPropertyName, out var given) || given.ValueKind != JsonValueKind.String)
            {
                return type;
            }

            var word = given.GetString();
            var kind = union.DerivedTypes.FirstOrDefault(derived => (string?)derived.TypeDiscriminator == word).DerivedType;
            return kind is null ? type : type.Options.GetTypeInfo(kind);
        }
    }
}
