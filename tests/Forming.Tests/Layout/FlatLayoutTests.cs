using CsCheck;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;

namespace Forming.Tests.Layout;

/// <summary>The flat form blank: what is marked on it folds into the section.</summary>
public class FlatLayoutTests
{
    private static readonly PanelSpec Panel = Workshop.Panel(Workshop.Progressive(60, 150, 100, ProgressiveLaw.Clothoid));
    private static readonly FormSpec Form = Workshop.Form() with { LeadInMm = 47, LeadOutMm = 71 };
    private static readonly MarkSpec Fine = new(Datum.Edge, new Tape(LengthUnit.Mm, 0.5));

    private static readonly Gen<(PanelSpec Panel, FormSpec Form)> Jobs = Gen.Select(
        Gen.Double[40, 120], Gen.Double[0.4, 4], Gen.Double[20, 200], Gen.Enum<ProgressiveLaw>(), Gen.Enum<SteppingRule>(), Gen.Enum<SteppingEnds>(),
        Gen.Double[0.8, 3], Gen.Int[2, 24])
        .Select((radius, opening, sweep, law, rule, ends, thickness, folds) => (
            Workshop.Panel(Workshop.Progressive(radius, radius * opening, sweep, law)),
            Workshop.Form(new() { Rule = rule, Ends = ends, Folds = folds + (int)(sweep / 60) + 1 }) with
            {
                Sheet = new(Workshop.Of("steel-cr-cs"), thickness),
                FoldRadiusMm = thickness,
            }));

    [Fact]
    public void The_flat_blank_folds_into_the_section_vertex_by_vertex() =>
        Jobs.ForAll(
            (panel, form) =>
            {
                var plan = Workshop.Plan(panel, form);
                Assert.InRange(plan.Form.FoldBackMissMm, 0, 1e-6);
                var folded = Refolded(plan, form);
                var vertices = plan.Form.Section.Vertices;
                Assert.Equal(vertices.Count, folded.Count);
                for (var i = 0; i < folded.Count; i++)
                    Workshop.Within(1e-6, 0, (folded[i] - vertices[i]).Length);
            },
            iter: 150);

    [Fact]
    public void A_chain_with_flats_folds_into_its_section_too()
    {
        var chain = new SegmentsCurve([Workshop.Arc(60, 40), new FlatCurve(45), Workshop.Progressive(80, 50, 35, ProgressiveLaw.Involute)]);
        foreach (var ends in Enum.GetValues<SteppingEnds>())
        {
            var form = Workshop.Form(new() { Ends = ends });
            var plan = Workshop.Plan(Workshop.Panel(chain), form);
            var folded = Refolded(plan, form);
            for (var i = 0; i < folded.Count; i++)
                Workshop.Within(1e-6, 0, (folded[i] - plan.Form.Section.Vertices[i]).Length);
        }
    }

