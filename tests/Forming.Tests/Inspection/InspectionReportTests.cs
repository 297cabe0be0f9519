using CsCheck;
using Forming.Checks;
using Forming.Facets;
using Forming.Folds;
using Forming.Inspection;
using Forming.Layout;
using Forming.Numerics;
using Forming.Results;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Inspection;

/// <summary>From measurements to the form as built, and what cannot be or is hard to believe.</summary>
public class InspectionReportTests
{
    private static readonly FoldShape Fold = new(2, 2, 0.33);
    private static readonly FoldedPolygon Nine = new(
        [70, .. Enumerable.Repeat(17.5, 8), 60], [.. new[] { 8.5, 16, 16, 16, 16, 16, 16, 16, 8.5 }.Select(angle => angle * Degree)]);

    [Fact]
    public void Points_of_a_perfect_form_give_its_angles_and_facets_wherever_it_lies() =>
        Gen.Select(Gen.Double[-Math.PI, Math.PI], Gen.Double[-500, 500], Gen.Double[-500, 500], Gen.Int[2, 5]).ForAll((turn, x, y, count) =>
        {
            var points = PointsOn(Nine, count, turn, new(x, y));
            var built = AsBuilt.Of(new() { Points = points }, Nine, Fold);
            for (var i = 0; i < Nine.Folds; i++)
                Within(1e-9, Nine.FoldAngles[i], built.FoldAngles[i]);
            for (var j = 0; j <= Nine.Folds; j++)
                Within(1e-8, Nine.FlatsMm[j], built.FlatsMm[j]);
        }, iter: 200);

    // By total least squares noise square to the line counts whichever way the line points; by hand: (0,1), (1,3), (2,5) is slope 2.
    [Fact]
    public void A_line_through_three_points_in_line_is_that_line()
    {
        var line = TemplateLine.Fit([new(0, 1), new(1, 3), new(2, 5)])!.Value;
        Within(1e-12, Math.Atan(2), Math.Atan2(line.Along.Y, line.Along.X));
        Within(1e-12, 0, line.LargestMissMm);
        var back = TemplateLine.Fit([new(2, 5), new(0, 1)])!.Value;
        Within(1e-12, -1, line.Along.Dot(back.Along));
        Assert.Null(TemplateLine.Fit([new(1, 1), new(1, 1)]));
        Assert.Null(TemplateLine.Fit([new(0, 0), new(1, 0), new(1, 1), new(0, 1)]));
    }

