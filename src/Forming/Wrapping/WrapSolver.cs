using Forming.Contact;
using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Results;
using MathNet.Numerics.LinearAlgebra;

namespace Forming.Wrapping;

/// <summary>Finds the form over which the panel, pulled and let go in simulation, comes off as it is wanted.</summary>
/// <remarks>
/// Unknown is how the contact curve departs from pure bending: see <see cref="ContactCorrection"/>. Wanted is the finished sweep, and
/// then the least distance from the finished shape, with small weights that keep the departure smooth. Gauss-Newton steps, their slopes
/// first by trial of each unknown and then kept up by Broyden's rank-one rule, so that most steps cost one simulation.
/// Source key <c>wrap-model</c>.
/// </remarks>
internal sealed class WrapSolver
{
    /// <summary>More unknowns than this are not asked for: each costs a simulation.</summary>
    private const int MostUnknowns = 16;

    private const int MostTerms = 4;

    private const int MostSteps = 12;

    /// <summary>What a miss of the sweep weighs where two forms are compared [mm/rad].</summary>
    private const double SweepWeightMm = 200;

    /// <summary>
    /// How much more it weighs in a step: the sweep is to be exact, but a step that is long need not meet it at once.
    /// </summary>
    private const double SweepRigour = 10;

    private const int SweepRow = 0;

    private const int RadiusRow = 1;

    /// <summary>Weight of each higher term of the series, times its order [mm].</summary>
    private const double SeriesWeightMm = 0.2;

    /// <summary>Weight of the turns at the ends [mm/rad].</summary>
    private const double TurnWeightMm = 2;

    /// <summary>Trial steps from which slopes are taken: of the factor, and of the turns [rad].</summary>
    private const double SeriesStep = 0.01;

    private const double TurnStep = 0.2 * Math.PI / 180;

    /// <summary>Weight of the mean curvature over the middle folds, as a share of the wanted one [mm].</summary>
    private const double RadiusWeightMm = 20;

    /// <summary>Series that solved arcs end up near, for a panel that springs back wholly.</summary>
    private static readonly double[] UsualSeries = [0.05, 0.22, 0.24, 0.15];

    private const double Damping = 1e-4;

    private const double LeastShare = 0.1;

    /// <summary>Times that slopes are taken by trial.</summary>
    private const int MostSlopes = 3;

    /// <summary>Simulations with which the mean level alone meets the sweep, and how far one moves it.</summary>
    private const int MostOfSweep = 6;

    private const double MostLevel = 0.03;

    /// <summary>A miss below this, or below this share of the curve, is not worth slopes by trial once more [mm].</summary>
    public const double EnoughMm = 0.25;

    public const double EnoughShare = 0.0015;

    /// <summary>And so is half a percent of the radius.</summary>
    private const double EnoughOfRadiusMm = 0.005 * RadiusWeightMm;

    /// <summary>A miss that a step no longer brings down by this share is done.</summary>
    private const double LeastGain = 0.05;

    /// <summary>A sweep that is met within this counts as exact [rad].</summary>
    public const double SweepExact = 0.05 * Math.PI / 180;

    /// <summary>The sweep is met within this when the solver stops [rad].</summary>
    private const double SweepTolerance = 0.02 * Math.PI / 180;

    private readonly WrappedForm _pure;
    private readonly FinishedCurve _finished;
    private readonly FormJob _job;
    private readonly FoldShape _fold;
    private readonly PullWork _work;
    private readonly CancellationToken _cancellation;
    private readonly WantedCurve _wanted;
    private readonly ShapeMiss _miss;
    private readonly int _terms;
    private readonly double _enough;

    /// <summary>Sets a job up.</summary>
    /// <param name="pure">The form by pure bending; its lever and number of folds stay.</param>
    /// <param name="finished">The finished curve on the mid surface.</param>
    /// <param name="job">What is asked.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="work">What the simulations may take.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public WrapSolver(WrappedForm pure, FinishedCurve finished, FormJob job, FoldShape fold, PullWork work, CancellationToken cancellation)
    {
        (_pure, _finished, _fold, _work, _cancellation) = (pure, finished, fold, work, cancellation);
        _job = job with
        {
            Form = job.Form with { Stepping = job.Form.Stepping with { Folds = pure.Folds.Polygon.Angles.Length } },
            Panel = job.Panel with { LeverMm = pure.Judge.LeverMm },
        };
        _wanted = WantedCurve.Of(finished, job.Panel.Sheet);
        _enough = Math.Max(EnoughMm, EnoughShare * _wanted.LengthMm);
        _miss = new(_wanted, job.Panel.LeadInMm, pure.Judge.LeverMm);
        _terms = Math.Clamp((MostUnknowns / pure.Contact.Runs.Count) - 2, 1, MostTerms);
    }

