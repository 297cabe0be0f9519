using Forming.Layout;

namespace Forming.Tolerances;

/// <summary>Errors of a form whose folds are not parallel.</summary>
/// <remarks>
/// Folds err as where they are parallel. Each end of a fold line lies off by another error, square to the line, while the edges of the
/// blank stay. With e, m the fold's direction and the sheet's across it, ν = e × m, before (b) and after (a) the fold, P an end:
/// a fold does <c>g = e × (P - V)</c>, a turn of its line in the sheet about C <c>(ν_b - ν_a) × (P - C)</c>; the lead-out turns by e and by
/// ν_b - ν_a.
/// Exact moments go from the end back to the first fold, as <c>P = G1(G2(…Gn(p)))</c> and errors of folds are independent: what is parallel
/// to a fold's line stays, square to it first moments fade by <c>e^(-u²/2)</c> and the trace-free part of second ones by <c>e^(-2u²)</c>.
/// </remarks>
internal sealed record HingedErrors : ErrorSums
{
    // Three-point Gauss-Hermite: exact for the shift of a line; its turn is a thousandth.
    private static readonly (double At, double Weight)[] Nodes = [(-Math.Sqrt(3), 1.0 / 6), (0, 2.0 / 3), (Math.Sqrt(3), 1.0 / 6)];

    private static readonly (double At, double Weight)[] Only = [(0, 1)];

    private readonly HingedForm _form;
    private readonly HingedShape _shape;

    /// <summary>The errors of a form.</summary>
    /// <param name="form">The form.</param>
    public HingedErrors(HingedForm form)
        : base(form.SectionAt(0.5))
    {
        (_form, _shape) = (form, form.Folded());
        Ends = [InfluenceOn(_shape.Near), InfluenceOn(_shape.Far)];
        Closing = TurnAbout(_shape.LineOf(form.Folds - 1));
        Twist = TurnAbout(_shape.Motions[^1].Turned(form.AcrossOf(form.Folds - 1)));
    }

    /// <inheritdoc/>
    public override TurnSums Closing { get; }

