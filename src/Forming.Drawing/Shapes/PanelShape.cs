using Forming.Panels;

namespace Forming.Drawing.Shapes;

/// <summary>The panel in section, inside face on the form.</summary>
internal static class PanelShape
{
    /// <summary>The panel while it is pulled.</summary>
    /// <param name="job">The job.</param>
    /// <param name="leadInMm">How much of the lead-in to show [mm].</param>
    /// <param name="leadOutMm">How much of the lead-out to show [mm].</param>
    public static Ribbon Pulled(DrawingJob job, double leadInMm, double leadOutMm)
    {
        var form = job.Plan.Form;
        var contact = form.Section.ContactCurve;
        var end = (form.Sweep - form.Stepping.SweepOver).Radians;
        return Ribbon.Under(
            [contact[0] - new Point(leadInMm, 0), .. SmoothLine.Through(contact, new(1, 0), Point.Along(end)), contact[^1] + (leadOutMm * Point.Along(end))],
            job.Panel.Sheet.ThicknessMm);
    }

    /// <summary>The finished panel; half of one that carries the curve twice.</summary>
    /// <param name="job">The job.</param>
    /// <param name="leadInMm">How much of the lead-in to show [mm].</param>
    /// <param name="leadOutMm">How much of the lead-out to show [mm].</param>
    public static Ribbon Finished(DrawingJob job, double leadInMm, double leadOutMm) => Ribbon.Under(
        FinishedProfile.Of(job.Panel.Curve, job.Panel.Surface, job.Panel.Sheet, leadInMm, leadOutMm), job.Panel.Sheet.ThicknessMm);

    /// <summary>The whole finished panel.</summary>
    /// <param name="job">The job.</param>
    public static Ribbon Finished(DrawingJob job)
    {
        var panel = job.Panel;
        return panel.Mirrored
            ? Finished(job, panel.LeadInMm, panel.LeadOutMm / 2).WithMirroredHalf()
            : Finished(job, panel.LeadInMm, panel.LeadOutMm);
    }
}
