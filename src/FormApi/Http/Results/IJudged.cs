namespace FormApi.Http.Results;

/// <summary>An answer that has a verdict.</summary>
internal interface IJudged
{
    /// <summary>The verdict of the checks, as it is written.</summary>
    string VerdictWord { get; }
}
