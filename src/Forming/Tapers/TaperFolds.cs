using Forming.Folds;

namespace Forming.Tapers;

/// <summary>The folds of a tapered form: every facet a plane, every fold the line where neighbouring planes meet.</summary>
/// <remarks>
/// Axis j is the ruling at phi_j moved to <c>X - (t/2 + r + tf) N</c>. A facet's plane goes through the middle of its four axis
/// ends, its normal the cross product of their diagonals; lead planes go through the end axis and the edge's tangent. Exact for
/// right cones and equal ends; otherwise the planes miss the axis ends by the cube of the fold angle.
/// </remarks>
internal sealed class TaperFolds
{
    private Plane[] _planes;

    private TaperFolds(FormedPanel formed, double[] turns, double endTurn, FoldShape fold, double panelThickness)
    {
        Turns = turns;
        EndTurn = endTurn;
        var count = turns.Length;
        Point3[] axisNear = new Point3[count], axisFar = new Point3[count];
        var depth = (panelThickness / 2) + fold.OuterRadiusMm;
        for (var j = 0; j < count; j++)
        {
            var triad = formed.TriadAt(turns[j]);
            axisNear[j] = formed.NearAt(turns[j]) - (depth * triad.N);
            axisFar[j] = axisNear[j] + (formed.Panel.At(turns[j]).Length * triad.E);
        }

        LeadIn = EdgeTangent(formed, 0);
        LeadOut = EdgeTangent(formed, endTurn);
        _planes = PlanesThrough(formed, axisNear, axisFar, LeadIn, LeadOut, turns);
        Near = new Point3[count];
        Far = new Point3[count];
        Angles = new double[count];
        for (var j = 0; j < count; j++)
        {
            Plane before = _planes[j], after = _planes[j + 1];
            Near[j] = before.FootOnMeetingLine(after, axisNear[j]);
            Far[j] = before.FootOnMeetingLine(after, axisFar[j]);
            var cross = before.Normal.Cross(after.Normal);
            Angles[j] = Math.Atan2(cross.Length, before.Normal.Dot(after.Normal));
            if (cross.Dot(axisFar[j] - axisNear[j]) < 0)
                Angles[j] = -Angles[j];
            var triad = formed.TriadAt(turns[j]);
            foreach (var miss in (Span<Point3>)[Near[j] - axisNear[j], Far[j] - axisFar[j]])
            {
                TouchMissMm = Math.Max(TouchMissMm, Math.Abs(miss.Dot(triad.N)));
                LineShiftMm = Math.Max(LineShiftMm, Math.Abs(miss.Dot(triad.M)));
            }

            foreach (var end in (Span<Point3>)[axisNear[j], axisFar[j]])
                FacetFlatnessMm = Math.Max(FacetFlatnessMm, Math.Max(FlatnessOf(j, end), FlatnessOf(j + 1, end)));
        }

        Lengths = new double[count];
        for (var j = 0; j < count; j++)
        {
            Lengths[j] = (Far[j] - Near[j]).Length;
            if (j > 0)
                LargestLineAngle = new(Math.Max(LargestLineAngle.Radians, Between(j - 1, j)));
        }

        double Between(int i, int j)
        {
            Point3 a = Far[i] - Near[i], b = Far[j] - Near[j];
            return Math.Atan2(a.Cross(b).Length, a.Dot(b));
        }

        double FlatnessOf(int facet, Point3 end) => facet == 0 || facet == count ? 0 : Math.Abs(_planes[facet].Distance(end));
    }

    /// <summary>[m] tangent angles of the folds' rulings [rad].</summary>
    public double[] Turns { get; }

    /// <summary>[m] near ends of the fold lines, on the folds' axes [mm].</summary>
    public Point3[] Near { get; private set; }

    /// <summary>[m] far ends of the fold lines [mm].</summary>
    public Point3[] Far { get; private set; }

    /// <summary>[m] dihedral fold angles [rad].</summary>
    public double[] Angles { get; private set; }

    /// <summary>Tangent angle at which the lead-out leaves [rad].</summary>
    public double EndTurn { get; }

    /// <summary>Tangent of the near edge along the lead-in.</summary>
    public Point3 LeadIn { get; }

    /// <summary>Tangent of the near edge along the lead-out.</summary>
    public Point3 LeadOut { get; private set; }

    /// <summary>[m] lengths of the fold lines [mm].</summary>
    public double[] Lengths { get; }

    /// <summary>Largest angle between neighbouring fold lines.</summary>
    public Angle LargestLineAngle { get; }

    /// <summary>Planes of the lead-in, the facets and the lead-out: [m + 1].</summary>
    public IReadOnlyList<Plane> Planes => _planes;

    /// <summary>Largest distance of an axis end from its facet's plane [mm].</summary>
    public double FacetFlatnessMm { get; }

