namespace Forming.Prediction;

/// <summary>Strips of one panel let go together: every facet turns alike along its whole length.</summary>
/// <remarks>
/// By itself each strip would turn a facet by another angle. An unstretched panel keeps to one, the mean by the strips' shares, and what a
/// strip lacks or has over is an elastic bend, even over the facet.
/// </remarks>
internal static class CoupledRelease
{
    /// <summary>What the pulls of all strips left together.</summary>
    /// <param name="strips">The strips, near end to far end; the middle one stands for the panel.</param>
    /// <param name="pulls">Their pulls, all complete.</param>
    /// <param name="assumedHardeningMpa">Hardening put in place of none [MPa], or null.</param>
    public static WrappedPanel Of(IReadOnlyList<FormStrip> strips, IReadOnlyList<PullOver> pulls, double? assumedHardeningMpa)
    {
        var free = pulls.Select(ReleasedShape.FreeTurns).ToArray();
        var common = new double[free[0].Length];
        for (var k = 0; k < common.Length; k++)
            common[k] = free.Select((turns, p) => strips[p].Shares[k] * turns[k]).Sum();
        WrappedPanel[] released = [.. pulls.Select((pull, p) => ReleasedShape.Of(
            pull, WrapEnd.Complete, assumedHardeningMpa, [.. common.Zip(free[p], (turn, own) => turn - own)]))];
        var middle = released[released.Length / 2];
        return middle with
        {
            Facets = [.. middle.Facets.Select((facet, j) => Worst(facet, released.Select(strip => strip.Facets[j])))],
            Strips = [.. released.Select((strip, p) => new WrappedStrip(
                strip.Facets, BiasOf(free[p], common, strips[p].Form.MiddleFolds)))],
            Pull = MeanOf(released, strips),
            Untouched = [.. released.SelectMany(strip => strip.Untouched).Distinct().Order()],
            Form = new(
                new(Mean(strip => strip.Form.Turn.Radians)),
                new(Mean(strip => strip.Form.ClampTurn.Radians)),
                released.Max(strip => strip.Form.MomentPerWidth)),
            FoldPushPerWidth = released.Max(strip => strip.FoldPushPerWidth),
        };

        double Mean(Func<WrappedPanel, double> value) =>
            Rounded.Of(released.Select((strip, p) => strips[p].WidthShare * value(strip)).Sum());
    }

    private static ReleasedFacet Worst(ReleasedFacet middle, IEnumerable<ReleasedFacet> all) => middle with
    {
        RippleMm = all.Max(facet => facet.RippleMm),
        Slope = new(all.Max(facet => facet.Slope.Radians)),
    };

    private static double BiasOf(double[] free, double[] common, (int From, int To) middle)
    {
        // The turn over a facet comes after that of the fold before it.
        var (first, last) = (middle.From + 1, middle.To + 1);
        var turn = common[first..last].Sum();
        return turn > 0 ? (free[first..last].Sum() / turn) - 1 : 0;
    }

    // A strip that passes over folds tells the panel's steps; where none does, each step is the mean of the strips'.
    private static IReadOnlyList<PullStep> MeanOf(WrappedPanel[] released, IReadOnlyList<FormStrip> strips)
    {
        var fewest = released.MinBy(strip => strip.Pull.Count)!.Pull;
        return [.. fewest.Select(MeanStep)];

        PullStep MeanStep(PullStep step)
        {
            double angle = 0, force = 0, moment = 0, shear = 0, share = 0;
            for (var p = 0; p < released.Length; p++)
            {
                if (released[p].Pull.FirstOrDefault(own => own.Fold == step.Fold) is not { } own)
                    continue;
                var width = strips[p].WidthShare;
                share += width;
                angle += width * own.EndAngle.Radians;
                force += width * own.ForcePerWidth;
                moment += width * own.ClampMomentPerWidth;
                shear += width * own.ClampShearPerWidth;
            }

            return new(
                step.Fold,
                new(Rounded.Of(angle / share)),
                Rounded.Of(force / share),
                Rounded.Of(moment / share),
                Rounded.Of(shear / share));
        }
    }
}

/// <summary>One strip of a tapered panel that was let go with the others.</summary>
/// <param name="Facets">What each facet left in it.</param>
/// <param name="Bias">How much further than the panel it would turn if it were cut free, as a share.</param>
public sealed record WrappedStrip(IReadOnlyList<ReleasedFacet> Facets, double Bias);
