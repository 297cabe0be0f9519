using System.Collections;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using FormApi.Http.Json;
using FormApi.Http.Problems;

namespace FormApi.Http.Requests;

/// <summary>
/// Finds the first fault in the shape of a body, by walking it beside the types it should have: the slow path, after reading failed.
/// </summary>
internal static class BodyFaults
{
    /// <summary>The first fault as a problem.</summary>
    /// <param name="body">The body.</param>
    /// <param name="type">What it should have been.</param>
    public static ProblemResult ProblemOf(ReadOnlyMemory<byte> body, JsonTypeInfo type)
    {
        var (kind, fault) = Find(body, type);
        return new(kind, fault.Pointer.Length == 0 ? fault.Text : $"{fault.Pointer}: {fault.Text}", [fault]);
    }

    /// <summary>The first fault.</summary>
    /// <param name="body">The body.</param>
    /// <param name="type">What it should have been.</param>
    /// <returns>The kind of problem and the fault; never null, because this is only asked when reading failed.</returns>
    private static (ProblemKind Kind, Fault Fault) Find(ReadOnlyMemory<byte> body, JsonTypeInfo type)
    {
        if (body.Span.Trim(" \t\r\n"u8).IsEmpty)
            return (ProblemKinds.EmptyBody, new("", ProblemKinds.EmptyBody.Code, "The body is empty.", null, "a JSON object"));
        if (!Utf8.IsValid(body.Span))
            return (ProblemKinds.MalformedJson, new("", ProblemKinds.MalformedJson.Code, "The body is not UTF-8.", null, "JSON in UTF-8"));
        try
        {
            // Well-formedness first: a document that is no JSON has no fields to speak of.
            var scan = new Utf8JsonReader(body.Span, new JsonReaderOptions { MaxDepth = WireJson.MaxDepth });
            while (scan.Read())
            {
            }
        }
        catch (JsonException broken)
        {
            return Malformed(broken, body.Span);
        }

        using var document = JsonDocument.Parse(body, new JsonDocumentOptions { MaxDepth = WireJson.MaxDepth });
        return Walk(document.RootElement, type, "", nullable: false)
            ?? (ProblemKinds.WrongType, new("", ProblemKinds.WrongType.Code, "The body could not be read.", null, "the shape that the contract states"));
    }

    /// <summary>What a field should hold, in words.</summary>
    /// <param name="type">What the body should have been.</param>
    /// <param name="pointer">Pointer of the field, through objects only.</param>
    public static string WordsAt(JsonTypeInfo type, string pointer)
    {
        foreach (var name in pointer.Split('/').Skip(1))
        {
            // Below a union the field is one of a kind's own; all that can be missing there are numbers.
            if (type.Properties.FirstOrDefault(field => field.Name == name) is not { } known)
                return "a number";
            type = type.Options.GetTypeInfo(known.PropertyType);
        }

        return WordsFor(type);
    }

    private static (ProblemKind Kind, Fault Fault) Malformed(JsonException broken, ReadOnlySpan<byte> body)
    {
        if (DepthOf(body) > WireJson.MaxDepth)
        {
            return (ProblemKinds.TooDeep, new(
                "", ProblemKinds.TooDeep.Code, "The body nests too deep.", null, $"at most {WireJson.MaxDepth} levels"));
        }

        var line = (broken.LineNumber ?? 0) + 1;
        var position = (broken.BytePositionInLine ?? 0) + 1;
        var place = string.Create(CultureInfo.InvariantCulture, $"line {line}, position {position}");
        return (ProblemKinds.MalformedJson, new(
            "", ProblemKinds.MalformedJson.Code, $"Invalid JSON at {place}.", null, "one JSON object, without comments or commas left over"));
    }

    // Counts brackets outside of strings; good enough to distinguish depth from other breakage.
    private static int DepthOf(ReadOnlySpan<byte> body)
    {
        var (depth, deepest, inText) = (0, 0, false);
        for (var i = 0; i < body.Length; i++)
        {
            switch (body[i])
            {
                case (byte)'"':
                    inText = !inText;
                    break;
                case (byte)'\\' when inText:
                    i++;
                    break;
                case (byte)'{' or (byte)'[' when !inText:
                    deepest = Math.Max(deepest, ++depth);
                    break;
                case (byte)'}' or (byte)']' when !inText:
                    depth--;
                    break;
            }
        }

        return deepest;
    }

