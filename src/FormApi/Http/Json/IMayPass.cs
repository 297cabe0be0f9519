namespace FormApi.Http.Json;

/// <summary>A finding that a short answer leaves out where all is well.</summary>
internal interface IMayPass
{
    /// <summary>Whether all is well.</summary>
    bool HasPassed { get; }
}
