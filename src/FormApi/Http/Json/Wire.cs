using System.Text.Json;

namespace FormApi.Http.Json;

/// <summary>How names in the code are spelt on the wire.</summary>
internal static class Wire
{
    /// <summary>The word for an enum value, such as <c>cannot-be-made</c>.</summary>
    /// <typeparam name="T">The enum.</typeparam>
    /// <param name="value">The value.</param>
    public static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>All words of an enum, in order.</summary>
    /// <typeparam name="T">The enum.</typeparam>
    public static IReadOnlyList<string> Words<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(Word)];

    /// <summary>A dotted path as a JSON pointer: <c>panel.curve.segments[2]</c> becomes <c>/panel/curve/segments/2</c>.</summary>
    /// <param name="path">The path; empty is the whole document.</param>
    public static string Pointer(string path) =>
        path.Length == 0
            ? ""
            : "/" + path.Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal).Replace('.', '/');
}
