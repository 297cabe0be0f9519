using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Pulling;
using Forming.Results;

namespace Forming.Prediction;

/// <summary>From a form that already stands to what a prediction needs: the lever has no plan to come from.</summary>
public static class StandingJob
{
    /// <summary>Chooses the lever as a plan would.</summary>
    /// <param name="form">The form.</param>
    /// <param name="leadOutMm">Its flat after the last fold, from the mold line [mm].</param>
    /// <param name="ends">Half or full folds at its ends.</param>
    /// <param name="panel">The panel that is wanted.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="NoSolutionException"><c>prediction.facet-too-short</c>: the folds on both sides leave a facet no straight part; <c>prediction.taper</c>.</exception>
    public static PredictionJob Of(StandingForm form, double leadOutMm, SteppingEnds ends, PanelSpec panel, CancellationToken cancellation = default)
    {
        PanelPrediction.RefuseTaper(panel);
        for (var j = 0; j < form.Folds; j++)
        {
            var isLast = j == form.Folds - 1;
            var facet = isLast ? leadOutMm : form.FacetsMm[j];
            var least = form.SetbackMm(j) + (isLast ? 0 : form.SetbackMm(j + 1));
            if (facet > least)
                continue;
            throw new NoSolutionException(
                "prediction.facet-too-short",
                FormattableString.Invariant($"stations[{j}].facetAfter"),
                $"after fold {j + 1} the folds' own setbacks take {Figure.Length(least)} of {Figure.Length(facet)}",
                $"more than {Figure.Length(least)}");
        }

        var law = PanelPrediction.LawOf(panel);
        var wanted = WantedCurve.Of(FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm, cancellation), panel.Sheet);
        var places = FoldPlaces.Of(form, ends, wanted, panel.Sheet.ThicknessMm);
        var inOrder = places.LongestLeverMm(law, places.EndMm, FacetJudge.LeverShare);
        var longest = places.LongestLeverMm(law, places.EndMm, 1);
        return new()
        {
            Panel = panel,
            Form = form,
            Ends = ends,
            LeverMm = Lever.Choose(inOrder, panel.LeverMm, panel.LeadOutMm, FacetJudge.LeastLeverMm(form.FacetsMm.DefaultIfEmpty(0).Max(), places.SlideMm(law))),
            IsStanding = true,
            LongestLeverMm = double.IsFinite(longest) ? Math.Max(0, longest) : null,
        };
    }
}
