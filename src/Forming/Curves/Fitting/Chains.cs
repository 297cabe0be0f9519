namespace Forming.Curves.Fitting;

/// <summary>
/// First guesses at curves of flats and arcs, as brakes and rolls make them: where a curve with many knots goes from one curvature
/// to another, and which pieces are flat. The fit then moves the corners.
/// </summary>
internal static class Chains
{
    /// <summary>Curves of more pieces are left to evenly set knots.</summary>
    private const int MostPieces = 5;

    /// <summary>Cells in which corners are sought.</summary>
    private const int Cells = 48;

    /// <summary>A ramp of this share of the curve stands for a corner: it shifts the curve by κ w²/24, which no pattern shows.</summary>
    private const double CornerRamp = 0.004;

    /// <summary>Ramps that are free start with this share of the curve.</summary>
    private const double FreeRamp = 0.05;

    /// <summary>A piece of less than this share of the largest curvature is tried as a flat; the points decide.</summary>
    private const double FlatShare = 0.3;

    /// <summary>Guesses by the number of curvatures and corners that a fit would have to choose.</summary>
    /// <param name="rich">Fits with more knots than the points need.</param>
    public static ILookup<int, CurvatureProfile> From(IReadOnlyCollection<NormalFit> rich) =>
        rich.SelectMany(fit => Enumerable.Range(2, MostPieces - 1).SelectMany(pieces => Guesses(fit.Profile, pieces)))
            .Concat(rich.Take(1).Select(fit => Thirds(fit.Profile)))
            .ToLookup(profile => profile.UnknownCount);

    /// <summary>The commonest pattern, a bend between two flats, in case scatter hid where it bends.</summary>
    private static CurvatureProfile Thirds(CurvatureProfile profile)
    {
        var (length, mean) = (profile.Length, Enumerable.Range(0, Cells).Average(i => profile.At((i + 0.5) / Cells * profile.Length)));
        return CurvatureProfile.Chain(
            length, [length / 3, length * 2 / 3], [0, 3 * mean, 0], [true, false, true], CornerRamp * length, false);
    }

    private static IEnumerable<CurvatureProfile> Guesses(CurvatureProfile profile, int pieces)
    {
        var curvatures = new double[Cells];
        for (var i = 0; i < Cells; i++) curvatures[i] = profile.At((i + 0.5) / Cells * profile.Length);
        var starts = Steps.Nearest(curvatures, pieces);
        double[] corners = [.. starts[1..^1].Select(start => start * profile.Length / Cells)];
        double[] values = [.. Enumerable.Range(0, pieces).Select(p => curvatures[starts[p]..starts[p + 1]].Average())];
        var least = FlatShare * values.Max();
        var none = new bool[pieces];
        var flats = Array.ConvertAll(values, value => value < least);
        if (!flats.Contains(false)) yield break;
        yield return Chain(none, CornerRamp, false);
        if (!flats.Contains(true)) yield break;
        yield return Chain(flats, CornerRamp, false);
        yield return Chain(flats, FreeRamp, true);

        CurvatureProfile Chain(bool[] isFlat, double ramp, bool areRampsFree) =>
            CurvatureProfile.Chain(profile.Length, corners, values, isFlat, ramp * profile.Length, areRampsFree);
    }
}
