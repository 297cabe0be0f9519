using CsCheck;
using Forming.Curves;
using Forming.Jobs;
using Forming.Plans;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
using Forming.Springback;
using Forming.Tests.Tapers;
using NetTopologySuite.Geometries;

namespace Forming.Tests.Programs;

/// <summary>Programs of forms whose fold lines are not parallel.</summary>
public class TaperProgramTests
{
    private static readonly ProgramBrake[] Brakes = [Parts.Leaf, Parts.Press];

    // Chords (0.0038 of the mid radius) and the proof's 0.02.
    private const double Slack = 0.05;

    private const double SectionEveryMm = 10;

    private static readonly Gen<PanelCurve> Tapers = Gen.Select(
        Gen.Double[70, 140], Gen.Double[0.6, 1.6], Gen.Double[200, 420], Gen.Double[45, 100], Gen.Double[-40, 40], Gen.Double[-30, 30])
        .Select((near, wider, length, sweep, x, y) => (PanelCurve)new TaperCurve(
            TaperJobs.Arc(near, sweep), TaperJobs.Arc(near * wider, sweep), length, TaperPlacement.Offset, new(x, y + (near * (1 - wider)))));

    // Half ends, measured factor k: tan p_i = k tan p, a = Φ sin p/(m - 1) sin p_i, and lines lie 2 asin(sin p_i sin(a/2)) from each other.
    [Theory]
    [InlineData(60, 120, 400, 0.8)]
    [InlineData(120, 80, 300, 0.7)]
    [Trait("Category", "Long")]
    public void A_right_cone_is_swung_by_the_same_angle_about_its_apex_at_every_step(double near, double far, double height, double factor)
    {
        var part = PartOf(TaperJobs.Cone(near, far, height), new MeasuredFactor(factor));
        var p = Math.Atan((far - near) / height);
        var pi = Math.Atan(Math.Tan(p) * factor);
        var a = Math.PI / 2 * Math.Sin(p) / Math.Sin(pi) / (part.Folds - 1);
        foreach (var brake in Brakes)
        {
            var program = BrakeProgram.Compute(part, brake);
            Assert.Null(program.Steps[0].Swing);
            foreach (var (last, step) in program.Steps.Zip(program.Steps.Skip(1)))
            {
                // Narrow at the near end, the lines spread to the far one: going on to the next fold the part turns the other way round.
                Workshop.Within(1e-7, (last.Fold - step.Fold) * 2 * Math.Asin(Math.Sin(pi) * Math.Sin(a / 2)), step.Swing!.Value.Radians);
            }
        }
    }

    // The part in space before and after a slide differs by a turn, whose share about the vertical is the swing; the leaf's is nothing else.
    [Fact]
    public void The_swing_is_what_brings_the_next_line_under_the_nose()
    {
        var part = PartOf(TaperJobs.Cone(60, 120, 400));
        var tools = Parts.Leaf.ToolsFor(part);
        foreach (var edge in new[] { PartEdge.Start, PartEdge.End })
        {
            var last = new FoldTrial(tools, Parts.Leaf, new(default), default, 4, edge);
            var next = new FoldTrial(tools, Parts.Leaf, new(default), default(FoldSet).With(4), edge == PartEdge.Start ? 5 : 3, edge);
            var move = last.After.MoveTo(next.Before);
            var level = move.TurnTo * move.Axis!.Value.Y;
            Assert.Equal(Math.Abs(move.TurnTo), Math.Abs(level), 9);

            // z runs from the near to the far end: to the left, seen from above, only where the end edge is in front.
            Assert.Equal(edge == PartEdge.End ? level : -level, part.Flat!.Swing(last.Fold, next.Fold).Radians, 9);
        }
    }

