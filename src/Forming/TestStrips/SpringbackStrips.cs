using Forming.Learning;
using Forming.Materials;
using Forming.Results;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>From strips pulled round a bar or over a form to the effective yield stress.</summary>
/// <remarks>
/// Round a bar in pure bending, over facets on the simulated pull. What the strips say is joined with what sheets of the grade differ by.
/// </remarks>
public static class SpringbackStrips
{
    private const double LeastYieldMpa = 1;
    private const double MostYieldMpa = 5000;

    // A second strip this close to a first, in form radius, shows the same again.
    private const double NearShare = 0.1;

    // Half of the bend is lost: the yield moves the finished radius strongly and the radius can still be read.
    private const double TellingFactor = 0.5;

    // A radius of a kilometre is flat.
    private const double FlatCurvature = 1e-6;

    /// <summary>What the strips teach.</summary>
    /// <param name="question">The strips and what is asked of them.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException">
    /// <c>strips.springs-inwards</c>: a strip is not wider than its form. <c>strips.yield-out-of-reach</c>: no yield stress of
    /// a metal explains the strips. <c>strips.no-form</c>: a wanted radius leaves no room for a form. <c>strips.not-followed</c>: no pull
    /// over a form can be followed. <c>strips.facet-too-short</c>, <c>strips.too-much-work</c>.
    /// </exception>
    public static SpringbackLesson Learn(SpringbackQuestion question, CancellationToken cancellation = default)
    {
        var material = question.Sheet.Material;
        var prior = SheetPrior.Of(question.Sheet, question.Strips.All(strip => strip.IsThicknessMeasured));
        var set = StripSet.Of(question, prior.Hardening, cancellation);
        RefuseInwards(question.Strips, set);
        var fit = YieldFit.Of(set.Readings, material.YieldMpa, cancellation);
        if (!(fit.YieldMpa is >= LeastYieldMpa and <= MostYieldMpa))
            throw OutOfReach(fit.YieldMpa);
        double[] targets = question.TargetsMm.Count > 0 ? [.. question.TargetsMm] : [Middle(question.Strips, fit)];
        var posterior = YieldPosterior.OfScattered(
            new()
            {
                PriorDeviation = prior.Effective,
                HardeningDeviation = prior.Hardening,
                HardeningTrade = TradeOf(question.Sheet, targets[0], fit.LnFactor),
                Readings =
                [
                    .. set.Readings.Select(reading =>
                        new YieldReading(reading.Observed, reading.OwnHalf / YieldPosterior.TwoSided, reading.Expected)),
                ],
                SharedErrors = set.SharedErrors,
            },
            cancellation);
        var yield = posterior.Of(lnFactor => material.YieldMpa * Math.Exp(lnFactor));
        var effects = targets.Select((target, i) => EffectOf(question, yield, target, i)).ToArray();
        var needed = StripCount.Of(question, posterior, effects[0]);
        var doubts = SpringbackDoubts.Of(question, set, fit, posterior);
        return new(
            yield,
            posterior.Of(lnFactor => material.YieldMpa * Math.Exp(lnFactor) / material.YoungsModulusMpa),
            material.YieldMpa,
            fit.Bounds,
            posterior.PriorWeight,
            new(Times(prior.YieldOf(posterior), material.YieldMpa), Times(prior.ThicknessOf(posterior), ThicknessOf(question))),
            fit.Margin,
            [.. question.Strips.Select((strip, i) => ReadingOf(set, fit, posterior, strip, i))],
            effects,
            needed)
        {
            Outliers = OutliersOf(question, fit, cancellation),
            Doubts = doubts,
            MarginText = StripNotes.MarginText(
                fit.Margin,
                fit.Readings.Count,
                Figure.Number(100 * question.ReadingError),
                " %",
                fit.Readings.Any(reading => reading.IsSweep) ? "readings" : "strips"),
            Changes = ChangesOf(question, yield.Value, effects[0]),
            Planning = doubts.Count > 0 ? null
                : needed.Strips == 0 ? $"Plan the form with paste in its request: it takes no more strips for ±{Figure.Length(needed.ToleranceMm)}."
                : StripNotes.Planning,
            IsEnough = needed.Strips == 0,
            Next = NextOf(question, set, posterior, effects),
            Notes = SpringbackNotes.Of(question, fit, posterior, prior),
            Safety = StripSafety.OverTheForm,
            Basis = SpringbackNotes.BasisOf(question, fit, prior),
        };
    }

