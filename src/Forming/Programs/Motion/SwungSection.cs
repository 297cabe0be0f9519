using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>A section of the part square to the fold under way, both sides of it, held against each other.</summary>
/// <remarks>Parallel folds have one. Of a taper there are several, and what happens between them is not proved.</remarks>
internal sealed class SwungSection
{
    /// <summary>Fewest sections of a taper along its fold: near end, middle and far end.</summary>
    public const int Fewest = 3;

    private const int Most = 41;
    private const int Group = 8; // edges in one box, which rules out most that are too far away; no result depends on it

    /// <summary>How far a fold line may go from one section to the next, as a share of the part's reach: assumption.</summary>
    private const double Drift = 0.05;

    private readonly SidePiece _backPiece;
    private readonly SidePiece _frontPiece;
    private readonly Point[] _back;
    private readonly Point[] _front;
    private readonly bool _isPlaced; // by the pose that it shares its points with

    private SwungSection(PartSide back, PartSide front, PartPose pose)
    {
        (_backPiece, _frontPiece, _back, _front) = (new(back.Points, 1), new(front.Points, 1), pose.Back, pose.Front);
        _isPlaced = true;
    }

    private SwungSection(SidePiece back, SidePiece front, double along)
    {
        (_backPiece, _frontPiece, AlongMm) = (back, front, along);
        (_back, _front) = (new Point[back.Points.Length], new Point[front.Points.Length]);
    }

    /// <summary>Where it is, from the near end of the fold; 0 where the folds are parallel [mm].</summary>
    public double AlongMm { get; }

    /// <summary>Pairs of points that it holds against each other.</summary>
    public long Pairs => (long)_back.Length * _front.Length;

    /// <summary>The sections of a part.</summary>
    /// <param name="back">Behind the fold.</param>
    /// <param name="front">In front of it.</param>
    /// <param name="pose">Where both are placed.</param>
    /// <param name="lengthMm">Length of the fold [mm].</param>
    public static IReadOnlyList<SwungSection> Of(PartSide back, PartSide front, PartPose pose, double lengthMm)
    {
        if (back.InSpace is not { } behind || front.InSpace is not { } ahead)
            return [new(back, front, pose)];
        return
        [
            .. from along in PlacesOf(behind, ahead, lengthMm)
               from one in behind.CutAt(along)
               from other in ahead.CutAt(along)
               select new SwungSection(one, other, along),
        ];
    }

    /// <summary>Where sections are looked at: evenly from end to end of the fold, and on past both as far as the part reaches.</summary>
    private static IEnumerable<double> PlacesOf(TaperSide behind, TaperSide ahead, double lengthMm)
    {
        var lines = behind.Lines.Concat(ahead.Lines).ToArray();
        double reach = 0, drift = 0, low = 0, high = lengthMm;
        foreach (var (near, far) in lines.Select(line => (line.Near, line.Far)))
        {
            var (across, size) = (far - near, Math.Max(Reach(near), Reach(far)));
            (reach, drift) = (Math.Max(reach, size), Math.Max(drift, Reach(across)));
            (low, high) = (Math.Min(low, Math.Min(near.Z, far.Z)), Math.Max(high, Math.Max(near.Z, far.Z)));
        }

        var gaps = (int)Math.Clamp(Math.Ceiling(drift / (Drift * reach)), Fewest - 1, Most - 1);
        var gap = lengthMm / gaps;
        var (before, after) = ((int)Math.Min(Most, -low / gap), (int)Math.Min(Most, (high - lengthMm) / gap));
        return Enumerable.Range(-before, before + gaps + after + 1).Select(i => gap * i);

        static double Reach(Point3 point) => Math.Sqrt((point.X * point.X) + (point.Y * point.Y));
    }

    /// <summary>Puts the section where it is at an angle of the fold.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public void Set(BrakeTools tools, int fold, double turn)
    {
        if (_isPlaced)
            return;
        PartPose.Carry(_frontPiece.Points, _front, tools, fold, turn, isFront: true);
        PartPose.Carry(_backPiece.Points, _back, tools, fold, turn, isFront: false);
    }

    /// <summary>Least distance of both sides' mid surfaces at an angle of the fold [mm].</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="fold">The fold.</param>
    /// <param name="turn">Its angle [rad].</param>
    public double LeastAt(BrakeTools tools, int fold, double turn)
    {
        Set(tools, fold, turn);
        var least = new Nearest(double.PositiveInfinity, tools.Part.Shape.ThicknessMm);
        MeetItself(ref least);
        return least.Mm;
    }

    /// <summary>Holds both sides against each other.</summary>
    /// <param name="least">The least distance so far.</param>
    // Each side is stiff: only the two can meet. The edges are asked first, then whole groups of chords are passed over.
    public void MeetItself(ref Nearest least)
    {
        if (_frontPiece.IsFolded || _backPiece.IsFolded)
            Meet(_front.Length - 2, _back.Length - 2, ref least);
        for (var group = 0; group + 1 < _back.Length; group += Group)
        {
            var last = Math.Min(group + Group, _back.Length - 1);
            var box = Box.Of(_back.AsSpan(group, last - group + 1));
            for (var i = 0; i + 1 < _front.Length; i++)
            {
                if (box.DistanceTo(_front[i], _front[i + 1]) >= least.Enough)
                    continue;
                for (var j = group; j < last; j++)
                {
                    if (i >= _frontPiece.RunEnd || j >= _backPiece.RunEnd)
                        Meet(i, j, ref least);
                }
            }
        }
    }

    private void Meet(int i, int j, ref Nearest least)
    {
        var distance = Distance.Between(_front[i], _front[i + 1], _back[j], _back[j + 1]);
        if (distance >= least.Enough)
            return;
        if (distance <= 0 || (i + 2 < _front.Length && j + 2 < _back.Length))
        {
            least.Meet(distance, JawKind.Part);
            return;
        }

        // Cut edges are square: the stretch they end is held as its outline, any other as its mid surface.
        var half = least.Taken / 2;
        var (one, oneHalf) = Outline(_front, i, half);
        var (other, otherHalf) = Outline(_back, j, half);
        foreach (var (a, b) in one)
        {
            foreach (var (c, d) in other)
                least.MeetSolid(Distance.Between(a, b, c, d) - oneHalf - otherHalf, JawKind.Part);
        }
    }

    private static ((Point From, Point To)[] Lines, double Half) Outline(Point[] placed, int at, double half) => at + 2 < placed.Length
        ? ([(placed[at], placed[at + 1])], half)
        : (Distance.SquareEnd(placed[at], placed[at + 1], half), 0);
}