    [Fact]
    [Trait("Category", "Long")]
    public void A_taper_of_equal_ends_is_folded_as_the_straight_form()
    {
        var near = 0;
        foreach (var brake in Brakes)
        {
            foreach (var (radius, sweep, leadIn) in new[] { (90.0, 85.0, 60.0), (70, 120, 45), (75, 60, 30) })
            {
                var form = TaperJobs.Form with { LeadInMm = leadIn, LeadOutMm = 70, WidthMm = 400 };
                var (straightPart, taperPart) = (PartOf(TaperJobs.Arc(radius, sweep), form: form), PartOf(TaperJobs.Cone(radius, radius, 400, sweep), form: form));
                var (straight, taper) = (Parts.Program(straightPart, brake), Parts.Program(taperPart, brake));
                Assert.Equal(straight.OrderName, taper.OrderName);
                Assert.Equal(straight.StopGroups.Select(group => (group.Setting, string.Join(',', group.Steps))), taper.StopGroups.Select(group => (group.Setting, string.Join(',', group.Steps))));
                var made = default(FoldSet);
                foreach (var (one, other) in straight.Steps.Zip(taper.Steps, (one, other) => (one, other)))
                {
                    Assert.Equal((one.Fold, one.EdgeInFront, one.Handling, one.StopSetting), (other.Fold, other.EdgeInFront, other.Handling, other.StopSetting));
                    Workshop.Within(1e-6, one.FrontRunMm, other.FrontRunMm);
                    Workshop.Within(1e-6, one.BackRunMm, other.BackRunMm);
                    Workshop.Within(1e-6, one.Load.ForceN ?? one.Load.MomentNmm!.Value, other.Load.ForceN ?? other.Load.MomentNmm!.Value);
                    if (one.Gauge.By == GaugedBy.Flat)
                        Workshop.Within(1e-6, one.Gauge.DistanceMm, other.Gauge.DistanceMm);

                    // How near it comes, past what is plenty too; the least is found to 0.02 mm.
                    var (a, b) = (Trial(straightPart), Trial(taperPart));
                    foreach (var (expected, actual) in new[] { (a.Upper, b.Upper), (a.Lower, b.Lower), (a.Self, b.Self) })
                    {
                        Workshop.Within(0.02, expected.Mm, actual.Mm);
                        Assert.Equal(expected.Nearest, actual.Nearest);
                    }

                    Workshop.Within(1e-3, a.LiftAfter, b.LiftAfter);
                    near += a.Upper.Nearest is null ? 0 : 1;
                    made = made.With(one.Fold - 1);

                    FoldTrial Trial(ProgramPart part) => new(brake.ToolsFor(part), brake with { PlentyMm = 60 }, new(default), made, one.Fold - 1, one.EdgeInFront);
                }
            }
        }

        Assert.True(near > 20, $"{near} steps near a jaw");
    }

    // Past half a turn tools below and the part itself matter too: whole hoops of equal ends, with some folds made, against the straight ones.
    [Fact]
    [Trait("Category", "Long")]
    public void A_taper_of_equal_ends_strikes_what_the_straight_form_strikes()
    {
        var form = TaperJobs.Form with { LeadInMm = 45, LeadOutMm = 90, WidthMm = 300 };
        var (straight, taper) = (PartOf(TaperJobs.Arc(70, 215), form: form), PartOf(TaperJobs.Cone(70, 70, 300, 215), form: form));
        var (clear, struck) = (0, new HashSet<JawKind>());
        foreach (var brake in Brakes)
        {
            Gen.Select(Gen.ULong, Gen.Bool).ForAll(
                (bits, isEnd) =>
                {
                    var fold = (int)(bits % (ulong)straight.Folds);

                    // Mostly made: as few folds left flat as two random ones agree on.
                    var made = new FoldSet(((bits >> 8) | (bits >> 24)) & ((1UL << straight.Folds) - 1)).Without(fold);
                    var (one, other) = (Trial(straight), Trial(taper));
                    Assert.Equal(one.FailedCheck, other.FailedCheck);
                    foreach (var (expected, actual) in new[] { (one.Upper, other.Upper), (one.Lower, other.Lower), (one.Self, other.Self) })
                    {
                        Workshop.Within(0.03, Math.Max(0, expected.Mm), Math.Max(0, actual.Mm));
                        if (expected.Mm <= 0)
                            struck.Add(expected.Nearest!.Value);
                        else if (expected.Nearest is not null)
                            clear++;
                    }

                    FoldTrial Trial(ProgramPart part) => new(brake.ToolsFor(part), brake, new(default), made, fold, isEnd ? PartEdge.End : PartEdge.Start);
                },
                iter: 60);
        }

        Assert.True(clear > 10 && struck.Contains(JawKind.Part) && struck.Contains(JawKind.Beam), $"{clear} clear, struck: {string.Join(", ", struck)}");
    }