    private static (ProblemKind Kind, Fault Fault)? Walk(JsonElement element, JsonTypeInfo type, string pointer, bool nullable)
    {
        if (type.Type == typeof(AnyValue))
            return null;
        if (element.ValueKind == JsonValueKind.Null)
        {
            return nullable
                ? null
                : At(ProblemKinds.NullNotAllowed, pointer, "The value is null.", element, WordsFor(type));
        }

        return type.Kind switch
        {
            JsonTypeInfoKind.Object when element.ValueKind == JsonValueKind.Object => WalkObject(element, type, pointer),
            JsonTypeInfoKind.Enumerable when element.ValueKind == JsonValueKind.Array => WalkArray(element, type, pointer),
            JsonTypeInfoKind.Object or JsonTypeInfoKind.Enumerable => WrongType(element, type, pointer),
            _ => CheckLeaf(element, type, pointer),
        };
    }

    private static (ProblemKind Kind, Fault Fault)? WalkArray(JsonElement array, JsonTypeInfo type, string pointer)
    {
        var items = type.Options.GetTypeInfo(type.ElementType!);
        var index = 0;
        foreach (var item in array.EnumerateArray())
        {
            if (Walk(item, items, pointer + "/" + index.ToString(CultureInfo.InvariantCulture), nullable: false) is { } fault)
                return fault;
            index++;
        }

        return null;
    }

    private static (ProblemKind Kind, Fault Fault)? WalkObject(JsonElement element, JsonTypeInfo type, string pointer)
    {
        var union = type.PolymorphismOptions?.TypeDiscriminatorPropertyName;
        if (union is not null)
        {
            if (FindKind(element, type, union, pointer, out var kind) is { } fault)
                return fault;
            type = kind!;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var property in element.EnumerateObject())
        {
            if (NameOf(property) is not { } name)
                return At(ProblemKinds.UnknownField, pointer, "A field name is not valid Unicode.", null, null);
            var here = pointer + "/" + Escape(name);
            if (!seen.Add(name))
                return At(ProblemKinds.DuplicatedField, here, "The field appears twice.", property.Value, "each field once");
            if (name == union)
                continue;
            var field = type.Properties.FirstOrDefault(known => known.Name == name);
            if (field is null)
                return Unknown(here, name, property.Value, type, union);
            if (Walk(property.Value, type.Options.GetTypeInfo(field.PropertyType), here, field.IsSetNullable) is { } fault)
                return fault;
        }

        foreach (var field in type.Properties)
        {
            if (field.IsRequired && !seen.Contains(field.Name))
            {
                return At(
                    ProblemKinds.MissingField,
                    pointer + "/" + Escape(field.Name),
                    "The field is missing.",
                    null,
                    WordsFor(type.Options.GetTypeInfo(field.PropertyType)) + (field.IsSetNullable ? ", or null" : ""));
            }
        }

        return null;
    }

    private static (ProblemKind Kind, Fault Fault)? FindKind(
        JsonElement element, JsonTypeInfo type, string union, string pointer, out JsonTypeInfo? kind)
    {
        kind = null;
        var words = type.PolymorphismOptions!.DerivedTypes.Select(derived => (string)derived.TypeDiscriminator!).ToArray();
        var allowed = "one of " + string.Join(", ", words);
        var here = pointer + "/" + union;
        var given = element.EnumerateObject().FirstOrDefault(property => NameOf(property) == union).Value;
        if (given.ValueKind == JsonValueKind.Undefined)
            return At(ProblemKinds.MissingField, here, "The field is missing.", null, allowed);
        if (given.ValueKind != JsonValueKind.String)
            return At(
                given.ValueKind == JsonValueKind.Null ? ProblemKinds.NullNotAllowed : ProblemKinds.WrongType,
                here,
                "The value must be a string.",
                given,
                allowed);
        var word = TextOf(given);
        var match = type.PolymorphismOptions.DerivedTypes.FirstOrDefault(derived => (string?)derived.TypeDiscriminator == word).DerivedType;
        if (match is null)
            return At(ProblemKinds.UnknownValue, here, Suggest("Unknown kind", word, words), given, allowed);
        kind = type.Options.GetTypeInfo(match);
        return null;
    }

    private static (ProblemKind Kind, Fault Fault) Unknown(string here, string name, JsonElement value, JsonTypeInfo type, string? union)
    {
        var names = type.Properties.Select(known => known.Name).Concat(union is null ? [] : [union]).ToArray();
        return At(ProblemKinds.UnknownField, here, Suggest("Unknown field", name, names), value, "one of " + string.Join(", ", names));
    }

    private static string Suggest(string what, string? given, IEnumerable<string> words) =>
        given is not null && Spelling.Nearest(given, words) is { } near ? $"{what}. Did you mean {near}?" : what + ".";

