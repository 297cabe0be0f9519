namespace Forming.Results;

/// <summary>One figure held against one limit.</summary>
/// <param name="Id">Stable id such as <c>facet-width</c>.</param>
/// <param name="Verdict">How it came out.</param>
/// <param name="Value">The figure, or null where it is not known.</param>
/// <param name="Limit">The limit, of the same kind as the figure, or null where there is none to hold it against.</param>
/// <param name="Quantity">What kind of quantity both are.</param>
/// <param name="Message">What was found, in words; arguments are <see cref="Figure"/>s.</param>
/// <param name="Remedy">The nearest change that would pass, or null where it passed.</param>
public sealed record Check(
    string Id,
    Verdict Verdict,
    double? Value,
    double? Limit,
    Quantity Quantity,
    FormattableString Message,
    FormattableString? Remedy = null);
