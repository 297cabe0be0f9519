using Forming.Contact;
using Forming.Springback;

namespace Forming.Panels;

/// <summary>How far the form gives: it carries what the panel does not.</summary>
public static class FormGiveEstimate
{
    /// <summary>Estimate with the wrap complete: moment <c>F h - M(panel)</c>, rotation <c>∫ max(0, F h - M)/(E'I) ds</c>.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="form">Bending law of the form's sheet.</param>
    /// <param name="handForceN">Hand force, whole width [N].</param>
    /// <param name="leverMm">Hand to the end of the curve [mm].</param>
    /// <param name="panelWidthMm">The panel's width [mm].</param>
    /// <param name="formWidthMm">The form's width [mm].</param>
    /// <remarks>h is the lever of the hand force, square to the panel's end, about each section. Status: assumption.</remarks>
    public static FormGive Compute(
        ContactCurve curve, BendingLaw form, double handForceN, double leverMm, double panelWidthMm, double formWidthMm)
    {
        var heading = Point.Along(curve.End.Turn);
        double rotation = 0, largest = 0, lastMid = 0, lastMoment = 0;
        foreach (var run in curve.Runs)
        {
            foreach (var place in run.Sample(8))
            {
                var arm = leverMm + (curve.End.Position - place.Position).Dot(heading);
                var carried = ((handForceN * arm) - (place.State.MomentPerWidth * panelWidthMm)) / formWidthMm;
                var moment = Math.Max(0, carried);
                rotation += (place.MidMm - lastMid) * (moment + lastMoment) / 2;
                largest = Math.Max(largest, moment);
                (lastMid, lastMoment) = (place.MidMm, moment);
            }
        }

        return new(new(rotation / form.Stiffness), largest, form.FirstYieldMoment);
    }
}