    private static void RefuseInwards(IReadOnlyList<SpringbackStrip> strips, StripSet set)
    {
        foreach (var reading in set.Readings)
        {
            if (reading is not { IsSweep: false, Observed: not > 0, Strip: var i })
                continue;
            var form = InsideRadius(reading.Pull.LoadedCurvature, strips[i].ThicknessMm);
            throw new NoSolutionException(
                "strips.springs-inwards",
                FormattableString.Invariant($"strips[{i}].finishedRadius"),
                $"the strip finished at {Figure.Length(strips[i].FinishedRadiusMm!.Value)}, not wider than its form of {Figure.Length(form)}: a sheet springs open, never closed",
                $"a radius above {Figure.Length(form)}; look for swapped radii, or a strip that did not lie on the form");
        }
    }

    private static NoSolutionException OutOfReach(double yieldMpa) => new(
        "strips.yield-out-of-reach",
        "strips",
        $"the strips give an effective yield stress of {Figure.Stress(yieldMpa)}, which no sheet has",
        $"{Figure.Stress(LeastYieldMpa)} to {Figure.Stress(MostYieldMpa)}; look for radii in the wrong unit or measured on the wrong face");

    // Of radii that were read, or else of those that the sweeps mean.
    private static double Middle(IReadOnlyList<SpringbackStrip> strips, YieldFit fit)
    {
        double[] sorted =
        [
            .. fit.Readings.Where(reading => !reading.IsSweep).Select(reading => strips[reading.Strip].FinishedRadiusMm!.Value).Order(),
        ];
        if (sorted.Length > 0)
            return sorted[sorted.Length / 2];
        var first = fit.Readings[0];
        var left = Math.Max(FlatCurvature, first.Pull.Factor(fit.LnFactor) * first.Pull.LoadedCurvature);
        return InsideRadius(left, strips[first.Strip].ThicknessMm);
    }

    // The panel that is wanted, on its form by the readings: a larger n there springs as so much more yield does.
    private static HardeningTrade TradeOf(Sheet sheet, double targetMm, double lnFactor)
    {
        var law = BendingLaw.Of(sheet).Stronger(Math.Exp(lnFactor));
        var loaded = law.LoadedFor(1 / (targetMm + (sheet.ThicknessMm / 2))).Curvature;
        return HardeningTrade.Of((lnMore, lnHardening) =>
            -Math.Log(law.Stronger(Math.Exp(lnMore)).Hardened(Math.Exp(lnHardening)).Release(loaded)));
    }

    private static Interval Times(Interval interval, double by) => new(by * interval.Value, by * interval.Low, by * interval.High);

    private static double ThicknessOf(SpringbackQuestion question) => question.Strips.Average(strip => strip.ThicknessMm);

    private static SpringbackReading? ReadingOf(StripSet set, YieldFit fit, YieldPosterior posterior, SpringbackStrip strip, int i)
    {
        if (set.Pulls[i] is not { } pull)
            return null;
        StripReading[] own = [.. fit.Readings.Where(reading => reading.Strip == i)];
        var (expected, nominal) = (RadiusAt(posterior.LnFactor), RadiusAt(0));
        Angle? sweep = pull.LoadedSweep is null ? null : new(pull.Sweep(posterior.LnFactor));
        var (factor, miss) = strip.FinishedRadiusMm is { } radius
            ? (Math.Exp(-own[0].Observed), Math.Exp(own[0].Observed - pull.Opening(posterior.LnFactor)) - 1)
            : (own[0].Observed / pull.LoadedSweep!.Value, (own[0].Observed / sweep!.Value.Radians) - 1);
        return new(factor, fit.NominalMpa * Math.Exp(fit.BestOf(own)), expected, nominal, sweep, miss, pull.PlaneStress);

        double? RadiusAt(double lnFactor) => pull.Factor(lnFactor) * pull.LoadedCurvature is > FlatCurvature and var left
            ? InsideRadius(left, strip.ThicknessMm)
            : null;
    }

