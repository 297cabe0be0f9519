using Forming.Checks;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>One fold at the brake.</summary>
public sealed record ProgramStep
{
    /// <summary>Number of the step, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Number of the fold, from 1 at the start edge.</summary>
    public required int Fold { get; init; }

    /// <summary>The edge towards the operator.</summary>
    public required PartEdge EdgeInFront { get; init; }

    /// <summary>How the part is moved to the fold.</summary>
    public required Handling Handling { get; init; }

    /// <summary>What that costs, in pushes.</summary>
    public required int HandlingCost { get; init; }

    /// <summary>The edge behind, which is gauged.</summary>
    public required PartEdge GaugedEdge { get; init; }

    /// <summary>How it is placed.</summary>
    public required Gauging Gauge { get; init; }

    /// <summary>Fold angle after springback.</summary>
    public required Angle FoldAngle { get; init; }

    /// <summary>Exact angle under load.</summary>
    public required Angle StopAngle { get; init; }

    /// <summary>What the stop is set to, a whole number of its steps.</summary>
    public required Angle StopSetting { get; init; }

    /// <summary>Angle between the flats under load, half a turn less the stop angle.</summary>
    public Angle IncludedAngle => new(Math.PI - StopAngle.Radians);

    /// <summary>How far the fold goes past its angle, to spring back to it.</summary>
    public Angle SpringbackAllowance => new(StopAngle.Radians - FoldAngle.Radians);

    /// <summary>Whether the stop is changed.</summary>
    public required bool IsStopChanged { get; init; }

    /// <summary>How far the ram comes down [mm]; press brakes only.</summary>
    public required double? DepthMm { get; init; }

    /// <summary>What the fold asks of the brake.</summary>
    public required FoldLoad Load { get; init; }

    /// <summary>Least clearance of the folded part.</summary>
    public required Clearance Clearance { get; init; }

    /// <summary>
    /// Of a taper, how far the part is swung level from the last fold's line to this one's: above 0 anticlockwise, seen from above. Null
    /// for the first step, and where the folds are parallel.
    /// </summary>
    public Angle? Swing { get; init; }

    /// <summary>The end of the line that comes towards the operator in that swing, or null.</summary>
    public FoldPlace? EndTowardsOperator => Swing is { } swing ? EndTowards(swing, EdgeInFront) : null;

    /// <summary>
    /// Where along the fold of a taper the part comes nearest; null where nothing is near, and where the folds are parallel.
    /// </summary>
    public FoldPlace? Section { get; init; }

    /// <summary>Flat in front of the fold, at its shorter end [mm].</summary>
    public required double FrontRunMm { get; init; }

    /// <summary>Flat behind the fold, at its shorter end [mm].</summary>
    public required double BackRunMm { get; init; }

    /// <summary>What to do, in words.</summary>
    public required FormattableString Text { get; init; }

    /// <summary>The step's own checks.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    // Seen from above with the marked face up, the far end lies on the left where the end edge is in front.
    internal static FoldPlace EndTowards(Angle swing, PartEdge inFront) =>
        swing.Radians > 0 == (inFront == PartEdge.End) ? FoldPlace.Far : FoldPlace.Near;
}

/// <summary>What places the part for a fold.</summary>
public enum GaugedBy
{
    /// <summary>The flat edge behind lies against the stop.</summary>
    Flat,

    /// <summary>The folded part behind lies against the stop.</summary>
    FoldedPart,

    /// <summary>The pencil mark: the gauge does not reach, or the line of a taper is set by its two marks.</summary>
    Mark,
}

/// <summary>How the part is moved to a fold.</summary>
public enum Handling
{
    /// <summary>The flat blank is laid in.</summary>
    Load,

    /// <summary>Pushed on in the opened brake.</summary>
    Push,

    /// <summary>Drawn out and put in again, the same edge in front.</summary>
    ReEnter,

    /// <summary>Drawn out, turned end for end, put in again.</summary>
    Turn,
}

/// <summary>Steps in a row that share one setting of the stop.</summary>
/// <param name="Setting">What the stop is set to, a whole number of its steps.</param>
/// <param name="Steps">Numbers of the steps.</param>
public sealed record StopGroup(Angle Setting, IReadOnlyList<int> Steps);
