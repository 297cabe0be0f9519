using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Problems;
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
    [property: InFull] string Text,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RemedyResult? Remedy = null) : IMayPass
{
    /// <inheritdoc/>
    bool IMayPass.HasPassed => Verdict == Verdict.Pass;

    /// <summary>A check in the caller's units.</summary>
    /// <param name="check">The check.</param>
    /// <param name="units">The caller's units.</param>
    public static CheckResult From(Check check, UnitSystem units) => WithoutWords(check, units) with
    {
        Text = units.Wording.Of(check.Text),
        Remedy = check.Remedy is { } remedy ? CheckRemedies.From(remedy, units) : null,
    };

    /// <summary>What a short answer says of checks: those that did not pass, without words.</summary>
    /// <param name="checks">The checks.</param>
    /// <param name="units">The caller's units.</param>
    public static CheckResult[] OpenOf(IReadOnlyList<Check> checks, UnitSystem units)
    {
        var open = new List<CheckResult>();
        foreach (var check in checks)
        {
            if (check.Verdict != Verdict.Pass)
                open.Add(WithoutWords(check, units));
        }

        return [.. open];
    }

    private static CheckResult WithoutWords(Check check, UnitSystem units) => new(
        check.Id,
        check.Verdict,
        units.Figure(check.Value, check.Quantity),
        units.Figure(check.Limit, check.Quantity),
        check.Bound,
        units.NameOf(check.Quantity),
        "");
}

/// <summary>What to do about a check that did not pass, for the answer.</summary>
internal static class CheckRemedies
{
    /// <summary>A remedy in the caller's units.</summary>
    /// <param name="remedy">The remedy.</param>
    /// <param name="units">The caller's units.</param>
    public static RemedyResult From(Remedy remedy, UnitSystem units) => new(
        units.Wording.Of(remedy.Text),
        Lists.Map(remedy.Changes, change => new ChangeResult(JobPointers.Of(change), JobPointers.ValueOf(change))));
}
