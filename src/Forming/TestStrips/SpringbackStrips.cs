using Forming.Learning;
using Forming.Materials;
using Forming.Results;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>From strips pulled round a form to the effective yield stress.</summary>
public static class SpringbackStrips
{
    private const double LeastYieldMpa = 1;
    private const double MostYieldMpa = 5000;

    // A second strip this close to a first, in form radius, shows the same again.
    private const double NearShare = 0.1;

    // Half of the bend is lost: the yield moves the finished radius strongly and the radius can still be read.
    private const double TellingFactor = 0.5;

    // The yield of a grade's sheets lies within this share of its nominal one, nearly always: an assumption.
    private const double GradeShare = 0.4;

    /// <summary>What the strips teach.</summary>
    /// <param name="question">The strips and what is asked of them.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException">
    /// <c>strips.springs-inwards</c>: a strip is not wider than its form. <c>strips.yield-out-of-reach</c>: no yield stress of
    /// a metal explains the strips. <c>strips.no-form</c>: a wanted radius leaves no room for a form.
    /// </exception>
    public static SpringbackLesson Learn(SpringbackQuestion question, CancellationToken cancellation = default)
    {
        RefuseInwards(question.Strips);
        var fit = YieldFit.Of(question.Sheet.Material, question.Strips, question.ReadingError, cancellation);
        if (!(fit.YieldMpa is >= LeastYieldMpa and <= MostYieldMpa))
            throw OutOfReach(fit.YieldMpa);
        double[] targets = question.TargetsMm.Count > 0 ? [.. question.TargetsMm] : [Middle(question.Strips)];
        var effects = targets.Select((target, i) => EffectOf(question, fit, target, i)).ToArray();
        var modulus = question.Sheet.Material.YoungsModulusMpa;
        return new(
            fit.Bounds,
            new(fit.YieldMpa / modulus, fit.Bounds.Low / modulus, fit.Bounds.High / modulus),
            question.Sheet.Material.YieldMpa,
            fit.Margin,
            [.. question.Strips.Select((strip, i) => ReadingOf(question.Sheet.Material, fit, strip, i))],
            effects)
        {
            Outliers = OutliersOf(question, fit, cancellation),
            Doubts = DoubtsOf(question, fit),
            MarginText = StripNotes.MarginText(fit.Margin, question.Strips.Count, Figure.Number(100 * question.ReadingError), " %"),
            Changes = ChangesOf(question, fit, effects[0]),
            Next = NextOf(question, fit, effects),
            Notes = NotesOf(question, fit),
            Safety = StripSafety.OverTheForm,
            Basis = BasisOf(fit),
        };
    }

    private static void RefuseInwards(IReadOnlyList<SpringbackStrip> strips)
    {
        for (var i = 0; i < strips.Count; i++)
        {
            var strip = strips[i];
            if (!(strip.LoadedCurvature > strip.FinishedCurvature))
            {
                throw new NoSolutionException(
                    "strips.springs-inwards",
                    FormattableString.Invariant($"strips[{i}].finishedRadius"),
                    $"the strip finished at {Figure.Length(strip.FinishedRadiusMm)}, not wider than its form of {Figure.Length(strip.FormRadiusMm)}: a sheet springs open, never closed",
                    $"a radius above {Figure.Length(strip.FormRadiusMm)}; look for swapped radii, or a strip that did not lie on the form");
            }
        }
    }

    private static NoSolutionException OutOfReach(double yieldMpa) => new(
        "strips.yield-out-of-reach",
        "strips",
        $"the strips give an effective yield stress of {Figure.Stress(yieldMpa)}, which no sheet has",
        $"{Figure.Stress(LeastYieldMpa)} to {Figure.Stress(MostYieldMpa)}; look for radii in the wrong unit or measured on the wrong face");

    private static double Middle(IReadOnlyList<SpringbackStrip> strips)
    {
        double[] sorted = [.. strips.Select(strip => strip.FinishedRadiusMm).Order()];
        return sorted[sorted.Length / 2];
    }

    private static SpringbackReading ReadingOf(Material material, YieldFit fit, SpringbackStrip strip, int i)
    {
        var sheet = new Sheet(material, strip.ThicknessMm);
        var expected = BendingLaw.WithYield(sheet, fit.YieldMpa).Release(strip.LoadedCurvature);
        var nominal = BendingLaw.Of(sheet).Release(strip.LoadedCurvature);
        return new(
            strip.FinishedCurvature / strip.LoadedCurvature,
            Math.Exp(fit.Single[i]),
            InsideRadius(expected, strip.ThicknessMm),
            nominal > FlatCurvature ? InsideRadius(nominal, strip.ThicknessMm) : null,
            Math.Exp(fit.Residuals[i]) - 1);
    }

