
using Forming.Springback;
using MathNet.Numerics.Integration;

namespace Forming.Contact;

/// <summary>A stretch of the contact curve between two flats: it is stepped on its own.</summary>
public sealed class CurvedRun
{
    private const int QuadratureOrder = 16;

    private readonly ContactPiece[] _pieces;
    private readonly Frame[] _frames;
    private readonly double _thickness;
    private ContactPoint[]? _crests;

    internal CurvedRun(IReadOnlyList<ContactPiece> pieces, ContactFrame start, double thickness)
    {
        _pieces = [.. pieces];
        _thickness = thickness;
        _frames = new Frame[pieces.Count];
        Start = start;
        var frame = start;
        for (var i = 0; i < _frames.Length; i++)
        {
            _frames[i] = new(frame);
            frame = frame.Then(pieces[i].At(1));
        }

        End = frame;
    }

    /// <summary>Where it begins.</summary>
    public ContactFrame Start { get; }

    /// <summary>Where it ends.</summary>
    public ContactFrame End { get; }

    /// <summary>Turn under load [rad].</summary>
    public double Turn => End.Turn - Start.Turn;

    /// <summary>Mid-surface length [mm].</summary>
    public double MidMm => End.MidMm - Start.MidMm;

    /// <summary>Whether it may be bent the most somewhere between its ends, or by a jump: then more folds may fall less well.</summary>
    public bool IsUneven => Crests.Length > 0;

    // Along a piece the curvature grows or falls all the way between its ends and inner peaks.
    private ContactPoint[] Crests => _crests ??= [.. FindCrests()];

    /// <summary>A measure of the whole run.</summary>
    /// <param name="measure">The measure.</param>
    public double Total(CurveMeasure measure) => measure.Of(Turn, MidMm);

    /// <summary>The point at which a measure from the start of the run reaches a value.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="value">Its value, at least 0; past the end the curve goes on at the radius of its end.</param>
    public ContactPoint At(CurveMeasure measure, double value)
    {
        for (var i = 0; ; i++)
        {
            var total = _pieces[i].Total(measure);
            var isLast = i == _pieces.Length - 1;
            if (value <= total * (1 + 1e-14))
                return At(i, value <= 0 ? 0 : value >= total ? 1 : _pieces[i].ParameterAt(measure, value));
            if (isLast)
                return Beyond(measure, value - total);
            value -= total;
        }
    }

    /// <summary>The panel's state where it is bent the most between two places of the run.</summary>
    /// <param name="from">The place nearer to the start.</param>
    /// <param name="to">The place nearer to the end.</param>
    public BentState TightestBetween(in ContactPoint from, in ContactPoint to)
    {
        var tightest = from.State.Curvature >= to.State.Curvature ? from.State : to.State;
        foreach (var crest in Crests)
        {
            if (crest.State.Curvature > tightest.Curvature && crest.MidMm >= from.MidMm && crest.MidMm <= to.MidMm)
                tightest = crest.State;
        }

        return tightest;
    }

    /// <summary>Every piece's points at even steps of its own parameter, in order, ends of pieces once.</summary>
    /// <param name="perPiece">Steps a piece, &gt; 0.</param>
    public IEnumerable<ContactPoint> Sample(int perPiece)
    {
        yield return At(0, 0);
        for (var i = 0; i < _pieces.Length; i++)
        {
            for (var j = 1; j <= perPiece; j++)
                yield return At(i, (double)j / perPiece);
        }
    }

    /// <summary>Points among which the panel is bent the most and the least: ends of pieces, and steps along those that change.</summary>
    public IEnumerable<ContactPoint> Extremes()
    {
        for (var i = 0; i < _pieces.Length; i++)
        {
            var steps = _pieces[i] is CircularPiece ? 1 : 16;
            for (var j = i == 0 ? 0 : 1; j <= steps; j++)
                yield return At(i, (double)j / steps);
        }
    }

    /// <summary>Integral over the mid-surface length of something that depends on how far the panel is bent.</summary>
    /// <param name="density">What is integrated, per mm.</param>
    public double Integral(Func<BentState, double> density)
    {
        var sum = 0.0;
        foreach (var piece in _pieces)
        {
            sum += piece is CircularPiece
                ? piece.Mid * density(piece.StateAt(0))
                : GaussLegendreRule.Integrate(
                    mid => density(piece.StateAt(piece.ParameterAt(CurveMeasure.MidLength, mid))), 0, piece.Mid, QuadratureOrder);
        }

        return sum;
    }

    // Between pieces both sides are looked at: a place on the joint knows the state of one of them only.
    private IEnumerable<ContactPoint> FindCrests()
    {
        for (var i = 0; i < _pieces.Length; i++)
        {
            if (i > 0)
                yield return At(i, 0);
            foreach (var u in _pieces[i].InnerPeaks)
                yield return At(i, u);
            if (i < _pieces.Length - 1)
                yield return At(i, 1);
        }
    }

    private ContactPoint At(int index, double u)
    {
        var piece = _pieces[index];
        var growth = piece.At(u);
        ref readonly var frame = ref _frames[index];
        return new(
            frame.Start.Turn + growth.Turn,
            frame.Start.MidMm + growth.Mid,
            frame.Place(growth.Position),
            piece.FinishedCurvatureAt(u),
            piece.StateAt(u));
    }

    private ContactPoint Beyond(CurveMeasure measure, double value)
    {
        var end = At(_pieces.Length - 1, 1);
        var curvature = end.State.Curvature;
        var mid = value / measure.Of(curvature, 1);
        var turn = curvature * mid;
        var radius = end.RadiusMm(_thickness);
        var centre = end.Position + (radius * Point.Along(end.Turn).Left());
        return end with
        {
            Turn = end.Turn + turn,
            MidMm = end.MidMm + mid,
            Position = centre - (radius * Point.Along(end.Turn + turn).Left()),
        };
    }

    private readonly struct Frame(ContactFrame start)
    {
        private readonly Point _heading = Point.Along(start.Turn);

        public ContactFrame Start { get; } = start;

        public Point Place(Point local) => Start.Position + (local.X * _heading) + (local.Y * _heading.Left());
    }
}
