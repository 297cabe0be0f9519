using Forming.Checks;
using Forming.Plans.Notes;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
using Forming.Results;

namespace Forming.Programs;

/// <summary>The steps by which a brake folds a form, every one followed through its whole swing, or why there are none.</summary>
public sealed record BrakeProgram
{
    /// <summary>Work granted to the search where nothing else is asked for, in stretches of the part held against edges of jaws.</summary>
    public const long UsualWork = 200_000_000;

    /// <summary>Up to so many folds every order is searched, not only the families.</summary>
    public const int MostFoldsSearchedWhole = OrderSearch.MostFoldsInAllOrders;

    /// <summary>
    /// A taper is held against the jaws along several lines where parallel folds are seen as one: its search may do more.
    /// </summary>
    private const int TaperLines = 4;

    private readonly ProgramPart _part;
    private readonly ProgramBrake _brake;

    private BrakeProgram(ProgramPart part, ProgramBrake brake) => (_part, _brake) = (part, brake);

    /// <summary>Name of the order, or null where none was found.</summary>
    public string? OrderName { get; private init; }

    /// <summary>The steps; empty where no order was found.</summary>
    public IReadOnlyList<ProgramStep> Steps { get; private init; } = [];

    /// <summary>What to do next.</summary>
    public IReadOnlyList<NextStep> Next { get; } =
    [
        new(NextStepKind.RunProgram, $"Fold a strip of the same sheet first; then fold the form, one step after another."),
        new(NextStepKind.InspectForm, $"Measure every fold before the form is used, and send the angles."),
    ];

    /// <summary>Turns end for end.</summary>
    public int Turns => Steps.Count(step => step.Handling == Handling.Turn);

    /// <summary>What all handling costs, in pushes.</summary>
    public int HandlingCost => Steps.Sum(step => step.HandlingCost);

    /// <summary>Changes of the stop.</summary>
    public int StopChanges => Steps.Count(step => step.IsStopChanged);

    /// <summary>Steps in a row under one setting of the stop.</summary>
    public IReadOnlyList<StopGroup> StopGroups { get; private init; } = [];

    /// <summary>What rounding the stop angles to the stop's steps adds to the whole form: above 0 it closes too far.</summary>
    public Angle StopRounding { get; private init; }

    /// <summary>Least clearance of all steps.</summary>
    public Clearance Clearance { get; private init; }

    /// <summary>Orders that were followed.</summary>
    public required IReadOnlyList<OrderTried> OrdersTried { get; init; }

    /// <summary>Whether the search was complete; else a better order may exist.</summary>
    public bool IsSearchComplete { get; private init; }

    /// <summary>Which orders the search looks among.</summary>
    public required SearchedOrders Searched { get; init; }

    /// <summary>Work that was done, as <see cref="UsualWork"/> counts it.</summary>
    internal long Work { get; private init; }

    /// <summary>Why there is no program, or null.</summary>
    public Impossibility? Impossible { get; private init; }

    /// <summary>Every check, the worst step's value for each.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>Cautions.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>Works a program out.</summary>
    /// <param name="part">The part.</param>
    /// <param name="brake">The brake with its tools.</param>
    /// <param name="mostWork">Work that each search past the named orders may do, as <see cref="UsualWork"/> counts it, the same on any
    /// machine.
    /// Zero follows the named orders alone.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="ArgumentException">The part has no folds, or more than are distinguished, or its lists do not fit
    /// together.</exception>
    public static BrakeProgram Compute(
        ProgramPart part, ProgramBrake brake, long mostWork = UsualWork, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(brake);
        part.Check();
        var effort = new Effort(cancellation);
        var limit = new SearchLimit(effort, part.Flat is null ? mostWork : (double)TaperLines * mostWork);
        var trials = new StepTrials(brake.ToolsFor(part), brake, effort);
        List<TriedOrder> tried = [];
        TriedOrder? best = null;
        foreach (var order in FoldOrders.Of(part.Folds))
            Follow(order);

        // A proof that there is none is mostly quicker than a search in vain.
        var unfolding = best is null ? Unfolding.Try(trials, limit) : null;
        if (unfolding?.Order is { } unfolded)
            Follow(unfolded);
        var isComplete = true;
        var kinds = OrderSearch.KindsFor(part.Folds);
        if (unfolding is not { IsProven: true } && OrderSearch.Best(trials, best, limit, kinds, out isComplete) is { } found)
            Follow(found);

        var wording = new ProgramWording(trials, part, brake);
        var steps = best is null ? [] : wording.Steps(best);
        return new(part, brake)
        {
            OrderName = best?.Name,
            Steps = steps,
            StopGroups = ProgramWording.Groups(steps),
            StopRounding = part.StopRounding,
            Searched = kinds,
            Clearance = best?.Trials.MinBy(trial => trial.Least.Mm)!.Least ?? default,
            OrdersTried = [.. tried.Select(ProgramWording.Report)],
            IsSearchComplete = isComplete,
            Work = effort.Spent,
            Impossible = best is null ? wording.Reasons(unfolding!, tried) : null,
            Checks = wording.Checks(best, steps, unfolding),
            Safety = ProgramNotes.Safety(part, brake),
            Basis = ProgramNotes.Basis(part, brake),
        };

        void Follow(NamedOrder order)
        {
            cancellation.ThrowIfCancellationRequested();
            var followed = TriedOrder.Follow(trials, order);
            tried.Add(followed);
            if (followed.IsWhole && (best is null || followed.Objective.CompareTo(best.Objective) < 0))
                best = followed;
        }
    }

    /// <summary>Where part and tools are at the end of a step's swing, or anywhere in it; of a taper at the fold's middle.</summary>
    /// <param name="step">The step.</param>
    /// <param name="turn">Angle of the fold.</param>
    public PartInJaws At(ProgramStep step, Angle turn)
    {
        var made = default(FoldSet);
        foreach (var earlier in Steps.TakeWhile(earlier => earlier.Number < step.Number))
            made = made.With(earlier.Fold - 1);
        var tools = _brake.ToolsFor(_part);
        var fold = step.Fold - 1;
        var sides = PartPose.Of(tools, made, fold, step.EdgeInFront);
        return new(
            sides.Drawn(tools, fold, turn.Radians, isFront: false),
            sides.Drawn(tools, fold, turn.Radians, isFront: true),
            [.. tools.Upper.Concat(tools.Lower(fold, turn.Radians)).Select(jaw => (jaw.Kind, (IReadOnlyList<Point>)jaw.Outline))]);
    }
}
