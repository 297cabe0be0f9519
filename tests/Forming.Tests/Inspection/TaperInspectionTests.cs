using CsCheck;
using Forming.Facets;
using Forming.Folds;
using Forming.Inspection;
using Forming.Layout;
using Forming.Results;
using Forming.Tests.Layout;
using Forming.Tests.Tapers;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Inspection;

/// <summary>From what was measured at both ends of a tapered form to the form as built, and what to correct.</summary>
public class TaperInspectionTests
{
    private static readonly Angle Step = Angle.FromDegrees(0.5);

    private static readonly TaperedForm Cone = FormOf(TaperJobs.Plan(TaperJobs.Cone(70, 110, 520, 80), new() { Folds = 9 }));

    private static readonly FoldShape Fold = new(2, 2, NeutralLine.Factor(2, 2));

    [Fact]
    public void What_is_measured_as_planned_is_within_tolerance_by_whatever_it_is_measured() => TaperJobs.AnyTaper.ForAll(
        taper =>
        {
            if (TaperJobs.TryPlan(taper) is not { } plan)
                return;
            var (form, fold) = (FormOf(plan), new FoldShape(2, 2, plan.Form.NeutralFactor));
            Angle[] angles = [.. form.Form.FoldAngles.Select(angle => new Angle(angle))];
            Measurement[] ways =
            [
                new() { Angles = angles },
                new() { Angles = angles, FacetsMm = Facets(form.Near.Listed), Far = new() { FacetsMm = Facets(form.Far.Listed) } },
                new() { Angles = angles, SpacingsMm = form.Near.SpacingsMm, Far = new() { SpacingsMm = form.Far.SpacingsMm } },
                new() { Points = Template(form.Form, isFar: false) },
                new() { Far = new() { Points = Template(form.Form, isFar: true) } },
                new() { Points = Template(form.Form, isFar: false), Far = new() { Points = Template(form.Form, isFar: true) } },
            ];
            foreach (var measured in ways)
            {
                var built = form.Built(measured, fold);
                var off = FormDeviation.Of(built.Form, form.Form);
                Within(1e-6, 0, off.LargestHeldMm);
                Within(1e-6, 0, off.LargestFittedMm);
                Within(1e-8, 0, off.Closing.Radians);
                Within(1e-8, 0, off.Twist!.Value.Radians);
                Within(1e-8, 0, built.LargestGap.Radians);
                Assert.Empty(Suspicions.Of(measured, built, form));
                Assert.Empty(CorrectionSearch.Find(built.Form, form.Form, Rules()).Folds);
            }
        },
        iter: 8);

    [Fact]
    public void With_equal_ends_it_is_the_straight_form_s_inspection() =>
        Gen.Select(HingedFormTests.Equal, Gen.Double[-1.5, 1.5].Array[12], Gen.Double[-0.4, 0.4].Array[12], Gen.Bool).ForAll((pair, errors, shifts, both) =>
        {
            var (straight, hinged) = pair;
            var built = new FoldedPolygon(
                [.. straight.FlatsMm.Select((flat, j) => j == 0 || j == straight.Folds ? flat : flat + shifts[j])],
                [.. straight.FoldAngles.Select((angle, i) => angle + (errors[i] * Degree))]);
            var bent = hinged.WithFacets(Facets(built), Facets(built)) with { FoldAngles = built.FoldAngles };
            FormDeviation one = FormDeviation.Of(built, straight), other = FormDeviation.Of(bent, hinged);
            foreach (var end in other.Ends)
            {
                foreach (var (expected, miss) in one.Ends[0].Misses.Zip(end.Misses))
                {
                    Within(1e-9, 0, (expected.Held - miss.Held).Length);
                    Within(1e-8, expected.FittedMm, miss.FittedMm);
                }

                Within(1e-9, 0, (one.Ends[0].EndMiss - end.EndMiss).Length);
            }

            Within(1e-9, one.Closing.Radians, other.Closing.Radians);
            Within(1e-8, one.FitTurn.Radians, other.FitTurn.Radians);
            Within(1e-9, 0, other.Twist!.Value.Radians);
            Within(1e-9, 0, other.Skew!.Value.Radians);
            Assert.Equal(one.DepartureBeyond(0.8)?.Facet, other.DepartureBeyond(0.8)?.Facet);
            var rules = Rules() with { Direction = both ? CorrectionDirection.Both : CorrectionDirection.CloseOnly, MostSteps = 3 };
            CorrectionPlan plan = CorrectionSearch.Find(built, straight, rules), space = CorrectionSearch.Find(bent, hinged, rules);
            Assert.Equal((plan.Found, plan.LowerBound), (space.Found, space.LowerBound));
            Assert.Equal(plan.Folds.Sum(fold => Math.Abs(fold.Steps)), space.Folds.Sum(fold => Math.Abs(fold.Steps)));
            Within(1e-9, plan.MissMm ?? 0, space.MissMm ?? 0);
        }, iter: 60);

