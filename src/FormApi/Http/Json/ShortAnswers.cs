using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace FormApi.Http.Json;

/// <summary>
/// How answers are written for callers who want them short (RFC 7240, <c>return=minimal</c>): without the fields that only a full answer
/// has, without fields that hold nothing, without findings that passed, and with four decimals.
/// </summary>
internal static class ShortAnswers
{
    private static readonly MethodInfo KeepOpenOf =
        typeof(ShortAnswers).GetMethod(nameof(KeepOpen), BindingFlags.NonPublic | BindingFlags.Static)!;

    /// <summary>How a type is written short.</summary>
    /// <typeparam name="T">The type.</typeparam>
    /// <param name="full">How it is written in full.</param>
    public static JsonTypeInfo<T> Of<T>(JsonTypeInfo<T> full) => Cache<T>.Short ??= Shorten(full);

    /// <summary>Whether a field is only in a full answer.</summary>
    /// <param name="field">The field.</param>
    public static bool IsInFull(JsonPropertyInfo field) => field.AttributeProvider?.IsDefined(typeof(InFullAttribute), false) == true;

    private static JsonTypeInfo<T> Shorten<T>(JsonTypeInfo<T> full)
    {
        var options = new JsonSerializerOptions(full.Options)
        {
            TypeInfoResolver = full.OriginatingResolver!.WithAddedModifier(LeaveOut),
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            Converters = { new ShortNumberConverter() },
        };
        return (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));
    }

    private static void LeaveOut(JsonTypeInfo type)
    {
        for (var i = type.Properties.Count - 1; i >= 0; i--)
        {
            var field = type.Properties[i];
            if (IsInFull(field))
                type.Properties.RemoveAt(i);
            else if (field.PropertyType.GetElementType() is { } item)
                WriteSingly(field, item);
        }
    }

    // What writes a whole list in one stroke does not know which fields to leave out.
    private static void WriteSingly(JsonPropertyInfo list, Type item)
    {
        if (list.CustomConverter is IWritesInOneStroke)
            list.CustomConverter = null;
        if (typeof(IMayPass).IsAssignableFrom(item) && list.Get is { } all)
        {
            var keepOpen = KeepOpenOf.MakeGenericMethod(item).CreateDelegate<Func<object?, object?>>();
            list.Get = holder => keepOpen(all(holder));
        }
    }

    private static T[]? KeepOpen<T>(object? items)
        where T : IMayPass => items is T[] all ? Array.FindAll(all, item => !item.HasPassed) : null;

    private static class Cache<T>
    {
        public static JsonTypeInfo<T>? Short { get; set; }
    }
}
