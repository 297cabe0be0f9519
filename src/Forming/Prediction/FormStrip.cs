using MathNet.Numerics.Integration;

namespace Forming.Prediction;

/// <summary>A strip of the panel square to the folds, and the form under it.</summary>
/// <param name="Form">The form's section under the strip.</param>
/// <param name="Setup">How the strip is held and pulled.</param>
/// <param name="WidthShare">Its share in the panel's width.</param>
/// <param name="Shares">[m + 1] its share in the turn of the panel before the first fold, over each facet, and past the last one.</param>
internal sealed record FormStrip(StandingForm Form, WrapSetup Setup, double WidthShare, double[] Shares)
{
    private const int QuadratureOrder = 16;

    /// <summary>The form that the strip was pulled over and let go before; null for a flat one.</summary>
    public StandingForm? Before { get; init; }

    /// <summary>The only strip of a straight form.</summary>
    /// <param name="form">The form.</param>
    /// <param name="setup">How the panel is held and pulled.</param>
    public static FormStrip Only(StandingForm form, WrapSetup setup) =>
        new(form, setup, 1, [.. Enumerable.Repeat(1.0, form.Folds + 1)]);

    /// <summary>The strips of a tapered form.</summary>
    /// <param name="forms">The form's sections, near end to far end.</param>
    /// <param name="places">Where they lie along the folds, 0 to 1.</param>
    /// <param name="widths">[strips][m - 1] width of the panel over each facet [mm].</param>
    /// <param name="setups">How each strip is held and pulled.</param>
    /// <remarks>
    /// Least elastic energy over all shapes in which a facet turns alike along its whole length asks for the mean of what the strips would
    /// turn by themselves, even in the logarithm of the bending radius, which is that of the width: <c>∫ dr/r</c>.
    /// </remarks>
    public static FormStrip[] Along(
        IReadOnlyList<StandingForm> forms, IReadOnlyList<double> places, double[][] widths, IReadOnlyList<WrapSetup> setups)
    {
        var folds = forms[0].Folds;
        var shares = forms.Select(_ => new double[folds + 1]).ToArray();
        for (var j = 0; j <= folds; j++)
        {
            var facet = Math.Clamp(j - 1, 0, folds - 2);
            var ratio = widths[^1][facet] / widths[0][facet];
            for (var p = 0; p < shares.Length; p++)
                shares[p][j] = ShareOf(places, p, ratio);
        }

        return [.. forms.Select((form, p) => new FormStrip(form, setups[p], ShareOf(places, p, 1), shares[p]))];
    }

    // Of the polynomial through all places.
    private static double ShareOf(IReadOnlyList<double> places, int place, double ratio)
    {
        var perLength = Math.Abs(ratio - 1) < 1e-9 ? 1 : (ratio - 1) / Math.Log(ratio);
        return GaussLegendreRule.Integrate(at => perLength / (1 + ((ratio - 1) * at)) * Through(at), 0, 1, QuadratureOrder);

        double Through(double at)
        {
            double product = 1;
            for (var i = 0; i < places.Count; i++)
                product *= i == place ? 1 : (at - places[i]) / (places[place] - places[i]);
            return product;
        }
    }
}
