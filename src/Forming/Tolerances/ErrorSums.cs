using Forming.Layout;

namespace Forming.Tolerances;

/// <summary>What errors of folds and marks add up to on one form.</summary>
/// <param name="Section">The form, or of one with slanting folds its section half-way along them.</param>
internal abstract record ErrorSums(FoldedPolygon Section)
{
    /// <summary>How far the lead-out turns about the last fold line.</summary>
    public abstract TurnSums Closing { get; }

    /// <summary>How far it turns about its own direction, square to that line; null where the folds are parallel.</summary>
    public abstract TurnSums? Twist { get; }

    /// <summary>Every end that is looked at: one where the folds are parallel, else the near one and the far one.</summary>
    public abstract IReadOnlyList<EndInfluence> Ends { get; }

    /// <summary>The largest of the shorter legs of all folds, where a table's limit is tightest [mm].</summary>
    public abstract double LongestLegMm { get; }

    /// <summary>The exact mean and covariance of every end for Gaussian errors.</summary>
    /// <param name="accuracy">How well it is folded.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public abstract IReadOnlyList<EndSpread> Exact(FoldAccuracy accuracy, CancellationToken cancellation);

    /// <summary>The larger of the shorter legs of all folds along one edge [mm].</summary>
    /// <param name="flats">Lead-in, facets, lead-out along the edge [mm].</param>
    protected static double LongestLeg(IReadOnlyList<double> flats) =>
        Enumerable.Range(0, flats.Count - 1).Max(i => Math.Min(flats[i], flats[i + 1]));
}

/// <summary>What a unit of each error does to a turn, to first order.</summary>
/// <param name="Lean">Every fold off by one [rad/rad].</param>
/// <param name="Squares">Sum of the squares of what each fold does.</param>
/// <param name="Worst">Every fold off by one in its worse direction.</param>
/// <param name="Marks">Sum of the squares of what each mark does [rad²/mm²].</param>
internal readonly record struct TurnSums(double Lean, double Squares, double Worst, double Marks)
{
    /// <summary>Mean error.</summary>
    /// <param name="accuracy">How well it is folded.</param>
    public Angle Bias(FoldAccuracy accuracy) => new(Lean * accuracy.Bias.Radians);

    /// <summary>Standard deviation.</summary>
    /// <param name="accuracy">How well it is folded.</param>
    public Angle Scatter(FoldAccuracy accuracy) =>
        new(double.Hypot(accuracy.Scatter.Radians * Math.Sqrt(Squares), accuracy.MarkScatterMm * Math.Sqrt(Marks)));
}

/// <summary>What a unit of each error does to an end, to first order.</summary>
/// <param name="Start">Start of its edge [mm].</param>
/// <param name="Planned">Where the end should be [mm].</param>
/// <param name="Folds">Σ g gᵀ for a radian of scatter a fold.</param>
/// <param name="Marks">Σ h hᵀ for a millimetre a mark.</param>
/// <param name="Lean">Σ g for a radian of bias.</param>
internal sealed record EndInfluence(Point3 Start, Point3 Planned, Covariance Folds, Covariance Marks, Point3 Lean)
{
    /// <summary>The first-order values, about the planned form.</summary>
    /// <param name="accuracy">How well it is folded.</param>
    public EndSpread FirstOrder(FoldAccuracy accuracy)
    {
        var bias = accuracy.Bias.Radians * Lean;
        double u = accuracy.Scatter.Radians, v = accuracy.MarkScatterMm;
        return new(new(bias.X, bias.Y), (u * u * Folds) + (v * v * Marks)) { BiasZMm = bias.Z };
    }
}

/// <summary>Errors of a form whose folds are parallel.</summary>
/// <param name="Form">The form.</param>
internal sealed record ParallelErrors(FoldedPolygon Form) : ErrorSums(Form)
{
    /// <inheritdoc/>
    public override TurnSums Closing => new(Form.Folds, Form.Folds, Form.Folds, 0);

    /// <inheritdoc/>
    public override TurnSums? Twist => null;

    /// <inheritdoc/>
    public override IReadOnlyList<EndInfluence> Ends
    {
        get
        {
            var (folds, marks, lean) = ErrorPropagation.Influences(Form);
            var end = Form.Vertices()[^1];
            return [new(default, new(end.X, end.Y, 0), folds, marks, new(lean.X, lean.Y, 0))];
        }
    }

    /// <inheritdoc/>
    public override double LongestLegMm => LongestLeg(Form.FlatsMm);

    /// <inheritdoc/>
    public override IReadOnlyList<EndSpread> Exact(FoldAccuracy accuracy, CancellationToken cancellation) =>
        [ErrorPropagation.Exact(Form, accuracy, cancellation)];
}
