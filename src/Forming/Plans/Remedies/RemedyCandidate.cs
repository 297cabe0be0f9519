using Forming.Jobs;

namespace Forming.Plans.Remedies;

/// <summary>One way to cure a check: changes of one kind, the smallest first.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="Start">Index at which to begin.</param>
/// <param name="At">The changes by index.</param>
/// <param name="TextAt">What to do, in words, by index.</param>
internal sealed record RemedyCandidate(int Count, int Start, Func<int, IReadOnlyList<JobChange>> At, Func<int, FormattableString> TextAt)
{
    /// <summary>A single set of changes.</summary>
    /// <param name="text">What to do, in words.</param>
    /// <param name="changes">The changes.</param>
    public static RemedyCandidate One(FormattableString text, params JobChange[] changes) => new(1, 0, _ => changes, _ => text);

    /// <summary>A field through a row of values.</summary>
    /// <param name="values">The values.</param>
    /// <param name="changes">The changes by value.</param>
    /// <param name="text">What to do, in words, by value.</param>
    public static RemedyCandidate Through(RemedyValues values, Func<double, IReadOnlyList<JobChange>> changes, Func<double, FormattableString> text) =>
        new(values.Numbers.Count, values.Start, i => changes(values.Numbers[i]), i => text(values.Numbers[i]));
}
