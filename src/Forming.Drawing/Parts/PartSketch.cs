using Forming.Drawing.Sheets;

namespace Forming.Drawing.Parts;

/// <summary>What every 1:1 picture of a part shows beside the part.</summary>
internal static class PartSketch
{
    private const double TextMm = 2.6;

    /// <summary>The pen of a line.</summary>
    /// <param name="role">What the line is for.</param>
    public static Pen PenOf(LineRole role) => role switch
    {
        LineRole.Outline => Pen.Outline,
        LineRole.Fold => Pen.Fold,
        LineRole.Tangent => Pen.Tangent,
        LineRole.Sight => Pen.Sight,
        LineRole.Mark => Pen.Mark,
        LineRole.Stock => Pen.Centre,
        _ => Pen.Leader,
    };

    /// <summary>Draws the kinds of line that a part has, in a row.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="part">The part.</param>
    /// <param name="at">Left end of the row's baseline [mm].</param>
    public static void Legend(Sketch sketch, FlatPart part, Point at)
    {
        foreach (var role in part.Lines.Select(line => line.Role).Distinct().Order())
        {
            var name = role switch
            {
                LineRole.Outline => part.RunsDown ? "edge" : "cut",
                LineRole.Fold => "fold: mark this",
                LineRole.Tangent => "bend begins, ends",
                LineRole.Sight => "sight line: under the nose",
                LineRole.Mark => "registration mark",
                LineRole.Stock => "sheet to cut it from",
                _ => "",
            };
            if (name.Length == 0)
                continue;
            sketch.Line(PenOf(role), at - new Point(0, 0.9), at + new Point(10, -0.9));
            sketch.Write(at.X + 11.5, at.Y, name, TextMm);
            at += new Point(11.5 + Typeface.Regular.Width(name, TextMm) + 6, 0);
        }
    }

    /// <summary>Side of the square to measure [mm].</summary>
    /// <param name="job">The job.</param>
    public static double SquareMm(DrawingJob job) => job.Units == LengthUnit.In ? 4 * UnitFactors.InchMm : 100;

    /// <summary>Draws the square to measure.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="job">The job.</param>
    /// <param name="at">Its upper left corner [mm].</param>
    public static void Square(Sketch sketch, DrawingJob job, Point at)
    {
        var side = SquareMm(job);
        var words = $"measure {Side(job)}";
        sketch.Rectangle(Pen.Fold, at, at + new Point(side, side));
        sketch.Write(at.X + (side / 2), at.Y + side - 2, words, TextMm, Anchor.Middle);
        sketch.Write(new Label(at + new Point(2 + TextMm, side / 2), words, TextMm, Anchor.Middle, TurnDegrees: -90));
    }

    /// <summary>How long that side is.</summary>
    /// <param name="job">The job.</param>
    public static string Side(DrawingJob job) => job.Units == LengthUnit.In ? "4 in" : "100 mm";
}
