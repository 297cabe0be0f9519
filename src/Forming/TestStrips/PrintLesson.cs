using Forming.Materials;
using Forming.Prediction;

namespace Forming.TestStrips;

/// <summary>What is asked of strips judged by eye.</summary>
/// <param name="Material">Their material.</param>
/// <param name="Strips">The strips, at least one.</param>
public sealed record PrintQuestion(Material Material, IReadOnlyList<PrintStrip> Strips);

/// <summary>A strip pulled over facets and looked at.</summary>
/// <param name="FacetMm">Facet of the form on its contact side [mm], &gt; 0.</param>
/// <param name="FormRadiusMm">Radius of the form's contact curve [mm], &gt; 0.</param>
/// <param name="ThicknessMm">Thickness of the strip [mm], &gt; 0.</param>
/// <param name="LeverMm">Touching fold to hand [mm], or null for the one a plan would choose.</param>
/// <param name="IsFirstFacet">Whether the facet looked at is the first after the flat, with a half fold before it.</param>
/// <param name="Shows">Whether the facets show.</param>
public sealed record PrintStrip(
    double FacetMm, double FormRadiusMm, double ThicknessMm, double? LeverMm, bool IsFirstFacet, bool Shows)
{
    /// <summary>The form as it is; null makes one of a few like facets. All of its facets are looked at.</summary>
    public FacetedBar? Over { get; init; }

    /// <summary>Width of the strip [mm], &gt; 0; null takes it as wide as a panel.</summary>
    public double? WidthMm { get; init; }

    /// <summary>A strip over a form that is known fold by fold.</summary>
    /// <param name="over">The form.</param>
    /// <param name="thicknessMm">Thickness of the strip [mm], &gt; 0.</param>
    /// <param name="shows">Whether a facet shows.</param>
    public static PrintStrip OverForm(FacetedBar over, double thicknessMm, bool shows)
    {
        var places = FoldPlaces.Of(over.Form, over.Ends, wanted: null, thicknessMm);
        var radius = (places.EndMm / places.Sweep) - (thicknessMm / 2);
        return new(over.Form.FacetsMm.Max(), radius, thicknessMm, over.LeverMm, IsFirstFacet: false, shows)
        {
            Over = over,
        };
    }
}

/// <summary>The ripple that a strip must have had.</summary>
/// <param name="LeverMm">Lever it was calculated with [mm].</param>
/// <param name="RippleMm">Peak-to-valley height [mm], or null where the strip shows nothing.</param>
/// <param name="Slope">Slope against the smooth curve, or null where the strip shows nothing.</param>
/// <param name="WhyUnusable">Why it shows nothing, or null; arguments are <see cref="Results.Figure"/>s.</param>
/// <param name="IsSimulated">Whether the strip's own pull was followed; else the closed form gave the ripple.</param>
public sealed record PrintReading(double LeverMm, double? RippleMm, Angle? Slope, FormattableString? WhyUnusable, bool IsSimulated = false);

/// <summary>A strip that was smooth though another with no more ripple shows.</summary>
/// <param name="Smooth">Place of the smooth one in the list, from 0.</param>
/// <param name="Showing">Place of the one that shows.</param>
/// <param name="Text">Both ripples, in words; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record PrintContradiction(int Smooth, int Showing, FormattableString Text);

/// <summary>What strips taught about the ripple that may show.</summary>
/// <param name="LargestSmoothMm">Largest ripple judged smooth [mm], or null where no strip was smooth.</param>
/// <param name="SmallestShowingMm">Smallest ripple judged to show [mm], or null where none shows.</param>
/// <param name="AllowedRippleMm">Largest ripple judged smooth below every one that shows [mm], or null where there is none.</param>
/// <param name="SlopeThere">Slope of that strip, or null.</param>
/// <param name="Readings">The strips, one by one.</param>
/// <param name="Contradictions">Verdicts that go against each other.</param>
public sealed record PrintLesson(
    double? LargestSmoothMm,
    double? SmallestShowingMm,
    double? AllowedRippleMm,
    Angle? SlopeThere,
    IReadOnlyList<PrintReading> Readings,
    IReadOnlyList<PrintContradiction> Contradictions) : StripLesson;
