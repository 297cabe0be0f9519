using System.Text.Json;
using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Checks;

namespace FormApi.Features.Forms;

/// <summary>One figure held against one limit.</summary>
/// <param name="Id">Stable id such as <c>facet-width</c>.</param>
/// <param name="Verdict">How it came out: <c>fail</c> only for what cannot be folded or is unsafe.</param>
/// <param name="Value">The figure; null where it is not known.</param>
/// <param name="Limit">The limit; null where there is none.</param>
/// <param name="Unit">Unit of both; empty for a plain number.</param>
/// <param name="Message">What was found.</param>
/// <param name="Remedy">What to do about it; null where it passed.</param>
internal sealed record CheckResult(
    string Id,
    [property: JsonConverter(typeof(WordConverter<Verdict>))] Verdict Verdict,
    double? Value,
    double? Limit,
    string Unit,
    string Message,
    RemedyResult? Remedy)
{
    /// <summary>A check in the caller's units.</summary>
    /// <param name="check">The check.</param>
    /// <param name="units">The units.</param>
    public static CheckResult From(Check check, UnitSystem units) => new(
        check.Id,
        check.Verdict,
        units.Figure(check.Value, check.Quantity),
        units.Figure(check.Limit, check.Quantity),
        units.NameOf(check.Quantity),
        units.Wording.Of(check.Message),
        check.Remedy is { } remedy ? new(units.Wording.Of(remedy.Text), Lists.Map(remedy.Changes, change => new ChangeResult(JobPointers.Of(change), JobPointers.ValueOf(change)))) : null);
}

/// <summary>What to do about a check that did not pass.</summary>
/// <param name="Text">What to do, in words.</param>
/// <param name="Changes">Changes to the request, to be made together: the engine planned the job with them, found that the check passes, and that no other came out worse. Empty where it found none, or where none is tried.</param>
internal sealed record RemedyResult(string Text, ChangeResult[] Changes);

/// <summary>One change to a request.</summary>
/// <param name="Pointer">Where (RFC 6901), in the request as the answer shows it.</param>
/// <param name="Value">What to put there: a number in the request's units, a word, an object, or null.</param>
internal sealed record ChangeResult(string Pointer, [property: WrittenAs(typeof(JsonElement))] RawJson Value);
