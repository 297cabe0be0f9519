using Forming.Jobs;
using Forming.Materials;
using Forming.Pulling;
using Forming.Springback;

namespace Forming.Prediction;

/// <summary>A bare form as an elastic beam, clamped at its lead-in and loaded by what its folds carry.</summary>
/// <param name="StiffnessPerWidth">Bending stiffness of the form per width of the panel [N·mm²/mm], &gt; 0.</param>
/// <param name="ThicknessMm">Thickness of its sheet [mm], &gt; 0.</param>
/// <param name="FirstYieldPerWidth">Moment at which its sheet begins to yield, per width of the form [N·mm/mm], &gt; 0.</param>
/// <param name="WidthShare">Width of the form over that of the panel, &gt; 0.</param>
public sealed record FormBeam(double StiffnessPerWidth, double ThicknessMm, double FirstYieldPerWidth, double WidthShare = 1)
{
    /// <summary>The form of a job as a beam.</summary>
    /// <param name="job">The job.</param>
    /// <returns>The beam; null where ribs keep the form from bending.</returns>
    public static FormBeam? Of(FormJob job) => Of(job.Form.Backing, job.Form.Sheet, job.Form.WidthMm, job.Panel.WidthMm);

    /// <summary>A form as a beam.</summary>
    /// <param name="backing">What supports it.</param>
    /// <param name="sheet">Its sheet.</param>
    /// <param name="formWidthMm">Its width [mm], &gt; 0.</param>
    /// <param name="panelWidthMm">Width of the panel on it [mm], &gt; 0.</param>
    /// <returns>The beam; null where ribs keep the form from bending.</returns>
    public static FormBeam? Of(FormBacking backing, Sheet sheet, double formWidthMm, double panelWidthMm)
    {
        if (backing == FormBacking.Ribs)
            return null;
        var law = BendingLaw.Of(sheet);
        var share = formWidthMm / panelWidthMm;
        return new(law.Stiffness * share, sheet.ThicknessMm, law.FirstYieldMoment, share);
    }

    /// <summary>How far the form gives where it stands so.</summary>
    /// <param name="state">How it stands.</param>
    public FormGive GiveOf(FormState state) => new(
        state.Turn,
        state.MomentPerWidth / WidthShare,
        FirstYieldPerWidth,
        state.Turn.Radians > 0 ? state.ClampTurn.Radians / state.Turn.Radians : 0);
}

/// <summary>How a bare form stands under the forces on its folds.</summary>
/// <param name="Turn">How far its end has turned.</param>
/// <param name="ClampTurn">How much of that comes from the stretch between the clamp and the first fold.</param>
/// <param name="MomentPerWidth">Largest moment that it carries, per width of the panel [N·mm/mm].</param>
public readonly record struct FormState(Angle Turn, Angle ClampTurn, double MomentPerWidth);

/// <summary>
/// How the folds of a bare form move under the forces on them: small deflections of a beam that is bent at the folds and straight between.
/// </summary>
/// <remarks>
/// A force P on fold k bends the form by <c>M = (C_k - x) × P</c> at every place x before it, and that turns fold i about x. So fold i
/// moves by <c>∫ L_i (L_k·P) ds/E'I</c> up to the nearer of the two, L the lever turned left: the same both ways round (Maxwell).
/// </remarks>
internal sealed class FormFlexure
{
    // Two Gauss points are exact on straights, where the levers' products are quadratic, and nearly so on a fold's half.
    private static readonly double[] GaussPoints = [0.21132486540518713, 0.78867513459481287];

    private readonly double _stiffness;
    private readonly Point[] _centres;
    private readonly List<(double Length, Point Place)> _axis = [];
    private readonly int[] _ends; // how much of the axis lies before each fold
    private readonly Point _clamp;
    private readonly int _clamped; // how much of it lies between clamp and first fold
    private readonly Sums[] _sums;