    private int PerStretch => _terms + 2;

    private int Unknowns => PerStretch * _pure.Contact.Runs.Count;

    /// <summary>Solves.</summary>
    /// <param name="start">Where to begin, from a like job; null begins with pure bending.</param>
    /// <returns>The form that comes nearest; null where the panel cannot be followed over the first one.</returns>
    public SolvedForm? Solve(SolvedForm? start = null)
    {
        var first = start is not null && start.Unknowns.Length == Unknowns ? Try(start.Unknowns) : null;
        if ((first ?? First()) is not { } best)
            return null;
        var slopes = first is not null ? start!.Slopes?.Clone() : null;
        var (taken, areFresh) = (0, false);
        for (var i = 0; i < MostSteps; i++)
        {
            if (slopes is null)
            {
                // Where a fold just comes to be touched or not, the slopes differ ahead and behind: the other side is tried next.
                slopes = SlopesAt(best, taken % 2 == 0 ? 1 : -1);
                (taken, areFresh) = (taken + 1, true);
            }

            var next = Better(best, slopes);
            var gain = next is null ? 0 : 1 - (next.Size / best.Size);
            if (gain >= LeastGain)
            {
                (best, areFresh) = (next!, false);
                continue;
            }

            best = next ?? best;
            if (Math.Abs(best.SweepMiss) < SweepTolerance && (areFresh || IsEnough(best)))
                break;
            if (taken == MostSlopes)
                break;
            slopes = null;
        }

        return MeetSweep(best) with { Slopes = slopes };
    }

    /// <summary>The first pull of a solve, over folds near those of panels that are solved.</summary>
    /// <returns>The form and its panel; null where the panel cannot be followed over it.</returns>
    public SolvedForm? First() => Try(Guess()) ?? Try(new double[Unknowns]);

    // Most panels that are solved end up near this: less curvature in the middle, more towards the end, the more they spring back.
    private double[] Guess()
    {
        var back = Math.Max(0, 1 - (1 / (_finished.TightestRadiusMm * _pure.Tightest.Curvature)));
        var guess = new double[Unknowns];
        for (var k = 0; k < Unknowns; k++)
        {
            if (k % PerStretch is var term && term < Math.Min(_terms, UsualSeries.Length))
                guess[k] = back * UsualSeries[term];
        }

        return guess;
    }

    private bool IsEnough(SolvedForm solved) => solved.Size < _enough && Math.Abs(solved.Residuals[RadiusRow]) < EnoughOfRadiusMm;

    // What is left of the sweep is taken off by the mean level alone.
    private SolvedForm MeetSweep(SolvedForm best)
    {
        var slope = _pure.Contact.Sweep.Radians;
        for (var i = 0; i < MostOfSweep && Math.Abs(best.SweepMiss) > SweepTolerance; i++)
        {
            var by = Math.Clamp(-best.SweepMiss / slope, -MostLevel, MostLevel);
            var moved = (double[])best.Unknowns.Clone();
            for (var k = 0; k < moved.Length; k += PerStretch)
                moved[k] += by;
            if (Try(moved) is not { } next)
                break;
            slope = Math.Max((next.SweepMiss - best.SweepMiss) / by, slope / 2);
            if (Math.Abs(next.SweepMiss) < Math.Abs(best.SweepMiss))
                best = next;
        }

        return best;
    }

    private SolvedForm? Better(SolvedForm best, Matrix<double> slopes)
    {
        var step = StepFrom(best, slopes);
        for (var share = 1.0; share > LeastShare; share /= 2)
        {
            if (Try([.. best.Unknowns.Zip(step, (from, by) => from + (share * by))]) is not { } next)
                continue;
            KeepUp(slopes, best, next);
            if (next.Size < best.Size)
                return next;
        }

        return null;
    }

    // Least squares with a small weight on every unknown's own change, by its share in the slopes.
    private double[] StepFrom(SolvedForm best, Matrix<double> slopes)
    {
        var rows = slopes.RowCount;
        var stacked = Matrix<double>.Build.Dense(rows + Unknowns, Unknowns);
        var right = Vector<double>.Build.Dense(rows + Unknowns);
        stacked.SetSubMatrix(0, 0, slopes);
        right.SetSubVector(0, rows, -best.Residuals);
        stacked.SetRow(SweepRow, SweepRigour * slopes.Row(SweepRow));
        right[SweepRow] *= SweepRigour;
        for (var k = 0; k < Unknowns; k++)
            stacked[rows + k, k] = slopes.Column(k).L2Norm() is var size and > 0 ? Damping * size : 1;
        return [.. stacked.QR().Solve(right)];
    }

