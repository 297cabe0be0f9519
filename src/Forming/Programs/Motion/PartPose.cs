using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>The part in the brake at one angle of a fold, in section, for a picture.</summary>
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

    /// <summary>[n] points of the side behind the fold, from it outwards [mm].</summary>
    public Point[] Back { get; }

    /// <summary>[n] points of the side in front of the fold, from it outwards [mm].</summary>
    public Point[] Front { get; }

    /// <summary>Puts the part where it is at an angle of the fold.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public void Set(BrakeTools tools, int fold, double turn)
    {
        Carry(_front.Points, Front, tools, fold, turn, isFront: true);
        Carry(_back.Points, Back, tools, fold, turn, isFront: false);
    }

    /// <summary>
    /// Mid surface of one side in section, from the fold outwards; of a taper at the fold's middle, as far as it is unbroken.
    /// </summary>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    /// <param name="isFront">Whether of the side in front.</param>
    public Point[] Drawn(BrakeTools tools, int fold, double turn, bool isFront)
    {
        var side = isFront ? _front : _back;
        var from = side.InSpace is { } space ? space.CutAt(tools.Part.LengthOf(fold) / 2)[0].Points : side.Points;
        var drawn = new Point[from.Length];
        Carry(from, drawn, tools, fold, turn, isFront);
        return drawn;
    }

    /// <summary>Carries points of one side to where they are at an angle of the fold.</summary>
    /// <param name="from">[n] the points as the side has them [mm].</param>
    /// <param name="to">[n] where they go [mm].</param>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    /// <param name="isFront">Whether it is the side in front.</param>
    public static void Carry(Point[] from, Point[] to, BrakeTools tools, int fold, double turn, bool isFront)
    {
        var (behind, ahead) = tools.Swings(turn);
        if (isFront)
            Side(from, to, tools, fold, turn, ahead, 1);
        else
            Side(from, to, tools, fold, turn, behind, -1);
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
