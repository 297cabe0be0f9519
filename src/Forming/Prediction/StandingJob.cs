using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Pulling;
using Forming.Results;

namespace Forming.Prediction;

/// <summary>From a form that already exists to what a prediction needs: no plan gives the lever.</summary>
public static class StandingJob
{
    /// <summary>Chooses the lever as a plan would.</summary>
    /// <param name="form">The form.</param>
    /// <param name="leadOutMm">Its flat after the last fold, from the mold line [mm].</param>
    /// <param name="ends">Half or full folds at its ends.</param>
    /// <param name="panel">The panel that is wanted.</param>
    /// <param name="beam">The form as a beam; null for a rigid one.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>prediction.facet-too-short</c>: the folds on both sides leave a facet no straight part.
    /// </exception>
    public static PredictionJob Of(
        StandingForm form, double leadOutMm, SteppingEnds ends, PanelSpec panel, FormBeam? beam, CancellationToken cancellation = default)
    {
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
                $"after fold {j + 1} the folds' setbacks take {Figure.Length(least)} of {Figure.Length(facet)}",
                $"more than {Figure.Length(least)}");
        }

        var law = panel.Law();
        var wanted = WantedCurve.Of(FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm, cancellation), panel.Sheet);
        var places = FoldPlaces.Of(form, ends, wanted, panel.Sheet.ThicknessMm);
        var inOrder = places.LongestLeverMm(law, places.EndMm, FacetJudge.LeverShare);
        var longest = places.LongestLeverMm(law, places.EndMm, 1);
        return new()
        {
            Panel = panel,
            Form = form,
            Beam = beam,
            Ends = ends,
            LeverMm = Lever.Choose(
                inOrder,
                panel.LeverMm,
                panel.LeadOutMm,
                FacetJudge.LeastLeverMm(form.FacetsMm.DefaultIfEmpty(0).Max(), places.SlideMm(law))),
            IsStanding = true,
            LongestLeverMm = double.IsFinite(longest) ? Math.Max(0, longest) : null,
        };
    }
}

/// <summary>A faceted form as it is, planned or already folded: what a panel is wrapped over.</summary>
/// <param name="FacetsMm">[m - 1] facets on the contact side, mold line to mold line [mm].</param>
/// <param name="FoldAngles">[m] fold angles, from the clamped side [rad], each &gt; 0.</param>
/// <param name="OuterFoldRadiusMm">Radius of the folds on the contact side [mm], &gt; 0.</param>
public sealed record StandingForm(IReadOnlyList<double> FacetsMm, IReadOnlyList<double> FoldAngles, double OuterFoldRadiusMm)
{
    /// <summary>Number of folds.</summary>
    public int Folds => FoldAngles.Count;

    /// <summary>
    /// The folds over which a panel's radius is measured, by index: the first two and the last lie differently, so they are left out where
    /// enough remain.
    /// </summary>
    /// <remarks>From the third fold to the last but one; with five folds to the last one, with fewer from the first.</remarks>
    public (int From, int To) MiddleFolds => (Folds > 4 ? 2 : 0, Folds > 5 ? Folds - 2 : Folds - 1);

    /// <summary>From a fold's mold line to its bend tangent lines [mm].</summary>
    /// <param name="fold">Index of the fold, from 0.</param>
    public double SetbackMm(int fold) => OuterFoldRadiusMm * Math.Tan(FoldAngles[fold] / 2);

    /// <summary>Straight part of a facet, which is the chord between its fold centres [mm].</summary>
    /// <param name="facet">Index of the facet, from 0.</param>
    public double StraightMm(int facet) => FacetsMm[facet] - SetbackMm(facet) - SetbackMm(facet + 1);
}
