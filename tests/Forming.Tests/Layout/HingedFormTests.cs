using CsCheck;
using Forming.Layout;
using Forming.Numerics;
using Forming.Tests.Tapers;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Layout;

/// <summary>A form of plane facets hinged at lines that need not be parallel, against plans of tapers and against parallel folds.</summary>
public class HingedFormTests
{
    // The plan's own solid lies on the finished lead-in: x along its edge, the lead-in's plane turned about x.
    [Fact]
    public void Unfolded_and_folded_again_a_planned_taper_is_itself() => TaperJobs.AnyTaper.ForAll(
        taper =>
        {
            if (TaperJobs.TryPlan(taper) is not { } plan)
                return;
            var solid = plan.Taper!.Solid;
            var folded = solid.Hinged(plan.Form.Stations).Folded();
            for (var i = 0; i < solid.FormNear.Count; i++)
            {
                for (var j = 0; j < solid.FormNear.Count; j++)
                {
                    Within(1e-8, (solid.FormNear[i] - solid.FormNear[j]).Length, (folded.Near[i] - folded.Near[j]).Length);
                    Within(1e-8, (solid.FormNear[i] - solid.FormFar[j]).Length, (folded.Near[i] - folded.Far[j]).Length);
                    Within(1e-8, (solid.FormFar[i] - solid.FormFar[j]).Length, (folded.Far[i] - folded.Far[j]).Length);
                }
            }

            Assert.True(folded.Near[^1].Y > 0);
        },
        iter: 10);

    [Fact]
    public void Parallel_folds_give_the_straight_form_at_both_ends() => Equal.ForAll(
        pair =>
        {
            var (straight, hinged) = pair;
            var folded = hinged.Folded();
            foreach (var (expected, near, far) in straight.Vertices().Zip(folded.Near, folded.Far))
            {
                Within(1e-9, 0, (near - new Point3(expected.X, expected.Y, 0)).Length);
                Within(1e-9, 0, (far - new Point3(expected.X, expected.Y, hinged.Far[0].Y)).Length);
            }

            foreach (var (expected, flat) in straight.FlatsMm.Zip(hinged.SectionAt(0.3).FlatsMm))
                Within(1e-9, expected, flat);
        },
        iter: 50);

    // Between alike folds a right cone's facets are alike, wider from end to end by one share.
    [Fact]
    public void A_cone_s_facets_widen_alike()
    {
        var plan = TaperJobs.Plan(TaperJobs.Cone(60, 120, 400));
        var form = plan.Taper!.Solid.Hinged(plan.Form.Stations);
        var (near, middle, far) = (form.SectionAt(0).FlatsMm, form.SectionAt(0.5).FlatsMm, form.SectionAt(1).FlatsMm);
        for (var j = 1; j < form.Folds; j++)
        {
            Near((near[j] + far[j]) / 2, middle[j], 1e-9);
            if (j > 1 && j < form.Folds - 1)
                Near(near[2] / far[2], near[j] / far[j], 1e-9);
        }
    }

    // Three facets in line, 100 long folds, the middle facet 2 mm wider at the far end: the second line turns by 2/100 about its near end.
    [Fact]
    public void A_facet_wider_at_one_end_turns_the_lines_after_it()
    {
        var form = Hinged(new([50, 20, 60], [0.2, 0.3]), 100).WithFacets([20], [22]);
        Within(1e-12, 70, form.Near[2].X);
        Within(1e-12, 72, form.Far[2].X);
        Within(1e-12, 132, form.Far[3].X);
        var axis = form.AxisOf(1);
        Within(1e-12, 2.0 / 100, axis.X / axis.Z);
    }

    [Fact]
    public void The_fit_in_space_undoes_any_turn_and_shift() =>
        Gen.Select(Gen.Double[-1, 1].Array[3], Gen.Double[0.01, 1], Gen.Double[-300, 300].Array[3], Equal).ForAll((axis, angle, shift, pair) =>
        {
            var folded = pair.Hinged.Folded();
            Point3[] onto = [.. folded.Near, .. folded.Far];
            var line = new Point3(axis[0], axis[1], axis[2] + 0.01).Unit();
            var motion = SpaceMotion.About(new(shift[0], shift[1], shift[2]), line, angle);
            var fit = SpaceFit.Of([.. onto.Select(motion.Moved)], onto);
            Within(1e-9, 0, (fit.Turn + (angle * line)).Length);
            Assert.All(fit.Misses, miss => Within(1e-9, 0, miss.Length));
        }, iter: 100);

    [Fact]
    public void Points_in_line_are_not_turned_about_it()
    {
        Point3[] line = [new(1, 2, 3), new(4, 6, 15)];
        var fit = SpaceFit.Of(line, [.. line.Select(point => point + new Point3(5, 0, 0))]);
        Within(1e-3, 0, fit.Turn.Length);
        Assert.All(fit.Misses, miss => Within(1e-9, 0, miss.Length));
    }

    internal static HingedForm Hinged(FoldedPolygon straight, double length)
    {
        var x = 0.0;
        Point[] near = [Point.Origin, .. straight.FlatsMm.Select(flat => new Point(x += flat, 0))];
        return new(near, [.. near.Select(point => new Point(point.X, length))], straight.FoldAngles);
    }

    internal static Gen<(FoldedPolygon Straight, HingedForm Hinged)> Equal { get; } =
        from folds in Gen.Int[2, 12]
        from flats in Gen.Double[8, 40].Array[folds + 1]
        from angles in Gen.Double[2, 18].Array[folds]
        from length in Gen.Double[200, 900]
        let straight = new FoldedPolygon([.. flats.Select((flat, j) => j == 0 || j == folds ? flat + 40 : flat)], [.. angles.Select(angle => angle * Degree)])
        select (straight, Hinged(straight, length));
}