    /// <inheritdoc/>
    public override TurnSums? Twist { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EndInfluence> Ends { get; }

    /// <inheritdoc/>
    public override double LongestLegMm => Math.Max(LongestLeg(_form.FlatsMm(isFar: false)), LongestLeg(_form.FlatsMm(isFar: true)));

    /// <inheritdoc/>
    public override IReadOnlyList<EndSpread> Exact(FoldAccuracy accuracy, CancellationToken cancellation) =>
    [
        ExactOf(_form.Near[^1], Ends[0].Planned, accuracy, cancellation),
        ExactOf(_form.Far[^1], Ends[1].Planned, accuracy, cancellation),
    ];

    // How the sheet's inward normal differs before and after a fold: the turn of its line goes with that.
    private Point3 KinkOf(int fold) => _shape.Inward(fold) - _shape.Inward(fold + 1);

    private EndInfluence InfluenceOn(IReadOnlyList<Point3> edge)
    {
        var end = edge[^1];
        Covariance folds = default, marks = default;
        Point3 lean = default;
        for (var i = 0; i < _form.Folds; i++)
        {
            var g = _shape.LineOf(i).Cross(end - _shape.Near[i + 1]);
            (folds, lean) = (folds + Covariance.Of(g), lean + g);
            // One end of the line moves onwards, about the other.
            var kink = KinkOf(i);
            var length = _form.LengthOf(i);
            marks += Covariance.Of(-1 / length * kink.Cross(end - _shape.Far[i + 1]));
            marks += Covariance.Of(1 / length * kink.Cross(end - _shape.Near[i + 1]));
        }

        return new(edge[0], end, folds, marks, lean);
    }

    private TurnSums TurnAbout(Point3 direction)
    {
        double lean = 0, squares = 0, worst = 0, marks = 0;
        for (var i = 0; i < _form.Folds; i++)
        {
            var turn = _shape.LineOf(i).Dot(direction);
            (lean, squares, worst) = (lean + turn, squares + (turn * turn), worst + Math.Abs(turn));
            var mark = KinkOf(i).Dot(direction) / _form.LengthOf(i);
            marks += 2 * mark * mark;
        }

        return new(lean, squares, worst, marks);
    }

    private EndSpread ExactOf(Point end, Point3 planned, FoldAccuracy accuracy, CancellationToken cancellation)
    {
        var (mean, spread) = (HingedForm.InSpace(end), default(Covariance));
        for (var i = _form.Folds - 1; i >= 0; i--)
        {
            cancellation.ThrowIfCancellationRequested();
            (mean, spread) = Through(i, mean, spread, accuracy);
        }

        var bias = mean - planned;
        return new(new(bias.X, bias.Y), spread) { BiasZMm = bias.Z };
    }

    // Mean and covariance of a point beyond a fold, once the fold is made.
    private (Point3 Mean, Covariance Spread) Through(int fold, Point3 mean, Covariance spread, FoldAccuracy accuracy)
    {
        var nodes = accuracy.MarkScatterMm > 0 ? Nodes : Only;
        var across = accuracy.MarkScatterMm * _form.AcrossOf(fold);
        var near = HingedForm.InSpace(_form.Near[fold + 1]);
        var far = HingedForm.InSpace(_form.Far[fold + 1]);
        var angle = _form.FoldAngles[fold] + accuracy.Bias.Radians;
        var at = new (Point3 Mean, double Weight)[nodes.Length * nodes.Length];
        var (sum, inner) = (default(Point3), default(Covariance));
        for (var k = 0; k < at.Length; k++)
        {
            var (one, other) = (nodes[k / nodes.Length], nodes[k % nodes.Length]);
            var weight = one.Weight * other.Weight;
            var through = near + (one.At * across);
            var (turned, own) = Turned(
                through, (far + (other.At * across) - through).Unit(), angle, mean, spread, accuracy.Scatter.Radians);
            at[k] = (turned, weight);
            (sum, inner) = (sum + (weight * turned), inner + (weight * own));
        }

        foreach (var (turned, weight) in at)
            inner += weight * Covariance.Of(turned - sum);
        return (sum, inner);
    }

    private static (Point3 Mean, Covariance Spread) Turned(
        Point3 through, Point3 line, double angle, Point3 mean, Covariance spread, double scatter)
    {
        var u2 = scatter * scatter;
        var fade = Math.Exp(-u2 / 2);
        var turn = SpaceMotion.About(default, line, angle);
        var from = mean - through;
        var along = from.Dot(line) * line;
        var square = from - along;
        var moved = through + turn.Turned(along + (fade * square));

        // Second moments about the mean in the fold's own directions: along the line, square to it.
        var (m, n) = Square(line);
        var own = spread.In(line, m, n);
        double middle = (own.YyMm2 + own.ZzMm2) / 2, half = (own.YyMm2 - own.ZzMm2) / 2, fade2 = Math.Exp(-2 * u2);
        var lever = square.Dot(square);
        own = new(own.XxMm2, middle + (fade2 * half), fade * own.XyMm2)
        {
            XzMm2 = fade * own.XzMm2,
            YzMm2 = fade2 * own.YzMm2,
            ZzMm2 = middle - (fade2 * half),
        };
        // What the scatter adds: the lever swings to both sides, a little less along itself.
        double all = lever / 2 * (1 - fade2), less = fade2 - (fade * fade), y = square.Dot(m), z = square.Dot(n);
        own += new Covariance(0, all + (less * y * y), 0) { YzMm2 = less * y * z, ZzMm2 = all + (less * z * z) };
        return (moved, own.Out(turn.Turned(line), turn.Turned(m), turn.Turned(n)));
    }

    // Two directions square to a line and to each other, right-handed with it.
    private static (Point3 M, Point3 N) Square(Point3 line)
    {
        var m = new Point3(0, 1, 0).Cross(line).Unit();
        return (m, line.Cross(m));
    }
}
