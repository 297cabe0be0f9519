using Forming.Checks;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
using Forming.Results;

namespace Forming.Programs;

/// <summary>A followed order as steps, checks and reasons.</summary>
internal sealed class ProgramWording(StepTrials trials, ProgramPart part, ProgramBrake brake)
{
    private const double LeastFaceSlope = Math.PI / 4;

    private readonly FoldLoad _load = FoldLoad.Of(part, brake);

    private bool IsPress => trials.Tools.BothSwing;

    public static OrderTried Report(TriedOrder order)
    {
        var last = order.Trials[^1];
        var isStruck = order.FailedCheck?.Name.StartsWith("clearance", StringComparison.Ordinal) == true;
        var strikes = isStruck ? last.Least.Nearest : null;
        return new(
            order.Name,
            order.IsWhole,
            order.IsWhole ? null : last.Fold + 1,
            order.FailedCheck?.Name,
            strikes,
            order.Objective.Cost,
            order.Objective.ClearanceMm);
    }

    public ProgramStep[] Steps(TriedOrder order)
    {
        var steps = new ProgramStep[order.Trials.Count];
        for (var i = 0; i < steps.Length; i++)
        {
            var trial = order.Trials[i];
            var gauge = trial.Gauge;
            var isChanged = i > 0 && TriedOrder.StopOf(trials, order.Trials[i - 1].Fold) != TriedOrder.StopOf(trials, trial.Fold);
            var stop = part.StopAngles[trial.Fold];
            var swing = i > 0 ? part.Flat?.Swing(order.Trials[i - 1].Fold, trial.Fold) : null;
            steps[i] = new()
            {
                Number = i + 1,
                Fold = trial.Fold + 1,
                EdgeInFront = trial.EdgeInFront,
                Handling = order.Handlings[i],
                HandlingCost = TriedOrder.CostOf(order.Handlings[i]),
                GaugedEdge = trial.EdgeInFront == PartEdge.Start ? PartEdge.End : PartEdge.Start,
                Gauge = gauge,
                FoldAngle = new(part.FoldAngles[trial.Fold]),
                StopAngle = new(stop),
                StopSetting = SettingOf(trial.Fold),
                IsStopChanged = isChanged,
                DepthMm = trials.Tools.DepthMm(trial.Fold, stop),
                Load = FoldLoad.Of(part, brake, part.LengthOf(trial.Fold)),
                Clearance = trial.Least,
                Swing = swing,
                Section = trial.LeastPlace,
                FrontRunMm = trial.FrontRunMm,
                BackRunMm = trial.BackRunMm,
                Text = StepText.Of(
                    part,
                    trial,
                    order.Handlings[i],
                    swing,
                    i == 0 || isChanged ? SettingOf(trial.Fold) : null,
                    trials.Tools.DepthMm(trial.Fold, stop)),
                Checks = [.. StepChecks(trial), .. GaugeChecks(trial), .. HandlingChecks(order, i)],
            };
        }

        return steps;
    }

    public static IReadOnlyList<StopGroup> Groups(ProgramStep[] steps)
    {
        List<StopGroup> groups = [];
        List<int> numbers = [];
        foreach (var step in steps)
        {
            if (step.IsStopChanged)
                Close();
            numbers.Add(step.Number);
        }

        if (numbers.Count > 0)
            Close();
        return groups;

        void Close()
        {
            var first = steps[numbers[0] - 1];
            groups.Add(new(first.StopSetting, [.. numbers]));
            numbers.Clear();
        }
    }

    public Impossibility Reasons(UnfoldingResult unfolding, IReadOnlyList<TriedOrder> tried) => new(
        unfolding.IsProven,
        unfolding.States,
        unfolding.IsProven
            ? [.. unfolding.Folds.Select(trial => Reason(trial, SplitOf(tried)))]
            : [.. tried.GroupBy(order => (order.Trials[^1].Fold, order.FailedCheck))
                .Select(same => ReasonOf(same.First(), SplitOf(tried)))
                .OrderBy(reason => reason.Fold)]);

