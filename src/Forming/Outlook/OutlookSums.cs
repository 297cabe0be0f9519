using Forming.Springback;
using MathNet.Numerics.Distributions;

namespace Forming.Outlook;

/// <summary>From what each cause does to bands, chances and shares.</summary>
/// <param name="Plan">The outcome as planned.</param>
/// <param name="Influences">What each cause does.</param>
internal sealed record OutlookSums(Outcome Plan, IReadOnlyList<Influence> Influences)
{
    /// <summary>A strip's released radius is read this well, as a share: an assumption.</summary>
    private const double StripReading = 0.01;

    /// <summary>Step of a yield stress from which a strip's sensitivity is taken, as a share.</summary>
    private const double YieldStep = 0.01;

    private static readonly int Causes = Enum.GetValues<ScatterCause>().Length;

    private static readonly double TwoSided = Normal.InvCDF(0, 1, 0.975);

    private static readonly double OneSided = Normal.InvCDF(0, 1, 0.95);

    private readonly Outcome _mean = Influences.Aggregate(Plan, (sum, influence) => sum + influence.Shift);

    private readonly Outcome _variance = Influences.Aggregate(default(Outcome), (sum, influence) => sum + influence.First.Squared);

    /// <summary>Logarithm by which the largest share of the finish's limits grows: shift of its mean, and standard deviation.</summary>
    public (double Shift, double Deviation) Showing => (_mean.LnShare - Plan.LnShare, Math.Sqrt(_variance.LnShare));

    /// <summary>Band of the radius [mm].</summary>
    public OutlookBand Radius => new(
        Math.Exp(_mean.LnRadius - (TwoSided * Math.Sqrt(_variance.LnRadius))),
        Math.Exp(Plan.LnRadius),
        Math.Exp(_mean.LnRadius + (TwoSided * Math.Sqrt(_variance.LnRadius))));

    /// <summary>Band of the sweep [rad]; a panel bent one way never comes off turned the other way, so it ends at 0.</summary>
    public OutlookBand Sweep => new(
        Math.Max(0, _mean.Sweep - (TwoSided * Math.Sqrt(_variance.Sweep))),
        Plan.Sweep,
        _mean.Sweep + (TwoSided * Math.Sqrt(_variance.Sweep)));

    /// <summary>Largest ripple [mm] as planned, and what 95 of 100 panels stay below.</summary>
    public (double ValueMm, double HighMm) Ripple =>
        (Math.Exp(Plan.LnHeight), Math.Exp(_mean.LnHeight + (OneSided * Math.Sqrt(_variance.LnHeight))));

    /// <summary>Chance that every facet passes the finish.</summary>
    public double ChanceOfFacets => Below(0, _mean.LnShare, _variance.LnShare);

    /// <summary>Chance that the sweep is within a tolerance.</summary>
    /// <param name="wanted">Wanted sweep [rad].</param>
    /// <param name="tolerance">To either side [rad].</param>
    public double ChanceOfSweep(double wanted, double tolerance) =>
        Below(wanted + tolerance, _mean.Sweep, _variance.Sweep) - Below(wanted - tolerance, _mean.Sweep, _variance.Sweep);

    /// <summary>[5] shares of the variance, cause by cause; empty where nothing varies.</summary>
    /// <param name="ofRadius">Of the radius, or else of the sweep.</param>
    public IReadOnlyList<double> Shares(bool ofRadius)
    {
        var whole = Of(_variance);
        if (!(whole > 0))
            return [];
        var shares = new double[Causes];
        foreach (var influence in Influences)
            shares[(int)influence.Cause] += Of(influence.First.Squared) / whole;
        return shares;

        double Of(Outcome squares) => ofRadius ? squares.LnRadius : squares.Sweep;
    }

    /// <summary>The same after one springback strip of the coil, bent to the same curvature and read well.</summary>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="loaded">Curvature under load [1/mm].</param>
    /// <param name="scatter">Standard deviation of the yield stress before it, as a share.</param>
    /// <remarks>
    /// Its reading adds to what was known of the yield stress: the inverse squares of both deviations add up. Where springback hardly
    /// depends on the yield stress a strip teaches little of it, and little is needed.
    /// </remarks>
    public OutlookSums AfterStrip(BendingLaw law, double loaded, double scatter)
    {
        double softer = law.Stronger(1 - YieldStep).Release(loaded), stronger = law.Stronger(1 + YieldStep).Release(loaded);
        if (!(stronger > 0))
            return this;
        var taught = Math.Log(softer / stronger) / (2 * YieldStep) * scatter / StripReading;
        var share = 1 / Math.Sqrt(1 + (taught * taught));
        return new(
            Plan,
            [.. Influences.Select(influence => influence.Cause == ScatterCause.Yield ? influence.Narrower(share) : influence)]);
    }

    private static double Below(double limit, double mean, double variance) =>
        variance > 0 ? Normal.CDF(mean, Math.Sqrt(variance), limit) : limit >= mean ? 1 : 0;
}
