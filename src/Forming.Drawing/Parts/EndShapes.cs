using Forming.Drawing.Shapes;

namespace Forming.Drawing.Parts;

/// <summary>The finished panel in section, fine enough to cut by: once where folds are parallel, at both ends of a taper.</summary>
internal static class EndShapes
{
    /// <summary>Steps along a smooth piece: a chord of a 5 m arc is then within 0.01 mm of it for a whole radian.</summary>
    private const int StepsPerPiece = 360;

    /// <summary>The sections.</summary>
    /// <param name="job">The job.</param>
    public static IReadOnlyList<(string Name, Ribbon Section)> Finished(DrawingJob job)
    {
        if (job.Plan.Taper is null)
            return [("", PanelShape.Finished(job, StepsPerPiece))];
        var whole = PanelShape.Whole(job);
        var apart = ((Curves.TaperCurve)job.Panel.Curve).LengthMm;
        return [("near end, right", At(whole, 0)), ("far end, left", At(whole, apart))];
    }

    // The end curves lie in two parallel planes, the faces' corners beside them: each ruling is drawn on to the plane.
    private static Ribbon At(RuledSheet sheet, double z)
    {
        return new(Face(sheet.InnerNear, sheet.InnerFar), Face(sheet.OuterNear, sheet.OuterFar));

        Point[] Face(IReadOnlyList<Point3> near, IReadOnlyList<Point3> far) => [.. near.Select((from, i) =>
        {
            var to = far[i];
            var share = (z - from.Z) / (to.Z - from.Z);
            return new Point(from.X + (share * (to.X - from.X)), from.Y + (share * (to.Y - from.Y)));
        })];
    }
}