    private static (ProblemKind Kind, Fault Fault)? CheckLeaf(JsonElement element, JsonTypeInfo type, string pointer)
    {
        var leaf = Nullable.GetUnderlyingType(type.Type) ?? type.Type;
        if (leaf == typeof(JsonElement))
            return element.ValueKind == JsonValueKind.Object ? FindTwice(element, pointer) : WrongType(element, type, pointer);
        if (leaf.IsEnum)
        {
            var words = WordsOf(type, leaf);
            if (element.ValueKind != JsonValueKind.String)
                return WrongType(element, type, pointer);
            var word = TextOf(element);
            return word is not null && words.Contains(word, StringComparer.Ordinal)
                ? null
                : At(ProblemKinds.UnknownValue, pointer, Suggest("Unknown word", word, words), element, "one of " + string.Join(", ", words));
        }

        if (leaf == typeof(TextOrNumber))
            return TextOrNumber.IsOne(element) ? null : WrongType(element, type, pointer);
        var fits = element.ValueKind switch
        {
            JsonValueKind.String => leaf == typeof(string) && TextOf(element) is not null,
            JsonValueKind.Number => leaf == typeof(double)
                || (leaf == typeof(int) && element.TryGetDouble(out var number) && number == Math.Floor(number)),
            JsonValueKind.True or JsonValueKind.False => leaf == typeof(bool),
            JsonValueKind.Array => leaf == typeof(Pair) && IsPair(element),
            _ => false,
        };
        return fits ? null
            : leaf == typeof(double) && element.ValueKind == JsonValueKind.String
                ? At(ProblemKinds.WrongType, pointer, "The value has the wrong type.", element, ShopText.LengthAllowed)
                : WrongType(element, type, pointer);
    }

    // An object that is read later has no shape to check it against yet, but no field of it may appear twice.
    private static (ProblemKind Kind, Fault Fault)? FindTwice(JsonElement element, string pointer)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Array:
                return element.EnumerateArray()
                    .Select((item, i) => FindTwice(item, pointer + "/" + i.ToString(CultureInfo.InvariantCulture)))
                    .FirstOrDefault(fault => fault is not null);
            case JsonValueKind.Object:
                var seen = new HashSet<string>(StringComparer.Ordinal);
                foreach (var property in element.EnumerateObject())
                {
                    if (NameOf(property) is not { } name)
                        return At(ProblemKinds.UnknownField, pointer, "A field name is not valid Unicode.", null, null);
                    var here = pointer + "/" + Escape(name);
                    if (!seen.Add(name))
                        return At(ProblemKinds.DuplicatedField, here, "The field appears twice.", property.Value, "each field once");
                    if (FindTwice(property.Value, here) is { } fault)
                        return fault;
                }

                return null;
            default:
                return null;
        }
    }

    private static bool IsPair(JsonElement element) =>
        element.GetArrayLength() == 2 && element.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Number);

    private static (ProblemKind Kind, Fault Fault) WrongType(JsonElement element, JsonTypeInfo type, string pointer) =>
        At(ProblemKinds.WrongType, pointer, "The value has the wrong type.", element, WordsFor(type));

    private static string WordsFor(JsonTypeInfo type)
    {
        var leaf = Nullable.GetUnderlyingType(type.Type) ?? type.Type;
        if (leaf.IsEnum)
            return "one of " + string.Join(", ", WordsOf(type, leaf));
        if (leaf == typeof(string))
            return "text";
        if (leaf == typeof(double))
            return "a number";
        if (leaf == typeof(int))
            return "a whole number";
        if (leaf == typeof(bool))
            return "true or false";
        if (leaf == typeof(TextOrNumber))
            return "text or a number";
        if (leaf == typeof(Pair))
            return "an array of two numbers";
        return typeof(IEnumerable).IsAssignableFrom(leaf) ? "an array" : "an object";
    }

    private static IReadOnlyList<string> WordsOf(JsonTypeInfo type, Type leaf) =>
        type.Options.GetTypeInfo(leaf).Converter is IWords words ? words.Words : [];

    private static (ProblemKind Kind, Fault Fault) At(
        ProblemKind kind, string pointer, string message, JsonElement? given, string? allowed) =>
        (kind, new(pointer, kind.Code, message, given is { } value ? Excerpt.Shorten(value) : null, allowed));

    // Text with half a surrogate pair cannot be read at all.
    private static string? TextOf(JsonElement element)
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string Escape(string name) => new StringBuilder(name).Replace("~", "~0").Replace("/", "~1").ToString();
}
