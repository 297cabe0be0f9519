using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Numerics;
using Forming.Prediction;
using MathNet.Numerics.LinearAlgebra;

namespace Forming.Wrapping;

/// <summary>Finds the form over which the panel, pulled and let go in simulation, comes off as the curve that is wanted.</summary>
internal sealed class WrapSolver
{
    private const int SeriesTerms = 4;
    private const int Samples = 32;
    private const double SweepWeightMm = 2000;
    private const double SmoothWeightMm = 2;
    private const double KinkWeightMm = 2;
    private const double Damping = 1e-4;
    private const double SeriesStep = 0.01;
    private const double KinkStep = 0.2 * Math.PI / 180;
    private const int MostSteps = 12;

    private readonly FinishedCurve _finished;
    private readonly PanelSpec _panel;
    private readonly FormSpec _form;
    private readonly FoldShape _fold;
    private readonly BrakeSpec _brake;
    private readonly MarkSpec _marks;
    private readonly WrappedForm _start;
    private readonly Stepping _stepping;
    private readonly WantedCurve _wanted;
    private readonly PullWork _work;
    private readonly CancellationToken _cancellation;
    private readonly double[] _along;
    private readonly Point[] _aims;
    private readonly int _terms;

    public WrapSolver(
        WrappedForm start, FinishedCurve finished, PanelSpec panel, FormSpec form, FoldShape fold, BrakeSpec brake, MarkSpec marks, PullWork work, CancellationToken cancellation)
    {
        (_start, _finished, _panel, _form, _fold, _brake, _marks, _work, _cancellation) = (start, finished, panel, form, fold, brake, marks, work, cancellation);
        _stepping = form.Stepping with { Folds = start.Folds.Polygon.Angles.Length, Refine = false };
        _wanted = WantedCurve.Of(finished, panel.Sheet);
        var lead = double.Parse(Environment.GetEnvironmentVariable("LEAD") ?? "0", System.Globalization.CultureInfo.InvariantCulture);
        double before = Math.Min(panel.LeadInMm, lead * _wanted.LengthMm), after = Math.Min(Math.Min(panel.LeadOutMm, start.Judge.LeverMm), lead * _wanted.LengthMm);
        _along = [.. Enumerable.Range(0, Samples + 1).Select(i => -before + ((before + _wanted.LengthMm + after) * i / Samples))];
        _aims = [.. _along.Select(along => along < 0 ? new Point(along, 0) : _wanted.At(along).Position)];
        _terms = SeriesTerms;
    }

    public int Wraps { get; private set; }

    public string Trace { get; private set; } = "";

    private int PerStretch => _terms + 2;

    private int Unknowns => PerStretch * _start.Contact.Runs.Count;

    /// <summary>Solves.</summary>
    public Trial? Solve()
    {
        var at = new double[Unknowns];
        if (Try(at) is not { } best)
            return null;
        Note(best);
        if (JacobianAt(best) is not { } jacobian)
            return best;
        var isFresh = true;
        for (var i = 0; i < MostSteps; i++)
        {
            var step = StepFrom(best, jacobian);
            Trial? next = null;
            var share = 1.0;
            for (; share > 0.1; share /= 2)
            {
                next = Try([.. best.At.Zip(step, (from, by) => from + (share * by))]);
                if (next is not null)
                    Update(jacobian, best, next);
                if (next is not null && next.Size < best.Size)
                    break;
                next = null;
            }

            if (next is null)
            {
                if (isFresh || JacobianAt(best) is not { } anew)
                    break;
                (jacobian, isFresh) = (anew, true);
                continue;
            }

            isFresh = false;
            var gain = 1 - (next.Size / best.Size);
            best = next;
            Note(best);
            if (gain < 0.05 && Math.Abs(best.SweepMiss) < 0.02 * Math.PI / 180)
                break;
        }

        return best;
    }

    private void Note(Trial trial) => Trace += FormattableString.Invariant(
        $"[{Wraps}: rms {trial.Rms:0.000} sweep {trial.SweepMiss * 180 / Math.PI:0.000} size {trial.Size:0.000}] ");

    private double[] StepFrom(Trial best, Matrix<double> jacobian)
    {
        // Damped Gauss-Newton: stacked with a small weight on every unknown's change.
        var rows = jacobian.RowCount;
        var stacked = Matrix<double>.Build.Dense(rows + Unknowns, Unknowns);
        stacked.SetSubMatrix(0, 0, jacobian);
        var right = Vector<double>.Build.Dense(rows + Unknowns);
        for (var i = 0; i < rows; i++)
            right[i] = -best.Residuals[i];
        for (var i = 0; i < Unknowns; i++)
            stacked[rows + i, i] = Damping * jacobian.Column(i).L2Norm();
        return stacked.QR().Solve(right).ToArray();
    }

