using Forming.Folds;
using Forming.Learning;
using Forming.Results;

namespace Forming.TestStrips;

/// <summary>From pairs of stop angle and measured angle to the line of the stop.</summary>
/// <remarks>
/// The stop is set and the angle scatters, so the measured angle is regressed on the stop and the line is read backwards:
/// <c>measured = p + q stop</c> becomes <c>stop = -p/q + measured/q</c> (calibration; the other regression would be biased).
/// </remarks>
public static class StopStrips
{
    private const double LeastSlope = 0.1;
    private const double MostSlope = 10;
    private static readonly Angle MostOffset = Angle.FromDegrees(45);

    // No strip is folded much past this.
    private static readonly Angle FurthestStop = Angle.FromDegrees(120);

    // Places at which a next strip is weighed, between the smallest and the largest fold.
    private const int FoldsTried = 20;

    // Closer than this two settings of a stop are one.
    private static readonly double SameStop = Angle.FromDegrees(1e-6).Radians;

    /// <summary>What the strips teach.</summary>
    /// <param name="question">The strips and what is asked of them.</param>
    /// <exception cref="NoSolutionException"><c>strips.no-stop-line</c>: the line is none that a stop could have.</exception>
    public static StopLesson Learn(StopQuestion question)
    {
        var fit = Fit(question, question.Strips);
        var line = LineOf(fit) ?? throw NoLine(fit);
        var targets = question.Targets.Count > 0 ? question.Targets : Range(question.Strips);
        var settings = targets.Select(target => Advise(fit, target, question.Resolution)).ToArray();
        return new(line, fit.SettingFor(0), SlopeOf(question, fit), fit, settings)
        {
            Outliers = OutliersOf(question, fit),
            MarginText = StripNotes.MarginText(fit.Margin, question.Strips.Count, Figure.Angle(question.ReadingError.Radians)),
            Changes = ChangesOf(line, settings[^1]),
            Planning = StripNotes.Planning,
            Next = NextOf(question, fit, targets),
            Notes = NotesOf(question, fit, targets),
            Safety = StripSafety.InTheBrake,
            Basis = BasisOf(fit),
        };
    }

    /// <summary>Whether all strips were folded at one stop, so that they cannot show the slope.</summary>
    /// <param name="strips">The strips, at least one.</param>
    public static bool AtOneStop(IReadOnlyList<StopStrip> strips) =>
        strips.Count == 0 || (strips.Max(strip => strip.StopAngle) - strips.Min(strip => strip.StopAngle)).Radians < SameStop;

    private static StraightLine Fit(StopQuestion question, IReadOnlyList<StopStrip> strips)
    {
        double[] x = [.. strips.Select(strip => strip.StopAngle.Radians)];
        double[] y = [.. strips.Select(strip => strip.FoldAngle.Radians)];
        var error = question.ReadingError.Radians;
        var slope = 1 / question.AssumedSlope;
        return AtOneStop(strips)
            ? StraightLine.WithSlope(x, y, slope, question.SlopeError * slope * slope, error)
            : StraightLine.Fit(x, y, error);
    }

    private static StopLine? LineOf(StraightLine fit)
    {
        if (!(fit.Slope > 0))
            return null;
        var line = new StopLine(new(fit.SettingFor(0).Value), 1 / fit.Slope);
        return line.Slope is >= LeastSlope and <= MostSlope && Math.Abs(line.Offset.Radians) <= MostOffset.Radians ? line : null;
    }

    private static NoSolutionException NoLine(StraightLine fit) => new(
        "strips.no-stop-line",
        "strips",
        $"the measured angle grows by {Figure.Number(fit.Slope)} degrees a degree of the stop and passes {Figure.Angle(fit.At(0))} at a stop of zero, which no stop of a brake does",
        $"strips whose line has an offset within {Figure.Angle(MostOffset.Radians)} and a slope of {Figure.Number(LeastSlope)} to {Figure.Number(MostSlope)}; look for swapped or misread angles");

    private static Interval SlopeOf(StopQuestion question, StraightLine fit)
    {
        if (fit.IsSlopeAssumed)
            return Interval.Around(question.AssumedSlope, question.SlopeError);
        var q = fit.SlopeInterval;
        return new(1 / q.Value, 1 / q.High, q.Low > 0 ? 1 / q.Low : null);
    }

    private static Angle[] Range(IReadOnlyList<StopStrip> strips)
    {
        var least = strips.Min(strip => strip.FoldAngle);
        var most = strips.Max(strip => strip.FoldAngle);
        return least == most ? [least] : [least, most];
    }

    private static StopAdvice Advise(StraightLine fit, Angle target, Angle? resolution)
    {
        var stop = fit.SettingFor(target.Radians);
        var set = resolution is { } step ? Math.Round(stop.Value / step.Radians) * step.Radians : stop.Value;
        return new(target, stop, new(set), fit.NextReading(set));
    }

    private static StripOutlier[] OutliersOf(StopQuestion question, StraightLine fit) =>
    [
        .. Outliers.Find(fit.Residuals, fit.Leverages, fit.SumOfSquares, fit.Margin.DegreesOfFreedom, question.ReadingError.Radians)
            .Select(index => new StripOutlier(index, Reason(question, fit, index))),
    ];

