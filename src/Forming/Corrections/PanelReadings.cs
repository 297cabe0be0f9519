using Forming.Curves;
using Forming.Jobs;
using Forming.Learning;
using Forming.Prediction;

namespace Forming.Corrections;

/// <summary>What the readings of a panel would be if it were another one: each as it was taken, off a panel that was let go.</summary>
internal sealed class PanelReadings
{
    private const int FitPieces = 60;

    /// <summary>The pull is followed, and looked up between pulls, this well [rad], as a share, and [mm]: one standard deviation.</summary>
    private const double SweepFollowed = 1e-3;

    private const double RadiusFollowed = 1e-3;

    private const double PointFollowed = 0.03;

    private readonly MeasuredPanel _measured;
    private readonly PanelSpec _panel;
    private readonly double[] _along;
    private readonly (int From, int To) _stretch;
    private readonly bool _isUsualStretch;

    /// <summary>Prepares the readings.</summary>
    /// <param name="measured">What was measured.</param>
    /// <param name="pull">Panel and form.</param>
    public PanelReadings(MeasuredPanel measured, PredictionJob pull)
    {
        (_measured, _panel) = (measured, pull.Panel);
        var finished = FinishedCurve.On(_panel.Curve, _panel.Surface, _panel.Sheet.ThicknessMm);
        var wanted = WantedCurve.Of(finished, _panel.Sheet);
        _along = FoldPlaces.Of(pull.Form, pull.Ends, wanted, _panel.Sheet.ThicknessMm).AlongMm;
        _stretch = measured.Stretch ?? pull.Form.MiddleFolds;
        _isUsualStretch = _stretch == pull.Form.MiddleFolds;
        var deviations = new List<double>();
        if (measured.Sweep is not null)
            deviations.Add(With(measured.SweepError.Radians, SweepFollowed));
        if (measured.RadiusMm is { } radius)
            deviations.Add(With(measured.RadiusErrorMm, RadiusFollowed * radius) / (radius * radius));
        for (var i = 0; i < measured.Points?.Count; i++)
            deviations.Add(With(measured.PointErrorMm, PointFollowed));
        Deviations = [.. deviations];

        static double With(double error, double followed) =>
            Math.Sqrt((error / YieldPosterior.TwoSided * error / YieldPosterior.TwoSided) + (followed * followed));
    }

    /// <summary>[n] standard deviation of each reading [rad, 1/mm or mm].</summary>
    public double[] Deviations { get; }

    /// <summary>[m] where the folds meet the panel [mm].</summary>
    public IReadOnlyList<double> FoldsAlongMm => _along;

    /// <summary>By how much each reading is off what a panel would give.</summary>
    /// <param name="shape">The panel let go.</param>
    /// <returns>
    /// [n] predicted less measured: sweep [rad]; curvature, which unlike a radius goes on through a flat panel [1/mm]; points [mm].
    /// </returns>
    public double[] MissesOf(PredictedShape shape) => MissesOf(shape.Curve, SweepOf(shape), RadiusOf(shape));

    /// <summary>The same of its curve alone.</summary>
    /// <param name="curve">The panel let go.</param>
    public double[] MissesOf(IReadOnlyList<ReleasedPoint> curve) => MissesOf(curve, curve[^1].Heading.Radians, RadiusOn(curve));

    /// <summary>Turn of a panel [rad].</summary>
    /// <param name="shape">The panel let go.</param>
    public static double SweepOf(PredictedShape shape) => shape.Sweep.Radians;

    /// <summary>Radius of the stretch that was measured, on the face the curve is measured on.</summary>
    /// <param name="shape">The panel let go.</param>
    /// <returns>The radius [mm]; null where the panel is flat there.</returns>
    public double? RadiusOf(PredictedShape shape) => _isUsualStretch ? shape.RadiusMm : RadiusOn(shape.Curve);

    private double[] MissesOf(IReadOnlyList<ReleasedPoint> curve, double sweep, double? radius)
    {
        var misses = new double[Deviations.Length];
        var at = 0;
        if (_measured.Sweep is { } turn)
            misses[at++] = sweep - turn.Radians;
        if (_measured.RadiusMm is { } measured)
            misses[at++] = (1 / radius ?? 0) - (1 / measured);
        if (_measured.Points is { } points)
            TemplateFit.MissesOf(points, FaceOf(curve)).CopyTo(misses, at);
        return misses;
    }

    private double? RadiusOn(IReadOnlyList<ReleasedPoint> curve)
    {
        double from = _along[_stretch.From], to = _along[_stretch.To];
        if (!(to > from))
            return null;
        return PanelPrediction.RadiusOf(CircleFit.Curvature(from, to, along => ReleasedPoint.At(curve, along), FitPieces), _panel);
    }

    // The face with the flats beside the curve, as straight pieces.
    private List<Point> FaceOf(IReadOnlyList<ReleasedPoint> curve)
    {
        var half = _panel.Surface.InsideOfMidMm(_panel.Sheet.ThicknessMm);
        var face = new List<Point>(curve.Count + 2);
        foreach (var point in curve)
            face.Add(point.Position + (half * Point.Along(point.Heading.Radians).Left()));
        var (first, last) = (Point.Along(curve[0].Heading.Radians), Point.Along(curve[^1].Heading.Radians));
        face.Insert(0, face[0] - ((_panel.LeadInMm + 1) * first));
        face.Add(face[^1] + ((_panel.LeadOutMm + 1) * last));
        return face;
    }
}