    private static void KeepUp(Matrix<double> slopes, SolvedForm from, SolvedForm to)
    {
        var step = Vector<double>.Build.DenseOfArray(to.Unknowns) - Vector<double>.Build.DenseOfArray(from.Unknowns);
        var square = step.DotProduct(step);
        if (square > 0)
            slopes.Add((to.Residuals - from.Residuals - (slopes * step)).OuterProduct(step / square), slopes);
    }

    // An unknown that cannot be followed either way stays where it is.
    private Matrix<double> SlopesAt(SolvedForm at, int side)
    {
        var slopes = Matrix<double>.Build.Dense(at.Residuals.Count, Unknowns);
        for (var k = 0; k < Unknowns; k++)
        {
            var step = side * (IsTerm(k) ? SeriesStep : TurnStep);
            if (Beside(step) is { } ahead)
                slopes.SetColumn(k, (ahead.Residuals - at.Residuals) / step);
            else if (Beside(-step) is { } behind)
                slopes.SetColumn(k, (at.Residuals - behind.Residuals) / step);

            SolvedForm? Beside(double by)
            {
                var moved = (double[])at.Unknowns.Clone();
                moved[k] += by;
                return Try(moved);
            }
        }

        return slopes;
    }

    private SolvedForm? Try(double[] unknowns)
    {
        _cancellation.ThrowIfCancellationRequested();
        if (_work.IsSpent)
            return null;
        WrappedForm form;
        try
        {
            form = _pure.Corrected(CorrectionOf(unknowns), _finished, _job, _fold, _cancellation);
        }
        catch (NoSolutionException)
        {
            // So far from pure bending the folds do not fit the curve any more.
            return null;
        }

        var prediction = PlannedPull.Predict(form, _job, _fold, _work, _cancellation);
        if (prediction.Shape is not { } shape)
            return null;
        var sweepMiss = shape.Sweep.Radians - _wanted.Sweep.Radians;
        if (_job.Form.Stepping is not { FoldAngle: null, SpacingMm: null })
            form = form with { Folds = form.Folds with { FixedStepOver = sweepMiss } };
        return new(form, prediction, unknowns, ResidualsOf(unknowns, shape, sweepMiss), sweepMiss);
    }

    private Vector<double> ResidualsOf(double[] unknowns, PredictedShape shape, double sweepMiss)
    {
        var misses = _miss.Of(shape.Curve);
        var residuals = Vector<double>.Build.Dense((2 * misses.Length) + 2 + unknowns.Length);
        residuals[SweepRow] = SweepWeightMm * sweepMiss;
        // A panel or a curve that is flat in the middle has no radius to miss.
        residuals[RadiusRow] = RadiusWeightMm * ((shape.WantedRadiusMm / shape.RadiusMm) - 1 ?? 0);
        var share = 1 / Math.Sqrt(misses.Length);
        var row = RadiusRow + 1;
        foreach (var miss in misses)
        {
            residuals[row++] = share * miss.X;
            residuals[row++] = share * miss.Y;
        }

        for (var k = 0; k < unknowns.Length; k++)
            residuals[row++] = unknowns[k] * (IsTerm(k) ? SeriesWeightMm * (k % PerStretch) : TurnWeightMm);
        return residuals;
    }

    private bool IsTerm(int unknown) => unknown % PerStretch < _terms;

    private ContactCorrection CorrectionOf(double[] unknowns) => new([.. _pure.Contact.Runs.Select((run, i) =>
    {
        var own = unknowns.AsSpan(i * PerStretch, PerStretch);
        return new StretchCorrection(run.Start.MidMm, run.End.MidMm, own[.._terms].ToArray(), own[_terms], own[_terms + 1]);
    })]);
}

/// <summary>A form solved on the simulated pull, or as near as it came.</summary>
/// <param name="Form">The form.</param>
/// <param name="Prediction">The panel that comes off it.</param>
/// <param name="Unknowns">What the solver chose, to begin a like job with.</param>
/// <param name="Residuals">What is left: distances, sweep and the weights of the departure [mm].</param>
/// <param name="SweepMiss">Sweep of the panel past the wanted one [rad].</param>
internal sealed record SolvedForm(
    WrappedForm Form, PanelPrediction Prediction, double[] Unknowns, Vector<double> Residuals, double SweepMiss)
{
    /// <summary>Size of what is left [mm].</summary>
    public double Size { get; } = Residuals.L2Norm();

    /// <summary>Whether the panel's sweep comes out exactly.</summary>
    public bool IsSolved => Math.Abs(SweepMiss) <= WrapSolver.SweepExact;

    /// <summary>How what is left changes with what the solver chose, for a like job; null where that is not known.</summary>
    public Matrix<double>? Slopes { get; init; }
}
