using Forming.Jobs;
using Forming.Learning;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Corrections;

/// <summary>The effective yield stress by least squares through the wrap, joined with what is known of the grade.</summary>
internal static class PanelLearning
{
    /// <summary>Of more folds than this some stand for their neighbours too.</summary>
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
        var posterior = YieldPosterior.Of(
            new()
            {
                PriorDeviation = prior.Effective,
                Readings =
                [
                    .. readings.Deviations.Select((deviation, i) => new YieldReading(
                        0, deviation, (lnFactor, _) => table.At(i, lnFactor))),
                ],
                SharedErrors = FoldErrors(job, readings, shape, panel),
            },
            cancellation);
        var used = panel.Springback.YieldMpa ?? panel.Sheet.Material.YieldMpa;
        var learnt = new LearntYield
        {
            GradeMpa = panel.Sheet.Material.YieldMpa,
            UsedMpa = used,
            EffectiveMpa = Scaled(posterior.Factor, used),
            MetalMpa = Scaled(prior.YieldOf(posterior), used),
            ThicknessInsteadMm = panel.Sheet.ThicknessMm / posterior.Factor.Value,
            ByReadingsMpa = Scaled(posterior.Alone!.Value.Factor, used),
            PriorWeight = posterior.PriorWeight,
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
    private static double[][] FoldErrors(CorrectionJob job, PanelReadings readings, PredictedShape shape, PanelSpec panel)
    {
        if (!(job.FoldError.Radians > 0))
            return [];
        var law = panel.Law();
        var loaded = job.Pull.Form.FoldAngles.Sum() / shape.WantedLengthMm;
        var kept = job.FoldError.Radians * (1 - (law.At(loaded).TangentStiffness / law.Stiffness));
        var without = readings.MissesOf(shape.Curve);
        var folds = readings.FoldsAlongMm.Count;
        var shown = Math.Min(folds, MostShared);
        var each = kept * Math.Sqrt((double)folds / shown) / Kink;
        return
        [
            .. Enumerable.Range(0, shown).Select(i =>
                readings.MissesOf(Kinked(shape.Curve, readings.FoldsAlongMm[i * folds / shown]))
                    .Zip(without, (with, own) => each * (with - own)).ToArray()),
        ];
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
}
