namespace Forming.Curves.Fitting;

/// <summary>
/// Walks along a curvature profile and notes, at each foot, place, direction and what each unknown curvature does to the place.
/// </summary>
/// <remarks>
/// A change dκ(s) turns the tangent by dθ(s) = ∫ dκ, so the place moves by ∫ dθ n dσ and, seen along the normal at s, by
/// t(s)·∫ dθ(σ) t(σ) dσ: the same as ∫ dκ(σ) (P(s) - P(σ))·t(s) dσ, by parts. dθ is a closed form for each hat function, so
/// one pass of quadrature gives places and derivatives alike. A knot that moves changes the curvature by the slopes beside it
/// times its hat, the other way.
/// </remarks>
internal sealed class FootTrace
{
    /// <summary>Most that a cell of quadrature may turn [rad]: five Gauss nodes then give places to 1e-13 of the cell.</summary>
    private const double TurnPerCell = 0.8;

    /// <summary>In a cell that turns less than this [rad], three Gauss nodes are as good: the error is turn⁶/2,016,000.</summary>
    private const double TurnForThree = 0.08;

    private static readonly (double At, double Weight)[] FiveNodes =
    [
        (0.04691007703066800, 0.11846344252809454),
        (0.23076534494715845, 0.23931433524968324),
        (0.5, 0.28444444444444444),
        (0.76923465505284155, 0.23931433524968324),
        (0.95308992296933200, 0.11846344252809454),
    ];

    private static readonly (double At, double Weight)[] ThreeNodes =
        [(0.11270166537925831, 5.0 / 18), (0.5, 8.0 / 18), (0.88729833462074169, 5.0 / 18)];

    private readonly int[] _order;
    private readonly double[] _sorted;
    private Point[] _levers = [];
    private double[] _done = [];

    /// <summary>Room for a number of feet.</summary>
    /// <param name="count">How many.</param>
    public FootTrace(int count)
    {
        (_order, _sorted) = (new int[count], new double[count]);
        (Places, Tangents, Curvatures, Levers) = (new Point[count], new Point[count], new double[count], []);
    }

    /// <summary>[feet] where the curve is.</summary>
    public Point[] Places { get; }

    /// <summary>[feet] its direction, a unit vector.</summary>
    public Point[] Tangents { get; }

    /// <summary>[feet] its curvature.</summary>
    public double[] Curvatures { get; }

    /// <summary>[feet × unknowns] ∫ dθ t dσ up to each foot, for each unknown.</summary>
    public Point[] Levers { get; private set; }

    /// <summary>Traces the curve.</summary>
    /// <param name="profile">Its curvature.</param>
    /// <param name="start">Where it starts.</param>
    /// <param name="angle">Direction at the start [rad].</param>
    /// <param name="feet">Arc lengths, in any order, from 0 to the length.</param>
    public void Run(CurvatureProfile profile, Point start, double angle, double[] feet)
    {
        Prepare(profile.UnknownCount, feet);
        var walker = new Walker(profile, start, angle, _levers, _done);
        var next = 0;
        for (var m = 0; m < profile.Knots.Length - 1; m++)
        {
            walker.Enter(m);
            var isLast = m == profile.Knots.Length - 2;
            for (; next < feet.Length && (isLast || _sorted[next] <= profile.Knots[m + 1]); next++)
            {
                walker.GoTo(_sorted[next]);
                Note(_order[next], ref walker);
            }

            walker.GoTo(profile.Knots[m + 1]);
            walker.Leave();
        }
    }

    /// <summary>Moves a foot a little, as if the curve went on as an arc: right to the third order of the distance.</summary>
    /// <param name="foot">Which foot.</param>
    /// <param name="distance">How far along the curve.</param>
    public void Shift(int foot, double distance)
    {
        var (tangent, turn) = (Tangents[foot], Curvatures[foot] * distance);
        Places[foot] += distance * (tangent + (turn / 2 * tangent.Left()));
        Tangents[foot] = ((1 - (turn * turn / 2)) * tangent) + (turn * tangent.Left());
    }

