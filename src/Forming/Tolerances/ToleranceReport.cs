using Forming.Checks;
using Forming.Layout;
using Forming.Results;

namespace Forming.Tolerances;

/// <summary>What the finished form must hold.</summary>
/// <param name="Closing">Error of the sum of all folds, to either side.</param>
/// <param name="EndMm">Error of the end of the lead-out, the first flat fixed [mm].</param>
/// <param name="Coverage">Standard deviations that have to fit in, &gt; 0; 2 is about 95 % of forms.</param>
public sealed record WantedTolerance(Angle Closing, double EndMm, double Coverage = 2);

/// <summary>What the errors of single folds and marks add up to, and what that is worth.</summary>
public sealed record ToleranceReport
{
    /// <summary>The planned form; of one with slanting folds its section half-way along them.</summary>
    public required FoldedPolygon Form { get; init; }

    /// <summary>Coverage in use: standard deviations that intervals count.</summary>
    public required double Coverage { get; init; }

    /// <summary>Mean error of the closing angle.</summary>
    public required Angle ClosingBias { get; init; }

    /// <summary>Standard deviation of the closing angle.</summary>
    public required Angle ClosingScatter { get; init; }

    /// <summary>Every fold off the same way by bias and as many standard deviations as the coverage has.</summary>
    public required Angle ClosingWorst { get; init; }

    /// <summary>The end of the lead-out; of a form with slanting folds its near corner and its far one.</summary>
    public required IReadOnlyList<ToleratedEnd> Ends { get; init; }

    /// <summary>How far the lead-out twists about its own direction; null where the folds are parallel.</summary>
    public required TwistSpread? Twist { get; init; }

    /// <summary>Mean radius of the form on its contact side, half-way along its folds [mm], or null with fewer than three folds.</summary>
    public required double? RadiusMm { get; init; }

    /// <summary>The scatter that the wanted tolerance leaves room for, or null where none is wanted.</summary>
    public required NeededScatter? Needed { get; init; }

    /// <summary>The values held against published tables.</summary>
    public required IReadOnlyList<ToleranceComparison> Published { get; init; }

    /// <summary>The wanted tolerance, held or not.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>What to know about the results.</summary>
    public required IReadOnlyList<ShopNote> Notes { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>How far off the end that is worse off may lie [mm].</summary>
    public double EndReachMm => Ends.Max(end => end.Exact.ReachMm(Coverage));

    /// <summary>How far off the closing angle may lie to either side of zero.</summary>
    public Angle ClosingReach => new(Math.Abs(ClosingBias.Radians) + (Coverage * ClosingScatter.Radians));

    /// <summary>The mean radius when the sweep is off: the same length over another turn.</summary>
    /// <param name="closing">Error of the sweep.</param>
    /// <returns>The radius [mm], or null where the form has none, or would be folded flat.</returns>
    public double? RadiusWith(Angle closing)
    {
        var turned = Form.Sweep + closing.Radians;
        return RadiusMm is { } radius && turned > 0 ? radius * Form.Sweep / turned : null;
    }

    /// <summary>Adds the errors up.</summary>
    /// <param name="form">The planned form.</param>
    /// <param name="accuracy">How well it is folded.</param>
    /// <param name="wanted">What it must hold, or null.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static ToleranceReport Of(
        FoldedPolygon form, FoldAccuracy accuracy, WantedTolerance? wanted, CancellationToken cancellation = default) =>
        Of(new ParallelErrors(form), accuracy, wanted, cancellation);