    [Fact]
    public void A_section_of_a_taper_is_the_middle_of_the_solid_s_section()
    {
        var compared = 0;
        Gen.Select(Tapers, Gen.ULong, Gen.Bool).ForAll(
            (curve, bits, isEnd) =>
            {
                var part = PartOf(curve);
                var (fold, edge) = ((int)(bits % (ulong)part.Folds), isEnd ? PartEdge.End : PartEdge.Start);
                var made = new FoldSet((bits >> 8) & ((1UL << part.Folds) - 1)).Without(fold);
                var side = TaperSide.Of(part, made, fold, edge, PartSide.Fine);
                var solid = SolidTaper.PastRuns(part, Enumerable.Range(0, part.Folds).Where(made.Has).ToHashSet(), fold, edge).Front;
                for (var along = -15.0; along < part.LengthOf(fold) + 20; along += 30)
                {
                    var pieces = new GeometryFactory().BuildGeometry([.. SolidTaper.Cut(solid, along).Select(piece => new GeometryFactory().CreatePolygon(piece))]);
                    foreach (var piece in side.CutAt(along))
                    {
                        for (var i = piece.RunEnd; i + 1 < piece.Points.Length; i++)
                        {
                            var middle = 0.5 * (piece.Points[i] + piece.Points[i + 1]);
                            var across = 0.5 * part.Shape.ThicknessMm / (piece.Points[i + 1] - piece.Points[i]).Length * (piece.Points[i + 1] - piece.Points[i]).Left();

                            // In from either face it is metal, out of it not; seen square to the fold an inclined sheet is a little thicker.
                            Assert.True(To(middle + (0.97 * across)) < 0.01 && To(middle - (0.97 * across)) < 0.01, $"{curve} {fold} {along}");
                            compared++;
                        }
                    }

                    double To(Point point) => pieces.Distance(new NetTopologySuite.Geometries.Point(point.X, point.Y - (part.Shape.ThicknessMm / 2)));
                }
            },
            iter: 6);
        Assert.True(compared > 500, $"{compared} stretches compared");
    }

    [Fact]
    [Trait("Category", "Long")]
    public void No_section_of_the_solid_taper_is_nearer_than_its_program_says()
    {
        var (replayed, near) = (0, 0);
        Tapers.ForAll(
            curve =>
            {
                var part = PartOf(curve);
                foreach (var brake in Brakes.Select(brake => brake with { PlentyMm = 30 }))
                {
                    var program = BrakeProgram.Compute(part, brake);
                    Assert.NotNull(program.OrderName);
                    var tools = brake.ToolsFor(part);
                    var jaws = SolidPart.Jaws(tools.Upper);
                    HashSet<int> made = [];
                    foreach (var step in program.Steps)
                    {
                        if (made.Count > 0)
                        {
                            var (least, wander) = Replayed(part, brake, made, step, jaws);
                            Assert.True(least >= step.Clearance.Mm - Slack, $"fold {step.Fold}: {least} where {step.Clearance.Mm} is said");

                            // Nearest things lie between two sections, and slanting edges read low by half a thickness at most.
                            if (step.Clearance.Nearest is not null)
                            {
                                near++;
                                Assert.True(least <= step.Clearance.Mm + (part.Shape.ThicknessMm / 2) + wander + Slack, $"fold {step.Fold}: {least} where {step.Clearance.Mm} is said");
                            }
                        }

                        made.Add(step.Fold - 1);
                    }

                    replayed++;
                }
            },
            iter: 3);
        Assert.True(replayed >= 6 && near > 6, $"{replayed} replayed, {near} steps near a jaw");
    }

