using Forming.Springback;

namespace Forming.Facets;

/// <summary>How much of a facet will show: the closed form of the project's wrap model, for planning.</summary>
/// <remarks>
/// Over one facet the moment falls by c/l and the curvature by that times M/(k M'): weak hardening lets the bend gather at the folds.
/// Source key <c>wrap-model</c>: fitted to the project's own simulation; not yet checked against measured panels.
/// </remarks>
public static class PrintThrough
{
    /// <summary>The first facet shows this much more than the others with half folds at the ends.</summary>
    public const double FirstFacetHalf = 1.8;

    /// <summary>The first facet shows this much more than the others with full folds at the ends.</summary>
    public const double FirstFacetFull = 3;

    /// <summary>How far the free side may turn from the touching fold to the hand while the wrap stays in order [rad].</summary>
    internal const double LargestTurn = 0.8;

    /// <summary>Slope over height: <c>slope = 3 w/c</c>.</summary>
    private const double SlopeOverHeight = 3;

    private const double FitDivisor = 11;

    /// <summary>Ripple of one facet.</summary>
    /// <param name="facetMm">Facet width c on the contact side [mm], &gt; 0.</param>
    /// <param name="leverMm">Lever l from the touching fold to the hand [mm], &gt; 0.</param>
    /// <param name="sheet">The panel's state under load.</param>
    /// <param name="stiffness">The panel's E'I per width [N·mm²/mm].</param>
    /// <returns>Height and slope; nothing where the sheet stays elastic; null where the free side rotates too far to know.</returns>
    public static Ripple? Compute(double facetMm, double leverMm, BentState sheet, double stiffness)
    {
        if (!sheet.IsPlastic)
            return new(0, default);
        var gather = GatherPerFacet(leverMm, sheet, stiffness);
        return gather is null ? null : Of(facetMm, facetMm * gather.Value, sheet.Curvature);
    }

    /// <summary>Widest facet whose height and slope both pass.</summary>
    /// <param name="leverMm">Lever l from the touching fold to the hand [mm], &gt; 0.</param>
    /// <param name="sheet">The panel's state under load.</param>
    /// <param name="stiffness">The panel's E'I per width [N·mm²/mm].</param>
    /// <param name="finish">The limits.</param>
    /// <param name="firstFacetFactor">How much more the facet shows than the formula says: 1, or that of a first facet.</param>
    /// <returns>Facet width [mm]; infinite where the sheet stays elastic; null where the free side rotates too far to know.</returns>
    public static double? AllowedFacet(
        double leverMm, BentState sheet, double stiffness, Finish finish, double firstFacetFactor = 1)
    {
        if (!sheet.IsPlastic)
            return double.PositiveInfinity;
        if (GatherPerFacet(leverMm, sheet, stiffness) is not { } a)
            return null;
        if (a == 0)
            return double.PositiveInfinity; // just at yield nothing gathers
        var byHeight = FacetOfHeight(finish.RippleMm / firstFacetFactor, sheet.Curvature, a);
        var bySlope = FacetOfSlope(finish.Slope.Radians / firstFacetFactor, sheet.Curvature, a);
        return Math.Min(byHeight, bySlope);
    }

    /// <summary>Longest lever that keeps the wrap in order, <c>0.8/(k - W/M)</c>.</summary>
    /// <param name="sheet">The panel's state under load.</param>
    /// <returns>Lever from the touching fold to the hand [mm].</returns>
    public static double LongestLever(BentState sheet) =>
        LargestTurn / (sheet.Curvature - (sheet.WorkPerArea / sheet.MomentPerWidth));

    // g/c = (1/l) (M/(k M')) (1 - M'/E'I) cos D / 11
    private static double? GatherPerFacet(double lever, BentState sheet, double stiffness)
    {
        var rotation = lever * (sheet.Curvature - (sheet.WorkPerArea / sheet.MomentPerWidth));
        if (!(rotation < Math.PI / 2))
            return null;
        var sharpness = sheet.MomentPerWidth / (sheet.Curvature * sheet.TangentStiffness);
        return sharpness / lever * (1 - (sheet.TangentStiffness / stiffness)) * Math.Cos(rotation) / FitDivisor;
    }

    // w = (c² k/8) g/√(1 + g²)
    private static Ripple Of(double c, double g, double k)
    {
        var height = double.IsFinite(g) ? c * c * k / 8 * g / Math.Sqrt(1 + (g * g)) : c * c * k / 8;
        return new(height, new(SlopeOverHeight * height / c));
    }

