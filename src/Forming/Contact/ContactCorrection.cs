using Forming.Numerics;

namespace Forming.Contact;

/// <summary>How the contact curve that a form offers departs from the one of pure bending, so that the panel comes off as wanted.</summary>
/// <param name="Stretches">One for each curved stretch, in order.</param>
public sealed record ContactCorrection(IReadOnlyList<StretchCorrection> Stretches)
{
    /// <summary>Factor on the curvature under load at a place.</summary>
    /// <param name="midMm">Place along the curve's mid surface [mm].</param>
    public double At(double midMm)
    {
        var i = 0;
        while (i < Stretches.Count - 1 && midMm > Stretches[i].EndMidMm)
            i++;
        return Stretches[i].At(midMm);
    }
}

/// <summary>
/// The correction of one curved stretch: a slowly varying factor on the curvature, and what the folds at its ends turn beside.
/// </summary>
/// <param name="StartMidMm">Where it begins along the curve's mid surface [mm].</param>
/// <param name="EndMidMm">Where it ends [mm].</param>
/// <param name="Series">[n] Chebyshev series of the factor less 1 over the stretch, n at least 1.</param>
/// <param name="StartTurn">Turn at its first tangent point [rad].</param>
/// <param name="EndTurn">Turn at its last tangent point [rad].</param>
public sealed record StretchCorrection(double StartMidMm, double EndMidMm, double[] Series, double StartTurn, double EndTurn)
{
    /// <summary>Factor on the curvature under load at a place.</summary>
    /// <param name="midMm">Place along the curve's mid surface [mm].</param>
    public double At(double midMm)
    {
        var u = Math.Clamp((midMm - StartMidMm) / (EndMidMm - StartMidMm), 0, 1);
        return 1 + Chebyshev.Evaluate(Series, u);
    }
}
