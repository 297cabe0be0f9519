namespace Forming.Drawing.Shapes;

/// <summary>The folded form: folds as arcs where they are parallel, sharp at the mold lines of a taper.</summary>
internal static class FormShape
{
    /// <summary>No piece of a fold's arc turns by more than this [rad].</summary>
    private const double ArcStep = Math.PI / 36;

    /// <summary>The form in space.</summary>
    /// <param name="job">The job.</param>
    public static RuledSheet Of(DrawingJob job) => job.Plan.Taper is { Solid: var solid }
        ? RuledSheet.Inside(solid.FormNear, solid.FormFar, job.Form.Sheet.ThicknessMm)
        : RuledSheet.Of(Section(job), job.Plan.Form.Blank.WidthMm);

    private static Ribbon Section(DrawingJob job)
    {
        var profile = job.Plan.Form.Section.InsideProfile;
        double radius = job.Form.FoldRadiusMm, thickness = job.Form.Sheet.ThicknessMm;
        List<Point> inner = [], outer = [];
        var turn = 0.0;
        Face(profile[0], turn);
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

        Face(profile[^1], turn);
        return new(inner, outer);

        void Face(Point inside, double heading)
        {
            inner.Add(inside);
            outer.Add(inside - (thickness * Point.Along(heading).Left()));
        }
    }
}
