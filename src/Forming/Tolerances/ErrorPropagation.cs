using System.Numerics;
using Forming.Layout;

namespace Forming.Tolerances;

/// <summary>How well folds are made: fold i turns by its own angle, the bias and a Gaussian error; its mark lies off by another.</summary>
/// <param name="Bias">What every fold turns too far.</param>
/// <param name="Scatter">Standard deviation of a fold angle about that, at least 0.</param>
/// <param name="MarkScatterMm">Standard deviation of a mark from the datum [mm], at least 0; both edges of the blank are exact.</param>
public sealed record FoldAccuracy(Angle Bias, Angle Scatter, double MarkScatterMm)
{
    /// <summary>±1° and ±0.8 mm, each two standard deviations: an assumption for hand-set brakes.</summary>
    public static FoldAccuracy Default { get; } = new(Angle.Zero, Angle.FromDegrees(0.5), 0.4);

    /// <summary>Whether nobody gave the scatter, so that it is the default.</summary>
    public bool ScatterIsAssumed { get; init; }

    /// <summary>Whether nobody gave the mark scatter, so that it is the default.</summary>
    public bool MarkScatterIsAssumed { get; init; }
}

/// <summary>From the errors of folds and marks to the spread of the end.</summary>
/// <remarks>
/// Mold lines are taken as sharp vertices: what bend allowance and setback change with the angle's own error is left out.
/// With φ_j the direction of flat j, m_j = e^(i(φ_j + j b)) and C_jk the second moments of the flats' lengths,
/// <c>E P = Σ c_j m_j e^(-j u²/2)</c>, <c>E PP* = Σ C_jk m_j m_k* e^(-|j-k| u²/2)</c>, <c>E PP = Σ C_jk m_j m_k e^(-(j+k+2 min(j,k))
/// u²/2)</c>.
/// </remarks>
public static class ErrorPropagation
{
    /// <summary>The exact mean and covariance for Gaussian errors.</summary>
    /// <param name="form">The planned form.</param>
    /// <param name="accuracy">How well it is folded.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static EndSpread Exact(FoldedPolygon form, FoldAccuracy accuracy, CancellationToken cancellation = default)
    {
        var count = form.Folds + 1;
        var (bias, u2, v2) = (accuracy.Bias.Radians, Square(accuracy.Scatter.Radians), Square(accuracy.MarkScatterMm));
        var directions = new Complex[count];
        Complex shift = 0;
        double turn = 0;
        for (var j = 0; j < count; j++)
        {
            directions[j] = Complex.FromPolarCoordinates(1, turn + (j * bias));
            // The mean less the plan, flat by flat: the difference of two large sums would lose its digits.
            shift += form.FlatsMm[j] * Complex.FromPolarCoordinates(1, turn)
                * ((Complex.FromPolarCoordinates(1, j * bias) * LessOne(-j * u2 / 2)) + TurnLessOne(j * bias));
            if (j < form.Folds)
                turn += form.FoldAngles[j];
        }

        var fading = new double[count];
        for (var j = 0; j < count; j++)
            fading[j] = Math.Exp(-j * u2 / 2);

        double spread = 0;
        Complex square = 0;
        for (var j = 0; j < count; j++)
        {
            cancellation.ThrowIfCancellationRequested();
            var lost = -LessOne(-j * u2);
            for (var k = j; k < count; k++)
            {
                // Centred moments: E[PP*] - E[P]E[P]* and E[PP] - E[P]², again without the large common part; j is the smaller index.
                var lengths = form.FlatsMm[j] * form.FlatsMm[k] * lost;
                var marks = v2 * (j == k ? (j == 0 || j == form.Folds ? 1 : 2) : k == j + 1 ? -1 : 0);
                var both = j == k ? 1 : 2;
                spread += both * (directions[j] * Complex.Conjugate(directions[k])).Real * fading[k - j] * (marks + lengths);
                square += both * fading[j] * fading[k] * ((marks * (1 - lost)) - lengths) * (directions[j] * directions[k]);
            }
        }

        return new(
            new(shift.Real, shift.Imaginary),
            new((spread + square.Real) / 2, (spread - square.Real) / 2, square.Imaginary / 2));
    }

    /// <summary>The first-order values, about the planned polygon.</summary>
    /// <param name="form">The planned form.</param>
    /// <param name="accuracy">How well it is folded.</param>
    public static EndSpread FirstOrder(FoldedPolygon form, FoldAccuracy accuracy) =>
        new ParallelErrors(form).Ends[0].FirstOrder(accuracy);

    /// <summary>What a unit of each error does to the end.</summary>
    /// <param name="form">The planned form.</param>
    /// <returns>Σ g gᵀ for a radian of scatter a fold, Σ h hᵀ for a millimetre a mark, Σ g for a radian of bias.</returns>
    internal static (Covariance Folds, Covariance Marks, Point Bias) Influences(FoldedPolygon form)
    {
        var vertices = form.Vertices();
        Covariance folds = default, marks = default;
        Point lean = default;
        double turn = 0;
        for (var i = 0; i < form.Folds; i++)
        {
            var g = (vertices[^1] - vertices[i + 1]).Left();
            var h = Point.Along(turn) - Point.Along(turn + form.FoldAngles[i]);
            (folds, marks, lean) = (Plus(folds, g), Plus(marks, h), lean + g);
            turn += form.FoldAngles[i];
        }

        return (folds, marks, lean);
    }

    private static Covariance Plus(Covariance sum, Point g) =>
        new(sum.XxMm2 + (g.X * g.X), sum.YyMm2 + (g.Y * g.Y), sum.XyMm2 + (g.X * g.Y));

    private static double Square(double value) => value * value;

    // e^x - 1 to full precision for small x.
    private static double LessOne(double x) => 2 * Math.Exp(x / 2) * Math.Sinh(x / 2);

    private static Complex TurnLessOne(double angle) =>
        new Complex(0, 2 * Math.Sin(angle / 2)) * Complex.FromPolarCoordinates(1, angle / 2);
}
