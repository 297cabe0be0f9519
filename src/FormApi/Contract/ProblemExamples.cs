using System.Text.Json.Nodes;
using FormApi.Http.Problems;

namespace FormApi.Contract;

/// <summary>One short example of every kind of problem, as the service words it.</summary>
internal static class ProblemExamples
{
    /// <summary>A trace id like any other (W3C Trace Context has it as its example): a real one is new every time.</summary>
    public const string TraceId = "4bf92f3577b34da6a3ce929d0e0e4736";

    /// <summary>What such a problem says, and its fault where the body is at fault.</summary>
    /// <param name="kind">The kind.</param>
    public static (string Detail, JsonObject? Fault) Of(ProblemKind kind) => kind.Code switch
    {
        "empty-body" => At(kind, "", "The body is empty.", null, "a JSON object"),
        "malformed-json" => At(kind, "", "Invalid JSON at line 1, position 10.", null, "one JSON object, without comments or commas left over"),
        "too-deep" => At(kind, "", "The body nests too deep.", null, "at most 32 levels"),
        "unknown-field" => At(kind, "/panel/curve/radios", "Unknown field. Did you mean radius?", 90, "one of radius, sweep, diameter, chord, rise, arcLength, through, type"),
        "missing-field" => At(kind, "/units", "The field is missing.", null, "one of mm, in"),
        "duplicated-field" => At(kind, "/units", "The field appears twice.", "mm", "each field once"),
        "wrong-type" => At(kind, "/units", "The value has the wrong type.", 3, "one of mm, in"),
        "null-not-allowed" => At(kind, "/units", "The value is null.", null, "one of mm, in"),
        "unknown-value" => At(kind, "/units", "Unknown word. Did you mean mm?", "cm", "one of mm, in"),
        "not-found" => ("Unknown material. Did you mean ss-304?", null),
        "not-acceptable" => ("Available: application/json.", null),
        "too-large" => ("The body may have 1048576 bytes; the setting is Limits:BodyBytes.", null),
        "broken-link" => ("The link was cut, or something was added to it.", null),
        "link-too-long" => ("The link has 5000 characters; 4096 are read.", null),
        "unsupported-media-type" => ("Send application/json (a batch: application/x-ndjson) in UTF-8.", null),
        "bad-request" => ("The query's units are mm or in.", null),
        _ => (kind.Title + ".", null),
    };

    /// <summary>A path that may be answered with such a problem.</summary>
    /// <param name="kind">The kind.</param>
    public static string PathOf(ProblemKind kind) => kind.Code switch
    {
        "not-found" => "/v1/materials/ss-3o4",
        "bad-request" => "/v1/materials",
        "broken-link" => "/v1/links/abc/form",
        "program-impossible" or "program-not-found" => "/v1/programs",
        "cannot-be-made" => "/v1/forms/drawing",
        _ => "/v1/forms",
    };

    private static (string Detail, JsonObject Fault) At(ProblemKind kind, string pointer, string message, JsonNode? given, string allowed)
    {
        var fault = new JsonObject { ["pointer"] = pointer, ["code"] = kind.Code, ["text"] = message };
        if (given is not null || kind == ProblemKinds.NullNotAllowed)
            fault["given"] = given;
        fault["allowed"] = allowed;
        return (pointer.Length == 0 ? message : $"{pointer}: {message}", fault);
    }
}
