namespace Forming.Programs.Brakes;

/// <summary>A brake's tools about the fold under way, in the frame in which the upper jaw does not move.</summary>
/// <remarks>x towards the operator, y up; y = 0 is the inside face of the flat sheet. Both brakes share it: the leaf swings the front by
/// the whole angle, the press each side by half of it.</remarks>
internal abstract class BrakeTools(ProgramPart part)
{
    private int? _upperEdges;

    public ProgramPart Part { get; } = part;

    /// <summary>Jaws above the sheet; they do not move.</summary>
    public abstract IReadOnlyList<Jaw> Upper { get; }

    /// <summary>Whether both sides swing.</summary>
    public abstract bool BothSwing { get; }

    /// <summary>
    /// From the tangent line under the nose, or the punch tip, to where the gauge counts from, towards the operator [mm].
    /// </summary>
    public abstract double GaugeReferenceMm { get; }

    /// <summary>Jaws below the sheet at an angle of the fold.</summary>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public abstract IEnumerable<Jaw> Lower(int fold, double turn);

    /// <summary>Jaws below the sheet while the part is moved in the opened brake: what it lies on, and what it must not run into.</summary>
    /// <param name="fold">The fold that was made or is to be made.</param>
    /// <param name="turn">Its angle [rad].</param>
    public abstract IReadOnlyList<Jaw> Beneath(int fold, double turn);

    /// <summary>How fast a lower tool may come, per radian [mm].</summary>
    public abstract double LowerRateMm { get; }

    /// <summary>Shortest run in front, and behind, of a fold [mm].</summary>
    /// <param name="fold">The fold.</param>
    public abstract (double Front, double Back) ShortestRuns(int fold);

    /// <summary>The run that the trade asks for, warned of where it is missed [mm], or null.</summary>
    public abstract double? TradeRunMm { get; }

    /// <summary>How far the ram has come down at an angle [mm], or null where there is none.</summary>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public abstract double? DepthMm(int fold, double turn);

    /// <summary>Edges of the jaws above.</summary>
    public int UpperEdges => _upperEdges ??= EdgesOf(Upper);

    /// <summary>Edges of some jaws.</summary>
    /// <param name="jaws">The jaws.</param>
    public static int EdgesOf(IEnumerable<Jaw> jaws) => jaws.Sum(jaw => jaw.Outline.Length);

    /// <summary>Angles by which the back and the front are swung up.</summary>
    /// <param name="turn">Angle of the fold [rad].</param>
    public (double Back, double Front) Swings(double turn) => BothSwing ? (turn / 2, turn / 2) : (0, turn);

    /// <summary>Radius of the mid surface of the fold under way, which keeps its neutral length [mm].</summary>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad], &gt; 0.</param>
    public double MidRadius(int fold, double turn) =>
        (Part.Allowance(fold) / turn) + ((0.5 - Part.Shape.NeutralFactor) * Part.Shape.ThicknessMm);

    protected static Jaw Block(JawKind kind, double left, double right, double low, double high) =>
        new(kind, [new(left, low), new(right, low), new(right, high), new(left, high)]);

    /// <summary>Points of an arc.</summary>
    protected static IEnumerable<Point> Arc(Point centre, double radius, double from, double to)
    {
        const int Steps = 12;
        for (var i = 0; i <= Steps; i++)
            yield return centre + (radius * Point.Along(from + ((to - from) * i / Steps)));
    }
}