    private static double InsideRadius(double curvature, double thicknessMm) => (1 / curvature) - (thicknessMm / 2);

    private static SpringbackEffect EffectOf(SpringbackQuestion question, Interval yield, double targetMm, int index)
    {
        var wanted = 1 / (targetMm + (question.Sheet.ThicknessMm / 2));
        var best = FormRadius(yield.Value) ?? throw NoForm(question, targetMm, index);
        // A higher yield springs back further, so it asks for a tighter form.
        return new(
            targetMm,
            FormRadius(question.Sheet.Material.YieldMpa) ?? throw NoForm(question, targetMm, index),
            new(best, FormRadius(yield.High!.Value), FormRadius(yield.Low!.Value)),
            wanted / Law(yield.Value).LoadedFor(wanted).Curvature);

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
            .. Outliers.Find(fit.Residuals, leverages, fit.SumOfSquares, fit.Margin.DegreesOfFreedom, 1)
                .DistinctBy(index => fit.Readings[index].Strip)
                .Select(index => new StripOutlier(fit.Readings[index].Strip, Reason(question, fit, index, cancellation))),
        ];
    }

    private static FormattableString Reason(SpringbackQuestion question, YieldFit fit, int index, CancellationToken cancellation)
    {
        var (strip, isSweep) = (fit.Readings[index].Strip, fit.Readings[index].IsSweep);
        StripReading[] others = [.. fit.Readings.Where(reading => reading.Strip != strip)];
        if (others.Length == 0)
            return $"its radius and its sweep do not go together: measure both again";
        var without = YieldFit.Of(others, fit.NominalMpa, cancellation);
        var off = fit.Readings[index].Observed - fit.Readings[index].Expected(fit.LnFactor);
        return isSweep
            ? (FormattableString)$"turns {Figure.Angle(fit.Readings[index].Observed)}, {Figure.Angle(Math.Abs(off))} off what the strips together give and too far for their scatter; it is still counted: measure it again, or leave it out for {Figure.Stress(without.YieldMpa)}"
            : $"finished at {Figure.Length(question.Strips[strip].FinishedRadiusMm!.Value)}, {Figure.Number(100 * (Math.Exp(off) - 1))} % off what the strips together give and too far for their scatter; it is still counted: measure it again, or leave it out for {Figure.Stress(without.YieldMpa)}";
    }

    private static FormattableString ChangesOf(SpringbackQuestion question, double yieldMpa, SpringbackEffect effect) =>
        $"The panel springs back as with a yield stress of {Figure.Stress(yieldMpa)} in place of {Figure.Stress(question.Sheet.Material.YieldMpa)}: for a finished radius of {Figure.Length(effect.FinishedRadiusMm)} the form's radius goes from {Figure.Length(effect.FormRadiusBeforeMm)} to {Figure.Length(effect.FormRadiusMm.Value)}.";

    private static NextStrip NextOf(SpringbackQuestion question, StripSet set, YieldPosterior posterior, SpringbackEffect[] effects)
    {
        var thickness = question.Sheet.ThicknessMm;
        var law = BendingLaw.Of(question.Sheet).Stronger(Math.Exp(posterior.LnFactor));
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

        bool HasNear(double radius) => question.Strips.Where((strip, i) =>
            set.Pulls[i] is { } pull
                && Math.Abs(InsideRadius(pull.LoadedCurvature, strip.ThicknessMm) - radius) <= NearShare * radius
                && Math.Abs(strip.ThicknessMm - thickness) <= NearShare * thickness).Any();

        double TellingRadius()
        {
            var curvature = Bisection.Solve(k => (law.Release(k) / k) - TellingFactor, law.YieldCurvature, 1e6 * law.YieldCurvature);
            return InsideRadius(curvature, thickness);
        }

        // In percent of the yield, by the tangent.
        (Figure Before, Figure After) Narrowing(double radius)
        {
            var taught = StripCount.Sensitivity(law, 1 / (radius + (thickness / 2))) / (question.ReadingError / YieldPosterior.TwoSided);
            var information = 1 / (posterior.Deviation * posterior.Deviation);
            return (Percent(information), Percent(information + (taught * taught)));
        }

        static Figure Percent(double information) => Figure.Number(100 * YieldPosterior.TwoSided / Math.Sqrt(information));
    }
}
