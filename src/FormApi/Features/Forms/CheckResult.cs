using System.Text.Json;
using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Checks;

namespace FormApi.Features.Forms;

/// <summary>One value compared with one limit.</summary>
/// <param name="Id">Stable id such as <c>facet-width</c>.</param>
/// <param name="Verdict">The result: <c>fail</c> only for what cannot be folded or is unsafe.</param>
/// <param name="Value">The value; null where it is not known.</param>
/// <param name="Limit">The limit; null where there is none.</param>
/// <param name="Bound">Whether the value should be at <c>least</c> or at <c>most</c> the limit.</param>
/// <param name="Unit">Unit of both; empty for a plain number.</param>
/// <param name="Text">What was found.</param>
/// <param name="Remedy">What to do about it; left out where it passed, or where nothing is known that would.</param>
internal sealed record CheckResult(
    string Id,
    [property: JsonConverter(typeof(WordConverter<Verdict>))] Verdict Verdict,
    double? Value,
    double? Limit,
    [property: JsonConverter(typeof(WordConverter<Bound>))] Bound Bound,
    string Unit,
    string Text,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RemedyResult? Remedy = null)
{
    /// <summary>A check in the caller's units.</summary>
    /// <param name="check">The check.</param>
    /// <param name="units">The caller's units.</param>
    public static CheckResult From(Check check, UnitSystem units) => new(
        check.Id,
        check.Verdict,
        units.Figure(check.Value, check.Quantity),
        units.Figure(check.Limit, check.Quantity),
        check.Bound,
        units.NameOf(check.Quantity),
        units.Wording.Of(check.Text),
        check.Remedy is { } remedy ? RemedyResult.From(remedy, units) : null);
}

/// <summary>What to do about a check that did not pass.</summary>
/// <param name="Text">What to do, in words.</param>
/// <param name="Changes">Changes to the request, to be made together: the engine planned the job with them, found that the check passes,
/// and that no other got worse. Empty where it found none, or where none is tried.</param>
internal sealed record RemedyResult(string Text, ChangeResult[] Changes)
{
    /// <summary>A remedy in the caller's units.</summary>
    /// <param name="remedy">The remedy.</param>
    /// <param name="units">The caller's units.</param>
    public static RemedyResult From(Remedy remedy, UnitSystem units) => new(
        units.Wording.Of(remedy.Text),
        Lists.Map(remedy.Changes, change => new ChangeResult(JobPointers.Of(change), JobPointers.ValueOf(change))));
}

/// <summary>One change to a request.</summary>
/// <param name="Pointer">Where (RFC 6901), in the request as the answer shows it.</param>
/// <param name="Value">What to put there: a number in the request's units, a word, an object, or null.</param>
internal sealed record ChangeResult(string Pointer, [property: WrittenAs(typeof(JsonElement))] RawJson Value);
