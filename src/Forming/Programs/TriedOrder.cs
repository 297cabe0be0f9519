using Forming.Checks;
using Forming.Programs.Brakes;

namespace Forming.Programs;

/// <summary>An order followed step by step, to its end or to the first step that fails.</summary>
internal sealed record TriedOrder(
    string Name, IReadOnlyList<FoldTrial> Trials, IReadOnlyList<Handling> Handlings, Objective Objective, CheckId? FailedCheck)
{
    public bool IsWhole => FailedCheck is null;

    /// <summary>Follows an order.</summary>
    /// <param name="trials">What was tried so far.</param>
    /// <param name="order">The order.</param>
    public static TriedOrder Follow(StepTrials trials, NamedOrder order)
    {
        var made = default(FoldSet);
        List<FoldTrial> done = [];
        List<Handling> handlings = [];
        var objective = new Objective(0, 0, 0, 0, trials.Brake.PlentyMm);
        foreach (var move in order.Moves)
        {
            var trial = trials.Try(made, move);
            var last = done.Count > 0 ? done[^1] : null;
            done.Add(trial);
            if (!trial.IsClear)
                return new(order.Name, done, handlings, objective, trial.FailedCheck);
            var handling = last is null ? Handling.Load : trials.HandlingBetween(last, trial);
            if (handling is not { } way)
                return new(order.Name, done, handlings, objective, last!.EdgeInFront == move.EdgeInFront ? CheckIds.Push : CheckIds.Entry);
            handlings.Add(way);
            objective = Next(objective, trials, last, trial, way);
            made = made.With(move.Fold);
        }

        return new(order.Name, done, handlings, objective, trials.ComesOff(done[^1]) ? null : CheckIds.Removal);
    }

    /// <summary>The objective with one more step.</summary>
    public static Objective Next(Objective so, StepTrials trials, FoldTrial? last, FoldTrial trial, Handling way) => new(
        so.Tight + (trial.IsTight ? 1 : 0),
        so.Cost + CostOf(way),
        so.Doubtful + (trial.Gauge.IsDoubtful ? 1 : 0),
        so.StopChanges + (last is not null && StopOf(trials, last.Fold) != StopOf(trials, trial.Fold) ? 1 : 0),
        Math.Min(so.ClearanceMm, trial.Least.Mm));

    /// <summary>What a handling costs: assumptions.</summary>
    public static int CostOf(Handling handling) => handling switch
    {
        Handling.Push => 1,
        Handling.ReEnter => 2,
        Handling.Turn => 3,
        _ => 0,
    };

    /// <summary>Which step of the stop a fold takes.</summary>
    public static long StopOf(StepTrials trials, int fold) => trials.StopSteps[fold];
}

/// <summary>An order that was followed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="IsWhole">Whether it reached its end.</param>
/// <param name="FailedFold">Number of the fold at which it failed, or null.</param>
/// <param name="FailedCheck">Id of the check that failed, or null.</param>
/// <param name="Strikes">What the part strikes there, or null.</param>
/// <param name="HandlingCost">What its handling costs as far as it got.</param>
/// <param name="ClearanceMm">Its least clearance as far as it got [mm].</param>
public sealed record OrderTried(
    string Name, bool IsWhole, int? FailedFold, string? FailedCheck, JawKind? Strikes, int HandlingCost, double ClearanceMm);

/// <summary>
/// What makes one order better than another, in this order: no tight step, less handling, less doubtful gauging, fewer stop changes, more
/// clearance.
/// </summary>
/// <param name="Tight">Steps that clear by less than is asked for.</param>
/// <param name="Cost">Handling cost.</param>
/// <param name="Doubtful">Steps gauged over folded part or by mark.</param>
/// <param name="StopChanges">Changes of the stop.</param>
/// <param name="ClearanceMm">Least clearance, at most what is plenty [mm].</param>
internal readonly record struct Objective(int Tight, int Cost, int Doubtful, int StopChanges, double ClearanceMm) : IComparable<Objective>
{
    public int CompareTo(Objective other) =>
        (Tight, Cost, Doubtful, StopChanges, -ClearanceMm).CompareTo(
            (other.Tight, other.Cost, other.Doubtful, other.StopChanges, -other.ClearanceMm));
}
