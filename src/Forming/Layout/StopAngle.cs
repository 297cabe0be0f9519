using Forming.Springback;

namespace Forming.Layout;

/// <summary>The angle under load from which a fold springs back to its own.</summary>
public static class StopAngle
{
    /// <summary>Nose to where the leaf bears, where nothing better is known [mm]: an assumption.</summary>
    public const double DefaultReachMm = 12;

    /// <summary>First guess until a test strip says better: <c>a k_i/k_f + (M/E'I) reach/3</c>, <c>k_i = 1/(r + t/2)</c>.</summary>
    /// <param name="foldAngle">Fold angle a after springback.</param>
    /// <param name="fold">Shape of the fold.</param>
    /// <param name="law">Bending law of the form's sheet.</param>
    /// <param name="reachMm">Nose to where the leaf, or half the die opening, bears [mm].</param>
    /// <returns>The angle, or null where the fold would stay elastic.</returns>
    /// <remarks>The second term, the sheet bending between nose and leaf, is why small folds spring back by a large share.</remarks>
    public static Angle? Estimate(Angle foldAngle, FoldShape fold, BendingLaw law, double reachMm)
    {
        var loaded = law.At(1 / (fold.RadiusMm + (fold.ThicknessMm / 2)));
        if (!loaded.IsPlastic)
            return null;
        var elastic = loaded.MomentPerWidth / law.Stiffness;
        return new((foldAngle.Radians * loaded.Curvature / (loaded.Curvature - elastic)) + (elastic * reachMm / 3));
    }

    /// <summary>What test strips taught.</summary>
    /// <param name="foldAngle">Fold angle after springback.</param>
    /// <param name="line">The line through the strips.</param>
    public static Angle From(Angle foldAngle, StopLine line) => line.Offset + (line.Slope * foldAngle);
}
