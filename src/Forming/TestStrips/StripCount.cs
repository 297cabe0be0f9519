using Forming.Learning;
using Forming.Results;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>How many more strips it takes.</summary>
internal static class StripCount
{
    /// <summary>So many strips of one sheet are more work than a panel that comes off wrong.</summary>
    private const int Most = 100;

    private const double Step = 1e-3;

    /// <summary>Growth of ln(finished radius) with ln(yield) at a curvature under which some of the bend stays.</summary>
    /// <param name="law">The bending law.</param>
    /// <param name="loaded">Curvature under load [1/mm].</param>
    public static double Sensitivity(BendingLaw law, double loaded) => Growth(by => law.Stronger(2 - by).Release(loaded));

    /// <summary>Strips pulled round the form's own radius and read as well as the ones before.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="posterior">What is known of the yield.</param>
    /// <param name="effect">The radius that is wanted.</param>
    public static StripsNeeded Of(SpringbackQuestion question, YieldPosterior posterior, SpringbackEffect effect)
    {
        var (sheet, wanted, tolerance) = (question.Sheet, effect.FinishedRadiusMm, question.ToleranceMm);
        var law = BendingLaw.Of(sheet).Stronger(Math.Exp(posterior.LnFactor));
        var middle = wanted + (sheet.ThicknessMm / 2);
        var loaded = law.LoadedFor(1 / middle).Curvature;
        var slope = Sensitivity(law, loaded);
        var now = YieldPosterior.TwoSided * middle * slope * posterior.Deviation;
        var taught = slope / (posterior.Widening * question.ReadingError / YieldPosterior.TwoSided);
        var allowed = tolerance / (YieldPosterior.TwoSided * middle * slope);
        var lacking = (1 / (allowed * allowed)) - (1 / (posterior.Deviation * posterior.Deviation));
        var count = lacking <= 0 ? 0 : Math.Ceiling(lacking / (taught * taught));
        int? strips = count <= Most ? (int)count : null;
        var nominal = SheetPrior.Of(sheet);
        var others = YieldPosterior.TwoSided * middle * ByThickness(law, loaded) * nominal.Thickness;
        return new(tolerance, now, strips, others, TextOf());

        FormattableString TextOf()
        {
            var (r, form, x) = (Figure.Length(wanted), Figure.Length(effect.FormRadiusMm.Value), Figure.Length(tolerance));
            var (far, other) = (Figure.Length(now), Figure.Length(others));
            FormattableString first = strips switch
            {
                0 => $"No more strips: by these the panel finishes within ±{far} of {r}, 95 times of 100, and ±{x} was asked.",
                1 => $"Pull one more strip round {form}: the panel then finishes within ±{x} of {r}, 95 times of 100; now it is ±{far}.",
                { } more => $"Pull {more} more strips round {form}: the panel then finishes within ±{x} of {r}, 95 times of 100; now it is ±{far}.",
                _ => $"Read the radius finer, not more often: {Most} more strips would not bring the panel within ±{x} of {r}; now it is ±{far}.",
            };
            return others > tolerance
                ? (FormattableString)$"{first} That is for this sheet on a true form. Strip another sheet of the coil again, or measure its thickness: what the grade allows in thickness alone moves the radius by ±{other}."
                : $"{first} That is for this sheet on a true form; what the grade allows in thickness moves another sheet's radius by ±{other}.";
        }
    }

    // Strains grow with the thickness as with the curvature.
    private static double ByThickness(BendingLaw law, double loaded) => Growth(by => law.Release(by * loaded) / by);

    // Of the logarithm of what stays; a step down may leave nothing.
    private static double Growth(Func<double, double> left)
    {
        double less = left(1 - Step), more = left(1 + Step);
        return less > 0 ? Math.Log(more / less) / (2 * Step) : Math.Log(more / left(1)) / Step;
    }
}