    // Sections every 10 mm over everything that reaches past the fold's ends, too; what a fold line wanders from one to the next.
    private static (double Least, double WanderMm) Replayed(ProgramPart part, ProgramBrake brake, ISet<int> made, ProgramStep step, Geometry jaws)
    {
        const int Turns = 16;
        var fold = step.Fold - 1;
        var (front, back) = SolidTaper.PastRuns(part, made, fold, step.EdgeInFront);
        var corners = front.Concat(back).SelectMany(slab => slab.Corners).ToArray();
        var (low, high) = (corners.Min(corner => corner.Z), corners.Max(corner => corner.Z));
        var end = step.StopAngle.Radians + brake.OverTravel.Radians;
        double[] turns = [.. Enumerable.Range(0, Turns + 1).Select(i => Math.Max(1e-6, end * i / Turns)), Math.Max(1e-6, step.Clearance.AtAngle.Radians)];
        var isPress = brake is PressBrake;
        var least = brake.PlentyMm + part.Shape.ThicknessMm;
        for (var along = Math.Ceiling(low / SectionEveryMm) * SectionEveryMm; along <= high; along += SectionEveryMm)
        {
            var (ahead, behind) = (SolidTaper.Cut(front, along).ToArray(), SolidTaper.Cut(back, along).ToArray());
            foreach (var turn in turns)
            {
                least = SolidTaper.Apart(ahead, part, fold, (isPress ? turn / 2 : turn, turn, 1), jaws, least);
                least = SolidTaper.Apart(behind, part, fold, (isPress ? turn / 2 : 0, turn, -1), jaws, least);
            }
        }

        var slope = Enumerable.Range(0, part.Folds).Max(other => Math.Abs(Math.Tan(part.Flat!.Swing(fold, other).Radians)));
        return (least, SectionEveryMm * slope);
    }

    [Fact]
    public void The_two_marks_of_a_fold_are_those_of_its_sight_line_and_at_a_punch_those_of_its_centre_line()
    {
        var job = JobOf(TaperJobs.Cone(60, 120, 400));
        var plan = FormPlan.Compute(job, _ => false);
        var part = ProgramPart.Of(plan, job);
        foreach (var step in BrakeProgram.Compute(part, Parts.Press).Steps)
        {
            var line = plan.Form.Stations[step.Fold - 1].Line!;
            Workshop.Within(1e-9, line.BaseNearMm, step.Gauge.Marks!.Near.Mm);
            Workshop.Within(1e-9, line.BaseFarMm, step.Gauge.Marks.Far.Mm);
            Assert.Equal(line.MarkFar.Text, step.Gauge.Marks.Far.Text);
        }

        foreach (var step in BrakeProgram.Compute(part, Parts.Leaf).Steps)
        {
            var (station, marks) = (plan.Form.Stations[step.Fold - 1], step.Gauge.Marks!);
            Assert.Equal((GaugedBy.Mark, false), (step.Gauge.By, step.Gauge.IsInRange));

            // The nose lies a fold radius in front of the tangent line on the side that is clamped.
            var line = station.Line!;
            var tangent = step.EdgeInFront == PartEdge.End ? (line.FirstTangentNear, line.FirstTangentFar) : (line.SecondTangentNear, line.SecondTangentFar);
            Point near = new(marks.Near.Mm, 0), far = new(marks.Far.Mm, plan.Form.Blank.WidthMm);
            foreach (var end in (Point[])[tangent.Item1, tangent.Item2])
                Workshop.Within(1e-9, step.EdgeInFront == PartEdge.End ? 2 : -2, (far - near).Cross(end - near) / (far - near).Length);
            if (step.EdgeInFront == PartEdge.End)
                Workshop.Within(1e-9, station.SightLineMm, marks.Near.Mm);
        }
    }

