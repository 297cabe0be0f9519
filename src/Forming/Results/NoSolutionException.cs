namespace Forming.Results;

/// <summary>What was asked has no answer: the curve reverses, the radii leave no room, no count of folds will do.</summary>
/// <param name="code">Stable code, <c>subject.reason</c>, lower case.</param>
/// <param name="subject">Which input is in the way, as a path of contract field names such as <c>form.foldRadius</c>.</param>
/// <param name="wording">What is wrong and where, in words for the shop; its arguments are <see cref="Figure"/>s.</param>
/// <param name="allowed">What would do, in words.</param>
/// <param name="remedy">Changes that would do; null where none is known.</param>
public sealed class NoSolutionException(
    string code,
    string subject,
    FormattableString wording,
    FormattableString? allowed = null,
    InputRemedy? remedy = null)
    : Exception(FormattableString.Invariant(wording))
{
    /// <summary>Stable code, <c>subject.reason</c>.</summary>
    public string Code { get; } = code;

    /// <summary>Which input is in the way, as a path of contract field names.</summary>
    public string Subject { get; } = subject;

    /// <summary>What is wrong and where; its arguments are <see cref="Figure"/>s, so the unit is the reader's.</summary>
    public FormattableString Wording { get; } = wording;

    /// <summary>What would do, in words.</summary>
    public FormattableString? Allowed { get; } = allowed;

    /// <summary>Changes that would do; null where none is known.</summary>
    public InputRemedy? Remedy { get; } = remedy;
}
