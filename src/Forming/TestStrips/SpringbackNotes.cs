using Forming.Learning;
using Forming.Materials;
using Forming.Results;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>What a reader should know about a learnt yield, and what it rests on.</summary>
internal static class SpringbackNotes
{
    /// <summary>The notes.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="fit">What the strips say by themselves.</param>
    /// <param name="posterior">What is known with the grade.</param>
    /// <param name="prior">What sheets of the grade differ by.</param>
    public static List<ShopNote> Of(SpringbackQuestion question, YieldFit fit, YieldPosterior posterior, SheetPrior prior)
    {
        var notes = new List<ShopNote>(5);
        StripNotes.AddMargin(notes, fit.Margin, Figure.Number(100 * question.ReadingError), " %");
        if (fit.Bounds.Low is null)
        {
            notes.Add(new(
                "springback-not-seen",
                $"Use a form of a larger radius: the strips sprang back by less than their scatter, so alone they set the yield no lower end."));
        }

        if (!BendingLaw.Of(question.Sheet).Flow.IsKnown)
        {
            notes.Add(new(
                "no-hardening",
                $"The material's hardening is not known, so the learnt yield covers it too: use it only near the radii of the strips."));
        }

        notes.Add(new(
            "grade-counts",
            $"The strips alone say {Figure.Stress(fit.YieldMpa)}. Sheets of this grade lie within ±{Figure.Number(Math.Round(100 * YieldPosterior.TwoSided * prior.Effective))} % of {Figure.Stress(fit.NominalMpa)}, 95 times of 100; that counts for {posterior.PriorWeight:P0} of the value, the strips for the rest."));
        if (posterior.Widening > 1)
        {
            notes.Add(new(
                "scatter-counts",
                $"The strips scatter further than their reading errors explain, so each counts as if it were read {Figure.Number(posterior.Widening)} times less well."));
        }

        var thickness = prior.ThicknessOf(posterior);
        var nominal = question.Strips.Average(strip => strip.ThicknessMm);
        if (!question.Strips.All(strip => strip.IsThicknessMeasured))
        {
            notes.Add(new(
                "measure-thickness",
                $"Measure the strip's thickness with a micrometer and give it: a strong sheet springs back like a thin one. This one may be {Figure.Length(nominal * thickness.Low!.Value)} to {Figure.Length(nominal * thickness.High!.Value)} thick; the effective yield covers both, on this sheet only."));
        }

        if (question.Strips.Any(strip => strip.WidthMm is null))
        {
            notes.Add(new(
                "give-width",
                $"Give the width of every strip: without it a strip is taken as wide as a panel. A narrow one springs back less, so it makes the sheet seem up to {Figure.Number(Math.Round(100 * Narrowest(question.Sheet)))} % softer."));
        }

        return notes;
    }

    // Yield over modulus of a wide sheet over that of a narrow strip, less one.
    private static double Narrowest(Sheet sheet)
    {
        BendingLaw wide = BendingLaw.Of(sheet), narrow = BendingLaw.OfStrip(sheet, 1);
        return (wide.YieldCurvature / narrow.YieldCurvature) - 1;
    }

    /// <summary>What the values rest on.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="fit">What the strips say by themselves.</param>
    /// <param name="prior">What sheets of the grade differ by.</param>
    public static List<Basis> BasisOf(SpringbackQuestion question, YieldFit fit, SheetPrior prior)
    {
        List<Basis> basis =
        [
            new(
                "effectiveYield",
                "Bayes on a grid of ln(yield) and ln(n): the grade's scatter joined with the readings; of n only what springs the first target alike counts. Springback depends on yield over modulus times thickness only",
                "the caller's strips; Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, ch. 6",
                Status.Computed),
            prior.BasisOf("effectiveYield.prior"),
            new(
                "readingsAlone",
                "least squares of ln(finished radius) and of the sweep, one unknown; its ends by the profile of the sum of squares at 95 %",
                "textbook statistics",
                Status.Computed),
            StripNotes.MarginBasis("margin", fit.Margin),
        ];
        if (question.Strips.Any(strip => strip.Over is FacetedBar))
        {
            basis.Add(new(
                "strips.expected",
                "simulated pulls over the strip's own form at eleven yields, smooth between them",
                "the project's own wrap model; not yet checked against measured panels",
                Status.Model));
        }

        if (question.Strips.Any(strip => strip.WidthMm is not null))
        {
            basis.Add(new(
                "strips.planeStress",
                "(2/g)(cosh g - cos g)/(sinh g + sin g), g = b (3(1 - v²))^1/4/sqrt(R t), of a strip b wide: an elastic plate bent to a cylinder",
                "D. G. Ashwell 1950; that a yielding strip follows it is an assumption",
                Status.FromMemory));
        }

        return basis;
    }
}
