using System.Globalization;
using System.Text.Json;
using FormApi.Http.Problems;

namespace FormApi.Http.Requests;

/// <summary>What a caller gave, as it goes into a problem.</summary>
internal static class Excerpt
{
    private const int LongestText = 120;

    private static readonly JsonElement Object = JsonDocument.Parse("\"an object\"").RootElement;

    /// <summary>The value at a pointer, or null where there is none.</summary>
    /// <param name="root">The body.</param>
    /// <param name="pointer">Where (RFC 6901).</param>
    public static JsonElement? At(JsonElement root, string pointer)
    {
        var here = root;
        foreach (var step in pointer.Split('/').Skip(1))
        {
            if (here.ValueKind == JsonValueKind.Object && here.TryGetProperty(step, out var field))
                here = field;
            else if (here.ValueKind == JsonValueKind.Array
                && int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var index)
                && index < here.GetArrayLength())
                here = here[index];
            else
                return null;
        }

        return Shorten(here);
    }

    /// <summary>The value itself where it is short, else what kind of value it is.</summary>
    /// <param name="value">The value.</param>
    public static JsonElement Shorten(JsonElement value)
    {
        var raw = value.GetRawText();
        if (!IsUnicode(value))
            return Word(NameOf(value.ValueKind) + " of " + raw.Length.ToString(CultureInfo.InvariantCulture) + " characters that is not Unicode");
        if (raw.Length <= LongestText && value.ValueKind is not (JsonValueKind.String or JsonValueKind.Object or JsonValueKind.Array))
            return value.Clone();
        return value.ValueKind switch
        {
            JsonValueKind.String => Text(value),
            JsonValueKind.Array when raw.Length > LongestText => Word(string.Create(CultureInfo.InvariantCulture, $"an array of {value.GetArrayLength()}")),
            JsonValueKind.Object when raw.Length > LongestText => Object,
            JsonValueKind.Number => Word("a number of " + raw.Length.ToString(CultureInfo.InvariantCulture) + " characters"),
            _ => value.Clone(),
        };
    }

    private static JsonElement Text(JsonElement value)
    {
        var text = value.GetString()!;
        return text.Length <= LongestText ? value.Clone() : Word(Cut(text) + "…");
    }

    // Half a surrogate pair can be escaped in JSON, but neither be read as text nor be written.
    private static bool IsUnicode(JsonElement value)
    {
        try
        {
            return value.ValueKind switch
            {
                JsonValueKind.String => value.GetString() is not null,
                JsonValueKind.Array => value.EnumerateArray().All(IsUnicode),
                JsonValueKind.Object => value.EnumerateObject().All(field => field.Name is not null && IsUnicode(field.Value)),
                _ => true,
            };
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }

    private static string NameOf(JsonValueKind kind) => kind switch
    {
        JsonValueKind.Array => "an array",
        JsonValueKind.Object => "an object",
        _ => "text",
    };

    // Never between the halves of a surrogate pair.
    private static string Cut(string text) => text[..(char.IsHighSurrogate(text[LongestText - 1]) ? LongestText - 1 : LongestText)];

    private static JsonElement Word(string text) => JsonSerializer.SerializeToElement(text, ProblemJson.Default.String);
}
