using Forming.Folds;
using Forming.Learning;
using Forming.Results;

namespace Forming.TestStrips;

/// <summary>From strips measured flat and folded to the neutral factor.</summary>
/// <remarks>
/// <c>BA = flat - (legs - 2 SB)</c> with legs to the mold line, <c>BA = flat - legs</c> to the tangent lines; <c>K = (BA/a - r)/t</c>:
/// <see cref="FoldShape"/> read backwards. Strips are weighed by what their reading errors do to K.
/// </remarks>
public static class NeutralStrips
{
    // Folds this much apart in radius over thickness have neutral lines of their own.
    private const double MixedRatio = 1.5;

    private static readonly Angle[] Tellings = [.. new[] { 15.0, 30, 45, 60, 75, 90, 105, 120, 135 }.Select(Angle.FromDegrees)];

    /// <summary>What the strips teach.</summary>
    /// <param name="question">The strips and what is asked of them.</param>
    /// <exception cref="NoSolutionException"><c>strips.neutral-line-outside</c>: the neutral line would lie outside of the
    /// sheet.</exception>
    public static NeutralLesson Learn(NeutralQuestion question)
    {
        NeutralReading[] readings = [.. question.Strips.Select(strip => ReadingOf(question, strip))];
        var (best, weight) = Mean(readings);
        if (!(best is >= 0 and <= 1))
            throw Outside(best);
        double[] residuals = [.. readings.Select(reading => (reading.Factor - best) / reading.FactorError)];
        var squares = residuals.Sum(residual => residual * residual);
        var margin = Margin.Of(squares, readings.Length - 1, 1);
        double? published = readings.All(reading => reading.Published is not null) ? readings.Average(reading => reading.Published) : null;
        var factor = Interval.Around(best, margin.Half / Math.Sqrt(weight));
        var doubts = DoubtsOf(readings, factor);
        return new(factor, margin, published, readings)
        {
            Outliers = OutliersOf(readings, residuals, squares, margin, weight),
            Doubts = doubts,
            MarginText = StripNotes.MarginText(margin, readings.Length, Figure.Number(1 / Math.Sqrt(weight))),
            Changes = ChangesOf(question, best, published),
            Planning = doubts.Count > 0 ? null : StripNotes.Planning,
            Next = NextOf(question, factor, margin, weight),
            Notes = NotesOf(question, margin),
            Safety = StripSafety.InTheBrake,
            Basis = BasisOf(margin),
        };
    }

    private static NeutralReading ReadingOf(NeutralQuestion question, NeutralStrip strip)
    {
        var a = strip.FoldAngle.Radians;
        var setbacks = question.MeasuredTo == FlangeEnd.MoldLine
            ? 2 * new FoldShape(strip.InsideRadiusMm, strip.ThicknessMm, 0).Setback(a)
            : 0;
        var allowance = strip.FlatLengthMm - (strip.FlangeAMm + strip.FlangeBMm - setbacks);
        var factor = ((allowance / a) - strip.InsideRadiusMm) / strip.ThicknessMm;
        double? published = strip.InsideRadiusMm / strip.ThicknessMm >= NeutralLine.SmallestRadiusOverThickness
            ? NeutralLine.Factor(strip.InsideRadiusMm, strip.ThicknessMm)
            : null;
        return new(allowance, factor, ErrorOf(question, strip, allowance), published);
    }

    // Three lengths, an angle and a radius, each out by its own reading error and by chance alone.
    private static double ErrorOf(NeutralQuestion question, NeutralStrip strip, double allowanceMm)
    {
        var a = strip.FoldAngle.Radians;
        var half = Math.Tan(a / 2);
        var toMoldLine = question.MeasuredTo == FlangeEnd.MoldLine;
        var byLength = Math.Sqrt(3) / (a * strip.ThicknessMm);
        var setbackGrowth = toMoldLine ? (strip.InsideRadiusMm + strip.ThicknessMm) * (1 + (half * half)) : 0;
        var byAngle = (setbackGrowth - (allowanceMm / a)) / (a * strip.ThicknessMm);
        var byRadius = ((toMoldLine ? 2 * half / a : 0) - 1) / strip.ThicknessMm;
        return Math.Sqrt(
            Square(byLength * question.LengthErrorMm)
            + Square(byAngle * question.AngleError.Radians)
            + Square(byRadius * question.RadiusErrorMm));
    }

    private static (double Best, double Weight) Mean(IReadOnlyList<NeutralReading> readings)
    {
        var weight = readings.Sum(reading => WeightOf(reading.FactorError));
        return (readings.Sum(reading => WeightOf(reading.FactorError) * reading.Factor) / weight, weight);
    }

    private static double WeightOf(double error) => 1 / (error * error);

    private static NoSolutionException Outside(double factor) => new(
        "strips.neutral-line-outside",
        "strips",
        $"the strips give a neutral factor of {Figure.Number(factor)}, a neutral line outside the sheet",
        $"lengths that give a factor of 0 to 1; look whether the legs were measured to the mold line or to the tangent line, and whether the angle is the turned one");

