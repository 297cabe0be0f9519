using Forming.Jobs;
using Forming.Learning;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Corrections;

/// <summary>The effective yield stress by least squares through the wrap, joined with what is known of the grade.</summary>
internal static class PanelLearning
{
    /// <summary>Past so many folds their errors are summed reading by reading.</summary>
    private const int MostShared = 60;

    /// <summary>A fold's error is tried with a kink of this size [rad].</summary>
    private const double Kink = 1e-3;

    /// <summary>Learns.</summary>
    /// <param name="job">Panel, form and readings.</param>
    /// <param name="pull">What was pulled, with its lever.</param>
    /// <param name="nominal">The panel as it was planned.</param>
    /// <param name="work">What the pulls may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>corrections.not-followed</c>: a panel a little stronger or weaker cannot be followed.
    /// </exception>
    public static LearntYield Of(
        CorrectionJob job, PredictionJob pull, PanelPrediction nominal, PullWork work, CancellationToken cancellation)
    {
        var panel = pull.Panel;
        var readings = new PanelReadings(job.Measured, pull);
        var table = YieldTable.Of((lnFactor, _) => ShapeAt(lnFactor) is { } shape ? readings.MissesOf(shape) : null, 0, cancellation)
            ?? throw new NoSolutionException(
                "corrections.not-followed",
                "panel",
                $"the pull of a panel a little stronger or weaker than this one cannot be followed over this form",
                $"a job whose pull /v1/forms/prediction can follow");
        var prior = SheetPrior.Of(panel.Sheet, scatter: ScatterDefaults.Of(panel));
        var shape = nominal.Shape!;
        var (shared, added) = FoldErrors(job, readings, shape, panel);
        var posterior = YieldPosterior.Of(
            new()
            {
                PriorDeviation = prior.Effective,
                Readings =
                [
                    .. readings.Deviations.Select((deviation, i) => new YieldReading(
                        0, Math.Sqrt((deviation * deviation) + added[i]), (lnFactor, _) => table.At(i, lnFactor))),
                ],
                SharedErrors = shared,
            },
            cancellation);
        var used = panel.Springback.YieldMpa ?? panel.Sheet.Material.YieldMpa;
        var explained = ShapeAt(posterior.LnFactor) ?? shape;
        var learnt = new LearntYield
        {
            GradeMpa = panel.Sheet.Material.YieldMpa,
            UsedMpa = used,
            EffectiveMpa = Scaled(posterior.Factor, used),
            MetalMpa = Scaled(prior.YieldOf(posterior), used),
            ThicknessInsteadMm = panel.Sheet.ThicknessMm / posterior.Factor.Value,
            ByReadingsMpa = Scaled(posterior.Alone!.Value.Factor, used),
            PriorWeight = posterior.PriorWeight,
            Readings = [.. ExplainedBy(job.Measured, readings, shape, explained)],
            Doubts = [],
        };
        return learnt with { Doubts = [.. PanelDoubts.Of(job, learnt, posterior, prior)] };

        PredictedShape? ShapeAt(double lnFactor) => lnFactor == 0
            ? nominal.Shape
            : PanelPrediction.Of(pull with { Panel = Stronger(panel, Math.Exp(lnFactor)) }, work, cancellation).Shape;
    }

    /// <summary>A panel whose sheet is stronger.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="by">Its whole flow curve is so many times as high.</param>
    public static PanelSpec Stronger(PanelSpec panel, double by) => panel with { StrengthFactor = panel.StrengthFactor * by };

    private static Interval Scaled(Interval interval, double by) => new(by * interval.Value, by * interval.Low, by * interval.High);

    // Of a fold's error the panel keeps what its moment does not grow with, as a kink where it touches the fold.
    private static (IReadOnlyList<IReadOnlyList<double>> Shared, double[] Added) FoldErrors(
        CorrectionJob job, PanelReadings readings, PredictedShape shape, PanelSpec panel)
    {
        var added = new double[readings.Deviations.Length];
        if (!(job.FoldError.Radians > 0))
            return ([], added);
        var law = panel.Law();
        var loaded = job.Pull.Form.FoldAngles.Sum() / shape.WantedLengthMm;
        var kept = job.FoldError.Radians * (1 - (law.At(loaded).TangentStiffness / law.Stiffness));
        var as0 = readings.MissesOf(shape.Curve);
        double[][] errors =
        [
            .. readings.FoldsAlongMm.Select(along =>
                readings.MissesOf(Kinked(shape.Curve, along)).Zip(as0, (with, without) => kept * (with - without) / Kink).ToArray()),
        ];
        if (errors.Length <= MostShared)
            return (errors, added);
        foreach (var error in errors)
        {
            for (var i = 0; i < added.Length; i++)
                added[i] += error[i] * error[i];
        }

        return ([], added);
    }

    private static ReleasedPoint[] Kinked(IReadOnlyList<ReleasedPoint> curve, double alongMm)
    {
        var at = ReleasedPoint.At(curve, alongMm);
        var turn = Point.Along(Kink);
        return
        [
            .. curve.Select(point => point.AlongMm <= alongMm
                ? point
                : point with
                {
                    Position = at + (point.Position - at).TurnedTo(turn),
                    Heading = point.Heading + new Angle(Kink),
                }),
        ];
    }

    private static IEnumerable<ExplainedReading> ExplainedBy(
        MeasuredPanel measured, PanelReadings readings, PredictedShape planned, PredictedShape explained)
    {
        if (measured.Sweep is { } sweep)
            yield return new(ReadingKind.Sweep, sweep.Radians, PanelReadings.SweepOf(planned), PanelReadings.SweepOf(explained));
        if (measured.RadiusMm is { } radius)
            yield return new(ReadingKind.Radius, radius, readings.RadiusOf(planned), readings.RadiusOf(explained));
        if (measured.Points is { } points)
            yield return new(ReadingKind.Points, 0, MeanOf(planned), MeanOf(explained));

        double MeanOf(PredictedShape shape) =>
            Math.Sqrt(readings.MissesOf(shape).TakeLast(points.Count).Average(miss => miss * miss));
    }
}