    [Fact]
    public void The_search_in_space_finds_what_full_enumeration_finds() =>
        Gen.Select(Gen.Double[-1.6, 1.6].Array[4], Gen.Double[-0.6, 0.6].Array[6], Gen.Bool, Gen.Double[0.2, 1.2], Gen.Double[0.1, 1.5]).ForAll((errors, shifts, both, closing, vertex) =>
        {
            var planned = Few.Form;
            double[] near = planned.FlatsMm(isFar: false), far = planned.FlatsMm(isFar: true);
            var built = planned.WithFacets(
                [.. Enumerable.Range(1, 3).Select(j => near[j] + shifts[j - 1])], [.. Enumerable.Range(1, 3).Select(j => far[j] + shifts[j + 2])]) with
            {
                FoldAngles = [.. planned.FoldAngles.Select((angle, i) => angle + (errors[i] * Degree))],
            };
            var rules = new CorrectionRules(Step, both ? CorrectionDirection.Both : CorrectionDirection.CloseOnly, 2, Angle.FromDegrees(closing), vertex);
            var found = CorrectionSearch.Find(built, planned, rules);
            var wanted = planned.Folded();
            (int Folds, int Steps, double Miss)? best = null;
            var width = rules.MostSteps - rules.LeastSteps + 1;
            for (var code = 0; code < Math.Pow(width, 4); code++)
            {
                int[] steps = [.. Enumerable.Range(0, 4).Select(i => rules.LeastSteps + (code / (int)Math.Pow(width, i) % width))];
                var form = built with { FoldAngles = [.. built.FoldAngles.Select((angle, i) => angle + (steps[i] * Step.Radians))] };
                var shape = form.Folded();
                var misses = shape.Near.Concat(shape.Far).Zip(wanted.Near.Concat(wanted.Far), (a, b) => (a - b).Length).ToArray();
                // The ends of the lead-out, last of each edge, are judged by its direction.
                var choice = (Folds: steps.Count(step => step != 0), Steps: steps.Sum(Math.Abs), Miss: Math.Max(misses[..5].Max(), misses[6..11].Max()));
                var turn = shape.Motions[^1].TurnFrom(wanted.Motions[^1]).Dot(wanted.LineOf(3));
                if (choice.Miss <= vertex + 1e-9 && Math.Abs(turn) <= (closing * Degree) + 1e-9 && (best is null || choice.CompareTo(best.Value) < 0))
                    best = choice;
            }

            Assert.Equal(best is not null, found.Found);
            if (best is not { } expected)
                return;
            Assert.Equal((expected.Folds, expected.Folds), (found.Folds.Count, found.LowerBound));
            Assert.Equal(expected.Steps, found.Folds.Sum(fold => Math.Abs(fold.Steps)));
            Within(1e-8, expected.Miss, found.MissMm!.Value);
        }, iter: 120);

    [Fact]
    public void Whole_steps_taken_too_far_are_undone()
    {
        var angles = Cone.Form.FoldAngles.ToArray();
        angles[2] -= 3 * Step.Radians;
        angles[6] -= 2 * Step.Radians;
        var found = CorrectionSearch.Find(Cone.Form with { FoldAngles = angles }, Cone.Form, Rules() with { Closing = Angle.FromDegrees(0.1), VertexMm = 0.05 });
        Assert.Equal([new FoldCorrection(2, 3), new FoldCorrection(6, 2)], found.Folds);
        Within(1e-9, 0, found.MissMm!.Value);
    }

