using System.Collections.Frozen;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>An enum that is a word on the wire, such as <c>equal-angle</c>; never a number, never in another spelling.</summary>
/// <typeparam name="T">The enum.</typeparam>
internal sealed class WordConverter<T> : JsonConverter<T>, IWords
    where T : struct, Enum
{
    private static readonly FrozenDictionary<T, JsonEncodedText> Words =
        Enum.GetValues<T>().ToFrozenDictionary(value => value, value => JsonEncodedText.Encode(Wire.Word(value)));

    private static readonly (JsonEncodedText Word, T Value)[] ByWord =
        [.. Enum.GetValues<T>().Select(value => (Words[value], value))];

    private static readonly FrozenDictionary<string, string> Meanings = typeof(T).GetFields(BindingFlags.Public | BindingFlags.Static)
        .SelectMany(
            field => field.GetCustomAttribute<AlsoWrittenAttribute>()?.Words ?? [],
            (field, word) => (Word: word, Means: Wire.Word((T)field.GetValue(null)!)))
        .ToFrozenDictionary(also => also.Word, also => also.Means, StringComparer.OrdinalIgnoreCase);

    /// <inheritdoc/>
    IReadOnlyList<string> IWords.Words => Wire.Words<T>();

    /// <inheritdoc/>
    string? IWords.MeantBy(string word) => Meanings.GetValueOrDefault(word);

    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String)
            throw new JsonException();
        foreach (var (word, value) in ByWord)
        {
            if (reader.ValueTextEquals(word.EncodedUtf8Bytes))
                return value;
        }

        throw new JsonException();
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
        writer.WriteStringValue(Words[value]);
}

/// <summary>Every enum is a word.</summary>
internal sealed class WordConverter : JsonConverterFactory
{
    /// <inheritdoc/>
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsEnum;

    /// <inheritdoc/>
    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(WordConverter<>).MakeGenericType(typeToConvert))!;
}
