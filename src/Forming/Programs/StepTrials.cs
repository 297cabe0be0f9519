using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>Folds and handlings tried so far; each only once.</summary>
internal sealed class StepTrials(BrakeTools tools, ProgramBrake brake, Effort effort)
{
    private readonly Dictionary<(FoldSet Made, Move Move), FoldTrial> _folds = [];
    private readonly Dictionary<(FoldSet Made, Move From, Move To), Handling?> _handlings = [];
    private readonly Dictionary<(FoldSet Made, Move Move, bool Entering), bool> _ways = [];

    public BrakeTools Tools => tools;

    public ProgramBrake Brake => brake;

    /// <summary>[n] steps of the stop that each fold is set to.</summary>
    public long[] StopSteps { get; } = tools.Part.StopSteps();

    /// <summary>Work done so far.</summary>
    public long Work => effort.Spent;

    /// <summary>Tries a fold.</summary>
    /// <param name="made">The folds made before.</param>
    /// <param name="move">The fold.</param>
    public FoldTrial Try(FoldSet made, Move move)
    {
        if (_folds.TryGetValue((made, move), out var known))
            return known;
        return _folds[(made, move)] = new(tools, brake, effort, made, move.Fold, move.EdgeInFront);
    }

    /// <summary>How the part comes from one fold to the next, or null where no simple way was found.</summary>
    /// <param name="last">The fold just made.</param>
    /// <param name="next">The next.</param>
    public Handling? HandlingBetween(FoldTrial last, FoldTrial next)
    {
        var key = (next.Made, new Move(last.Fold, last.EdgeInFront), new Move(next.Fold, next.EdgeInFront));
        if (_handlings.TryGetValue(key, out var known))
            return known;
        return _handlings[key] = Find(last, next);
    }

    /// <summary>Whether the part comes out after its last fold.</summary>
    /// <param name="last">The fold.</param>
    public bool ComesOff(FoldTrial last) => HasWay(last, entering: false);

    private Handling? Find(FoldTrial last, FoldTrial next)
    {
        if (last.LiftAfter < brake.LeastLiftMm && !brake.IsOpenEnded)
            return null;
        var isTurned = last.EdgeInFront != next.EdgeInFront;
        if (!isTurned && Extraction.Pushes(tools, effort, last.After, next.Before, last.LiftAfter))
            return Handling.Push;
        if (!HasWay(last, entering: false) || !HasWay(next, entering: true))
            return null;
        return isTurned ? Handling.Turn : Handling.ReEnter;
    }

    private bool HasWay(FoldTrial trial, bool entering)
    {
        if (brake.IsOpenEnded)
            return true;
        var key = (trial.Made, new Move(trial.Fold, trial.EdgeInFront), entering);
        if (_ways.TryGetValue(key, out var known))
            return known;
        var lift = entering ? trial.LiftBefore : trial.LiftAfter;
        return _ways[key] = lift >= brake.LeastLiftMm && (entering ? trial.WayIn : trial.WayOut) is not null;
    }
}
