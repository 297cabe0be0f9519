using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>The part in the brake at one angle of a fold, for a picture.</summary>
/// <param name="Back">[n] mid surface behind the fold, from it outwards [mm].</param>
/// <param name="Front">[n] mid surface in front of the fold, from it outwards [mm].</param>
/// <param name="Jaws">Outlines of the tools.</param>
public sealed record PartInJaws(
    IReadOnlyList<Point> Back, IReadOnlyList<Point> Front, IReadOnlyList<(JawKind Kind, IReadOnlyList<Point> Outline)> Jaws);

/// <summary>The part in the brake with one fold at an angle: mid surface of both sides, in the upper jaw's frame.</summary>
internal sealed class PartPose
{
    private readonly PartSide _back;
    private readonly PartSide _front;

    /// <summary>Room for the poses of a fold.</summary>
    public PartPose(PartSide back, PartSide front)
    {
        (_back, _front) = (back, front);
        Back = new Point[back.Points.Length];
        Front = new Point[front.Points.Length];
    }

    /// <summary>Room for the poses of a fold with some others made already.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="made">The folds made before.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="edgeInFront">The edge towards the operator.</param>
    public static PartPose Of(BrakeTools tools, FoldSet made, int fold, PartEdge edgeInFront) => new(
        PartSide.Of(tools.Part, made, fold, edgeInFront == PartEdge.End ? PartEdge.Start : PartEdge.End),
        PartSide.Of(tools.Part, made, fold, edgeInFront));

    /// <summary>[n + 1] mid surface behind the fold, from it outwards [mm].</summary>
    public Point[] Back { get; }

    /// <summary>[n + 1] mid surface in front of the fold, from it outwards [mm].</summary>
    public Point[] Front { get; }

    /// <summary>Puts the part where it is at an angle of the fold.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public void Set(BrakeTools tools, int fold, double turn)
    {
        var (behind, ahead) = tools.Swings(turn);
        Side(_front.Points, Front, tools, fold, turn, ahead, 1);
        Side(_back.Points, Back, tools, fold, turn, behind, -1);
    }

    /// <summary>Points of the mid surface within the fold under way, from the back to the front.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public static IEnumerable<Point> FoldAt(BrakeTools tools, int fold, double turn)
    {
        var (behind, _) = tools.Swings(turn);
        var count = (int)Math.Ceiling(turn / PartSide.Coarse);
        var below = new Point(0, -tools.Part.Shape.ThicknessMm / 2);
        for (var i = 1; i < count; i++)
        {
            var along = Point.Along((turn * i / count) - behind);
            yield return (tools.MidRadius(fold, turn) * new Point(along.Y, 1 - along.X)) + below;
        }
    }

    private static void Side(Point[] from, Point[] to, BrakeTools tools, int fold, double turn, double swing, double mirror)
    {
        var along = Point.Along(swing);
        // A fold hardly begun is flat: its arc is its neutral length. The leaf's fold lies in front of the tangent line, the press's on
        // both sides.
        var share = turn > 0 ? swing / turn : tools.BothSwing ? 0.5 : mirror > 0 ? 1 : 0;
        Point shift;
        if (turn < 1e-9)
        {
            shift = new(share * tools.Part.Allowance(fold), 0);
        }
        else
        {
            var radius = tools.MidRadius(fold, turn);
            shift = radius * new Point(along.Y, 1 - along.X);
        }

        shift += new Point(0, -tools.Part.Shape.ThicknessMm / 2);
        for (var i = 0; i < from.Length; i++)
        {
            var p = from[i].TurnedTo(along) + shift;
            to[i] = new(mirror * p.X, p.Y);
        }
    }
}
