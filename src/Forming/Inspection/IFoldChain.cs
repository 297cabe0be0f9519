using Forming.Layout;

namespace Forming.Inspection;

/// <summary>A form taken fold by fold from its lead-in, each fold with so many steps more or less than it was measured with.</summary>
/// <typeparam name="TState">Where the flat that leads to the next fold lies.</typeparam>
internal interface IFoldChain<TState>
    where TState : struct
{
    /// <summary>Number of folds.</summary>
    int Folds { get; }

    /// <summary>The lead-in.</summary>
    TState Start { get; }

    /// <summary>As it was measured.</summary>
    /// <param name="fold">Index of the fold.</param>
    double AngleOf(int fold);

    /// <summary>Goes to a fold's mold line.</summary>
    /// <param name="fold">Index of the fold.</param>
    /// <param name="state">The flat that leads to it; then where that ends.</param>
    /// <returns>How far the mold line is off [mm].</returns>
    double MissAt(int fold, ref TState state);

    /// <summary>Makes a fold.</summary>
    /// <param name="fold">Index of the fold.</param>
    /// <param name="state">Where the flat before it ends.</param>
    /// <param name="steps">Steps it is corrected by.</param>
    TState Made(int fold, TState state, int steps);

    /// <summary>Error of the lead-out's direction where no more folds are corrected [rad].</summary>
    /// <param name="fold">Index of the next fold.</param>
    /// <param name="state">The flat that leads to it.</param>
    double ClosingFrom(int fold, TState state);

    /// <summary>Whether that can still come within tolerance.</summary>
    /// <param name="fold">Index of the next fold.</param>
    /// <param name="state">The flat that leads to it.</param>
    /// <param name="left">Folds that are still to be corrected.</param>
    bool CanClose(int fold, TState state, int left);
}

/// <summary>Parallel folds, looked at in their section.</summary>
/// <param name="built">The form as it was measured.</param>
/// <param name="planned">The form as it should be.</param>
/// <param name="rules">How folds may be corrected.</param>
internal sealed class ParallelChain(FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules) : IFoldChain<ParallelChain.Place>
{
    private readonly Point[] _wanted = planned.Vertices();
    private readonly double[] _turns = TurnsOf(built);
    private readonly double _closing = TurnsOf(built)[^1] - planned.Sweep;
    private readonly double _step = rules.Step.Radians;

    /// <inheritdoc/>
    public int Folds => built.Folds;

    /// <inheritdoc/>
    public Place Start => default;

    /// <inheritdoc/>
    public double AngleOf(int fold) => built.FoldAngles[fold];

    /// <inheritdoc/>
    public double MissAt(int fold, ref Place state)
    {
        state = state with { At = state.At + (built.FlatsMm[fold] * Point.Along(_turns[fold] + (state.Steps * _step))) };
        return (state.At - _wanted[fold + 1]).Length;
    }

    /// <inheritdoc/>
    public Place Made(int fold, Place state, int steps) => state with { Steps = state.Steps + steps };

    /// <inheritdoc/>
    public double ClosingFrom(int fold, Place state) => _closing + (state.Steps * _step);

    /// <inheritdoc/>
    public bool CanClose(int fold, Place state, int left)
    {
        var error = ClosingFrom(fold, state);
        var tolerance = rules.Closing.Radians + CorrectionSearch.Slack;
        return error + (left * rules.MostSteps * _step) >= -tolerance && error + (left * rules.LeastSteps * _step) <= tolerance;
    }

    private static double[] TurnsOf(FoldedPolygon form)
    {
        var turns = new double[form.Folds + 1];
        for (var i = 0; i < form.Folds; i++)
            turns[i + 1] = turns[i] + form.FoldAngles[i];
        return turns;
    }

    /// <summary>Where a flat starts, and the steps of all corrections before it.</summary>
    /// <param name="At">Its start [mm].</param>
    /// <param name="Steps">Steps, a sum.</param>
    internal readonly record struct Place(Point At, int Steps);
}

/// <summary>Folds that are not parallel, looked at in space from both ends.</summary>
/// <remarks>
/// How far folds still to be corrected can turn the lead-out about the last fold line: no further than all their angles together, s, times
/// the largest stretch between turns and their vectors on the way, <c>(Θ/2)/sin(Θ/2)</c>, Θ the error and s together.
/// </remarks>
internal sealed class HingedChain : IFoldChain<SpaceMotion>
{
    private readonly HingedForm _built;
    private readonly HingedShape _wanted;
    private readonly CorrectionRules _rules;
    private readonly SpaceMotion[][] _folds; // by fold and steps
    private readonly SpaceMotion[] _rest;
    private readonly Point3 _line;

    /// <summary>Looks at a form.</summary>
    /// <param name="built">The form as it was measured.</param>
    /// <param name="planned">The form as it should be.</param>
    /// <param name="rules">How folds may be corrected.</param>
    public HingedChain(HingedForm built, HingedForm planned, CorrectionRules rules)
    {
        (_built, _rules, _wanted) = (built, rules, planned.Folded());
        _line = _wanted.LineOf(planned.Folds - 1);
        _folds = new SpaceMotion[built.Folds][];
        _rest = new SpaceMotion[built.Folds + 1];
        _rest[^1] = SpaceMotion.None;
        for (var i = built.Folds - 1; i >= 0; i--)
        {
            _folds[i] = new SpaceMotion[rules.MostSteps - rules.LeastSteps + 1];
            for (var k = rules.LeastSteps; k <= rules.MostSteps; k++)
                _folds[i][k - rules.LeastSteps] = built.FoldAt(i, built.FoldAngles[i] + (k * rules.Step.Radians));
            _rest[i] = _folds[i][-rules.LeastSteps].After(_rest[i + 1]);
        }
    }

    /// <inheritdoc/>
    public int Folds => _built.Folds;

    /// <inheritdoc/>
    public SpaceMotion Start => SpaceMotion.None;

    /// <inheritdoc/>
    public double AngleOf(int fold) => _built.FoldAngles[fold];

    /// <inheritdoc/>
    public double MissAt(int fold, ref SpaceMotion state) => Math.Max(
        (state.Moved(HingedForm.InSpace(_built.Near[fold + 1])) - _wanted.Near[fold + 1]).Length,
        (state.Moved(HingedForm.InSpace(_built.Far[fold + 1])) - _wanted.Far[fold + 1]).Length);

    /// <inheritdoc/>
    public SpaceMotion Made(int fold, SpaceMotion state, int steps) => state.After(_folds[fold][steps - _rules.LeastSteps]);

    /// <inheritdoc/>
    public double ClosingFrom(int fold, SpaceMotion state) => TurnFrom(fold, state).Dot(_line);

    /// <inheritdoc/>
    public bool CanClose(int fold, SpaceMotion state, int left)
    {
        var error = TurnFrom(fold, state);
        var further = left * _rules.MostSteps * _rules.Step.Radians;
        var whole = error.Length + further;
        var stretch = whole < Math.PI ? whole / 2 / Math.Sin(whole / 2) : double.PositiveInfinity;
        return left > 0 && !(Math.Abs(error.Dot(_line)) - (further * stretch) > _rules.Closing.Radians + CorrectionSearch.Slack)
            || Math.Abs(error.Dot(_line)) <= _rules.Closing.Radians + CorrectionSearch.Slack;
    }

    private Point3 TurnFrom(int fold, SpaceMotion state) => state.After(_rest[fold]).TurnFrom(_wanted.Motions[^1]);
}