    public IReadOnlyList<Check> Checks(TriedOrder? order, ProgramStep[] steps, UnfoldingResult? unfolding)
    {
        List<Check> checks = [OrderCheck(order, unfolding), .. MachineChecks()];
        foreach (var of in steps.SelectMany(step => step.Checks).GroupBy(check => check.Id))
            checks.Add(of.OrderByDescending(check => check.Verdict)
                .ThenBy(check => check.Kind.Bound == Bound.Most ? -check.Value : check.Value).First());
        return checks;
    }

    private Angle SettingOf(int fold) => trials.StopSteps[fold] * part.StopResolution;

    private static Check OrderCheck(TriedOrder? order, UnfoldingResult? unfolding)
    {
        if (order is not null)
            return new(CheckIds.Order, Verdict.Pass, order.Objective.Cost, null, $"the order {order.Name} clears at every step");
        return unfolding is { IsProven: true }
            ? new(CheckIds.Order, Verdict.Fail, null, null, $"no order exists for these tools: proved by unfolding the finished part", $"other tools, longer flats, or the form in two parts")
            : new(CheckIds.Order, Verdict.Fail, null, null, $"no order was found, and it is not proved that none exists", $"other tools, or the form in two parts");
    }

    private IEnumerable<Check> MachineChecks()
    {
        var isLong = part.WidthMm > brake.LengthMm;
        yield return new(
            CheckIds.BrakeLength,
            isLong ? Verdict.Fail : Verdict.Pass,
            part.WidthMm,
            brake.LengthMm,
            $"the folds are {Figure.Length(part.WidthMm)} long, the brake takes {Figure.Length(brake.LengthMm)}",
            isLong ? (FormattableString)$"a longer brake, or the form in lengths of at most {Figure.Length(brake.LengthMm)}" : null);
        if (FoldLoad.UseOfCapacity(part, brake) is { } use)
            yield return Capacity(use);
        if (brake is PressBrake press)
            yield return DieOpening(press.DieOpeningFor(part.Shape.ThicknessMm));
        if (_load.HandleForceN is { } handle)
        {
            var isHeavy = handle > WorkingLimits.HandForceN;
            yield return new(
                CheckIds.HandleForce,
                isHeavy ? Verdict.Warn : Verdict.Pass,
                handle,
                WorkingLimits.HandForceN,
                $"the handle needs {Figure.Force(handle)}, without the leaf's weight and friction; one person should not pull more than {Figure.Force(WorkingLimits.HandForceN)}",
                isHeavy ? (FormattableString)$"two people on the leaf, or thinner form sheet; never a longer handle" : null);
        }
    }

    private Check Capacity(double use)
    {
        var verdict = use > 1 ? Verdict.Fail : use > WorkingLimits.CapacityInHand ? Verdict.Warn : Verdict.Pass;
        var isByForce = FoldLoad.UseOfForce(part, brake) == use;
        return new(
            CheckIds.Capacity,
            verdict,
            use,
            1,
            isByForce
                ? (FormattableString)$"the fold needs {Figure.Force(_load.ForceN!.Value)}; the brake is rated for {Figure.Force(((PressBrake)brake).ForceCapacityN!.Value)}"
                : $"{Figure.Length(part.Shape.ThicknessMm)} of {part.MaterialName} needs {100 * use:0} % of the moment the brake is rated for over its full length",
            verdict == Verdict.Pass ? null
                : isByForce ? (FormattableString)$"a wider die, thinner or softer form sheet, or a stronger brake; keep a fifth of the rating in hand"
                : $"thinner or softer form sheet, or a stronger brake; keep a fifth of the rating in hand, and do not raise the rating for a short fold");
    }

    // k = 1.33 was found at eight thicknesses; below about five it is too low.
    private Check DieOpening(double opening)
    {
        var least = WorkingLimits.LeastOpeningOverThickness * part.Shape.ThicknessMm;
        var isNarrow = opening < least;
        return new(
            CheckIds.DieOpening,
            isNarrow ? Verdict.Warn : Verdict.Pass,
            opening,
            least,
            $"the die opens {Figure.Length(opening)}, {Figure.Number(opening / part.Shape.ThicknessMm):0.#} times the sheet's thickness; the force formula applies near {FoldLoad.AirBendOpeningOverThickness} times",
            isNarrow ? (FormattableString)$"a die of at least {Figure.Length(least)}: in a narrower one the force is higher than shown and the punch can mark the sheet" : null);
    }

