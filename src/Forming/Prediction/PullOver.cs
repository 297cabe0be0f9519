using System.Runtime.InteropServices;
using Forming.Springback;

namespace Forming.Prediction;

/// <summary>The pull, fold by fold: each step ends with the panel just coming to lie on the next one.</summary>
/// <remarks>
/// Landing exactly on each touch matters: in plain steps of the hand the ripple reads 7 to 30 % low. Only where a landing is not
/// found at once, or another fold comes in the way, the hand is turned step by step.
/// </remarks>
internal sealed partial class PullOver
{
    /// <summary>Turn from the last touched fold to the hand past which the panel curls up and is not pulled over. An assumption.</summary>
    private const double MostCurl = 240 * Math.PI / 180;

    /// <summary>Largest step of the hand where no landing is found. An assumption; a step that fails is halved.</summary>
    private const double MostTurn = 20 * Math.PI / 180;

    /// <summary>Smallest step of the hand, a thousandth of the largest; below it small kept steps take over. An assumption.</summary>
    private const double LeastTurn = 0.02 * Math.PI / 180;

    /// <summary>How deep the panel may be in a fold before it touches [mm]: less than anyone can measure. An assumption.</summary>
    private const double Penetration = 1e-3;

    /// <summary>Times that touches may come or go in one step, so that two that alternate do not go on for ever. An assumption.</summary>
    private const int MostChanges = 8;

    private readonly CancellationToken _cancellation;
    private readonly PullWork _work;
    private readonly double _momentScale;
    private readonly Equilibrium _equilibrium;
    private readonly Touch[] _places; // where each circle was touched, or looked for, last
    private readonly double[] _lastHeading;
    private readonly Start _start; // where the step under way began
    private readonly bool[] _isTouched;
    private readonly List<PullStep> _steps = [];
    private readonly List<Touch> _pressedBefore = []; // what pressed when the front was touched
    private double _frontForce;
    private double _turn = MostTurn;

