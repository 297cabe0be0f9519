using Forming.Drawing.Shapes;
using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Drawing.Blocks;

/// <summary>The brake in section at the end of a step's swing.</summary>
internal static class StepPicture
{
    /// <summary>An edge's flat longer than this share of all between is cut short, so that the folds stay large.</summary>
    private const double MostEdge = 0.8;

    private const double LeastEdgeMm = 150;

    /// <summary>The picture of a step.</summary>
    /// <param name="job">The program.</param>
    /// <param name="step">The step.</param>
    public static BrakePicture Of(ProgramJob job, ProgramStep step)
    {
        var thickness = job.Part.Shape.ThicknessMm;
        var most = Math.Max(LeastEdgeMm, MostEdge * job.Part.StraightsMm[1..^1].Sum());
        var placed = job.Program.At(step, step.StopAngle);
        var (back, isBehindCut) = CutShort(placed.Back, most);
        var (front, isFrontCut) = CutShort(placed.Front, most);
        var ribbon = Ribbon.About([.. back.Reverse(), .. front], thickness);
        // The stop moves with an edge that is cut short.
        Point? stop = step.Gauge.By == GaugedBy.Mark
            ? null
            : new Point(isBehindCut ? back.Min(point => point.X) : ReferenceMm(job) - step.Gauge.DistanceMm, -thickness);
        return new(
            ribbon,
            [.. placed.Jaws.Select(jaw => Grooved(job, jaw.Kind, jaw.Outline))],
            stop,
            job.Brake.StopHeightMm,
            (isBehindCut, isFrontCut));
    }

    private static double ReferenceMm(ProgramJob job) => job.Press is null ? job.Part.Shape.RadiusMm : 0;

    private static (IReadOnlyList<Point> Side, bool IsCut) CutShort(IReadOnlyList<Point> side, double most)
    {
        var edge = side[^1] - side[^2];
        return edge.Length <= most
            ? (side, false)
            : ([.. side.SkipLast(1), side[^2] + (most / edge.Length * edge)], true);
    }

    // Clearance needs no groove in the die; an eye does.
    private static IReadOnlyList<Point> Grooved(ProgramJob job, JawKind kind, IReadOnlyList<Point> outline)
    {
        if (kind != JawKind.Die || job.Press is not { } press)
            return outline;
        const double mostOfHeight = 0.8;
        double left = outline.Min(p => p.X), right = outline.Max(p => p.X), low = outline.Min(p => p.Y), high = outline.Max(p => p.Y);
        var half = press.DieOpeningFor(job.Part.Shape.ThicknessMm) / 2;
        var foot = high - Math.Min(half, mostOfHeight * (high - low));
        return [new(left, low), new(right, low), new(right, high), new(half, high), new(0, foot), new(-half, high), new(left, high)];
    }
}
