namespace FormApi.Http.Json;

/// <summary>A converter that knows a fixed list of words.</summary>
internal interface IWords
{
    /// <summary>The words it accepts.</summary>
    IReadOnlyList<string> Words { get; }

    /// <summary>The word that another one means, or null.</summary>
    /// <param name="word">The other word, in any case.</param>
    string? MeantBy(string word);
}
