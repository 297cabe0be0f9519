using Forming.Blanks;
using Forming.Curves;

namespace Forming.Drawing.Shapes;

/// <summary>The panel, its inside face on the form.</summary>
internal static class PanelShape
{
    /// <summary>The panel while it is pulled, in section; the near end of a taper.</summary>
    /// <param name="job">The job.</param>
    public static Ribbon Pulled(DrawingJob job)
    {
        var (form, panel) = (job.Plan.Form, job.Panel);
        if (job.Plan.Taper is { Solid: var solid })
            return RuledSheet.Outside(solid.PanelNear, solid.PanelFar, panel.Sheet.ThicknessMm).NearEnd;
        var contact = form.Section.ContactCurve;
        var end = Point.Along((form.Sweep - form.Stepping.SweepOver).Radians);
        return Ribbon.Under(
            [contact[0] - new Point(panel.LeadInMm, 0), .. SmoothLine.Through(contact, new(1, 0), end), contact[^1] + (LeadOut(job) * end)],
            panel.Sheet.ThicknessMm);
    }

    /// <summary>The finished panel in section; half of one that carries the curve twice, the near end of a taper.</summary>
    /// <param name="job">The job.</param>
    public static Ribbon Finished(DrawingJob job) => job.Plan.Taper is null ? Section(job) : Taper(job).NearEnd;

    /// <summary>The finished panel in section; half of one that carries the curve twice; not for a taper.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stepsPerPiece">Steps along each smooth piece.</param>
    public static Ribbon Finished(DrawingJob job, int stepsPerPiece) => Section(job, stepsPerPiece);

    /// <summary>The whole finished panel; of a taper that carries the curve twice, the half that the form serves.</summary>
    /// <param name="job">The job.</param>
    public static RuledSheet Whole(DrawingJob job)
    {
        if (job.Plan.Taper is not null)
            return Taper(job);
        var section = Section(job);
        return RuledSheet.Of(job.Panel.Mirrored ? section.WithMirroredHalf() : section, job.Plan.Panel.Blank.WidthMm);
    }

    /// <summary>The sweep that was asked for, of a taper that of both its edges.</summary>
    /// <param name="job">The job.</param>
    public static Angle AskedSweep(DrawingJob job) => Asked(job).Sweep;

    /// <summary>The curve that was asked for, on the mid surface; of a taper that of its near edge.</summary>
    /// <param name="job">The job.</param>
    public static FinishedCurve Asked(DrawingJob job) => FinishedCurve.On(
        job.Panel.Curve is TaperCurve taper ? taper.Near : job.Panel.Curve, job.Panel.Surface, job.Panel.Sheet.ThicknessMm);

    /// <summary>The flat after the curve as it is drawn: half of it where the curve comes twice [mm].</summary>
    /// <param name="job">The job.</param>
    public static double LeadOut(DrawingJob job) => job.Panel.Mirrored ? job.Panel.LeadOutMm / 2 : job.Panel.LeadOutMm;

    private static Ribbon Section(DrawingJob job, int stepsPerPiece = 48) => Ribbon.Under(
        FinishedProfile.Of(job.Panel.Curve, job.Panel.Surface, job.Panel.Sheet, job.Panel.LeadInMm, LeadOut(job), stepsPerPiece),
        job.Panel.Sheet.ThicknessMm);

    private static RuledSheet Taper(DrawingJob job)
    {
        var solid = job.Plan.Taper!.Solid;
        return RuledSheet.Outside(solid.FinishedNear, solid.FinishedFar, job.Panel.Sheet.ThicknessMm);
    }
}