    // A radius of a kilometre is flat.
    private const double FlatCurvature = 1e-6;

    private static double InsideRadius(double curvature, double thicknessMm) => (1 / curvature) - (thicknessMm / 2);

    private static SpringbackEffect EffectOf(SpringbackQuestion question, YieldFit fit, double targetMm, int index)
    {
        var wanted = 1 / (targetMm + (question.Sheet.ThicknessMm / 2));
        var best = FormRadius(fit.YieldMpa) ?? throw NoForm(question, targetMm, index);
        // A higher yield springs back further, so it asks for a tighter form.
        return new(
            targetMm,
            FormRadius(question.Sheet.Material.YieldMpa) ?? throw NoForm(question, targetMm, index),
            new(best, fit.Bounds.High is { } high ? FormRadius(high) : null, fit.Bounds.Low is { } low ? FormRadius(low) : targetMm),
            wanted / Law(fit.YieldMpa).LoadedFor(wanted).Curvature);

        BendingLaw Law(double yieldMpa) => BendingLaw.WithYield(question.Sheet, yieldMpa);

        double? FormRadius(double yieldMpa)
        {
            var radius = InsideRadius(Law(yieldMpa).LoadedFor(wanted).Curvature, question.Sheet.ThicknessMm);
            return radius > 0 ? radius : null;
        }
    }

    private static NoSolutionException NoForm(SpringbackQuestion question, double targetMm, int index) => new(
        "strips.no-form",
        question.TargetsMm.Count > 0 ? FormattableString.Invariant($"targets[{index}]") : "strips",
        $"a panel of {Figure.Length(question.Sheet.ThicknessMm)} that finishes at {Figure.Length(targetMm)} would need a form without a radius",
        $"a larger finished radius, or a thinner sheet");

    private static StripOutlier[] OutliersOf(SpringbackQuestion question, YieldFit fit, CancellationToken cancellation)
    {
        var information = fit.Sensitivities.Sum(slope => slope * slope);
        double[] leverages = [.. fit.Sensitivities.Select(slope => slope * slope / information)];
        return
        [
            .. Outliers.Find(fit.Residuals, leverages, fit.SumOfSquares, fit.Margin.DegreesOfFreedom, question.ReadingError)
                .Select(index => new StripOutlier(index, Reason(question, fit, index, cancellation))),
        ];
    }

    private static FormattableString Reason(SpringbackQuestion question, YieldFit fit, int index, CancellationToken cancellation)
    {
        var without = YieldFit.Of(
            question.Sheet.Material, [.. question.Strips.Where((_, i) => i != index)], question.ReadingError, cancellation);
        return $"finished at {Figure.Length(question.Strips[index].FinishedRadiusMm)}, {Figure.Number(100 * (Math.Exp(fit.Residuals[index]) - 1))} % off what the learnt yield gives and too far for the strips' scatter; it is still counted: measure it again, or leave it out for {Figure.Stress(without.YieldMpa)}";
    }

    private static List<StripDoubt> DoubtsOf(SpringbackQuestion question, YieldFit fit)
    {
        var doubts = new List<StripDoubt>(2);
        var (learnt, grade) = (fit.YieldMpa, question.Sheet.Material.YieldMpa);
        if (Math.Abs(learnt - grade) > GradeShare * grade)
        {
            doubts.Add(new(
                "yield-implausible",
                [],
                $"The strips give a yield stress of {Figure.Stress(learnt)}; this grade has {Figure.Stress(grade)}, and {GradeShare:P0} to either side of that is usual. Look for radii in the wrong unit or on the wrong face, a wrong thickness, or sheet of another grade, before you use it."));
        }

        var within = question.ReadingError * Plausibility.Widening(question.Strips.Count);
        if (Plausibility.Apart([.. Enumerable.Range(0, question.Strips.Count).Select(i => fit.SingleWithin(i, within))]) is { } pair)
        {
            doubts.Add(new(
                "strips-contradict",
                [pair.Low, pair.High],
                $"Strip {pair.Low + 1} alone gives a yield stress of {Figure.Stress(Math.Exp(fit.Single[pair.Low]))}, strip {pair.High + 1} for {Figure.Stress(Math.Exp(fit.Single[pair.High]))}: too far apart for a reading error of {Figure.Number(100 * question.ReadingError)} %. Measure both again; if both readings are right, the strips are not from one sheet."));
        }

        return doubts;
    }