    /// <summary>Largest miss of a fold line from its ruling, square to the sheet [mm].</summary>
    public double TouchMissMm { get; }

    /// <summary>Largest shift of a fold line from its ruling, along the sheet [mm].</summary>
    public double LineShiftMm { get; }

    /// <summary>The folds at given rulings.</summary>
    /// <param name="formed">The panel on the form.</param>
    /// <param name="turns">[m] tangent angles of the folds' rulings [rad].</param>
    /// <param name="endTurn">Tangent angle at which the lead-out leaves [rad].</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="panelThickness">The panel's thickness [mm].</param>
    public static TaperFolds Through(FormedPanel formed, double[] turns, double endTurn, FoldShape fold, double panelThickness) =>
        new(formed, turns, endTurn, fold, panelThickness);

    /// <summary>Straight width of the facet after a fold, from fold line to fold line at one end [mm].</summary>
    /// <param name="index">Index of the fold.</param>
    /// <param name="isFar">Whether at the far end.</param>
    public double Straight(int index, bool isFar)
    {
        var ends = isFar ? Far : Near;
        return (ends[index + 1] - ends[index]).Length;
    }

    /// <summary>The edge's tangent on the form.</summary>
    /// <param name="formed">The panel on the form.</param>
    /// <param name="turn">Tangent angle in the finished panel [rad].</param>
    public static Point3 EdgeTangent(FormedPanel formed, double turn)
    {
        var (sin, cos) = Math.SinCos(formed.Panel.At(turn).EdgeAngle);
        var triad = turn == 0 ? formed.LeadIn : turn == formed.Panel.Sweep ? formed.LeadOut : formed.TriadAt(turn);
        return triad.Vector(cos, sin, 0);
    }

    /// <summary>The same plane facets with other fold angles: the lead-in stays, the rest turns about the fold lines.</summary>
    /// <param name="angles">[m] dihedral fold angles [rad].</param>
    public TaperFolds WithAngles(double[] angles)
    {
        Point3[] near = [.. Near], far = [.. Far];
        Plane[] planes = [.. _planes];
        var leadOut = LeadOut;
        for (var j = 0; j < angles.Length; j++)
        {
            var (origin, axis) = (near[j], (far[j] - near[j]).Unit());
            var (sin, cos) = Math.SinCos(angles[j] - Angles[j]);
            for (var k = j + 1; k < planes.Length; k++)
                planes[k] = new(About(planes[k].Through), Turned(planes[k].Normal));
            for (var k = j + 1; k < near.Length; k++)
                (near[k], far[k]) = (About(near[k]), About(far[k]));
            leadOut = Turned(leadOut);

            Point3 About(Point3 point) => origin + Turned(point - origin);

            Point3 Turned(Point3 vector) => (cos * vector) + (sin * axis.Cross(vector)) + ((1 - cos) * axis.Dot(vector) * axis);
        }

        var turned = (TaperFolds)MemberwiseClone();
        (turned.Near, turned.Far, turned.Angles, turned.LeadOut, turned._planes) = (near, far, angles, leadOut, planes);
        return turned;
    }

    /// <summary>Straight width of the facet after a fold, square to its folds at a place along them [mm].</summary>
    /// <param name="index">Index of the fold.</param>
    /// <param name="place">The place, near end 0, far end 1.</param>
    /// <remarks>As the chord of a strip about the point where both fold lines meet.</remarks>
    public double StraightAt(int index, double place)
    {
        Point3 line = Line(index), next = Line(index + 1);
        var across = On(index + 1) - On(index);
        var heading = (line + next).Unit();
        return (across - (across.Dot(heading) * heading)).Length;

        Point3 Line(int j) => (Far[j] - Near[j]).Unit();

        Point3 On(int j) => Near[j] + (place * (Far[j] - Near[j]));
    }

    private static Plane[] PlanesThrough(
        FormedPanel formed, Point3[] near, Point3[] far, Point3 startTangent, Point3 endTangent, double[] turns)
    {
        var count = near.Length;
        var planes = new Plane[count + 1];
        planes[0] = Oriented(near[0], (far[0] - near[0]).Cross(startTangent), turns[0]);
        for (var j = 1; j < count; j++)
        {
            var middle = 0.25 * (near[j - 1] + far[j - 1] + near[j] + far[j]);
            planes[j] = Oriented(middle, (far[j] - near[j - 1]).Cross(near[j] - far[j - 1]), (turns[j - 1] + turns[j]) / 2);
        }

        planes[count] = Oriented(near[^1], (far[^1] - near[^1]).Cross(endTangent), turns[^1]);
        return planes;

        Plane Oriented(Point3 through, Point3 normal, double turn)
        {
            var unit = normal.Unit();
            return new(through, unit.Dot(formed.TriadAt(turn).N) < 0 ? -1 * unit : unit);
        }
    }
}