    [Fact]
    public void The_rigid_fit_undoes_any_turn_and_shift() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-500, 500], Gen.Double[-500, 500]).ForAll((turn, x, y) =>
        {
            var onto = Nine.Vertices();
            var moved = Moved(onto, turn, new(x, y));
            var fit = RigidFit.Of(moved, onto);
            Within(1e-9, -turn, fit.Turn.Radians);
            Assert.All(fit.MissesMm, miss => Within(1e-9, 0, miss));
        }, iter: 100);

    [Fact]
    public void The_rigid_fit_is_the_same_wherever_the_form_lies_and_never_worse_than_holding_the_first_flat() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-2, 2].Array[9]).ForAll((turn, errors) =>
        {
            var built = Bent(errors);
            var (found, wanted) = (built.Vertices(), Nine.Vertices());
            var fit = RigidFit.Of(found, wanted);
            var elsewhere = RigidFit.Of(Moved(found, turn, new(100, -40)), wanted);
            for (var i = 0; i < found.Length; i++)
                Within(1e-8, fit.Misses[i].Length, elsewhere.Misses[i].Length);
            var held = found.Zip(wanted, (a, b) => (a - b).Dot(a - b)).Sum();
            Assert.True(fit.MissesMm.Sum(miss => miss * miss) <= held + 1e-9);
        }, iter: 100);

    // Folds of 16° and 8.5° around a facet of 17.5: straight = 17.5 - 4 (tan 8° + tan 4.25°); spacing = straight + 2.66 (16° + 8.5°)/2.
    [Fact]
    public void Spacings_come_back_as_facets()
    {
        double[] spacings =
        [
            .. Enumerable.Range(0, 8).Select(j => 17.5 - Fold.Setback(Nine.FoldAngles[j]) - Fold.Setback(Nine.FoldAngles[j + 1])
                + ((Fold.BendAllowance(Nine.FoldAngles[j]) + Fold.BendAllowance(Nine.FoldAngles[j + 1])) / 2)),
        ];
        Within(1e-9, 17.5 - (4 * (Math.Tan(8 * Degree) + Math.Tan(4.25 * Degree))) + (2.66 * 24.5 * Degree / 2), spacings[0]);
        var built = AsBuilt.Of(new() { Angles = Angles(Nine), SpacingsMm = spacings }, Nine, Fold);
        Assert.All(built.FlatsMm.Zip(Nine.FlatsMm), pair => Within(1e-9, pair.Second, pair.First));
    }

    [Fact]
    public void A_form_as_planned_is_within_tolerance_and_leaves_its_curve_nowhere()
    {
        var report = Inspect(new() { Angles = Angles(Nine), FacetsMm = [.. Nine.FlatsMm.Skip(1).Take(8)] });
        Within(1e-9, 0, report.Off.LargestHeldMm);
        Assert.Null(report.Departure);
        Assert.Empty(report.Suspect);
        Assert.All(report.Checks, check => Assert.Equal(Verdict.Pass, check.Verdict));
        Assert.Null(report.Panel.Planned);
        Assert.NotNull(report.Panel.WhyNot);
    }

    // Fold 3 is 2° too far: its own mold line stays; the facet after it ends 17.5 sin 2° = 0.611 mm inside, the next about twice that.
    [Fact]
    public void A_fold_too_far_leaves_the_curve_inside_it_after_the_next_facets()
    {
        var report = Inspect(new() { Angles = Angles(Bent([0, 0, 2, 0, 0, 0, 0, 0, 0])) });
        Within(1e-9, 0, report.Off.Ends[0].Misses[2].Held.Length);
        Within(1e-3, 2 * 17.5 * Math.Sin(1 * Degree), report.Off.Ends[0].Misses[3].Held.Length);
        Assert.Equal(4, report.Departure!.Facet);
        Assert.True(report.Departure.IsInside);
        Within(1e-9, 2, report.Off.Closing.Degrees);
        Assert.True(report.Off.LargestFittedMm < report.Off.LargestHeldMm);
        Assert.False(Inspect(new() { Angles = Angles(Bent([0, 0, -2, 0, 0, 0, 0, 0, 0])) }).Departure!.IsInside);
    }

    // The last fold half a degree out lies within the closing tolerance; at the end of 300 mm of lead-out that is 2.6 mm.
    [Fact]
    public void An_angle_within_tolerance_is_no_departure_however_long_the_lead_out()
    {
        var planned = Nine with { FlatsMm = [.. Nine.FlatsMm.SkipLast(1), 300] };
        var report = InspectionReport.Of(Job(new() { Angles = Angles(Bent([0, 0, 0, 0, 0, 0, 0, 0, 0.5])) }) with { Planned = planned });
        Assert.All(report.Checks, check => Assert.Equal(Verdict.Pass, check.Verdict));
        Assert.Null(report.Departure);
    }

    [Fact]
    public void A_panel_off_a_form_folded_too_far_comes_off_tighter()
    {
        var panel = Panel(Arc(95, 85));
        var plan = Plan(panel);
        var form = FoldedPolygon.Of(plan.Form.Stations, 60);
        var report = InspectionReport.Of(Job(new() { Angles = [.. form.FoldAngles.Select(angle => new Angle(1.05 * angle))] }) with { Planned = form, Panel = panel });
        var (before, after) = (report.Panel.Planned!.Shape!, report.Panel.AsBuilt!.Shape!);
        Assert.True(after.Sweep > before.Sweep);
        Assert.True(after.RadiusMm < before.RadiusMm);
        Assert.Equal(report.Panel.Planned.LeverMm, report.Panel.AsBuilt.LeverMm);
    }

    public static TheoryData<string, double[]> Doubtful { get; } = new()
    {
        { "sum-far-off", [2, 2, 2, 2, 2, 2, 2, 2, 2] },
        { "missing-fold", [0, 0, -15.5, 0, 0, 0, 0, 0, 0] },
        { "missing-fold", [0, 0, -15.5, 15.5, 0, 0, 0, 0, 0] },
        { "angle-far-off", [0, 0, 0, 0, 6, 0, 0, 0, 0] },
        { "swapped", [7.5, -7.5, 0, 0, 0, 0, 0, 0, 0] },
    };

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void What_is_hard_to_believe_is_named(string code, double[] errors) =>
        Assert.Contains(Inspect(new() { Angles = Angles(Bent(errors)) }).Suspect, suspect => suspect.Code == code);

    [Fact]
    public void A_list_read_from_the_other_end_is_named()
    {
        var planned = Nine with { FoldAngles = [.. Enumerable.Range(0, 9).Select(i => (8 + (1.5 * i)) * Degree)] };
        var report = InspectionReport.Of(Job(new() { Angles = [.. planned.FoldAngles.Reverse().Select(angle => new Angle(angle))] }) with { Planned = planned });
        Assert.Equal("order-reversed", Assert.Single(report.Suspect).Code);
    }

    [Fact]
    public void A_fold_that_is_missing_from_the_list_is_named()
    {
        var planned = Nine with { FoldAngles = [.. Enumerable.Range(0, 9).Select(i => (8 + (1.5 * i)) * Degree)] };
        var job = Job(new() { Angles = [.. planned.FoldAngles.Where((_, i) => i != 4).Select(angle => new Angle(angle))] }) with { Planned = planned };
        var none = Assert.Throws<NoSolutionException>(() => InspectionReport.Of(job));
        Assert.Equal("inspection.wrong-count", none.Code);
        Assert.Equal("measured.angles", none.Subject);
        Assert.Contains("fold 5 seems to be missing", none.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Templates_that_no_form_could_give_are_refused_with_their_place()
    {
        var points = PointsOn(Nine, 3, 0, Point.Origin);
        Refused("inspection.wrong-count", "measured.points", [.. points.Take(9)]);
        Refused("inspection.mirrored", "measured.points", [.. points.Select(flat => flat.Select(point => new Point(point.X, -point.Y)).ToArray())]);
        Refused("inspection.parallel-lines", "measured.points[4]", [.. points.Select((flat, j) => j == 4 ? points[3] : flat)]);
        Refused("inspection.impossible-fold", "measured.points[4]", [.. points.Select((flat, j) => j == 4 ? [.. flat.Reverse()] : flat)]);
        Refused("inspection.no-line", "measured.points[2]", [.. points.Select((flat, j) => j == 2 ? [flat[0], flat[0]] : flat)]);
        Refused("inspection.impossible-fold", "measured.points[3]", [.. points.Select((flat, j) => j == 2 ? points[3] : j == 3 ? points[2] : flat)]);
        // A flat moved out past the crossing of its neighbours.
        Refused("inspection.order", "measured.points[3]", [.. points.Select((flat, j) => j == 3 ? [.. flat.Select(point => point - (20 * (flat[^1] - flat[0]).Left()))] : flat)]);

        static void Refused(string code, string subject, IReadOnlyList<IReadOnlyList<Point>> points)
        {
            var none = Assert.Throws<NoSolutionException>(() => AsBuilt.Of(new() { Points = points }, Nine, Fold));
            Assert.Equal((code, subject), (none.Code, none.Subject));
        }
    }

    [Fact]
    public void The_same_measurements_give_the_same_figures()
    {
        var measured = new Measurement { Angles = Angles(Bent([0.3, -0.8, 0.5, 1, -1.2, 0.4, 0, 0.7, -0.2])) };
        var (one, two) = (Inspect(measured), Inspect(measured));
        Assert.Equal(one.Off.Ends[0].Misses, two.Off.Ends[0].Misses);
        Assert.Equal(one.Corrections.Folds, two.Corrections.Folds);
        Assert.Equal(one.Corrections.Nodes, two.Corrections.Nodes);
    }

    private static InspectionReport Inspect(Measurement measured) => InspectionReport.Of(Job(measured));

    private static InspectionJob Job(Measurement measured) => new()
    {
        Planned = Nine,
        Fold = Fold,
        Measured = measured,
        Rules = new(Angle.FromDegrees(0.5), CorrectionDirection.CloseOnly, 4, Angle.FromDegrees(1), 0.8),
        Ends = SteppingEnds.Half,
    };

    private static FoldedPolygon Bent(double[] errors) =>
        Nine with { FoldAngles = [.. Nine.FoldAngles.Select((angle, i) => angle + (errors[i] * Degree))] };

    private static Angle[] Angles(FoldedPolygon form) => [.. form.FoldAngles.Select(angle => new Angle(angle))];

    private static Point[] Moved(IEnumerable<Point> points, double turn, Point shift) =>
        [.. points.Select(point => shift + point.TurnedTo(Point.Along(turn)))];

    private static Point[][] PointsOn(FoldedPolygon form, int count, double turn, Point shift)
    {
        var vertices = Moved(form.Vertices(), turn, shift);
        return
        [
            .. Enumerable.Range(0, form.Folds + 1).Select(j => Enumerable.Range(0, count)
                .Select(i => vertices[j] + ((0.1 + (0.8 * i / (count - 1))) * (vertices[j + 1] - vertices[j]))).ToArray()),
        ];
    }
}
