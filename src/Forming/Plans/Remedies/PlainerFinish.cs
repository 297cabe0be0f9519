using Forming.Facets;
using Forming.Jobs;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>A plainer finish: what shows, allowed.</summary>
internal static class PlainerFinish
{
    private const double Safe = 1.01;
    private const double Growth = 1.03;
    private const int Most = 60;
    private const double SteepestDegrees = 45;
    private const double SlopeStepDegrees = 0.1;

    /// <summary>Limits that what shows would pass, wider by steps.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="finish">The limits in force.</param>
    /// <param name="rippleMm">Ripple that shows [mm].</param>
    /// <param name="slope">Slope that shows.</param>
    public static RemedyCandidate For(CallerUnits units, Finish finish, double rippleMm, Angle slope)
    {
        var (isHigh, isSteep) = (rippleMm > finish.RippleMm, slope > finish.Slope);
        return new(isHigh || isSteep ? Most : 0, 0, ChangesAt, TextAt);

        IReadOnlyList<JobChange> ChangesAt(int i) => (isHigh, isSteep) switch
        {
            (true, true) => [new(JobField.PanelAllowedRipple, RippleAt(i)), new(JobField.PanelAllowedSlope, SlopeAt(i))],
            (true, false) => [new(JobField.PanelAllowedRipple, RippleAt(i))],
            _ => [new(JobField.PanelAllowedSlope, SlopeAt(i))],
        };

        FormattableString TextAt(int i) => (isHigh, isSteep) switch
        {
            (true, true) => $"allow a ripple of {Ripple(i)} and a slope of {Slope(i)}, where that much may show",
            (true, false) => $"allow a ripple of {Ripple(i)}, where that much may show",
            _ => (FormattableString)$"allow a slope of {Slope(i)}, where that much may show",
        };

        double RippleAt(int i) => RemedyValues.Ceiling(units.FromMm(rippleMm * Safe * Math.Pow(Growth, i)), RemedyValues.Fine(units));

        double SlopeAt(int i) =>
            Math.Min(SteepestDegrees, RemedyValues.Ceiling(slope.Degrees * Safe * Math.Pow(Growth, i), _ => SlopeStepDegrees));

        Figure Ripple(int i) => Figure.Length(units.ToMm(RippleAt(i)));

        Figure Slope(int i) => Figure.Angle(Angle.FromDegrees(SlopeAt(i)).Radians);
    }
}
