namespace Forming.Drawing.Shapes;

/// <summary>The folded form in section, folds as arcs.</summary>
internal static class FormShape
{
    /// <summary>No piece of a fold's arc turns by more than this [rad].</summary>
    private const double ArcStep = Math.PI / 36;

    /// <summary>The form as a bent sheet.</summary>
    /// <param name="job">The job.</param>
    /// <param name="leadInMm">How much of the lead-in to show, to the first tangent line; null for all [mm].</param>
    /// <param name="leadOutMm">How much of the lead-out to show, from the last tangent line; null for all [mm].</param>
    public static Ribbon Of(DrawingJob job, double? leadInMm = null, double? leadOutMm = null)
    {
        var profile = job.Plan.Form.Section.InsideProfile;
        double radius = job.Form.FoldRadiusMm, thickness = job.Form.Sheet.ThicknessMm;
        List<Point> inner = [], outer = [];
        var turn = 0.0;
        Face(leadInMm is { } shown ? profile[1] - new Point(shown, 0) : profile[0], turn);
        for (var j = 0; j < job.Plan.Form.Stations.Count; j++)
        {
            var centre = profile[(2 * j) + 1] + (radius * Point.Along(turn).Left());
            var end = job.Plan.Form.Stations[j].RunningAngle.Radians;
            var steps = Math.Max(1, (int)Math.Ceiling((end - turn) / ArcStep));
            for (var i = 0; i <= steps; i++)
            {
                var along = turn + ((end - turn) * i / steps);
                Face(centre - (radius * Point.Along(along).Left()), along);
            }

            turn = end;
        }

        Face(leadOutMm is { } far ? profile[^2] + (far * Point.Along(turn)) : profile[^1], turn);
        return new(inner, outer);

        void Face(Point inside, double heading)
        {
            inner.Add(inside);
            outer.Add(inside - (thickness * Point.Along(heading).Left()));
        }
    }
}
