namespace Forming.Results;

/// <summary>What a headline value rests on.</summary>
/// <param name="Quantity">The value, by its name in the answer.</param>
/// <param name="Method">The formula or method, in words.</param>
/// <param name="Source">The published text, or what is used in its place.</param>
/// <param name="Status">How well it is supported.</param>
public sealed record Basis(string Quantity, string Method, string Source, Status Status);

/// <summary>How well a value or a method is supported.</summary>
public enum Status
{
    /// <summary>Read in the published text that is named.</summary>
    Published,

    /// <summary>Read in a secondary copy that quotes the published text.</summary>
    PublishedAsQuoted,

    /// <summary>Computed by hand or by a second method from stated formulas; printed nowhere.</summary>
    Computed,

    /// <summary>Common practice of the trade; no source.</summary>
    CommonPractice,

    /// <summary>From memory; the text was not read for this project.</summary>
    FromMemory,

    /// <summary>From the project's wrap model, not yet checked against measured panels.</summary>
    Model,

    /// <summary>Estimated from other properties.</summary>
    Estimated,

    /// <summary>An assumption that a caller may replace.</summary>
    Assumption,

    /// <summary>The caller's own value.</summary>
    Caller,
}
