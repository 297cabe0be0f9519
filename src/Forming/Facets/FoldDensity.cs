using Forming.Contact;
using Forming.Folds;

namespace Forming.Facets;

/// <summary>How densely a stepping rule sets folds along one curved stretch: a running integral and its inverse.</summary>
internal sealed class FoldDensity
{
    private const int SamplesPerPiece = 24;

    /// <summary>Least value at the end of the first facet: without a limit on facets it would be 0, which has no inverse.</summary>
    private const double FewestFolds = 1e-3;

    private readonly CurvedRun _run;
    private readonly CurveMeasure _measure;
    private readonly double[]? _folds; // running integral of 1/c_allow at each length below
    private readonly double[]? _lengths;

    private FoldDensity(CurvedRun run, CurveMeasure measure, double[]? folds = null, double[]? lengths = null)
    {
        _run = run;
        _measure = measure;
        _folds = folds;
        _lengths = lengths;
        Total = folds?[^1] ?? run.Total(measure);
    }

    /// <summary>The running integral over the whole stretch: radians, mm or folds, by the rule.</summary>
    public double Total { get; }

    /// <summary>The density of a rule.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="run">The curved stretch.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="panelThickness">The panel's thickness [mm].</param>
    /// <param name="judge">Tells the allowed facet.</param>
    /// <param name="ends">Half or full folds at the ends.</param>
    public static FoldDensity Of(
        SteppingRule rule, CurvedRun run, FoldShape fold, double panelThickness, FacetJudge judge, SteppingEnds ends) => rule switch
        {
            SteppingRule.EqualAngle => new(run, CurveMeasure.TurnedAngle),
            SteppingRule.EqualSpacing => new(run, NeutralLineOf(fold, panelThickness)),
            _ => ByAllowedFacet(run, panelThickness, judge, ends),
        };

    /// <summary>Length of the form's neutral line: <c>rho - t + K t</c> per turned angle, inside the contact curve.</summary>
    private static CurveMeasure NeutralLineOf(FoldShape fold, double panelThickness) =>
        CurveMeasure.ParallelLength((panelThickness / 2) + ((1 - fold.NeutralFactor) * fold.ThicknessMm));

    private static FoldDensity ByAllowedFacet(CurvedRun run, double panelThickness, FacetJudge judge, SteppingEnds ends)
    {
        var contact = CurveMeasure.ParallelLength(panelThickness / 2);
        var total = run.Total(contact);
        // With full ends the first facet begins half a step in.
        var units = ends == SteppingEnds.Half ? 1 : 1.5;
        var first = FirstLength(run, contact, judge, units, out var firstAllowed);
        List<double> lengths = [0, first], folds = [0, Math.Min(units, Math.Max(total / firstAllowed, FewestFolds))];
        double length = 0, allowed = double.PositiveInfinity;
        foreach (var place in run.Sample(SamplesPerPiece))
        {
            var next = LengthTo(place, run, contact);
            var nextAllowed = judge.AllowedFacet(place, place.State, isFirst: false);
            if (next > first)
            {
                // Past the first facet the density is 1/c_allow, by the stricter end of each sample's step.
                lengths.Add(next);
                folds.Add(folds[^1] + ((next - Math.Max(length, first)) / Math.Min(Math.Min(allowed, nextAllowed), total)));
            }

            (length, allowed) = (next, nextAllowed);
        }

        return new(run, contact, [.. folds], [.. lengths]);
    }

    // The first facet ends where its own tightest place allows no more.
    private static double FirstLength(CurvedRun run, CurveMeasure contact, FacetJudge judge, double units, out double allowed)
    {
        var start = run.At(contact, 0);
        var tightest = start.State;
        allowed = judge.AllowedFacet(start, tightest, isFirst: true);
        var length = 0.0;
        foreach (var place in run.Sample(SamplesPerPiece))
        {
            var next = LengthTo(place, run, contact);
            if (place.State.Curvature > tightest.Curvature)
            {
                tightest = place.State;
                allowed = judge.AllowedFacet(start, tightest, isFirst: true);
            }

            if (units * allowed <= next)
                return Math.Max(units * allowed, length);
            length = next;
        }

        return run.Total(contact);
    }

    private static double LengthTo(in ContactPoint place, CurvedRun run, CurveMeasure contact) =>
        contact.Of(place.Turn - run.Start.Turn, place.MidMm - run.Start.MidMm);

    /// <summary>The place at which the running integral reaches a value; past the end the curve goes on at its last radius.</summary>
    /// <param name="value">The value, at least 0.</param>
    public ContactPoint At(double value) => _run.At(_measure, _folds is null ? value : LengthAt(value));

    private double LengthAt(double value)
    {
        var i = Array.BinarySearch(_folds!, value);
        if (i >= 0)
            return _lengths![i];
        i = Math.Clamp(~i, 1, _folds!.Length - 1);
        var share = (value - _folds[i - 1]) / (_folds[i] - _folds[i - 1]);
        return _lengths![i - 1] + (share * (_lengths[i] - _lengths[i - 1]));
    }
}