    private static void Update(Matrix<double> jacobian, Trial from, Trial to)
    {
        var step = Vector<double>.Build.Dense([.. to.At.Zip(from.At, (a, b) => a - b)]);
        var change = Vector<double>.Build.Dense([.. to.Residuals.Zip(from.Residuals, (a, b) => a - b)]);
        var miss = change - (jacobian * step);
        var length = step.DotProduct(step);
        if (length > 0)
            miss.OuterProduct(step / length).Add(jacobian, jacobian);
    }

    private Matrix<double>? JacobianAt(Trial trial)
    {
        var jacobian = Matrix<double>.Build.Dense(trial.Residuals.Length, Unknowns);
        for (var k = 0; k < Unknowns; k++)
        {
            var step = k % PerStretch < _terms ? SeriesStep : KinkStep;
            var at = (double[])trial.At.Clone();
            at[k] += step;
            var beside = Try(at);
            if (beside is null)
            {
                at[k] -= 2 * step;
                step = -step;
                beside = Try(at);
            }

            if (beside is null)
                return null;
            for (var i = 0; i < trial.Residuals.Length; i++)
                jacobian[i, k] = (beside.Residuals[i] - trial.Residuals[i]) / step;
        }

        return jacobian;
    }

    private ContactCorrection CorrectionOf(double[] at) => new([.. _start.Contact.Runs.Select((run, i) => new StretchCorrection(
        run.Start.MidMm,
        run.End.MidMm,
        at[(i * PerStretch)..((i * PerStretch) + _terms)],
        at[(i * PerStretch) + _terms],
        at[(i * PerStretch) + _terms + 1]))]);

    private Trial? Try(double[] at)
    {
        _cancellation.ThrowIfCancellationRequested();
        Wraps++;
        var form = _start.Corrected(CorrectionOf(at), _finished, _stepping, _fold, _brake.MinFacetMm, _marks, _cancellation);
        if (form.Folds.Polygon.Angles.Min() <= 0)
            return null;
        var prediction = PlannedPull.Predict(form, _form, _fold, _panel, _work, _cancellation, Environment.GetEnvironmentVariable("BARE") is null ? null : new(Forming.Springback.BendingLaw.Of(_form.Sheet).Stiffness * _form.WidthMm / _panel.WidthMm, _form.Sheet.ThicknessMm));
        return prediction.Shape is { } shape ? new(at, form, prediction, ResidualsOf(at, shape), shape.Sweep.Radians - _wanted.Sweep.Radians, RmsOf(shape)) : null;
    }

    private double RmsOf(PredictedShape shape) => Math.Sqrt(MissesOf(shape).Sum(miss => miss.Dot(miss)) / _aims.Length);

    private Point[] MissesOf(PredictedShape shape)
    {
        var places = PlacesAlong(shape.Curve);
        var fit = RigidFit.Of(_aims, places);
        var along = Point.Along(fit.Turn.Radians);
        var (from, to) = (Mean(_aims), Mean(places));
        return [.. places.Select((place, i) => place - to - (_aims[i] - from).TurnedTo(along))];
    }

    private double[] ResidualsOf(double[] at, PredictedShape shape)
    {
        var misses = MissesOf(shape);
        var scale = 1 / Math.Sqrt(misses.Length);
        var residuals = new List<double>();
        foreach (var miss in misses)
        {
            residuals.Add(scale * miss.X);
            residuals.Add(scale * miss.Y);
        }

        residuals.Add(SweepWeightMm * (shape.Sweep.Radians - _wanted.Sweep.Radians));
        for (var k = 0; k < at.Length; k++)
        {
            var place = k % PerStretch;
            if (place > 0)
                residuals.Add(at[k] * (place < _terms ? SmoothWeightMm * 0.1 * place : KinkWeightMm));
        }

        return [.. residuals];
    }

    private Point[] PlacesAlong(IReadOnlyList<ReleasedPoint> curve)
    {
        var places = new Point[_along.Length];
        var e = 0;
        for (var i = 0; i < places.Length; i++)
        {
            if (_along[i] < 0)
            {
                places[i] = new(_along[i], 0);
                continue;
            }

            while (e + 2 < curve.Count && curve[e + 1].AlongMm < _along[i])
                e++;
            var from = curve[e];
            var inside = _along[i] - from.AlongMm;
            var turn = curve[e + 1].Curvature * inside;
            places[i] = from.Position + (inside * Point.Along(from.Heading.Radians + (turn / 2)));
        }

        return places;
    }

    private static Point Mean(IReadOnlyList<Point> points)
    {
        var sum = Point.Origin;
        foreach (var point in points)
            sum += point;
        return 1.0 / points.Count * sum;
    }

    /// <summary>A form that was tried.</summary>
    internal sealed record Trial(double[] At, WrappedForm Form, PanelPrediction Prediction, double[] Residuals, double SweepMiss, double Rms)
    {
        public double Size { get; } = Math.Sqrt(Residuals.Sum(residual => residual * residual));
    }
}