    // Folds of a cone lie aslant to one another: too far at one and as much too little at another leaves the sum, not the lead-out's plane.
    [Fact]
    public void Errors_that_cancel_in_the_sum_still_twist_the_lead_out_of_a_cone()
    {
        var cone = FormOf(TaperJobs.Plan(TaperJobs.Cone(60, 160, 300, 90), new() { Folds = 9 })).Form;
        var angles = cone.FoldAngles.ToArray();
        angles[1] += 2 * Degree;
        angles[7] -= 2 * Degree;
        var off = FormDeviation.Of(cone with { FoldAngles = angles }, cone);
        // To first order by hand: 2° about the second fold line less 2° about the eighth.
        var shape = cone.Folded();
        var turn = (2 * Degree * shape.LineOf(1)) - (2 * Degree * shape.LineOf(7));
        var line = shape.LineOf(8);
        Within(0.1 * Degree, turn.Dot(line), off.Closing.Radians);
        Within(0.1 * Degree, turn.Dot(shape.Inward(9).Cross(line)), off.Twist!.Value.Radians);
        Assert.True(Math.Abs(off.Twist.Value.Degrees) > 0.3);
    }

    // Fold 3 is 2° too far: its own mold line stays, the facet after it ends inside by its width at each end times sin 2°.
    [Fact]
    public void A_fold_too_far_leaves_the_curve_by_each_end_s_own_facet()
    {
        var angles = Cone.Form.FoldAngles.ToArray();
        angles[2] += 2 * Degree;
        var off = FormDeviation.Of(Cone.Form with { FoldAngles = angles }, Cone.Form);
        Within(1e-9, 0, Math.Max(off.Ends[0].Misses[2].Held.Length, off.Ends[1].Misses[2].Held.Length));
        foreach (var (end, place) in off.Ends.Zip([0, 1]))
        {
            var wide = Cone.Form.SectionAt(place).FlatsMm[3];
            Near(2 * wide * Math.Sin(1 * Degree), end.Misses[3].Held.Length, 1e-3);
        }

        Assert.Equal(3, off.DepartureBeyond(0.3)!.Facet);
        Assert.True(off.DepartureBeyond(0.3)!.IsInside);
        Assert.True(off.LargestFittedMm < off.LargestHeldMm);
    }

    // Templates of the form as it really is, in any frame: angles come back to a share of what is off.
    [Fact]
    public void Templates_at_both_ends_give_the_folds_and_the_facets_at_each() =>
        Gen.Select(Gen.Double[-1, 1].Array[9], Gen.Double[-0.5, 0.5].Array[16], Gen.Double[-3, 3], Gen.Double[-200, 200]).ForAll((errors, shifts, turn, x) =>
        {
            double[] near = Cone.Form.FlatsMm(isFar: false), far = Cone.Form.FlatsMm(isFar: true);
            var real = Cone.Form.WithFacets(
                [.. Enumerable.Range(1, 8).Select(j => near[j] + shifts[j - 1])], [.. Enumerable.Range(1, 8).Select(j => far[j] + shifts[j + 7])]) with
            {
                FoldAngles = [.. Cone.Form.FoldAngles.Select((angle, i) => angle + (errors[i] * Degree))],
            };
            var built = Cone.Built(
                new() { Points = Moved(Template(real, isFar: false), turn, x), Far = new() { Points = Moved(Template(real, isFar: true), -turn, 7) } }, Fold).Form;
            for (var i = 0; i < 9; i++)
                Within(0.05 * Degree, real.FoldAngles[i], built.FoldAngles[i]);
            foreach (var (expected, found) in real.FlatsMm(false).Concat(real.FlatsMm(true)).Zip(built.FlatsMm(false).Concat(built.FlatsMm(true))))
                Within(0.02, expected, found);
        }, iter: 30);

    // The far end of every line 1 mm on: facets as planned but for the first and the last, and the folds turn about slanting lines.
    [Fact]
    public void Lines_off_at_the_far_end_only_twist_the_form()
    {
        var (near, far) = (Facets(Cone.Near.Listed), Facets(Cone.Far.Listed));
        far[0] += 1;
        var built = Cone.Built(new() { Angles = Angles(Cone), FacetsMm = near, Far = new() { FacetsMm = far } }, Fold);
        var off = FormDeviation.Of(built.Form, Cone.Form);
        Within(1e-9, 0, off.Ends[1].Misses[0].Held.Length);
        Within(0.01, 1, off.Ends[1].Misses[1].Held.Length);
        Within(1e-6, 0, off.Ends[0].Misses[1].Held.Length);
        Assert.True(Math.Abs(off.Skew!.Value.Degrees) > 0.05);
        Assert.Equal(built.Near.FlatsMm, Cone.Near.Listed.FlatsMm);
    }

