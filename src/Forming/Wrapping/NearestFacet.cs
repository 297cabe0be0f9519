using Forming.Contact;
using Forming.Facets;
using Forming.Springback;

namespace Forming.Wrapping;

/// <summary>Looks at the facets of a form one by one and keeps the one that comes nearest to its limit.</summary>
/// <param name="finish">The limits.</param>
internal sealed class NearestFacet(Finish finish)
{
    private double _nearestShare = -1;
    private (FacetJudge Judge, double Mm, ContactPoint From, BentState Tightest, bool IsFirst) _nearest;
    private Ripple _ripple;

    /// <summary>Widest facet so far [mm].</summary>
    public double WidestMm { get; private set; }

    /// <summary>Looks at a facet.</summary>
    /// <param name="judge">Tells whether it would show.</param>
    /// <param name="facet">Its width [mm].</param>
    /// <param name="from">The fold before it.</param>
    /// <param name="tightest">The panel's state where it is bent the most over it.</param>
    /// <param name="isFirst">Whether it is the first of its curved stretch.</param>
    public void Look(FacetJudge judge, double facet, in ContactPoint from, in BentState tightest, bool isFirst)
    {
        WidestMm = Math.Max(WidestMm, facet);
        var expected = judge.RippleOf(facet, from, tightest, isFirst);
        var share = Math.Max(expected.HeightMm / finish.RippleMm, expected.Slope.Radians / finish.Slope.Radians);
        if (share > _nearestShare)
            (_nearestShare, _ripple, _nearest) = (share, expected, (judge, facet, from, tightest, isFirst));
    }

    /// <summary>The facet nearest to its limit, with its own figures.</summary>
    public PrintThroughResult Known()
    {
        var allowed = _nearest.Judge.AllowedFacet(_nearest.From, _nearest.Tightest, _nearest.IsFirst);
        return new(true, null, WidestMm, _nearest.Mm, double.IsFinite(allowed) ? allowed : null, _ripple.HeightMm, _ripple.Slope, finish);
    }

    /// <summary>No figures.</summary>
    /// <param name="why">Why not.</param>
    public PrintThroughResult Unknown(string why) => new(false, why, WidestMm, null, null, null, null, finish);
}
