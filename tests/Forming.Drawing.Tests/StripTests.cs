using System.Xml.Linq;
using Forming.Drawing.Blocks;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;
using Forming.Drawing.Svg;
using Forming.Layout;

namespace Forming.Drawing.Tests;

/// <summary>The part in a brake, and the strip of small sections.</summary>
public class StripTests
{
    private static readonly FoldShape Shape = new(2, 2, 0.33);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Faces_lie_a_thickness_apart_and_the_fold_keeps_its_neutral_length(bool bothTurn)
    {
        var turn = Angle.FromDegrees(37).Radians;
        var allowance = Shape.BendAllowance(Angle.FromDegrees(30).Radians);
        var part = PartInBrake.Of(Shape, Made(4), Made(3), allowance, turn, bothTurn);
        Assert.All(part.Inner.Zip(part.Outer), faces => Assert.Equal(2, (faces.First - faces.Second).Length, 1e-9));
        // What is clamped, or pressed by the punch, touches y = 0 with its inside face and lies t above the tool below.
        Assert.Contains(part.Inner, point => Math.Abs(point.Y) < 1e-9);
        Assert.Equal(-2, part.Outer.Min(point => point.Y), 1e-9);
        var neutral = allowance / turn;
        Assert.Equal(neutral - (0.33 * 2), Curvature(part.Inner), 1e-3);
    }

    [Fact]
    public void A_leaf_brake_leaves_the_clamped_side_flat_and_turns_the_front()
    {
        var part = PartInBrake.Of(Shape, [new(100, 0)], [new(50, 0)], 1.3, Math.PI / 6, bothTurn: false);
        Assert.Equal(new Point(-100, 0), part.Inner[0]);
        var front = part.Inner[^1] - part.Inner[^2];
        Assert.Equal(30, Math.Atan2(front.Y, front.X) * 180 / Math.PI, 1e-9);
        Assert.Equal(50, front.Length, 1e-9);
    }

    [Fact]
    public void A_press_brake_turns_both_sides_by_half()
    {
        var part = PartInBrake.Of(Shape, [new(100, 0)], [new(100, 0)], 1.3, Math.PI / 6, bothTurn: true);
        Assert.All(part.Inner.Zip(part.Inner.Reverse()), pair => Assert.Equal(pair.First.X, -pair.Second.X, 1e-9));
        var front = part.Inner[^1] - part.Inner[^2];
        Assert.Equal(15, Math.Atan2(front.Y, front.X) * 180 / Math.PI, 1e-9);
    }

    [Fact]
    public void Hatching_stays_inside_and_fills_evenly()
    {
        Point[] hollow = [new(0, 0), new(40, 0), new(40, 30), new(30, 30), new(30, 10), new(10, 10), new(10, 30), new(0, 30)];
        var lines = Hatch.Of(hollow, 1, new(-5, -5), new(50, 50)).ToArray();
        Assert.All(lines, line =>
        {
            var middle = 0.5 * (line.Start + line.End);
            Assert.True(middle.Y < 10 || middle.X < 10 || middle.X > 30, middle.ToString());
        });
        // Lines a unit apart: their whole length is the area.
        Assert.Equal(800, lines.Sum(line => (line.End - line.Start).Length), 20.0);
        Assert.All(Hatch.Of(hollow, 1, new(5, 5), new(15, 15)), line => Assert.InRange(line.Start.X, 5, 15));
    }

    [Fact]
    public void Strip_is_the_one_that_was_looked_at_and_no_word_lies_on_another()
    {
        var sheet = SheetComposer.Stacked(StripBlocks.Of("Handling", "One picture for every handling of the part, at the end of its last swing.", Frames()));
        var text = new SvgText();
        text.Open(Page.Width, sheet.HeightMm, "Strip", "Handling");
        text.Add(sheet.Items);
        text.Close();
        Golden.Matches("strip.svg", text.ToString());
        var boxes = XDocument.Parse(text.ToString()).Descendants(XName.Get("text", "http://www.w3.org/2000/svg")).Select(TextBox.Of).ToArray();
        for (var i = 0; i < boxes.Length; i++)
            Assert.DoesNotContain(boxes.Skip(i + 1), boxes[i].Overlaps);
        Assert.All(sheet.Items.OfType<Stroke>().SelectMany(stroke => stroke.Points), point => Assert.InRange(point.X, -0.01, Page.Width + 0.01));
    }

    // Flats of 20 mm between folds of 16°.
    private static IEnumerable<PartPiece> Made(int folds)
    {
        for (var i = 0; i < folds; i++)
        {
            yield return new(20, 0);
            yield return new(0, Angle.FromDegrees(16).Radians);
        }

        yield return new(70, 0);
    }

    private static double Curvature(IReadOnlyList<Point> face)
    {
        // The fold under way is the one run of points about the lowest place of the inside face.
        var least = double.PositiveInfinity;
        for (var i = 1; i + 1 < face.Count; i++)
        {
            Point a = face[i - 1], b = face[i], c = face[i + 1];
            var cross = (b - a).Cross(c - b);
            if (Math.Abs(cross) < 1e-12 || Math.Abs((b - a).Length - (c - b).Length) > 1e-9)
                continue;
            least = Math.Min(least, (b - a).Length * (c - b).Length * (c - a).Length / (2 * cross));
        }

        return least;
    }

    private static IReadOnlyList<StripFrame> Frames()
    {
        var stop = Angle.FromDegrees(20).Radians;
        var allowance = Shape.BendAllowance(Angle.FromDegrees(16).Radians);
        var leaf = PartInBrake.Of(Shape, [new(240, 0)], Made(5), allowance, stop, bothTurn: false);
        var press = PartInBrake.Of(Shape, Made(4), Made(7), allowance, stop, bothTurn: true);
        Point[] beam = [new(2, 0), new(2, 0.8), new(50, 50), new(50, 120), new(-110, 120), new(-110, 20), new(-70, 0)];
        Point[] bed = [new(-120, -2), new(0, -2), new(0, -202), new(-120, -202)];
        Point[] swung = [new(2, -2), new(90, -2), new(90, -42), new(2, -42)];
        Point[] punch = [new(0, 0), new(8, 14), new(8, 110), new(-8, 110), new(-8, 14)];
        Point[] ram = [new(-40, 180), new(40, 180), new(40, 580), new(-40, 580)];
        Point[] holder = [new(-25, 110), new(25, 110), new(25, 180), new(-25, 180)];
        Point[] die = [new(-20, -4), new(-6, -4), new(0, -10), new(6, -4), new(20, -4), new(20, -64), new(-20, -64)];
        return
        [
            new("1  flat to the gauge, folds 1 to 6", ["fold 6 at stop 20.00°, gauged on the end edge, flat", "gauge 242.00 mm"], new(leaf, [beam, bed, Turned(swung, stop)], new(-240, -2), 25, (false, false))),
            new("2  turn end for end, folds 7 to 12", ["fold 12 at stop 20.00°, gauged over folded part from the start edge", "gauge 180.00 mm"], new(press, [punch, holder, ram, die], null, 25, (true, false))),
            new("3  re-enter, fold 13", ["fold 13 at stop 20.00°"], new(leaf, [beam, bed, Turned(swung, stop)], new(-240, -2), 25, (true, true))),
        ];
    }

    private static Point[] Turned(IEnumerable<Point> points, double by) =>
        [.. points.Select(point => new Point((Math.Cos(by) * point.X) - (Math.Sin(by) * point.Y), (Math.Sin(by) * point.X) + (Math.Cos(by) * point.Y)))];
}