    private static FormattableString ChangesOf(SpringbackQuestion question, YieldFit fit, SpringbackEffect effect) =>
        $"The panel springs back as with a yield stress of {Figure.Stress(fit.YieldMpa)} in place of {Figure.Stress(question.Sheet.Material.YieldMpa)}: for a finished radius of {Figure.Length(effect.FinishedRadiusMm)} the form's radius goes from {Figure.Length(effect.FormRadiusBeforeMm)} to {Figure.Length(effect.FormRadiusMm.Value)}.";

    private static NextStrip NextOf(SpringbackQuestion question, YieldFit fit, SpringbackEffect[] effects)
    {
        var thickness = question.Sheet.ThicknessMm;
        foreach (var effect in effects)
        {
            if (!HasNear(effect.FormRadiusMm.Value))
            {
                var (from, to) = Narrowing(effect.FormRadiusMm.Value);
                return At(effect.FormRadiusMm.Value, $"Pull another strip round a form of {Figure.Length(effect.FormRadiusMm.Value)}: it should finish at the wanted {Figure.Length(effect.FinishedRadiusMm)}, and narrows the yield from about ±{from} % to ±{to} %.");
            }
        }

        var telling = TellingRadius();
        if (telling > 0 && !HasNear(telling))
        {
            var (from, to) = Narrowing(telling);
            return At(telling, $"Pull another strip round a form of {Figure.Length(telling)}, which loses half of its bend and so shows the yield plainly: it narrows the yield from about ±{from} % to ±{to} %.");
        }

        var again = effects[0].FormRadiusMm.Value;
        var (before, after) = Narrowing(again);
        return At(again, $"Repeat the strip on a form of {Figure.Length(again)}: it shows how much strips scatter, and narrows the yield from about ±{before} % to ±{after} %.");

        NextStrip At(double radius, FormattableString text) => new(text) { FormRadiusMm = radius, ThicknessMm = thickness };

        bool HasNear(double radius) => question.Strips.Any(strip =>
            Math.Abs(strip.FormRadiusMm - radius) <= NearShare * radius
                && Math.Abs(strip.ThicknessMm - thickness) <= NearShare * thickness);

        double TellingRadius()
        {
            var law = BendingLaw.WithYield(question.Sheet, fit.YieldMpa);
            var curvature = Bisection.Solve(k => (law.Release(k) / k) - TellingFactor, law.YieldCurvature, 1e6 * law.YieldCurvature);
            return InsideRadius(curvature, thickness);
        }

        // In percent of the yield, by the tangent, the scatter left as it is.
        (Figure Before, Figure After) Narrowing(double radius)
        {
            var slope = YieldFit.Sensitivity(question.Sheet, 1 / (radius + (thickness / 2)), Math.Log(fit.YieldMpa));
            var information = fit.Sensitivities.Sum(sensitivity => sensitivity * sensitivity);
            return (Percent(information), Percent(information + (slope * slope)));
        }

        Figure Percent(double information) => Figure.Number(100 * fit.Margin.Half / Math.Sqrt(information));
    }

    private static List<ShopNote> NotesOf(SpringbackQuestion question, YieldFit fit)
    {
        var notes = new List<ShopNote>(3);
        StripNotes.AddMargin(notes, fit.Margin, Figure.Number(100 * question.ReadingError), " %");
        if (fit.Bounds.Low is null)
        {
            notes.Add(new(
                "springback-not-seen",
                $"Use a form of a larger radius: the strips sprang back by less than their scatter, so the yield has no lower end."));
        }

        if (!BendingLaw.Of(question.Sheet).Flow.IsKnown)
        {
            notes.Add(new(
                "no-hardening",
                $"The material's hardening is not known, so the learnt yield covers it too: use it only near the radii of the strips."));
        }

        return notes;
    }

    private static List<Basis> BasisOf(YieldFit fit) =>
    [
        new(
            "effectiveYield",
            "least squares of ln(finished radius) through elastic-plastic pure bending of a wide sheet, one unknown",
            "the caller's strips; Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, ch. 6",
            Status.Computed),
        new("effectiveYield.low", "profile of the sum of squares at 95 %: the yields whose squares exceed the least by no more than the margin's", "textbook statistics", Status.Computed),
        StripNotes.MarginBasis("margin", fit.Margin),
    ];
}