    private static FormattableString Reason(StopQuestion question, StraightLine fit, int index)
    {
        var strip = question.Strips[index];
        var miss = Figure.Angle(fit.Residuals[index]);
        var without = LineOf(Fit(question, [.. question.Strips.Where((_, i) => i != index)]));
        return without is null
            ? (FormattableString)$"measured {Figure.Angle(strip.FoldAngle.Radians)}, {miss} off the line through all strips and too far for their scatter; it is still counted, and without it no line is left: measure it again"
            : $"measured {Figure.Angle(strip.FoldAngle.Radians)}, {miss} off the line through all strips and too far for their scatter; it is still counted: measure it again, or leave it out for an offset of {Figure.Angle(without.Offset.Radians)} and a slope of {Figure.Number(without.Slope)}";
    }

    private static FormattableString ChangesOf(StopLine line, StopAdvice at) =>
        $"Every stop angle of the next form becomes {Figure.Angle(line.Offset.Radians)} + {Figure.Number(line.Slope)} × fold angle in place of the first guess from the sheet's springback: a fold of {Figure.Angle(at.FoldAngle.Radians)} is set to {Figure.Angle(at.StopAngle.Value)}.";

    // The strip that shrinks the widest band over the targets most: one more leverage at either end, the scatter left as it is.
    private static NextStrip NextOf(StopQuestion question, StraightLine fit, IReadOnlyList<Angle> targets)
    {
        if (fit.IsSlopeAssumed)
        {
            var here = fit.MeanY;
            var far = targets.MaxBy(target => Math.Abs(target.Radians - here)).Radians;
            var other = Math.Abs(far - here) > here / 4 ? far : here / 2;
            if (fit.SettingFor(other).Value <= 0)
                other = here * 3 / 2;
            return At(other, $"Fold another strip at a stop of {Figure.Angle(fit.SettingFor(other).Value)}, about {Figure.Angle(other)} of fold: all strips so far were folded at one stop, and only a second stop shows the slope.");
        }

        if (!fit.IsSlopeKnown)
        {
            // The fitted slope cannot be trusted to say which fold that gives, so only the stop is named.
            var further = 2 * fit.MeanX <= FurthestStop.Radians ? 2 * fit.MeanX : fit.MeanX / 2;
            return new($"Fold another strip at a stop of {Figure.Angle(further)}, far from the others: the ones so far are too close together for their scatter.")
            {
                StopAngle = new(further),
            };
        }

        var least = Math.Min(targets.Min(target => target.Radians), question.Strips.Min(strip => strip.FoldAngle.Radians));
        var most = Math.Max(targets.Max(target => target.Radians), question.Strips.Max(strip => strip.FoldAngle.Radians));
        var place = Enumerable.Range(0, FoldsTried + 1).MinBy(i => WidestAfter(FoldTried(i)));
        var best = FoldTried(place);
        var before = targets.Max(target => HalfAt(target.Radians));
        FormattableString what = $"Fold another strip at a stop of {Figure.Angle(fit.SettingFor(best).Value)}, about {Figure.Angle(best)} of fold: it narrows the line's widest band over the wanted angles from ±{Figure.Angle(before)} to about ±{Figure.Angle(WidestAfter(best))}";
        return At(best, place is 0 or FoldsTried ? (FormattableString)$"{what}, more than a strip in between would." : $"{what}.");

        NextStrip At(double fold, FormattableString text) =>
            new(text) { StopAngle = new(fit.SettingFor(fold).Value), FoldAngle = new(fold) };

        double FoldTried(int i) => least + ((most - least) * i / FoldsTried);

        double HalfAt(double fold) => fit.Margin.Half * Math.Sqrt(fit.Leverage(fit.SettingFor(fold).Value));

        double WidestAfter(double fold)
        {
            double[] x = [.. question.Strips.Select(strip => strip.StopAngle.Radians), fit.SettingFor(fold).Value];
            var mean = x.Average();
            var spread = x.Sum(at => (at - mean) * (at - mean));
            return targets.Max(target =>
                fit.Margin.Half * Math.Sqrt((1.0 / x.Length) + (Math.Pow(fit.SettingFor(target.Radians).Value - mean, 2) / spread)));
        }
    }

    private static List<ShopNote> NotesOf(StopQuestion question, StraightLine fit, IReadOnlyList<Angle> targets)
    {
        var notes = new List<ShopNote>(3);
        if (fit.IsSlopeAssumed)
        {
            notes.Add(new(
                "slope-assumed",
                $"All strips were folded at one stop, so the slope cannot be measured: it is taken as {Figure.Number(question.AssumedSlope)}, within {Figure.Number(question.SlopeError)}, and the band grows away from {Figure.Angle(fit.MeanY)}."));
        }

        StripNotes.AddMargin(notes, fit.Margin, Figure.Angle(question.ReadingError.Radians));
        if (!fit.IsSlopeKnown)
        {
            notes.Add(new(
                "slope-not-known",
                $"The strips scatter too much, or are too close together, to show the slope: no interval of the stop is given. Fold another strip further off."));
        }

        var (least, most) = (question.Strips.Min(strip => strip.FoldAngle), question.Strips.Max(strip => strip.FoldAngle));
        if (targets.Any(target => target < least || target > most))
        {
            notes.Add(new(
                "beyond-the-strips",
                $"Some wanted angles are outside the {Figure.Angle(least.Radians)} to {Figure.Angle(most.Radians)} that the strips cover; the band assumes that the line continues."));
        }

        return notes;
    }

    private static List<Basis> BasisOf(StraightLine fit) =>
    [
        new("line", "measured angle regressed on the stop angle by least squares, read backwards", "the caller's strips", fit.IsSlopeAssumed ? Status.Assumption : Status.Computed),
        new("settings", "intervals at 95 %: Student's t, the stop for a wanted angle by Fieller's theorem, the next strip by the band of a single reading", "textbook statistics", Status.Computed),
        StripNotes.MarginBasis("margin", fit.Margin),
    ];
}
