using Forming.Folds;

namespace Forming.Tapers;

/// <summary>A tapered form laid out flat: plane quadrilaterals side by side, a strip of the bend allowance at every fold.</summary>
/// <param name="Folds">[m] the folds, in the sheet frame.</param>
/// <param name="LeadIn">Near and far corner of the lead-in's outer edge [mm].</param>
/// <param name="LeadOut">Near and far corner of the lead-out's outer edge [mm].</param>
/// <param name="LeadInStraightMm">Width of the lead-in square to its fold line [mm].</param>
/// <param name="LeadOutStraightMm">Width of the lead-out square to its fold line [mm].</param>
internal sealed record FlatForm(
    FlatFold[] Folds, (Point Near, Point Far) LeadIn, (Point Near, Point Far) LeadOut, double LeadInStraightMm, double LeadOutStraightMm)
{
    /// <summary>Outline: near trim curve to the lead-out, back along the far one; first = last [mm].</summary>
    public IReadOnlyList<Point> Outline =>
    [
        LeadIn.Near,
        .. Folds.SelectMany(fold => (Point[])[fold.FirstNear, fold.SecondNear]),
        LeadOut.Near,
        LeadOut.Far,
        .. Folds.Reverse().SelectMany(fold => (Point[])[fold.SecondFar, fold.FirstFar]),
        LeadIn.Far,
        LeadIn.Near,
    ];

    /// <summary>Lays the folds out.</summary>
    /// <param name="folds">The folds in space.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="leadInMm">Lead-in, to the first mold line [mm].</param>
    /// <param name="leadOutMm">Lead-out, from the last mold line [mm].</param>
    public static FlatForm Of(TaperFolds folds, FoldShape fold, double leadInMm, double leadOutMm)
    {
        var count = folds.Angles.Length;
        var flats = new FlatFold[count];
        var leadIn = leadInMm - fold.Setback(folds.Angles[0]);
        var leadOut = leadOutMm - fold.Setback(folds.Angles[^1]);
        Point near = default, far = new(0, (folds.Far[0] - folds.Near[0]).Length);
        for (var j = 0; j < count; j++)
        {
            var across = fold.BendAllowance(folds.Angles[j]) * Across(near, far);
            flats[j] = new(near, far, near + across, far + across);
            if (j + 1 == count)
                break;

            // The facet's own plane, from this fold line to the next.
            var line = (folds.Far[j] - folds.Near[j]).Unit();
            var onwards = line.Cross(folds.Planes[j + 1].Normal);
            if (onwards.Dot(folds.Near[j + 1] - folds.Near[j]) < 0)
                onwards = -1 * onwards;
            var (origin, up, right) = (flats[j].SecondNear, Along(near, far), Across(near, far));
            near = InPlane(folds.Near[j + 1]);
            far = InPlane(folds.Far[j + 1]);

            Point InPlane(Point3 point)
            {
                var from = point - folds.Near[j];
                return origin + (from.Dot(line) * up) + (from.Dot(onwards) * right);
            }
        }

        var first = LeadEdge(flats[0].FirstNear, flats[0].FirstFar, folds, 0, folds.LeadIn, -leadIn);
        var last = LeadEdge(flats[^1].SecondNear, flats[^1].SecondFar, folds, count - 1, folds.LeadOut, leadOut);
        return new FlatForm(flats, first, last, leadIn, leadOut).InSheetFrame();
    }

    // The ends of a lead run on along the edge's tangent; its width is square to the fold line.
    private static (Point Near, Point Far) LeadEdge(
        Point near, Point far, TaperFolds folds, int index, Point3 tangent, double width)
    {
        var along = tangent.Dot((folds.Far[index] - folds.Near[index]).Unit());
        var slant = along / Math.Sqrt(1 - (along * along));
        var run = (width * Across(near, far)) + (width * slant * Along(near, far));
        return (near + run, far + run);
    }

    // x along the chord from the first to the last fold's near end, (0, 0) the lower left corner of the bounding rectangle.
    private FlatForm InSheetFrame()
    {
        var heading = Along(Folds[0].Near, Folds[^1].Near);
        var turned = Moved(point => new(heading.Dot(point), heading.Cross(point)));
        var outline = turned.Outline;
        var corner = new Point(outline.Min(point => point.X), outline.Min(point => point.Y));
        return turned.Moved(point => point - corner);
    }

    private FlatForm Moved(Func<Point, Point> move) => this with
    {
        Folds = Array.ConvertAll(Folds, fold => fold.Moved(move)),
        LeadIn = (move(LeadIn.Near), move(LeadIn.Far)),
        LeadOut = (move(LeadOut.Near), move(LeadOut.Far)),
    };

    private static Point Along(Point near, Point far) => 1 / (far - near).Length * (far - near);

    private static Point Across(Point near, Point far) => -1 * Along(near, far).Left();
}

/// <summary>One fold on the flat: a strip as wide as its bend allowance, its sides the tangent lines.</summary>
/// <param name="FirstNear">Near end of the tangent line on the lead-in side [mm].</param>
/// <param name="FirstFar">Far end of it [mm].</param>
/// <param name="SecondNear">Near end of the tangent line on the lead-out side [mm].</param>
/// <param name="SecondFar">Far end of it [mm].</param>
internal readonly record struct FlatFold(Point FirstNear, Point FirstFar, Point SecondNear, Point SecondFar)
{
    /// <summary>Near end of the centre line [mm].</summary>
    public Point Near => 0.5 * (FirstNear + SecondNear);

    /// <summary>Far end of the centre line [mm].</summary>
    public Point Far => 0.5 * (FirstFar + SecondFar);

    /// <summary>The fold moved and turned.</summary>
    /// <param name="move">The motion.</param>
    public FlatFold Moved(Func<Point, Point> move) => new(move(FirstNear), move(FirstFar), move(SecondNear), move(SecondFar));
}