    private void Prepare(int unknowns, double[] feet)
    {
        if (_levers.Length != unknowns)
            (_levers, _done, Levers) = (new Point[unknowns], new double[unknowns], new Point[unknowns * feet.Length]);
        Array.Clear(_levers);
        Array.Clear(_done);
        var inOrder = true;
        for (var j = 0; j < feet.Length; j++)
        {
            (_order[j], _sorted[j]) = (j, feet[j]);
            inOrder &= j == 0 || feet[j] >= feet[j - 1];
        }

        if (!inOrder) Array.Sort(_sorted, _order);
    }

    private void Note(int foot, ref Walker walker)
    {
        (Places[foot], Tangents[foot], Curvatures[foot]) = (walker.Place, walker.Tangent, walker.Curvature);
        _levers.CopyTo(Levers.AsSpan(foot * _levers.Length));
    }

    /// <summary>Where the walk along the profile is.</summary>
    private ref struct Walker(CurvatureProfile profile, Point start, double angle, Point[] levers, double[] done)
    {
        private readonly CurvatureProfile _profile = profile;
        private readonly Point[] _levers = levers;

        /// <summary>Turn per unit curvature of the hats that lie behind, by unknown.</summary>
        private readonly double[] _done = done;

        private int _from;
        private int _to;
        private int _fromMover;
        private int _toMover;
        private double _knot;
        private double _width;
        private double _halfPerWidth;
        private double _startCurvature;
        private double _rise;
        private double _slope;
        private double _knotAngle = angle;

        /// <summary>Turn that the hat of the span's first knot has made before the span.</summary>
        private double _rising;

        private double _s;

        public Point Place { get; private set; } = start;

        public readonly Point Tangent => Point.Along(AngleAt(Share));

        public readonly double Curvature => _startCurvature + (Share * _rise);

        private readonly double Share => (_s - _knot) / _width;

        public void Enter(int m)
        {
            (_knot, _width) = (_profile.Knots[m], _profile.Knots[m + 1] - _profile.Knots[m]);
            (_startCurvature, _rise) = (_profile.Values[m], _profile.Values[m + 1] - _profile.Values[m]);
            _halfPerWidth = 0.5 / _width;
            (_from, _to) = (_profile.Unknowns[m], _profile.Unknowns[m + 1]);
            (_fromMover, _toMover, _slope) = (_profile.MoverOf(m), _profile.MoverOf(m + 1), _rise / _width);
            _s = _knot;
        }

        public void Leave()
        {
            _knotAngle = AngleAt(1);
            if (_from >= 0) _done[_from] += _rising + (_width / 2);
            if (_fromMover >= 0) _done[_fromMover] -= _rise / 2;
            if (_toMover >= 0) _done[_toMover] -= _rise / 2;
            _rising = _width / 2;
        }

        public void GoTo(double s)
        {
            var turn = Math.Max(Math.Abs(_startCurvature), Math.Abs(_startCurvature + _rise)) * (s - _s);
            var cells = 1 + (int)(turn / TurnPerCell);
            var length = (s - _s) / cells;
            if (length <= 0) return;
            var nodes = turn < TurnForThree ? ThreeNodes : FiveNodes;
            for (var cell = 0; cell < cells; cell++) Step(length, nodes);
            _s = s;
        }

        private readonly double AngleAt(double u) => _knotAngle + (_width * ((_startCurvature * u) + (_rise * u * u / 2)));

        private void Step(double length, (double At, double Weight)[] nodes)
        {
            Point move = default, falling = default, growing = default;
            foreach (var (at, weight) in nodes)
            {
                var along = _s - _knot + (at * length);
                var grown = along * along * _halfPerWidth;
                var (sin, cos) = Math.SinCos(_knotAngle + (_startCurvature * along) + (_rise * grown));
                var part = new Point(weight * length * cos, weight * length * sin);
                move += part;
                growing += grown * part;
                falling += (_rising + along - grown) * part;
            }

            for (var c = 0; c < _levers.Length; c++) _levers[c] += _done[c] * move;
            if (_from >= 0) _levers[_from] += falling;
            if (_to >= 0) _levers[_to] += growing;
            if (_fromMover >= 0) _levers[_fromMover] -= _slope * (falling - (_rising * move));
            if (_toMover >= 0) _levers[_toMover] -= _slope * growing;
            Place += move;
            _s += length;
        }
    }
}