    /// <summary>Adds the errors up where folds are not parallel.</summary>
    /// <param name="form">The planned form.</param>
    /// <param name="accuracy">How well it is folded; its mark scatter is that of each end of a fold line, square to it.</param>
    /// <param name="wanted">What it must hold, or null.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static ToleranceReport Of(
        HingedForm form, FoldAccuracy accuracy, WantedTolerance? wanted, CancellationToken cancellation = default) =>
        Of(new HingedErrors(form), accuracy, wanted, cancellation);

    private static ToleranceReport Of(
        ErrorSums sums, FoldAccuracy accuracy, WantedTolerance? wanted, CancellationToken cancellation)
    {
        var coverage = wanted?.Coverage ?? 2;
        var turn = sums.Closing;
        var report = new ToleranceReport
        {
            Form = sums.Section,
            Coverage = coverage,
            ClosingBias = turn.Bias(accuracy),
            ClosingScatter = turn.Scatter(accuracy),
            ClosingWorst = new(turn.Worst * FoldDeviation(accuracy, coverage)),
            Ends =
            [
                .. sums.Ends.Zip(
                    sums.Exact(accuracy, cancellation),
                    (end, exact) => new ToleratedEnd(end.Start, end.Planned, exact, end.FirstOrder(accuracy))),
            ],
            Twist = sums.Twist is { } twist ? new(twist.Bias(accuracy), twist.Scatter(accuracy)) : null,
            RadiusMm = sums.Section.MeanRadiusMm(),
            Needed = wanted is null ? null : NeededScatter.For(sums, accuracy, wanted, cancellation),
            Published = [],
            Checks = [],
            Notes = [],
            Basis = BasisOf(accuracy, sums.Twist is not null),
        };
        return report with
        {
            Published = Compare(report, sums.LongestLegMm, FoldDeviation(accuracy, coverage)),
            Checks = wanted is null ? [] : [ClosingCheck(report, accuracy, wanted), EndCheck(report, accuracy, wanted)],
            Notes = NotesOf(report, accuracy),
        };
    }

    private static double FoldDeviation(FoldAccuracy accuracy, double coverage) =>
        Math.Abs(accuracy.Bias.Radians) + (coverage * accuracy.Scatter.Radians);

    private static List<ToleranceComparison> Compare(ToleranceReport report, double leg, double foldDeviation)
    {
        var flats = report.Form.FlatsMm;
        var ends = Math.Min(flats[0], flats[^1]);
        // The end that is worse off, from the start of its own edge.
        var end = report.Ends.MaxBy(one => one.Exact.ReachMm(report.Coverage))!;
        var chord = (end.Planned - end.Start).Length;
        var rows = new List<ToleranceComparison>();
        foreach (var (standard, @class) in GeneralTolerances.Classes)
        {
            Add("fold-angle", TolerancedQuantity.Angle, leg, foldDeviation);
            Add("closing-angle", TolerancedQuantity.Angle, ends, report.ClosingReach.Radians);
            Add("end-position", TolerancedQuantity.Length, chord, report.EndReachMm);

            void Add(string figure, TolerancedQuantity quantity, double size, double expected)
            {
                var table = GeneralTolerances.All.FirstOrDefault(
                    row => row.Standard == standard && row.Class == @class && row.Quantity == quantity);
                if (table is null)
                    return;
                var cell = GeneralTolerances.Find(standard, @class, quantity, size);
                var source = cell ?? table;
                rows.Add(new(
                    standard,
                    @class.Length > 0 ? @class : null,
                    figure,
                    size,
                    quantity == TolerancedQuantity.Angle ? Quantity.Angle : Quantity.Length,
                    expected,
                    cell?.Deviation,
                    source.Source,
                    source.Status));
            }
        }

        return rows;
    }

    private static Check ClosingCheck(ToleranceReport report, FoldAccuracy accuracy, WantedTolerance wanted)
    {
        var reach = report.ClosingReach.Radians;
        var passes = reach <= wanted.Closing.Radians;
        return new(
            CheckIds.ClosingTolerance,
            passes ? Verdict.Pass : Verdict.Warn,
            reach,
            wanted.Closing.Radians,
            $"{report.Form.Folds} folds close within {Figure.Angle(reach)}: a bias of {Figure.Angle(report.ClosingBias.Radians)} and {Figure.Number(report.Coverage)} standard deviations of {Figure.Angle(report.ClosingScatter.Radians)}",
            passes ? null : Remedy(report.Needed!.Closing, accuracy, "the bias alone breaks it"));
    }

    private static Check EndCheck(ToleranceReport report, FoldAccuracy accuracy, WantedTolerance wanted)
    {
        var reach = report.EndReachMm;
        var worse = report.Ends.MaxBy(end => end.Exact.ReachMm(report.Coverage))!.Exact;
        var passes = reach <= wanted.EndMm;
        return new(
            CheckIds.EndTolerance,
            passes ? Verdict.Pass : Verdict.Warn,
            reach,
            wanted.EndMm,
            $"the end lies within {Figure.Length(reach)}: {Figure.Length(worse.BiasMm)} on the mean and {Figure.Number(report.Coverage)} standard deviations in the widest direction",
            passes ? null : Remedy(report.Needed!.EndExact, accuracy, "bias and marks alone break it"));
    }

    private static FormattableString Remedy(Angle needed, FoldAccuracy accuracy, string broken) => needed > Angle.Zero
        ? $"a scatter of {Figure.Angle(needed.Radians)} a fold in place of {Figure.Angle(accuracy.Scatter.Radians)}, or a template after every few folds and the last ones closed to it"
        : (FormattableString)$"no scatter is small enough, {broken}: set the stop from test strips first, mark more closely, or close the last folds to a template";

    private static List<ShopNote> NotesOf(ToleranceReport report, FoldAccuracy accuracy)
    {
        var notes = new List<ShopNote>
        {
            new("scatter-is-one-sigma", $"Scatter and mark scatter are standard deviations: a shop's ±1° that 19 folds of 20 keep is a scatter of {Figure.Angle(Angle.FromDegrees(0.5).Radians)}. Intervals here count {Figure.Number(report.Coverage)} standard deviations."),
            new("check-by-template", $"Independent errors add up as their root sum of squares, {Figure.Angle(report.Coverage * report.ClosingScatter.Radians)} here, and at worst to {Figure.Angle(report.ClosingWorst.Radians)}: check by template every few folds and close with the last one or two."),
        };
        if (report.Twist is not null)
            notes.Add(new("marks-at-both-ends", $"Mark scatter counts at each end of a fold line, square to it: a line that lies out of square turns the lead-out."));
        if (AssumedOf(accuracy) is { } assumed)
            notes.Add(new("accuracy-assumed", assumed));
        if (report.Needed is { } needed)
        {
            if (needed.Closing == Angle.Zero)
                notes.Add(new("bias-breaks-closing", $"The bias alone breaks the closing tolerance: a needed scatter of 0 means that no scatter is small enough."));
            if (needed.EndExact == Angle.Zero)
                notes.Add(new("bias-breaks-end", $"Bias and marks alone break the tolerance of the end: a needed scatter of 0 means that no scatter is small enough."));
        }

        if (report.RadiusMm is null)
            notes.Add(new("no-mean-radius", $"With fewer than three folds the form has no mean radius to speak of."));
        return notes;
    }

    private static FormattableString? AssumedOf(FoldAccuracy accuracy)
    {
        var scatter = Figure.Angle(2 * accuracy.Scatter.Radians);
        var marks = Figure.Length(2 * accuracy.MarkScatterMm);
        return (accuracy.ScatterIsAssumed, accuracy.MarkScatterIsAssumed) switch
        {
            (true, true) => $"Folds within ±{scatter} and marks within ±{marks}, two standard deviations each, are an assumption for hand-set brakes: no published tolerance for hand leaf brakes was found.",
            (true, false) => $"Folds within ±{scatter}, two standard deviations, are an assumption for hand-set brakes: no published tolerance for hand leaf brakes was found.",
            (false, true) => $"Marks within ±{marks}, two standard deviations, are an assumption for marks made by hand.",
            _ => null,
        };
    }

    private static List<Basis> BasisOf(FoldAccuracy accuracy, bool isHinged) =>
    [
        .. isHinged ? TurnsOfHinged : [new("closing", "n b ± z u √n: independent errors of equal folds", "textbook statistics", Status.Computed)],
        new("end", "exact mean and covariance of the end for Gaussian errors of folds and marks, first flat fixed; sharp mold lines, so what bend allowance changes with the angle's error is left out", "derived by this project, checked against simulation", Status.Computed),
        new("end.ellipse", "95 % of a Gaussian point; the end itself is Gaussian to first order only", "textbook statistics", Status.Computed),
        new("end.firstOrder", isHinged
            ? "b Σ e × (P - V) and u² Σ g gᵀ + v² Σ h hᵀ about the planned form, e along each fold"
            : "b Σ J(P - V) and u² Σ g gᵀ + v² Σ h hᵀ about the planned polygon", "textbook statistics", Status.Computed),
        new("radius", "mean radius of the form's contact side under load, middle of first facet to middle of last; the same length over the sweep that is off", "geometry", Status.Computed),
        new("needed.end", "first order; not shown to be on the safe side", "textbook statistics", Status.Computed),
        new("needed.endExact", "the exact formula, solved for the scatter", "derived by this project", Status.Computed),
        new("published", "ISO 2768-1 and DIN 6935: each row says how its value was read", "ISO 2768-1; DIN 6935", Status.PublishedAsQuoted),
        AccuracyBasis("accuracy.scatter", "±1° at two standard deviations", accuracy.ScatterIsAssumed),
        AccuracyBasis("accuracy.markScatter", "±0.8 mm at two standard deviations", accuracy.MarkScatterIsAssumed),
    ];

    private static Basis[] TurnsOfHinged =>
    [
        new("closing", "turn of the lead-out about the last fold line: b Σ c ± z √(u² Σ c² + v² Σ k²), c a fold's share in it and k that of a line out of square; first order", "textbook statistics", Status.Computed),
        new("twist", "turn of the lead-out about its own direction, square to the last fold line; first order", "textbook statistics", Status.Computed),
    ];

    private static Basis AccuracyBasis(string quantity, string assumed, bool isAssumed) => isAssumed
        ? new(quantity, assumed, "an assumption for hand-set brakes", Status.Assumption)
        : new(quantity, "as given", "caller", Status.Caller);
}

