using Forming.Contact;
using Forming.Springback;

namespace Forming.Panels;

/// <summary>How far the form gives: it carries what the panel does not.</summary>
public static class FormGiveEstimate
{
    /// <summary>Estimate with the wrap complete: moment <c>F h - M(panel)</c>, rotation <c>∫ max(0, F h - M)/(E'I) ds</c>.</summary>
    /// <param name="sections">Sections along the curve, in order.</param>
    /// <param name="form">Bending law of the form's sheet.</param>
    /// <param name="handForceN">Hand force, whole width [N].</param>
    /// <param name="formWidthMm">The form's width [mm].</param>
    /// <remarks>h is the arm of the hand force, square to the panel's end, about each section. Status: assumption.</remarks>
    public static FormGive Compute(IEnumerable<GiveSection> sections, BendingLaw form, double handForceN, double formWidthMm)
    {
        double rotation = 0, largest = 0, lastMid = 0, lastMoment = 0;
        foreach (var section in sections)
        {
            var moment = Math.Max(0, ((handForceN * section.ArmMm) - section.PanelMomentNmm) / formWidthMm);
            rotation += (section.MidMm - lastMid) * (moment + lastMoment) / 2;
            largest = Math.Max(largest, moment);
            (lastMid, lastMoment) = (section.MidMm, moment);
        }

        return new(new(rotation / form.Stiffness), largest, form.FirstYieldMoment);
    }

    /// <summary>The sections of a straight form.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="leverMm">Hand to the end of the curve [mm].</param>
    /// <param name="panelWidthMm">The panel's width [mm].</param>
    public static IEnumerable<GiveSection> SectionsOf(ContactCurve curve, double leverMm, double panelWidthMm)
    {
        var heading = Point.Along(curve.End.Turn);
        foreach (var run in curve.Runs)
        {
            foreach (var place in run.Sample(8))
            {
                var arm = leverMm + (curve.End.Position - place.Position).Dot(heading);
                yield return new(place.MidMm, arm, place.State.MomentPerWidth * panelWidthMm);
            }
        }
    }
}
