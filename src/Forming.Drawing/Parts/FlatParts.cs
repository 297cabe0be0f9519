using Forming.Results;

namespace Forming.Drawing.Parts;

/// <summary>The parts of a job.</summary>
internal static class FlatParts
{
    /// <summary>Lays a part out.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">Which.</param>
    /// <exception cref="NoSolutionException"><c>drawing.no-such-part</c>: this job has no such part, or it is none.</exception>
    public static FlatPart Of(DrawingJob job, DrawingPart part) => part switch
    {
        DrawingPart.FormBlank => BlankParts.Form(job),
        DrawingPart.PanelBlank => BlankParts.Panel(job),
        DrawingPart.CheckTemplate => GaugeParts.CheckTemplate(job),
        DrawingPart.Rib => RibPart.Of(job),
        DrawingPart.GaugeInside => GaugeParts.Inside(job),
        DrawingPart.GaugeOutside => GaugeParts.Outside(job),
        DrawingPart.StripCard or DrawingPart.PanelCard =>
            throw None($"a card is a page to fill in, nothing to cut", $"Accept: application/pdf or image/svg+xml"),
        _ => GaugeParts.Pulled(job),
    };

    /// <summary>Lays a part out as pages show it.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">Which.</param>
    /// <param name="layout">How much of a blank; null for a strip, and for the whole of a taper.</param>
    /// <exception cref="NoSolutionException"><c>drawing.no-such-part</c>: this job has no such part or strip.</exception>
    public static FlatPart OnPages(DrawingJob job, DrawingPart part, BlankLayout? layout)
    {
        if (layout == BlankLayout.Stick && job.Plan.Taper is not null)
            throw None($"a tapered blank has no story stick: its lines are not parallel, so one strip cannot mark them", $"layout=full, or no layout");

        var isStick = (layout ?? (job.Plan.Taper is null ? BlankLayout.Stick : BlankLayout.Full)) == BlankLayout.Stick;
        return part switch
        {
            DrawingPart.FormBlank when isStick => BlankParts.FormStick(job),
            DrawingPart.PanelBlank when isStick => BlankParts.PanelStick(job),
            _ => Of(job, part),
        };
    }

    /// <summary>Says that a job has no such part.</summary>
    /// <param name="why">Why not.</param>
    /// <param name="instead">What there is.</param>
    public static NoSolutionException None(FormattableString why, FormattableString instead) =>
        new("drawing.no-such-part", "", why, instead);
}
