using Forming.Inspection;
using Forming.Outlook;

namespace Forming.Corrections;

/// <summary>The fewest folds that bring the panel within tolerance, in whole steps of the stop.</summary>
/// <remarks>
/// Deepening the number of folds as <see cref="CorrectionSearch"/> does. At each number all choices are looked at by what the folds do
/// alone, in a band wider than the tolerance by what that may be wrong; those in the band are pulled. Among those that hold, fewest opened
/// folds first, then nearest to what is wanted.
/// </remarks>
internal sealed class FewestFolds
{
    /// <summary>Most folds that are tried.</summary>
    public const int MostFolds = CorrectionSearch.MostFolds;

    /// <summary>
    /// What folds do together differs from the sum of what they do alone by no more than these shares of it and this much besides [rad].
    /// </summary>
    /// <remarks>Wider than any difference found in draws of one to four folds over forms whose panels keep 0.4 to 0.8 of the turn.
    /// </remarks>
    internal const double SweepTogether = 0.15;

    internal const double SweepBeside = 1e-3;

    internal const double RadiusTogether = 0.25;

    internal const double RadiusBeside = 0.006;

    private const int NodeLimit = 2_000_000;

    /// <summary>Choices that are kept at one number of folds, and how many of the best are pulled before it is looked at again.</summary>
    private const int Kept = 80;

    private const int PulledFirst = 10;

    private readonly FoldResponses _folds;
    private readonly CorrectionTrial _trial;
    private readonly double _sweep;
    private readonly double _lnLow;
    private readonly double _lnHigh;
    private readonly double[,] _mostSweep; // [left, from] the most that so many of the folds from there can add
    private readonly double[,] _leastSweep;
    private readonly int[] _steps;
    private readonly PriorityQueue<int[], (int Opened, double Share)> _found;
    private int _nodes;
    private bool _hasLost;

    private FewestFolds(FoldResponses folds, CorrectionTrial trial)
    {
        (_folds, _trial) = (folds, trial);
        _sweep = trial.Tolerance.Sweep.Radians;
        (_lnLow, _lnHigh) = (Math.Log(1 - trial.Tolerance.RadiusShare), Math.Log(1 + trial.Tolerance.RadiusShare));
        _steps = new int[folds.Count];
        _found = new(Comparer<(int Opened, double Share)>.Create((a, b) => b.CompareTo(a)));
        (_mostSweep, _leastSweep) = (ReachOf(most: true), ReachOf(most: false));
    }

    /// <summary>Searches.</summary>
    /// <param name="folds">What each fold does alone.</param>
    /// <param name="trial">Pulls the panel over a corrected form.</param>
    /// <param name="asIs">The panel over the form as it stands.</param>
    public static FewestResult Find(FoldResponses folds, CorrectionTrial trial, Tried asIs)
    {
        if (asIs.Meets(trial.Tolerance))
            return new(asIs, 0, true);
        var search = new FewestFolds(folds, trial);
        // Where most of the bend springs back, folds do more together than is allowed for.
        var isProven = asIs.Prediction.Shape!.Sweep.Radians >= PanelOutlook.CoarseFactor * trial.FormSweep;
        var bound = 1;
        for (var depth = 1; depth <= Math.Min(MostFolds, folds.Count); depth++)
        {
            var (best, isComplete) = search.At(depth);
            isProven &= isComplete || best is not null;
            if (best is not null)
                return new(best, isProven ? depth : bound, isProven);
            if (trial.IsSpent || search._nodes >= NodeLimit)
                break;
            if (isProven)
                bound = depth + 1;
        }

        return new(null, bound, isProven);
    }

    private (Tried? Best, bool IsComplete) At(int depth)
    {
        var candidates = Candidates(depth, default);
        // A fold over which the panel was not, or could not be, followed was not looked at.
        var isComplete = !_hasLost && _nodes < NodeLimit && Enumerable.Range(0, _folds.Count).All(_folds.IsKnown);
        Tried? best = null;
        var together = default(PanelOff);
        for (var i = 0; i < candidates.Count; i++)
        {
            if (i == PulledFirst && best is null)
            {
                // Folds changed together do a little more or less than alone, and much the same whichever they are.
                foreach (var steps in Candidates(depth, 1.0 / PulledFirst * together).Take(PulledFirst))
                    Pull(steps, ref best);
            }

            if (best is not null && (i >= PulledFirst || candidates[i].Count(own => own < 0) > best.Opened))
                break;
            together += Pull(candidates[i], ref best);
            if (_trial.IsSpent)
                return (best, false);
        }

        return (best, isComplete);
    }

