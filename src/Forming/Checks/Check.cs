using Forming.Jobs;
using Forming.Results;

namespace Forming.Checks;

/// <summary>One value compared with one limit.</summary>
/// <param name="Kind">Which check it is: its id and the kind of quantity of value and limit.</param>
/// <param name="Verdict">Its result.</param>
/// <param name="Value">The value, or null where it is not known.</param>
/// <param name="Limit">The limit, of the same kind as the value, or null where there is none to hold it against.</param>
/// <param name="Text">What was found, in words; arguments are <see cref="Figure"/>s.</param>
/// <param name="Remedy">What to do about it, or null where it passed.</param>
public sealed record Check(
    CheckId Kind,
    Verdict Verdict,
    double? Value,
    double? Limit,
    FormattableString Text,
    Remedy? Remedy = null)
{
    /// <summary>Stable id such as <c>facet-width</c>.</summary>
    public string Id => Kind.Name;

    /// <summary>What kind of quantity value and limit are.</summary>
    public Quantity Quantity => Kind.Quantity;

    /// <summary>To which side of the limit the value should lie.</summary>
    public Bound Bound { get; init; } = Kind.Bound;

    /// <summary>A check with advice that was not tried.</summary>
    /// <param name="kind">Which check it is.</param>
    /// <param name="verdict">Its result.</param>
    /// <param name="value">The value, or null where it is not known.</param>
    /// <param name="limit">The limit, or null where there is none.</param>
    /// <param name="text">What was found.</param>
    /// <param name="advice">What to do, or null where it passed.</param>
    public Check(CheckId kind, Verdict verdict, double? value, double? limit, FormattableString text, FormattableString? advice)
        : this(kind, verdict, value, limit, text, advice is null ? null : new Remedy(advice))
    {
    }
}

/// <summary>On which side of a limit a value should be.</summary>
public enum Bound
{
    /// <summary>At the limit or above it.</summary>
    Least,

    /// <summary>At the limit or below it.</summary>
    Most,
}

/// <summary>The result of one check.</summary>
public enum Verdict
{
    /// <summary>Within the limit.</summary>
    Pass,

    /// <summary>Past the limit, or not known, in something that can still be made.</summary>
    Warn,

    /// <summary>Cannot be folded, or is unsafe.</summary>
    Fail,
}

/// <summary>What to do about a check that did not pass.</summary>
/// <param name="Text">What to do, in words; arguments are <see cref="Figure"/>s.</param>
/// <param name="Changes">Changes to the job that were tried together and found to pass the check with no other one worse; empty where none
/// was found, or none is tried.</param>
public sealed record Remedy(FormattableString Text, IReadOnlyList<JobChange> Changes)
{
    /// <summary>Advice that was not tried.</summary>
    /// <param name="text">What to do.</param>
    public Remedy(FormattableString text)
        : this(text, [])
    {
    }
}