    [Fact]
    public void Chords_lay_out_to_the_same_blank_as_mold_lines_less_deductions() =>
        Jobs.ForAll(
            (panel, form) =>
            {
                var plan = Workshop.Plan(panel, form);
                var fold = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, plan.Form.NeutralFactor);
                var vertices = plan.Form.Section.Vertices;
                double molds = 0, deductions = plan.Form.Stations.Sum(station => fold.Deduction(station.FoldAngle.Radians));
                for (var i = 1; i < vertices.Count; i++)
                    molds += (vertices[i] - vertices[i - 1]).Length;
                Workshop.Within(1e-6, molds - deductions, plan.Form.Blank.LengthMm);

                var facets = plan.Form.Stations.SkipLast(1).Sum(station => station.FacetAfterMm);
                Workshop.Within(1e-6, form.LeadInMm + facets + form.LeadOutMm - deductions, plan.Form.Blank.LengthMm);
            },
            iter: 100);

    [Fact]
    public void Each_station_has_its_tangent_lines_half_an_allowance_away_and_its_sight_line_one_fold_radius_in()
    {
        var plan = Workshop.Plan(Panel, Form);
        var fold = new FoldShape(Form.FoldRadiusMm, Form.Sheet.ThicknessMm, plan.Form.NeutralFactor);
        var running = 0.0;
        foreach (var station in plan.Form.Stations)
        {
            var half = fold.BendAllowance(station.FoldAngle.Radians) / 2;
            Workshop.Within(1e-9, station.AtMm - half, station.FirstTangentMm);
            Workshop.Within(1e-9, station.AtMm + half, station.SecondTangentMm);
            Workshop.Within(1e-9, station.FirstTangentMm + Form.FoldRadiusMm, station.SightLineMm);
            running += station.FoldAngle.Radians;
            Workshop.Within(1e-12, running, station.RunningAngle.Radians);
        }

        Workshop.Within(1e-9, Form.LeadInMm - fold.Setback(plan.Form.Stations[0].FoldAngle.Radians), plan.Form.Stations[0].FirstTangentMm);
        Workshop.Within(
            1e-9, plan.Form.Blank.LengthMm - Form.LeadOutMm + fold.Setback(plan.Form.Stations[^1].FoldAngle.Radians), plan.Form.Stations[^1].SecondTangentMm);
    }

    [Fact]
    public void Marks_from_the_far_edge_and_from_the_centre_are_the_same_places()
    {
        var edge = Workshop.Plan(Panel, Form, marks: Fine).Form;
        var far = Workshop.Plan(Panel, Form, marks: Fine with { Datum = Datum.FarEdge }).Form;
        var centre = Workshop.Plan(Panel, Form, marks: Fine with { Datum = Datum.Centre }).Form;
        var length = edge.Blank.LengthMm;
        for (var i = 0; i < edge.Stations.Count; i++)
        {
            Workshop.Within(1e-9, length - edge.Stations[i].AtMm, far.Stations[i].AtMm);
            Workshop.Within(1e-9, edge.Stations[i].AtMm - (length / 2), centre.Stations[i].AtMm);
            Workshop.Within(1e-9, length - edge.Stations[i].SightLineMm, far.Stations[i].SightLineMm);
        }

        Assert.True(centre.Stations[0].AtMm < 0);
        Assert.StartsWith("-", centre.Stations[0].MarkText, StringComparison.Ordinal);
        Assert.True(centre.Stations[^1].AtMm > 0);
    }

    [Fact]
    public void A_symmetric_form_has_symmetric_marks_about_its_centre_line()
    {
        var form = Workshop.Form();
        var stations = Workshop.Plan(Workshop.Panel(Workshop.Arc(90, 90)), form, marks: Fine with { Datum = Datum.Centre }).Form.Stations;
        for (var i = 0; i < stations.Count; i++)
            Workshop.Within(1e-8, -stations[i].AtMm, stations[^(i + 1)].AtMm);
    }

    [Fact]
    public void Inch_marks_are_the_nearest_64th_of_each_place()
    {
        var tape = new Tape(LengthUnit.In, 1.0 / 64);
        var plan = Workshop.Plan(Panel, Form, marks: new(Datum.Edge, tape)).Form;
        Assert.All(plan.Stations, station => Assert.Equal(TapeReading.Of(station.AtMm, tape).Text, station.MarkText));
        Assert.All(plan.Stations, station => Assert.Matches(@"^\d+( \d+/(2|4|8|16|32|64))?$", station.MarkText));
    }

    [Theory]
    [InlineData(LengthUnit.Mm, 0.5)]
    [InlineData(LengthUnit.Mm, 1)]
    [InlineData(LengthUnit.In, 0.015625)]
    [InlineData(LengthUnit.In, 0.0625)]
    public void Rounding_is_at_most_half_a_step_at_every_mark_and_never_adds_up(LengthUnit unit, double resolution)
    {
        var tape = new Tape(unit, resolution);
        var plan = Workshop.Plan(Panel, Workshop.Form(new() { Folds = 40 }), Workshop.Brake with { MinFacetMm = 1 }, new(Datum.Edge, tape)).Form;
        Assert.All(plan.Stations, station => Workshop.Within((tape.ResolutionMm / 2) + 1e-9, station.AtMm, station.MarkMm));
        Workshop.Within(1e-12, plan.Stations.Max(station => Math.Abs(station.MarkMm - station.AtMm)), plan.LargestRoundingMm);
    }

    [Fact]
    public void A_neutral_line_in_the_middle_would_make_the_blank_longer_by_what_the_plan_says()
    {
        var published = Workshop.Plan(Panel, Form);
        var middle = Workshop.Plan(Panel, Form with { NeutralFactor = 0.5 });
        Workshop.Within(1e-9, middle.Form.Blank.LengthMm - published.Form.Blank.LengthMm, published.Form.BlankAtMidNeutralMm);
        Assert.True(published.Form.BlankAtMidNeutralMm > 0.25);
        Assert.Contains(published.ShopNotes, note => note.Id == "neutral-factor");
        Assert.DoesNotContain(middle.ShopNotes, note => note.Id == "neutral-factor");
    }

    [Fact]
    public void The_inside_profile_lies_one_form_thickness_inside_the_contact_side()
    {
        var plan = Workshop.Plan(Panel, Form);
        var (outside, inside) = (plan.Form.Section.Vertices, plan.Form.Section.InsideProfile);
        Assert.Equal((2 * plan.Form.Stations.Count) + 2, inside.Count);
        for (var i = 1; i < outside.Count; i++)
        {
            var along = outside[i] - outside[i - 1];
            var normal = (1 / along.Length * along).Left();
            foreach (var point in new[] { inside[(2 * i) - 2], inside[(2 * i) - 1] })
                Workshop.Within(1e-9, Form.Sheet.ThicknessMm, (point - outside[i - 1]).Dot(normal));
        }
    }

    // Walks the neutral line from the datum edge by the stations alone: straights straight, folds as arcs about the centre r + K t away.
    // The contact side lies (1 - K) t outside it; mold lines are where neighbouring contact sides meet.
    private static List<Point> Refolded(FormPlan plan, FormSpec form)
    {
        var factor = plan.Form.NeutralFactor;
        var neutral = form.FoldRadiusMm + (factor * form.Sheet.ThicknessMm);
        var toContact = (1 - factor) * form.Sheet.ThicknessMm;
        var start = plan.Form.Section.Vertices[0];
        var position = start + new Point(0, toContact);
        double turn = 0, along = 0;
        List<Point> vertices = [start];
        var (onFace, heading) = (start, new Point(1, 0));
        foreach (var station in plan.Form.Stations)
        {
            position += (station.FirstTangentMm - along) * heading;
            var arc = station.SecondTangentMm - station.FirstTangentMm;
            var centre = position + (neutral * heading.Left());
            turn += arc / neutral;
            var next = new Point(Math.Cos(turn), Math.Sin(turn));
            position = centre - (neutral * next.Left());
            var onNextFace = position - (toContact * next.Left());
            var reach = (onNextFace - onFace).Cross(next) / heading.Cross(next);
            vertices.Add(onFace + (reach * heading));
            (onFace, heading, along) = (onNextFace, next, station.SecondTangentMm);
        }

        position += (plan.Form.Blank.LengthMm - along) * heading;
        vertices.Add(position - (toContact * heading.Left()));
        return vertices;
    }
}
