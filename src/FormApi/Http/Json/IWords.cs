namespace FormApi.Http.Json;

/// <summary>A converter that knows a fixed list of words.</summary>
internal interface IWords
{
    /// <summary>The words it accepts.</summary>
    IReadOnlyList<string> Words { get; }
}
