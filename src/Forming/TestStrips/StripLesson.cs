using Forming.Results;

namespace Forming.TestStrips;

/// <summary>What goes along with every value that strips taught.</summary>
public abstract record StripLesson
{
    /// <summary>Strips that do not go with the others.</summary>
    public required IReadOnlyList<StripOutlier> Outliers { get; init; }

    /// <summary>Why the value should not be used before something is cleared up; empty where nothing is in the way.</summary>
    public IReadOnlyList<StripDoubt> Doubts { get; init; } = [];

    /// <summary>What the width of the intervals rests on, in words; null where there is no margin.</summary>
    public FormattableString? MarginText { get; init; }

    /// <summary>What the value changes in the next form, in words.</summary>
    public required FormattableString Changes { get; init; }

    /// <summary>What to do with what was learnt; null while there is nothing to plan with.</summary>
    public required FormattableString? Planning { get; init; }

    /// <summary>Whether it is planned with before another strip is bent.</summary>
    public bool IsEnough { get; init; } = true;

    /// <summary>The most useful next strip.</summary>
    public required NextStrip Next { get; init; }

    /// <summary>What the reader should know about the values.</summary>
    public required IReadOnlyList<ShopNote> Notes { get; init; }

    /// <summary>Cautions for bending strips.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }
}

/// <summary>A strip that does not go with the others; it is named, and still counted.</summary>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Text">How far it is out and what leaving it out would do; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record StripOutlier(int Index, FormattableString Text);

/// <summary>The most useful next strip.</summary>
/// <param name="Text">What to bend and why; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record NextStrip(FormattableString Text)
{
    /// <summary>Stop angle to set, or null where it is not the point.</summary>
    public Angle? StopAngle { get; init; }

    /// <summary>Fold angle to aim at, or null where it is not the point.</summary>
    public Angle? FoldAngle { get; init; }

    /// <summary>Radius of the form [mm], or null where it is not the point.</summary>
    public double? FormRadiusMm { get; init; }

    /// <summary>Facet of the form [mm], or null where it is not the point.</summary>
    public double? FacetMm { get; init; }

    /// <summary>Lever to pull at [mm], or null where it is not the point.</summary>
    public double? LeverMm { get; init; }

    /// <summary>Thickness of the strip [mm], or null where it is not the point.</summary>
    public double? ThicknessMm { get; init; }
}

/// <summary>To where the legs of a folded strip are measured.</summary>
public enum FlangeEnd
{
    /// <summary>To the mold line, where the outside faces would meet if the fold were sharp.</summary>
    MoldLine,

    /// <summary>To the tangent line, where the straight part ends.</summary>
    TangentLine,
}
