using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Problems;

/// <summary>What went wrong (RFC 9457).</summary>
/// <param name="Type">Stable path that this service answers with an explanation.</param>
/// <param name="Title">The kind of problem in a few words.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Detail">What went wrong this time.</param>
/// <param name="Instance">Path that was asked for.</param>
/// <param name="Code">Stable code.</param>
/// <param name="TraceId">Trace id, for the service's log.</param>
/// <param name="Errors">Every fault found, where the body is at fault.</param>
internal sealed record Problem(
    string Type,
    string Title,
    int Status,
    string Detail,
    string Instance,
    string Code,
    string TraceId,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<Fault>? Errors)
{
    /// <summary>Members that only some kinds of problem have (RFC 9457, section 3.2), by their names on the wire; null without.</summary>
    // The generator takes what can only be initialised for a parameter of the constructor, which such members cannot be.
    [JsonExtensionData]
    public IDictionary<string, JsonElement>? Extensions { get; set; }
}

/// <summary>One fault in a request.</summary>
/// <param name="Pointer">Where in the body (RFC 6901).</param>
/// <param name="Code">Stable code.</param>
/// <param name="Text">What is wrong.</param>
/// <param name="Given">What was given, as JSON; a long value is cut short. Left out where nothing was given.</param>
/// <param name="Allowed">What would do, in words.</param>
/// <param name="Remedy">Changes that would do; left out where none is known.</param>
internal sealed record Fault(
    string Pointer,
    string Code,
    string Text,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] JsonElement? Given,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Allowed,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RemedyResult? Remedy = null);