    private static StripOutlier[] OutliersOf(
        NeutralReading[] readings, double[] residuals, double squares, Margin margin, double weight)
    {
        double[] leverages = [.. readings.Select(reading => WeightOf(reading.FactorError) / weight)];
        var found = Outliers.Find(residuals, leverages, squares, margin.DegreesOfFreedom, 1);
        return [.. Enumerable.Range(0, readings.Length).Where(IsNamed).Select(index => new StripOutlier(index, Reason(index)))];

        // A single neutral line outside of the sheet is an error of measuring, whatever the others say.
        bool IsNamed(int index) => found.Contains(index) || readings[index].Factor is < 0 or > 1;

        FormattableString Reason(int index)
        {
            var (without, _) = Mean([.. readings.Where((_, i) => i != index)]);
            return found.Contains(index)
                ? (FormattableString)$"this strip alone gives K {Figure.Number(readings[index].Factor)}, too far from the others for their scatter; it is still counted: measure it again, or leave it out for {Figure.Number(without)}"
                : $"this strip alone gives K {Figure.Number(readings[index].Factor)}, a neutral line outside the sheet; it is still counted: measure it again, or leave it out for {Figure.Number(without)}";
        }
    }

    private static List<StripDoubt> DoubtsOf(NeutralReading[] readings, Interval factor)
    {
        var doubts = new List<StripDoubt>(2);
        if (factor.Low < 0 || factor.High > 1)
        {
            doubts.Add(new(
                "factor-implausible",
                [],
                $"These strips leave K anywhere from {Figure.Number(factor.Low!.Value)} to {Figure.Number(factor.High!.Value)}; in any sheet it is between 0 and 1. That is too wide to plan with: measure the strips again, or fold another."));
        }

        var widening = Plausibility.Widening(readings.Length);
        if (Plausibility.Apart([.. readings.Select(reading => (
                reading.Factor - (widening * reading.FactorError), reading.Factor + (widening * reading.FactorError)))]) is { } pair)
        {
            doubts.Add(new(
                "strips-contradict",
                [pair.Low, pair.High],
                $"Strip {pair.Low + 1} alone gives K {Figure.Number(readings[pair.Low].Factor)}, strip {pair.High + 1} gives {Figure.Number(readings[pair.High].Factor)}: too far apart for the reading errors. Measure both again."));
        }

        return doubts;
    }

    private static FormattableString ChangesOf(NeutralQuestion question, double best, double? published)
    {
        var angle = question.Strips.Average(strip => strip.FoldAngle.Radians);
        var thickness = question.ThicknessMm;
        return published is { } formula
            ? (FormattableString)$"Every fold of the next form takes {Figure.Number(best)} in place of the published {Figure.Number(formula)} as its neutral factor: a fold of {Figure.Angle(angle)} in {Figure.Length(thickness)} takes {Figure.Length((best - formula) * thickness * angle)} more of the flat, and all marks after it move with it."
            : $"Every fold of the next form takes {Figure.Number(best)} as its neutral factor, where no published one applies: a fold of {Figure.Angle(angle)} in {Figure.Length(thickness)} takes {Figure.Length(best * thickness * angle)} of the flat beyond its inside arc.";
    }

    // Of the usual angles the one whose reading errors leave K the least open.
    private static NextStrip NextOf(NeutralQuestion question, Interval factor, Margin margin, double weight)
    {
        var like = question.Strips[0] with { ThicknessMm = question.ThicknessMm };
        var best = Tellings.MinBy(ErrorAt);
        var error = ErrorAt(best);
        var after = margin.Half / Math.Sqrt(weight + WeightOf(error));
        return new NextStrip(
            $"Fold another strip to {Figure.Angle(best.Radians)} at an inside radius of {Figure.Length(like.InsideRadiusMm)} in {Figure.Length(like.ThicknessMm)}: of the usual angles this one leaves K least open to the reading errors, ±{Figure.Number(error)} alone, and narrows it from ±{Figure.Number(margin.Half / Math.Sqrt(weight))} to about ±{Figure.Number(after)}.")
        {
            FoldAngle = best,
            ThicknessMm = like.ThicknessMm,
        };

        double ErrorAt(Angle angle) => ErrorOf(
            question,
            like with { FoldAngle = angle },
            new FoldShape(like.InsideRadiusMm, like.ThicknessMm, factor.Value).BendAllowance(angle.Radians));
    }

    private static List<ShopNote> NotesOf(NeutralQuestion question, Margin margin)
    {
        var notes = new List<ShopNote>(3);
        if (margin.DegreesOfFreedom == 0)
        {
            notes.Add(new(
                "no-scatter",
                $"One strip shows no scatter: the width rests on the reading errors alone. One more strip tests them."));
        }
        else if (margin.IsReadingError)
        {
            notes.Add(new("closer-than-readable", $"The strips agree better than they can be read: the width rests on the reading errors."));
        }

        var ratios = question.Strips.Select(strip => strip.InsideRadiusMm / strip.ThicknessMm).ToArray();
        if (ratios.Max() > MixedRatio * ratios.Min())
        {
            notes.Add(new(
                "mixed-radii",
                $"The strips' radius over thickness runs from {Figure.Number(ratios.Min())} to {Figure.Number(ratios.Max())}, and K grows with it: use strips of the form's own fold radius."));
        }

        return notes;
    }

    private static List<Basis> BasisOf(Margin margin) =>
    [
        new(
            "neutralFactor",
            "K = (BA/a - r)/t, BA = flat - (legs - 2 SB) to mold lines, flat - legs to tangent lines; mean weighed by what the reading errors do to K",
            "geometry; Kalpakjian & Schmid eq. 16.2; FAA AC 43.13-1B ¶4-56",
            Status.Computed),
        new("published", "K = (0.65 + 0.5 log10(r/t))/2, at most 0.5", "DIN 6935", Status.PublishedAsQuoted),
        StripNotes.MarginBasis("neutralFactor.low", margin),
    ];

    private static double Square(double value) => value * value;
}