    [Fact]
    public void What_no_tapered_form_could_give_is_refused_with_its_place()
    {
        Refused("inspection.wrong-count", "measured.angles", new() { Angles = Angles(Cone)[1..] });
        Refused("inspection.wrong-count", "measured.far.facets", new() { Angles = Angles(Cone), Far = new() { FacetsMm = [10, 20] } });
        Refused("inspection.wrong-count", "measured.far.spacings", new() { Angles = Angles(Cone), Far = new() { SpacingsMm = [10, 20] } });
        Refused("inspection.wrong-count", "measured.far.points", new() { Far = new() { Points = Template(Cone.Form, true)[1..] } });
        Refused("inspection.facet-too-short", "measured.far.facets[0]", new() { Angles = Angles(Cone), Far = new() { FacetsMm = [.. Enumerable.Repeat(0.1, 8)] } });
        var points = Template(Cone.Form, isFar: true);
        points[4] = points[3];
        Refused("inspection.parallel-lines", "measured.far.points[4]", new() { Far = new() { Points = points } });

        static void Refused(string code, string subject, Measurement measured)
        {
            var none = Assert.Throws<NoSolutionException>(() => Cone.Built(measured, Fold));
            Assert.Equal((code, subject), (none.Code, none.Subject));
        }
    }

    [Fact]
    public void Templates_that_disagree_are_hard_to_believe()
    {
        var other = Cone.Form with { FoldAngles = [.. Cone.Form.FoldAngles.Select((angle, i) => angle + (i == 4 ? 3 * Degree : 0))] };
        var measured = new Measurement { Points = Template(Cone.Form, isFar: false), Far = new() { Points = Template(other, isFar: true) } };
        Assert.Contains(Suspicions.Of(measured, Cone.Built(measured, Fold), Cone), suspect => suspect.Code == "ends-differ");
    }

    [Fact]
    public void A_panel_off_a_cone_folded_too_far_comes_off_tighter()
    {
        var plan = TaperJobs.Plan(TaperJobs.Cone(70, 110, 520, 80));
        var form = FormOf(plan);
        var report = InspectionReport.Of(new()
        {
            Planned = form.Near.Listed,
            Taper = form,
            Fold = new(2, 2, plan.Form.NeutralFactor),
            Measured = new() { Angles = [.. form.Form.FoldAngles.Select(angle => new Angle(1.05 * angle))] },
            Rules = Rules(),
            Ends = SteppingEnds.Half,
            Panel = TaperJobs.Panel(TaperJobs.Cone(70, 110, 520, 80)),
        });
        Assert.Null(report.Panel.WhyNot);
        var (before, after) = (report.Panel.Planned!.Shape!, report.Panel.AsBuilt!.Shape!);
        Assert.True(after.Sweep > before.Sweep);
        Assert.Equal(report.Panel.Planned.LeverMm, report.Panel.AsBuilt.LeverMm);
        Assert.True(report.Off.Closing > Angle.Zero);
    }

    private static readonly TaperedForm Few = FormOf(TaperJobs.Plan(TaperJobs.Cone(60, 120, 300, 40), new() { Folds = 4 }));

    private static TaperedForm FormOf(Forming.Plans.FormPlan plan) => TaperedForm.Of(plan, TaperJobs.Form.LeadInMm, TaperJobs.Form.LeadOutMm);

    private static CorrectionRules Rules() => new(Step, CorrectionDirection.CloseOnly, 4, Angle.FromDegrees(1), 0.8);

    private static Angle[] Angles(TaperedForm form) => [.. form.Form.FoldAngles.Select(angle => new Angle(angle))];

    private static double[] Facets(FoldedPolygon form) => [.. form.FlatsMm.Skip(1).Take(form.Folds - 1)];

    // Three points a flat along the edge, in the plane that the edge lies in best.
    private static Point[][] Template(HingedForm form, bool isFar)
    {
        var seen = new TemplateEdge(form, isFar).Planned;
        return [.. seen.Zip(seen.Skip(1), (from, to) => Enumerable.Range(1, 3).Select(i => from + (0.25 * i * (to - from))).ToArray())];
    }

    private static Point[][] Moved(Point[][] points, double turn, double x) =>
        [.. points.Select(flat => flat.Select(point => new Point(x, 3) + point.TurnedTo(Point.Along(turn))).ToArray())];
}