    /// <summary>Lays the beam out.</summary>
    /// <param name="form">The form.</param>
    /// <param name="beam">Its stiffness and thickness.</param>
    /// <param name="centres">[m + 1] fold centres, unloaded, and the place on the lead-out [mm].</param>
    /// <param name="clampGapMm">Clamp behind the first fold's tangent point [mm].</param>
    public FormFlexure(StandingForm form, FormBeam beam, IReadOnlyList<Point> centres, double clampGapMm)
    {
        _stiffness = beam.StiffnessPerWidth;
        _centres = [.. centres];
        _ends = new int[_centres.Length];
        var radius = form.OuterFoldRadiusMm - (beam.ThicknessMm / 2);
        double turn = 0;
        var first = _centres[0] - (radius * new Point(0, 1));
        _clamp = first - new Point(clampGapMm, 0);
        AddStraight(_clamp, first);
        _clamped = _axis.Count;
        for (var j = 0; j < form.Folds; j++)
        {
            var half = form.FoldAngles[j] / 2;
            AddArc(_centres[j], radius, turn, half);
            _ends[j] = _axis.Count;
            AddArc(_centres[j], radius, turn + half, half);
            turn += form.FoldAngles[j];
            var inwards = radius * Point.Along(turn).Left();
            AddStraight(_centres[j] - inwards, _centres[j + 1] - inwards);
        }

        _ends[^1] = _axis.Count;
        _sums = new Sums[_axis.Count + 1];
        for (var i = 0; i < _axis.Count; i++)
            _sums[i + 1] = _sums[i].With(_axis[i].Length, _axis[i].Place.Left());
    }

    /// <summary>How far a circle moves when the folds are pressed.</summary>
    /// <param name="circle">The circle.</param>
    /// <param name="touches">The folds that are pressed.</param>
    public Point MoveOf(int circle, ReadOnlySpan<Touch> touches)
    {
        var move = Point.Origin;
        foreach (ref readonly var touch in touches)
            move += touch.Force * MoveOf(circle, touch);
        return move;
    }

    /// <summary>How far a circle moves along a direction for a unit of the force on a fold.</summary>
    /// <param name="circle">The circle.</param>
    /// <param name="direction">Unit vector.</param>
    /// <param name="touch">The fold that is pressed.</param>
    public double MoveAlong(int circle, Point direction, in Touch touch) => direction.Dot(MoveOf(circle, touch));

    /// <summary>Turn of the form's end, and the largest moment it carries.</summary>
    /// <param name="touches">The folds that are pressed.</param>
    public FormState StateUnder(ReadOnlySpan<Touch> touches)
    {
        double turn = 0, clamped = 0, largest = Math.Abs(MomentAt(_clamp, 0, touches));
        for (var i = 0; i < _axis.Count; i++)
        {
            var moment = MomentAt(_axis[i].Place, i, touches);
            turn += _axis[i].Length * moment / _stiffness;
            if (i < _clamped)
                clamped = turn;
            largest = Math.Max(largest, Math.Abs(moment));
        }

        return new(new(turn), new(clamped), largest);
    }

    // Of the forces on folds past a piece of the axis about a place in it.
    private double MomentAt(Point place, int piece, ReadOnlySpan<Touch> touches)
    {
        double moment = 0;
        foreach (ref readonly var touch in touches)
        {
            if (piece < _ends[touch.Circle])
                moment += touch.Force * (_centres[touch.Circle] - place).Cross(touch.Tangent.Left());
        }

        return moment;
    }

    private Point MoveOf(int circle, in Touch touch)
    {
        ref readonly var sums = ref _sums[Math.Min(_ends[circle], _ends[touch.Circle])];
        Point own = _centres[circle].Left(), other = _centres[touch.Circle].Left(), push = touch.Tangent.Left();
        // ∫ (own - x)(other - x)·push ds
        var along = other.Dot(push);
        var move = ((sums.Length * along) - sums.First.Dot(push)) * own;
        move -= along * sums.First;
        move += sums.SecondTimes(push);
        return 1 / _stiffness * move;
    }

    private void AddStraight(Point from, Point to)
    {
        var length = (to - from).Length;
        if (length == 0)
            return;
        foreach (var share in GaussPoints)
            _axis.Add((length / 2, from + (share * (to - from))));
    }

    private void AddArc(Point centre, double radius, double start, double turn)
    {
        foreach (var share in GaussPoints)
            _axis.Add((radius * turn / 2, centre - (radius * Point.Along(start + (share * turn)).Left())));
    }

    /// <summary>Running integrals along the axis of 1, of the place turned left, and of its products.</summary>
    private readonly record struct Sums(double Length, Point First, double XX, double XY, double YY)
    {
        public Sums With(double length, Point left) => new(
            Length + length,
            First + (length * left),
            XX + (length * left.X * left.X),
            XY + (length * left.X * left.Y),
            YY + (length * left.Y * left.Y));

        public Point SecondTimes(Point push) => new((XX * push.X) + (XY * push.Y), (XY * push.X) + (YY * push.Y));
    }
}