    // With z = c², g = a c: (k/8)² a² z³ = w² (1 + a² z). Both sides' difference is convex, so Newton from the right is monotonic.
    private static double FacetOfHeight(double w, double k, double a)
    {
        var b = k / 8;
        if (!double.IsFinite(a))
            return Math.Sqrt(w / b);
        var z = (w / b) + Math.Pow(w / (a * b), 2.0 / 3);
        for (var i = 0; i < 50; i++)
        {
            var cube = b * b * a * a * z * z * z;
            var step = (cube - (w * w * (1 + (a * a * z)))) / ((3 * cube / z) - (w * w * a * a));
            z -= step;
            if (step <= 1e-14 * z)
                break;
        }

        return Math.Sqrt(z);
    }

    // With z = c²: (3k/8)² a² z² = slope² (1 + a² z), a quadratic.
    private static double FacetOfSlope(double slope, double k, double a)
    {
        var b = SlopeOverHeight * k / 8;
        if (!double.IsFinite(a))
            return slope / b;
        var half = slope * slope / (2 * b * b);
        return Math.Sqrt(half + Math.Sqrt((half * half) + (2 * half / (a * a))));
    }
}

/// <summary>How much of the facets will show.</summary>
/// <param name="Known">Whether the prediction is valid; false never means smooth.</param>
/// <param name="WhyUnknown">Why it is not known, or null.</param>
/// <param name="WidestFacetMm">Widest facet on a curved span [mm].</param>
/// <param name="NearestFacetMm">The facet nearest to its limit [mm], or null where not known.</param>
/// <param name="AllowedFacetMm">How wide that very facet might be [mm]; null where not known or where nothing would show.</param>
/// <param name="RippleMm">Peak-to-valley height of that facet [mm], or null where not known.</param>
/// <param name="Slope">Slope of that facet against the smooth curve, or null where not known.</param>
/// <param name="Allowed">The limits in force.</param>
public sealed record PrintThroughResult(
    bool Known,
    string? WhyUnknown,
    double WidestFacetMm,
    double? NearestFacetMm,
    double? AllowedFacetMm,
    double? RippleMm,
    Angle? Slope,
    Finish Allowed)
{
    internal static PrintThroughResult Unknown(string why, double widestFacetMm, Finish allowed) =>
        new(Known: false, why, widestFacetMm, NearestFacetMm: null, AllowedFacetMm: null, RippleMm: null, Slope: null, allowed);
}

/// <summary>What one facet leaves in the finished panel.</summary>
/// <param name="HeightMm">Peak-to-valley height from the facet's own smooth arc [mm].</param>
/// <param name="Slope">Largest slope against it.</param>
public readonly record struct Ripple(double HeightMm, Angle Slope)
{
    /// <summary>The same facet where it shows more.</summary>
    /// <param name="factor">How much more, dimensionless.</param>
    public Ripple Times(double factor) => new(factor * HeightMm, factor * Slope);

    /// <summary>Whether it passes a finish.</summary>
    /// <param name="finish">The limits.</param>
    public bool Passes(Finish finish) => HeightMm <= finish.RippleMm && Slope <= finish.Slope;
}

/// <summary>How much of the facets may show in the finished panel.</summary>
/// <param name="Name">Name of the finish.</param>
/// <param name="RippleMm">Largest peak-to-valley height over one facet [mm], &gt; 0.</param>
/// <param name="Slope">Largest slope against the smooth curve, &gt; 0.</param>
/// <remarks>The three named limits are assumptions; a shop's own come from test strips.</remarks>
public sealed record Finish(string Name, double RippleMm, Angle Slope)
{
    /// <summary>Whether its limits are the caller's own.</summary>
    public bool IsOwn { get; private init; }

    /// <summary>Paint or polish that mirrors its surroundings.</summary>
    public static Finish Gloss { get; } = new("gloss", 0.02, Angle.FromDegrees(0.3));

    /// <summary>Satin or mill finish.</summary>
    public static Finish Satin { get; } = new("satin", 0.10, Angle.FromDegrees(1.25));

    /// <summary>Out of sight.</summary>
    public static Finish Hidden { get; } = new("hidden", 0.40, Angle.FromDegrees(3));

    /// <summary>A finish with limits of the caller's own.</summary>
    /// <param name="rippleMm">Largest peak-to-valley height over one facet [mm], &gt; 0.</param>
    /// <param name="slope">Largest slope against the smooth curve, &gt; 0.</param>
    public static Finish Own(double rippleMm, Angle slope) => new("own", rippleMm, slope) { IsOwn = true };
}