    private IEnumerable<Check> StepChecks(FoldTrial trial) =>
    [
        Run(CheckIds.FrontRun, trial.FrontRunMm, trial.ShortestFrontMm, trial.Fold, trial.IsFrontShorterFar),
        Run(IsPress ? CheckIds.BackRun : CheckIds.ClampLand, trial.BackRunMm, trial.ShortestBackMm, trial.Fold, trial.IsBackShorterFar),
        Clear(CheckIds.ClearanceUpper, trial.Upper, trial.Fold),
        Clear(CheckIds.ClearanceLower, trial.Lower, trial.Fold),
        Clear(CheckIds.ClearanceSelf, trial.Self, trial.Fold),
    ];

    private IEnumerable<Check> GaugeChecks(FoldTrial trial)
    {
        var gauge = trial.Gauge;
        if (gauge.Marks is not null)
            yield break;
        yield return new(
            CheckIds.GaugeRange,
            gauge.IsInRange ? Verdict.Pass : Verdict.Warn,
            gauge.DistanceMm,
            gauge.DistanceMm < brake.GaugeMinMm ? brake.GaugeMinMm : brake.GaugeMaxMm,
            $"fold {trial.Fold + 1} would be gauged at {Figure.Length(gauge.DistanceMm)}",
            gauge.IsInRange ? null : (FormattableString)$"set this fold by its pencil mark: the gauge stops at {Figure.Length(gauge.DistanceMm < brake.GaugeMinMm ? brake.GaugeMinMm : brake.GaugeMaxMm)}")
        {
            Bound = gauge.DistanceMm < brake.GaugeMinMm ? Bound.Least : Bound.Most,
        };
        if (gauge.By != GaugedBy.FoldedPart)
            yield break;
        var isSlanting = gauge.FaceSlope.Radians < LeastFaceSlope;
        yield return new(
            CheckIds.GaugeFace,
            isSlanting ? Verdict.Warn : Verdict.Pass,
            gauge.FaceSlope.Radians,
            LeastFaceSlope,
            $"at fold {trial.Fold + 1} the folded part meets the stop at {Figure.Angle(gauge.FaceSlope.Radians)}",
            isSlanting ? (FormattableString)$"set this fold by its pencil mark: on a face this slanted the sheet can ride over or under the stop" : null);
    }

    // A complete order has passed them: they say how.
    private IEnumerable<Check> HandlingChecks(TriedOrder order, int step)
    {
        if (step > 0)
        {
            var lift = order.Trials[step - 1].LiftAfter;
            var fold = order.Trials[step].Fold + 1;
            yield return order.Handlings[step] == Handling.Push
                ? Lifted(CheckIds.Push, lift, $"the upper jaw rises {Figure.Length(lift)} and the part slides on to fold {fold} without touching it")
                : Lifted(CheckIds.Entry, lift, $"the upper jaw rises {Figure.Length(lift)}, the part comes out and goes in again at fold {fold}");
        }

        if (step == order.Trials.Count - 1)
        {
            var lift = order.Trials[step].LiftAfter;
            yield return Lifted(CheckIds.Removal, lift, $"the upper jaw rises {Figure.Length(lift)} and the finished part comes off");
        }
    }

    private Check Lifted(CheckId id, double lift, FormattableString how) => brake.IsOpenEnded
        ? new(id, Verdict.Pass, null, null, $"the part slides off the open end of the brake where it does not come out in front")
        : new(id, Verdict.Pass, lift, brake.LeastLiftMm, how);

    private Check Run(CheckId id, double run, double shortest, int fold, bool? isShorterFar)
    {
        var reached = run + (part.Allowance(fold) / 2);
        var isShort = run < shortest;
        var isTrade = trials.Tools.TradeRunMm is { } trade && reached < trade;
        return new(
            id,
            isShort ? Verdict.Fail : isTrade ? Verdict.Warn : Verdict.Pass,
            run,
            shortest,
            $"fold {fold + 1} has {Figure.Length(run)} of flat beside it{ShorterEnd(isShorterFar)}",
            isShort ? (FormattableString)$"at least {Figure.Length(shortest)}"
                : isTrade ? (FormattableString)$"the trade asks {Figure.Length(trials.Tools.TradeRunMm!.Value)} to the fold's centre for bends near 90°; for small folds it is too strict, so try one" : null);
    }

