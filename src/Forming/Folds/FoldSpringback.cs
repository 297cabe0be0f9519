using Forming.Springback;

namespace Forming.Folds;

/// <summary>What test strips taught: stop angle = offset + slope × fold angle.</summary>
/// <param name="Offset">Stop angle at a fold of zero.</param>
/// <param name="Slope">Growth of the stop angle with the fold angle, dimensionless, &gt; 0.</param>
public sealed record StopLine(Angle Offset, double Slope);

/// <summary>How stop angles are rounded to the steps of a stop.</summary>
public enum StopRounding
{
    /// <summary>Each group of alike folds by itself: the fewest settings.</summary>
    Each,

    /// <summary>
    /// Along the form, each fold making up for what rounding left so far: the sum comes out within half a step, at the cost of more
    /// settings.
    /// </summary>
    Sum,
}

/// <summary>From a fold's own angle to the angle under load from which it springs back: a straight line.</summary>
/// <param name="Line">The line, or null where the fold would stay elastic.</param>
public readonly record struct FoldSpringback(StopLine? Line)
{
    /// <summary>Nose to where the leaf bears, where nothing better is known [mm]: an assumption.</summary>
    public const double DefaultReachMm = 12;

    /// <summary>First guess until a test strip says better: <c>a k_i/k_f + (M/E'I) reach/3</c>, <c>k_i = 1/(r + t/2)</c>.</summary>
    /// <param name="fold">Shape of the fold.</param>
    /// <param name="law">Bending law of the form's sheet.</param>
    /// <param name="reachMm">Nose to where the leaf, or half the die opening, bears [mm].</param>
    /// <remarks>The second term, the sheet bending between nose and leaf, is why small folds spring back by a large share.</remarks>
    public static FoldSpringback Estimate(FoldShape fold, BendingLaw law, double reachMm)
    {
        var loaded = law.At(1 / (fold.RadiusMm + (fold.ThicknessMm / 2)));
        if (!loaded.IsPlastic)
            return default;
        var elastic = loaded.MomentPerWidth / law.Stiffness;
        return new(new StopLine(new(elastic * reachMm / 3), loaded.Curvature / (loaded.Curvature - elastic)));
    }

    /// <summary>Stop angle of a fold.</summary>
    /// <param name="foldAngle">Fold angle after springback.</param>
    public Angle? StopAngle(Angle foldAngle) => Line is { } line ? line.Offset + (line.Slope * foldAngle) : null;
}