    /// <summary>Lays the panel out, flat on the lead-in.</summary>
    /// <param name="circles">The folds.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <param name="elementsPerFacet">Elements of a usual facet.</param>
    /// <param name="work">What the pull may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public PullOver(
        FoldCircles circles, BendingLaw law, WrapSetup setup, int elementsPerFacet, PullWork work, CancellationToken cancellation)
        : this(
            circles,
            new(StripMesh.Lengths(circles, setup, elementsPerFacet), new(law, 1 / circles.RadiusMm), new(-setup.ClampGapMm, 0)),
            law.FirstYieldMoment,
            setup.ClampGapMm,
            work,
            cancellation)
    {
    }

    private PullOver(
        FoldCircles circles, Strip strip, double momentScale, double clampGapMm, PullWork work, CancellationToken cancellation)
    {
        (_work, _cancellation, _momentScale) = (work, cancellation, momentScale);
        Circles = circles;
        ClampGapMm = clampGapMm;
        Strip = strip;
        _equilibrium = new(Strip, circles, momentScale, work, cancellation);
        _lastHeading = new double[Strip.Heading.Length];
        _places = new Touch[circles.Centres.Length];
        _isTouched = new bool[_places.Length];
        _isTouched[0] = true; // the pull begins with the panel on the first fold
        _start = new(Strip.Heading.Length, _places.Length);
        var along = ClampGapMm;
        for (var j = 0; j < _places.Length; j++)
        {
            var element = Array.BinarySearch(Strip.Along, along - 1e-9);
            _places[j] = new() { Circle = j, Element = Math.Clamp(~element - 1, 0, Strip.Lengths.Length - 1) };
            along += j < circles.Spans.Length ? circles.Spans[j] : 0;
        }

        if (ClampGapMm > 0)
            _equilibrium.Touches.Add(_places[0]);
    }

    /// <summary>The folds.</summary>
    public FoldCircles Circles { get; }

    /// <summary>The panel.</summary>
    public Strip Strip { get; }

    /// <summary>Clamp behind the first fold's tangent point [mm].</summary>
    public double ClampGapMm { get; }

    /// <summary>The steps so far.</summary>
    public IReadOnlyList<PullStep> Steps => _steps;

    /// <summary>How far along the panel a circle was touched last [mm].</summary>
    /// <param name="circle">The circle.</param>
    public double TouchedAt(int circle) =>
        circle == 0 ? ClampGapMm : Strip.Along[_places[circle].Element] + _places[circle].Inside;

    /// <summary>How the form stood when the last fold was touched.</summary>
    public FormState Given { get; private set; }

    /// <summary>Largest force of the panel on a fold beyond the first, which the clamp holds [N/mm].</summary>
    public double LargestPush { get; private set; }

    /// <summary>Numbers of the folds that the panel did not touch so far, from 1.</summary>
    public int[] Untouched => [.. Enumerable.Range(1, _isTouched.Length - 1).Where(fold => !_isTouched[fold - 1])];

    /// <summary>Pulls until the panel lies on the lead-out, or no further.</summary>
    public WrapEnd Run()
    {
        var exit = Circles.Centres.Length - 1;
        var front = 0;
        var isRepeating = false;
        while (front < exit)
        {
            _cancellation.ThrowIfCancellationRequested();
            Save();
            if (isRepeating)
            {
                Repeat(front);
                if (LandOn(front + 1))
                {
                    front = Record(front + 1);
                    continue;
                }

                Restore();
                isRepeating = false;
            }

            if (!TurnHand(front + 1, out var struck))
            {
                if (_work.IsSpent)
                    return WrapEnd.WorkRanOut;
                if (IsTooShort(front))
                    return WrapEnd.HandComesDown;
                if (!Creep(front, out struck))
                    return _work.IsSpent ? WrapEnd.WorkRanOut : IsAtHand(front + 1) ? WrapEnd.HandComesDown : WrapEnd.SolverGaveUp;
            }

            if (struck is { } fold)
            {
                front = Record(fold);
                isRepeating = true;
            }
            else if (IsCurledUp(front))
            {
                return WrapEnd.CurlsUp;
            }
        }

        return WrapEnd.Complete;
    }

    private int Record(int circle)
    {
        // As many as with the fold before, for the wrap repeats itself.
        var firstLoaded = Keep();
        _isTouched[circle] = true;
        if (_equilibrium.Touches.Count > 0)
            _equilibrium.StillLoading = Math.Max(0, _equilibrium.Touches[^1].Element - firstLoaded);
        Given = Circles.Flexure?.StateUnder(CollectionsMarshal.AsSpan(_equilibrium.Touches)) ?? default;
        var (moment, shear) = AtClamp();
        _steps.Add(
            new(circle + 1, new(Rounded.Of(Strip.Heading[^1])), Rounded.Of(_equilibrium.Force), Rounded.Of(moment), Rounded.Of(shear)));
        _frontForce = 0;
        foreach (var touch in _equilibrium.Touches)
        {
            _frontForce = Math.Max(_frontForce, touch.Force);
            if (touch.Circle > 0)
                LargestPush = Math.Max(LargestPush, touch.Force);
        }
        _pressedBefore.Clear();
        _pressedBefore.AddRange(_equilibrium.Touches);
        _equilibrium.Touches.Clear();
        _equilibrium.Touches.Add(_places[circle] with { Force = 0 });
        return circle;
    }

    // Between the clamp and the first fold nothing presses, so the moment runs straight there, and bends the sheet the other way at the
    // clamp.
    private (double Moment, double Shear) AtClamp()
    {
        if (ClampGapMm == 0)
            return (Strip.Moment[0], 0);
        var shear = 2 * (Strip.Moment[1] - Strip.Moment[0]) / (Strip.Lengths[0] + Strip.Lengths[1]);
        return (Math.Abs(Strip.Moment[0] - (shear * Strip.Lengths[0] / 2)), Math.Abs(shear));
    }

    private int Keep()
    {
        foreach (var touch in _equilibrium.Touches)
            _isTouched[touch.Circle] = true;
        return Strip.Commit();
    }

    // The wrap repeats itself: from the new fold to the hand the moment runs down as it did from the fold before.
    private void Repeat(int front)
    {
        var (end, to) = (Strip.Along[^1], TouchedAt(front));
        var shrink = (end - to) / (end - TouchedAt(front - 1));
        Strip.Heading.CopyTo(_lastHeading, 0);
        int first = _places[front].Element + 1, at = 0;
        var heading = Strip.Heading[first];
        var turned = TurnedAt(Strip.Along[first]);
        for (var i = first + 1; i < _lastHeading.Length; i++)
        {
            var next = TurnedAt(Strip.Along[i]);
            heading += shrink * (next - turned);
            turned = next;
            Strip.Heading[i] = heading;
        }

        Strip.Update();
        _equilibrium.Force /= shrink;
        foreach (ref var touch in CollectionsMarshal.AsSpan(_equilibrium.Touches))
            touch.Force = _frontForce;

        double TurnedAt(double along)
        {
            var s = end - ((end - along) / shrink);
            while (at + 1 < Strip.Lengths.Length && Strip.Along[at + 1] < s)
                at++;
            return _lastHeading[at] + ((_lastHeading[at + 1] - _lastHeading[at]) * (s - Strip.Along[at]) / Strip.Lengths[at]);
        }
    }

    private bool LandOn(int circle)
    {
        var landing = _places[circle];
        landing.FindBeyond(Strip, Circles.Centres[circle], _places[circle - 1]);
        for (var i = 0; i < MostChanges; i++)
        {
            if (!_equilibrium.LandOn(ref landing) || Strip.Heading[^1] < _start.Heading[^1])
                return false;
            _places[circle] = landing;
            if (Settle())
                return Struck(circle + 1) is null;
        }

        return false;
    }

    private bool TurnHand(int next, out int? struck)
    {
        for (struck = null; _turn > LeastTurn; _turn /= 2)
        {
            _cancellation.ThrowIfCancellationRequested();
            if (TurnTo(_start.Heading[^1] + _turn))
            {
                struck = Struck(next, 0);
                if (struck is null)
                {
                    Keep();
                    _turn = Math.Min(_turn * 1.5, MostTurn);
                    return true;
                }

                Restore();
                if (LandOn(struck.Value))
                    return true;
            }

            Restore();
        }

        return false;
    }

    private bool TurnTo(double heading)
    {
        for (var i = 0; i < MostChanges; i++)
        {
            if (!_equilibrium.TurnTo(heading))
                return false;
            if (Settle())
                return true;
        }

        return false;
    }

    // Drops folds that would have to pull, and takes back earlier folds that the panel has run into; true when nothing changed.
    private bool Settle()
    {
        var touches = _equilibrium.Touches;
        foreach (var touch in touches)
            _places[touch.Circle] = touch;
        if (touches.RemoveAll(touch => touch.Force < 0) > 0)
            return false;
        var count = touches.Count;
        var front = count > 0 ? touches[^1].Circle : 0;
        for (var c = FirstToPress; c < front; c++)
        {
            if (IsPressing(c))
                continue;
            _places[c].Find(Strip, Circles.Centres[c]);
            if (_places[c].Distance < Circles.RadiusMm - Penetration)
                touches.Insert(0, _places[c] with { Force = 0 });
        }

        return touches.Count == count;
    }

    private bool IsPressing(int circle)
    {
        foreach (var touch in _equilibrium.Touches)
        {
            if (touch.Circle == circle)
                return true;
        }

        return false;
    }

    private int? Struck(int from, double penetration = Penetration)
    {
        for (var c = from; c < Circles.Centres.Length; c++)
        {
            _places[c].FindBeyond(Strip, Circles.Centres[c], _places[c - 1]);
            if (_places[c].Distance < Circles.RadiusMm - penetration)
                return c;
        }

        return null;
    }

    private int FirstToPress => ClampGapMm > 0 ? 0 : 1;
}