/// <summary>Where an end of the lead-out lies.</summary>
/// <param name="Start">Start of its edge, on the lead-in [mm].</param>
/// <param name="Planned">Where it should be [mm].</param>
/// <param name="Exact">How far off, exact.</param>
/// <param name="FirstOrder">The same to first order.</param>
public sealed record ToleratedEnd(Point3 Start, Point3 Planned, EndSpread Exact, EndSpread FirstOrder);

/// <summary>How far the lead-out twists about its own direction.</summary>
/// <param name="Bias">Mean.</param>
/// <param name="Scatter">Standard deviation.</param>
public sealed record TwistSpread(Angle Bias, Angle Scatter);

/// <summary>One value of the form compared with one class of a published table.</summary>
/// <param name="Standard">Name of the standard.</param>
/// <param name="Class">Its class, or null where it has none.</param>
/// <param name="Figure">What is compared: <c>fold-angle</c>, <c>closing-angle</c> or <c>end-position</c>.</param>
/// <param name="SizeMm">Size the table is read at [mm].</param>
/// <param name="Quantity">What kind of quantity the next two are.</param>
/// <param name="Expected">Largest expected deviation at the coverage in use [rad or mm].</param>
/// <param name="Allowed">Permissible deviation [rad or mm], or null where the table has none for this size.</param>
/// <param name="Source">Key of the source.</param>
/// <param name="Status">How the value was read.</param>
public sealed record ToleranceComparison(
    string Standard,
    string? Class,
    string Figure,
    double SizeMm,
    Quantity Quantity,
    double Expected,
    double? Allowed,
    string Source,
    Status Status)
{
    /// <summary>Whether the form is within it, or null where the table has no value.</summary>
    public bool? Holds => Allowed is { } allowed ? Expected <= allowed : null;
}
