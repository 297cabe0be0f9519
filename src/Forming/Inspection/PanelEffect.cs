using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>How a panel comes off the form as it is, beside the form as it should be, pulled alike.</summary>
/// <param name="Planned">Off the planned form, or null where that is not known.</param>
/// <param name="AsBuilt">Off the form as it is, or null where that is not known.</param>
/// <param name="WhyNot">Why it is not known, or null.</param>
public sealed record PanelEffect(PanelPrediction? Planned, PanelPrediction? AsBuilt, FormattableString? WhyNot)
{
    /// <summary>Pulls the panel over both.</summary>
    /// <param name="planned">The form as it should be.</param>
    /// <param name="built">The form as it is.</param>
    /// <param name="outerFoldRadiusMm">Outer radius of the folds [mm].</param>
    /// <param name="ends">Half or full folds at the ends.</param>
    /// <param name="panel">The panel, or null where none is given.</param>
    /// <param name="beam">The form as a beam; null for a rigid one.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PanelEffect Of(
        FoldedPolygon planned,
        FoldedPolygon built,
        double outerFoldRadiusMm,
        SteppingEnds ends,
        PanelSpec? panel,
        FormBeam? beam,
        CancellationToken cancellation)
    {
        if (panel is null)
            return new(null, null, $"no panel is given, so there is no curve to compare the form with");
        if (built.FoldAngles.ToList().FindIndex(angle => !(angle > 0)) is >= 0 and var flat)
            return new(null, null, $"fold {flat + 1} was not made: the panel cannot be pulled over folds that are not there");
        try
        {
            var plan = JobOf(planned, outerFoldRadiusMm, ends, panel, beam, cancellation);
            // The same hand in both, so that the form is all that differs.
            var wanted = PanelPrediction.Of(plan, cancellation);
            var real = JobOf(built, outerFoldRadiusMm, ends, panel, beam, cancellation) with { LeverMm = wanted.LeverMm ?? plan.LeverMm };
            return new(wanted, PanelPrediction.Of(real, cancellation), null);
        }
        catch (NoSolutionException none)
        {
            return new(null, null, none.Wording);
        }
    }

    private static PredictionJob JobOf(
        FoldedPolygon form,
        double outerFoldRadiusMm,
        SteppingEnds ends,
        PanelSpec panel,
        FormBeam? beam,
        CancellationToken cancellation)
    {
        var standing = new StandingForm([.. form.FlatsMm.Skip(1).Take(form.Folds - 1)], form.FoldAngles, outerFoldRadiusMm);
        return StandingJob.Of(standing, form.FlatsMm[^1], ends, panel, beam, cancellation);
    }
}