    private static string ShorterEnd(bool? isFar) => isFar switch
    {
        true => " at its far end",
        false => " at its near end",
        _ => "",
    };

    private Check Clear(CheckId id, Clearance clearance, int fold)
    {
        var verdict = clearance.Mm <= 0 ? Verdict.Fail : clearance.Mm < brake.ClearanceMm ? Verdict.Warn : Verdict.Pass;
        return new(
            id,
            verdict,
            clearance.Mm,
            brake.ClearanceMm,
            clearance.Nearest is { } what
                ? (FormattableString)$"at fold {fold + 1} the part clears the {what.Word()} by {Figure.Length(clearance.Mm)}, at {Figure.Angle(clearance.AtAngle.Radians)}"
                : $"at fold {fold + 1} nothing is within {Figure.Length(clearance.Mm)}",
            verdict == Verdict.Pass ? null : (FormattableString)$"watch it on the first part, or use slimmer tools");
    }

    private ImpossibleFold ReasonOf(TriedOrder order, string split)
    {
        var last = order.Trials[^1];
        if (!last.IsClear)
            return Reason(last, split);
        FormattableString why = order.FailedCheck!.Name switch
        {
            "removal" => $"after fold {last.Fold + 1} no simple way was found to take the part off",
            "push" => $"no simple way was found to slide the part on to fold {last.Fold + 1}, or to draw it out and put it in again",
            _ => $"no simple way was found to draw the part out, turn it and put it in for fold {last.Fold + 1}",
        };
        return new(
            last.Fold + 1,
            order.FailedCheck!.Name,
            null,
            why,
            $"a brake with an open end or more lift between beam and bed, where the part slides off sideways; a person may find another way");
    }

    private ImpossibleFold Reason(FoldTrial trial, string split)
    {
        var check = trial.FailedCheck!.Name;
        if (!trial.Runs)
        {
            var (run, shortest, isFar) = check == CheckIds.FrontRun.Name
                ? (trial.FrontRunMm, trial.ShortestFrontMm, trial.IsFrontShorterFar)
                : (trial.BackRunMm, trial.ShortestBackMm, trial.IsBackShorterFar);
            return new(
                trial.Fold + 1,
                check,
                null,
                $"fold {trial.Fold + 1} has {Figure.Length(run)} of flat beside it{ShorterEnd(isFar)} with {Others(trial)}, and {Figure.Length(shortest)} are needed",
                IsPress ? (FormattableString)$"a longer lead or facet there, or a narrower die" : $"a longer lead or facet there; a lead is trimmed afterwards");
        }

        var what = trial.Least.Nearest ?? JawKind.Part;
        return new(
            trial.Fold + 1,
            check,
            what,
            $"with {Others(trial)}, fold {trial.Fold + 1} drives the part into the {what.Word()} at {Figure.Angle(trial.Least.AtAngle.Radians)}",
            what switch
            {
                JawKind.Part => (FormattableString)$"a form in two parts, joined after folding: {split}",
                JawKind.Beam => $"a beam that is lower and reaches less deep into the form; or a form in two parts: {split}",
                JawKind.Punch or JawKind.Holder or JawKind.Ram => $"a taller, slimmer punch that keeps the {what.Word()} outside the form; or a form in two parts: {split}",
                _ => $"a narrower {what.Word()}; or a form in two parts: {split}",
            });
    }

    private string Others(FoldTrial trial) => trial.Made.Count switch
    {
        0 => "no other fold made",
        var made when made == part.Folds - 1 => "every other fold made",
        var made => FormattableString.Invariant($"{made} of the other folds made"),
    };

    // How far the part went edge to edge: so much of it can be folded by itself.
    private string SplitOf(IReadOnlyList<TriedOrder> tried)
    {
        var fromStart = tried[0].Trials.Count - 1;
        return fromStart < 1 || fromStart >= part.Folds
            ? FormattableString.Invariant($"try one near fold {(part.Folds + 1) / 2}")
            : FormattableString.Invariant($"folds 1 to {fromStart} clear by themselves, so it may end between folds {fromStart} and {fromStart + 1}");
    }
}
