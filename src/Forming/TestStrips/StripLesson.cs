using Forming.Results;

namespace Forming.TestStrips;

/// <summary>What goes along with every figure that strips taught.</summary>
public abstract record StripLesson
{
    /// <summary>Strips that do not go with the others.</summary>
    public required IReadOnlyList<StripOutlier> Outliers { get; init; }

    /// <summary>Why the figure should not be used before something is cleared up; empty where nothing speaks against it.</summary>
    public IReadOnlyList<StripDoubt> Doubts { get; init; } = [];

    /// <summary>What the width of the intervals rests on, in words; null where there is no margin.</summary>
    public FormattableString? MarginText { get; init; }

    /// <summary>What the figure changes in the next form, in words.</summary>
    public required FormattableString Changes { get; init; }

    /// <summary>The strip that would tell most next.</summary>
    public required NextStrip Next { get; init; }

    /// <summary>What the reader should know about the figures.</summary>
    public required IReadOnlyList<ShopNote> Notes { get; init; }

    /// <summary>Cautions for bending strips.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>What the figures rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }
}