    private PanelOff Pull(int[] steps, ref Tried? best)
    {
        if (_trial.Of(steps) is not { } tried)
            return default;
        if (tried.Meets(_trial.Tolerance) && (best is null || IsBetter(tried, best)))
            best = tried;
        return tried.Off - _folds.Sum(steps);
    }

    private List<int[]> Candidates(int depth, PanelOff together)
    {
        _found.Clear();
        _hasLost = false;
        Visit(0, depth, 0, _folds.AsIs + together, 0, 0);
        var candidates = new List<int[]>(_found.Count);
        while (_found.TryDequeue(out var steps, out _))
            candidates.Add(steps);
        candidates.Reverse();
        return candidates;
    }

    private bool IsBetter(Tried one, Tried other) =>
        (one.Opened, one.ShareOfAll(_trial.Tolerance)).CompareTo((other.Opened, other.ShareOfAll(_trial.Tolerance))) < 0;

    private void Visit(int from, int left, int opened, PanelOff off, double changed, double turned)
    {
        for (var fold = from; fold + left <= _folds.Count; fold++)
        {
            if (++_nodes >= NodeLimit)
                return;
            if (!CanClose(fold, left, off.Sweep, changed))
                continue;
            var (first, last) = (_folds.Least(fold), _folds.Most(fold));
            if (left == 1)
            {
                var slack = _sweep + SweepBeside + (SweepTogether * (changed + Math.Abs(off.Sweep) + _sweep));
                (first, last) = _folds.Within(fold, -slack - off.Sweep, slack - off.Sweep);
            }

            for (var k = first; k <= last; k++)
            {
                if (k == 0)
                    continue;
                var own = _folds.At(fold, k);
                var (now, by, turn) = (off + own, changed + Math.Abs(own.Sweep), turned + Math.Abs(own.LnRadius));
                _steps[fold] = k;
                if (left > 1)
                    Visit(fold + 1, left - 1, opened + (k < 0 ? 1 : 0), now, by, turn);
                else
                    Offer(opened + (k < 0 ? 1 : 0), now, by, turn);
            }

            _steps[fold] = 0;
        }
    }

    // Whether the folds from one on can still bring the sweep in.
    private bool CanClose(int from, int left, double sweep, double changed)
    {
        var (most, least) = (_mostSweep[left, from], _leastSweep[left, from]);
        var slack = _sweep + SweepBeside + (SweepTogether * (changed + Math.Max(Math.Abs(most), Math.Abs(least))));
        return sweep + most >= -slack && sweep + least <= slack;
    }

    private void Offer(int opened, PanelOff off, double changed, double turned)
    {
        _nodes++;
        double slack = (SweepTogether * changed) + SweepBeside, lnSlack = (RadiusTogether * turned) + RadiusBeside;
        if (Math.Abs(off.Sweep) > _sweep + slack || off.LnRadius > _lnHigh + lnSlack || off.LnRadius < _lnLow - lnSlack)
            return;
        var share = Math.Max(Math.Abs(off.Sweep) / _sweep, off.LnRadius > 0 ? off.LnRadius / _lnHigh : off.LnRadius / _lnLow);
        var key = (opened, share);
        if (_found.Count < Kept)
        {
            _found.Enqueue([.. _steps], key);
            return;
        }

        _hasLost = true;
        if (_found.TryPeek(out _, out var worst) && (opened < worst.Opened || (opened == worst.Opened && share < worst.Share)))
            _found.EnqueueDequeue([.. _steps], key);
    }

    private double[,] ReachOf(bool most)
    {
        var reach = new double[MostFolds + 1, _folds.Count + 1];
        for (var left = 1; left <= MostFolds; left++)
        {
            for (var from = _folds.Count - 1; from >= 0; from--)
            {
                var (least, last) = (_folds.At(from, _folds.Least(from)).Sweep, _folds.At(from, _folds.Most(from)).Sweep);
                var with = reach[left - 1, from + 1] + (most ? Math.Max(least, last) : Math.Min(least, last));
                reach[left, from] = most ? Math.Max(reach[left, from + 1], with) : Math.Min(reach[left, from + 1], with);
            }
        }

        return reach;
    }
}

/// <summary>What a search for the fewest folds came to.</summary>
/// <param name="Found">The correction; null where none was found.</param>
/// <param name="LowerBound">With fewer corrected folds than this it cannot be done.</param>
/// <param name="IsProven">Whether all choices of fewer folds were looked at.</param>
internal sealed record FewestResult(Tried? Found, int LowerBound, bool IsProven);
