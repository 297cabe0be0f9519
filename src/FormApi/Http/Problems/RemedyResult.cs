using System.Text.Json;
using FormApi.Http.Json;

namespace FormApi.Http.Problems;

/// <summary>What to do about a check that did not pass, or a request without an answer.</summary>
/// <param name="Text">What to do, in words.</param>
/// <param name="Changes">Changes to the request, to be made together: for a check, the engine planned the job with them, found that it
/// passes, and that no other got worse. Empty where it found none, or where none is tried.</param>
internal sealed record RemedyResult(string Text, ChangeResult[] Changes);

/// <summary>One change to a request.</summary>
/// <param name="Pointer">Where (RFC 6901), in the request as the answer shows it.</param>
/// <param name="Value">What to put there: a number in the request's units, a word, an object, or null.</param>
internal sealed record ChangeResult(string Pointer, [property: WrittenAs(typeof(JsonElement))] RawJson Value);
