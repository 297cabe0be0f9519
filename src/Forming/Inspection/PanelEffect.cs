using Forming.Curves;
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
        return Of(
            built,
            () => JobOf(planned, outerFoldRadiusMm, ends, panel, beam, cancellation),
            () => JobOf(built, outerFoldRadiusMm, ends, panel, beam, cancellation),
            cancellation);
    }

    /// <summary>Pulls the panel over both, by strips along their folds, which are not parallel.</summary>
    /// <param name="planned">The form as it should be.</param>
    /// <param name="built">The form as it is.</param>
    /// <param name="outerFoldRadiusMm">Outer radius of the folds [mm].</param>
    /// <param name="ends">Half or full folds at the ends.</param>
    /// <param name="panel">The tapered panel.</param>
    /// <param name="beam">The form as a beam; null for a rigid one.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PanelEffect Of(
        HingedForm planned,
        HingedForm built,
        double outerFoldRadiusMm,
        SteppingEnds ends,
        PanelSpec panel,
        FormBeam? beam,
        CancellationToken cancellation)
    {
        return Of(built.SectionAt(0.5), () => JobOver(planned), () => JobOver(built), cancellation);

        PredictionJob JobOver(HingedForm form)
        {
            var places = FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm, cancellation).Strips!.Places;
            StandingForm[] strips = [.. places.Select(place => Standing(form.SectionAt(place), outerFoldRadiusMm))];
            var middle = strips[strips.Length / 2];
            return StandingJob.Of(middle, form.SectionAt(0.5).FlatsMm[^1], ends, panel, beam, cancellation) with { Strips = strips };
        }
    }

    private static PanelEffect Of(
        FoldedPolygon built, Func<PredictionJob> overPlanned, Func<PredictionJob> overBuilt, CancellationToken cancellation)
    {
        if (built.FoldAngles.ToList().FindIndex(angle => !(angle > 0)) is >= 0 and var flat)
            return new(null, null, $"fold {flat + 1} was not made: the panel cannot be pulled over folds that are not there");
        try
        {
            var plan = overPlanned();
            // The same hand in both, so that the form is all that differs.
            var wanted = PanelPrediction.Of(plan, cancellation);
            var real = overBuilt() with { LeverMm = wanted.LeverMm ?? plan.LeverMm };
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
        return StandingJob.Of(Standing(form, outerFoldRadiusMm), form.FlatsMm[^1], ends, panel, beam, cancellation);
    }

    private static StandingForm Standing(FoldedPolygon form, double outerFoldRadiusMm) =>
        new([.. form.FlatsMm.Skip(1).Take(form.Folds - 1)], form.FoldAngles, outerFoldRadiusMm);
}