    // Every fold made, the part is the plan's form again: its fold lines lie as the planes of its facets meet.
    [Fact]
    public void A_taper_folded_at_the_brake_is_the_planned_form()
    {
        var job = JobOf(new TaperCurve(TaperJobs.Arc(80, 70), TaperJobs.Arc(120, 70), 300, TaperPlacement.Offset, new(15, -30)));
        var plan = FormPlan.Compute(job, _ => false);
        var part = ProgramPart.Of(plan, job);
        for (var fold = 0; fold < part.Folds; fold++)
        {
            var side = TaperSide.Of(part, FoldSet.All(part.Folds).Without(fold), fold, PartEdge.End, PartSide.Coarse);

            // Contact-side mold lines of the plan, against those of the part: past a made fold its flats, moved down to the outer face, meet there.
            var mold = Molds(part, side, fold).ToArray();
            var wanted = plan.Taper!.Solid;
            for (var i = 0; i < mold.Length; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    Workshop.Within(1e-6, (wanted.FormNear[fold + 2 + i] - wanted.FormFar[fold + 2 + j]).Length, (mold[i].Near - mold[j].Far).Length);
                    Workshop.Within(1e-6, (wanted.FormNear[fold + 2 + i] - wanted.FormNear[fold + 2 + j]).Length, (mold[i].Near - mold[j].Near).Length);
                }
            }
        }
    }

    private static IEnumerable<(Point3 Near, Point3 Far)> Molds(ProgramPart part, TaperSide side, int fold)
    {
        var at = 0;
        for (var next = fold + 1; next < part.Folds; next++)
        {
            // The entering line of a made fold, then its chords; the plane before it holds the line before.
            var count = (int)Math.Ceiling(part.FoldAngles[next] / PartSide.Coarse);
            var (before, enter, exit) = (side.Lines[at], side.Lines[at + 1], side.Lines[at + 1 + count]);
            var line = (enter.Far - enter.Near).Unit();
            var inwards = before.Near - enter.Near;
            var outwards = -1 * (inwards - (inwards.Dot(line) * line)).Unit();
            var down = outwards.Cross(line).Y < 0 ? outwards.Cross(line) : line.Cross(outwards);
            if (down.Dot(exit.Near - enter.Near) > 0)
                down = -1 * down;
            var setback = part.Shape.Setback(part.FoldAngles[next]);
            var half = part.Shape.ThicknessMm / 2;
            yield return (enter.Near + (half * down) + (setback * outwards), enter.Far + (half * down) + (setback * outwards));
            at += 1 + count;
        }
    }

    [Fact]
    public void A_flange_too_short_at_one_end_only_cannot_be_folded()
    {
        var part = PartOf(TaperJobs.Cone(40, 120, 300), form: TaperJobs.Form with { Stepping = new() { Folds = 12 } });
        var narrow = BrakeProgram.Compute(part, Parts.Leaf with { MinRunMm = 12, MinLandMm = 2 });
        Assert.True(narrow.Impossible!.IsProven);
        Assert.All(narrow.Impossible.Folds.Skip(1).SkipLast(1), fold => Assert.Equal("front-run", fold.Check));
        var told = BrakeProgram.Compute(part, Parts.Leaf with { MinRunMm = 2, MinLandMm = 2 });
        Assert.Contains(told.Checks, check => check.Id == "front-run" && FormattableString.Invariant(check.Text).EndsWith("at its near end", StringComparison.Ordinal));
    }

    [Fact]
    public void A_fold_of_a_taper_is_loaded_by_its_own_length()
    {
        var job = JobOf(new TaperCurve(TaperJobs.Arc(80, 70), TaperJobs.Arc(120, 70), 300, TaperPlacement.Offset, new(60, 30)));
        var plan = FormPlan.Compute(job, _ => false);
        var program = BrakeProgram.Compute(ProgramPart.Of(plan, job), Parts.Press);
        Assert.All(program.Steps, step =>
            Workshop.Near(plan.Form.Stations[step.Fold - 1].Line!.LengthMm, step.Load.ForceN!.Value / FoldLoad.AirBendForceN(FoldLoad.AirBend, TaperJobs.Form.Sheet.Material.UltimateMpa, 1, 2, 12), 1e-9));
        Assert.True(program.Steps.Max(step => step.Load.ForceN) > program.Steps.Min(step => step.Load.ForceN) + 1);
    }

    private static FormJob JobOf(PanelCurve curve, SpringbackChoice? springback = null, FormSpec? form = null) => new(
        TaperJobs.Panel(curve) with { Springback = springback ?? new PureBending() }, form ?? TaperJobs.Form, new BrakeSpec { LengthMm = 1250 }, TaperJobs.Marks);

    private static ProgramPart PartOf(PanelCurve curve, SpringbackChoice? springback = null, FormSpec? form = null)
    {
        var job = JobOf(curve, springback, form);
        return ProgramPart.Of(FormPlan.Compute(job, _ => false), job);
    }
}
