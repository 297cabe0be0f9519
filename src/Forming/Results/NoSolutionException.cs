namespace Forming.Results;

/// <summary>What was asked has no answer: the curve reverses, the radii leave no room, no count of folds will do.</summary>
/// <param name="code">Stable code, <c>subject.reason</c>, lower case.</param>
/// <param name="subject">Which input stands in the way, as a path of contract field names such as <c>form.foldRadius</c>.</param>
/// <param name="message">What is wrong and where, in words for the shop; lengths in it are in mm.</param>
/// <param name="given">The figure that was given, if one figure is to blame.</param>
/// <param name="allowed">What would do, in words.</param>
public sealed class NoSolutionException(string code, string subject, string message, double? given = null, string? allowed = null)
    : Exception(message)
{
    /// <summary>Stable code, <c>subject.reason</c>.</summary>
    public string Code { get; } = code;

    /// <summary>Which input stands in the way, as a path of contract field names.</summary>
    public string Subject { get; } = subject;

    /// <summary>The figure that was given, in mm, MPa or degrees.</summary>
    public double? Given { get; } = given;

    /// <summary>What would do, in words.</summary>
    public string? Allowed { get; } = allowed;
}
