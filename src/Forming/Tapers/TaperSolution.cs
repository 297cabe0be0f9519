using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Wrapping;

namespace Forming.Tapers;

/// <summary>A tapered form solved on the simulated pull of strips along its folds.</summary>
/// <remarks>
/// The unknowns are those of a straight form, on the strip half-way along the rulings; every trial pulls all strips, which turn each facet
/// alike. The folds of the strip found go along its rulings, at the dihedral angles found.
/// </remarks>
/// <param name="Solved">The middle strip's form.</param>
/// <param name="Formed">The panel on the form.</param>
/// <param name="Folds">The folds in space.</param>
internal sealed record TaperSolution(SolvedForm Solved, FormedPanel Formed, TaperFolds Folds)
{
    /// <summary>Solves.</summary>
    /// <param name="ruled">The finished panel.</param>
    /// <param name="job">What is asked, its widths those of the rulings.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="work">What this work is a part of, or null.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The form; null where the panel cannot be followed over any that was tried.</returns>
    public static TaperSolution? Solve(RuledPanel ruled, FormJob job, FoldShape fold, PullWork? work, CancellationToken cancellation)
    {
        var finished = RuledStrips.MiddleOf(ruled);
        var strips = finished.Strips!;
        // The narrow end's facets must not be too narrow, nor the wide end's too wide.
        var middle = job with
        {
            Brake = job.Brake with { MinFacetMm = job.Brake.MinFacetMm / strips.Narrowest },
            Form = job.Form with
            {
                Stepping = job.Form.Stepping with { MaxFacetMm = job.Form.Stepping.MaxFacetMm / strips.Widest },
            },
        };
        var closed = WrappedForm.Solve(finished, middle, fold, cancellation);
        if (new SolvedCount(finished, middle, fold, work, cancellation).Of(closed) is not { } solved)
            return null;
        var polygon = solved.Form.Folds.Polygon;
        // The curve's own end is the panel's: no fold goes past it.
        if (polygon.Places[^1].MidMm > strips.LengthMm * (1 + 1e-9))
            return null;
        var stretch = solved.Form.Rule.Correction!.Stretches[0];
        var formed = FormedPanel.Solve(ruled, FactorOf, new(stretch.StartTurn, stretch.EndTurn));
        double[] turns = [.. polygon.Places.Select(place => strips.TurnAt(place.MidMm))];
        var folds = TaperFolds.Through(formed, turns, ruled.Sweep, fold, job.Panel.Sheet.ThicknessMm);
        return new(solved, formed, folds.WithAngles(polygon.Angles));

        double FactorOf(Ruling ruling)
        {
            var curvature = ruling.NormalRate / ruling.MiddleWidth;
            return solved.Form.Rule.StateFor(curvature, strips.MidAt(ruling.Turn)).Curvature / curvature;
        }
    }

    /// <summary>The pull of the panel over tapered folds.</summary>
    /// <param name="folds">The folds.</param>
    /// <param name="job">What is asked.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="places">Where the strips lie along the folds.</param>
    /// <param name="leverMm">Hand to the last ruling [mm].</param>
    /// <param name="longestLeverMm">Longest lever that keeps the wrap in order [mm]; infinite where any does.</param>
    public static PredictionJob PullOver(
        TaperFolds folds, FormJob job, FoldShape fold, IReadOnlyList<double> places, double leverMm, double longestLeverMm)
    {
        StandingForm[] strips = [.. places.Select(StripAt)];
        return new()
        {
            Panel = job.Panel,
            Form = strips[strips.Length / 2],
            Strips = strips,
            Beam = FormBeam.Of(job),
            Ends = job.Form.Stepping.Ends,
            LeverMm = leverMm,
            LongestLeverMm = double.IsFinite(longestLeverMm) ? Math.Max(0, longestLeverMm) : null,
        };

        StandingForm StripAt(double place)
        {
            var facets = new double[folds.Angles.Length - 1];
            for (var j = 0; j < facets.Length; j++)
                facets[j] = folds.StraightAt(j, place) + fold.Setback(folds.Angles[j]) + fold.Setback(folds.Angles[j + 1]);
            return new(facets, folds.Angles, fold.OuterRadiusMm);
        }
    }
}
