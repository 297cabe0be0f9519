using System.Runtime.InteropServices;

namespace Forming.Prediction;

/// <summary>Finds the shape of the strip that is in balance with hand and folds.</summary>
internal sealed class Equilibrium(Strip strip, FoldCircles circles, double momentScale, PullWork work, CancellationToken cancellation)
{
    private const int MostIterations = 30;

    /// <summary>A step from within this is the last: Newton squares what is left. Of the moment scale, and in mm or rad.</summary>
    private const double LastStep = 2e-3;

    /// <summary>Within this there is nothing left to step for.</summary>
    private const double Settled = 1e-5;

    private const int MostCarefulIterations = 60;

    private const double LeastShare = 1.0 / 256;

    /// <summary>A step that does not bring the miss down by this share of what it promises is too long.</summary>
    private const double LeastGain = 0.05;

    private readonly int _nodes = strip.Lengths.Length;
    private readonly NewtonSystem _system = new(strip, circles, momentScale, work);
    private readonly double[] _before = new double[strip.Lengths.Length + 1]; // directions before the step under way
    private readonly double[] _moves = new double[strip.Lengths.Length + 1]; // and how far all of it turns them
    private readonly List<Touch> _touchesBefore = [];

    /// <summary>The folds that press on the strip.</summary>
    public List<Touch> Touches => _system.Touches;

    /// <summary>Hand force, square to the sheet's end [N/mm].</summary>
    public double Force
    {
        get => _system.Force;
        set => _system.Force = value;
    }

    /// <summary>
    /// Elements behind the front that are expected to be bent further still when the next fold takes over; the others unload.
    /// </summary>
    public int StillLoading { get; set; } = 2;

    /// <summary>Whether steps that lead away from balance are shortened: slower, and reaches where whole steps do not.</summary>
    public bool IsCareful { get; set; }

    /// <summary>
    /// Whether careful steps that gain nothing are followed by one as if the whole strip unloaded: where each side of the kink between
    /// loading and unloading leads over to the other, that leads to the kink itself.
    /// </summary>
    public bool IsStiff { get; set; }

    /// <summary>Systems set up in careful steps so far.</summary>
    public int CarefulSteps { get; private set; }

    /// <summary>Solves with the strip just touching a fold, or a distance short of it.</summary>
    /// <param name="landing">The touch to land on; holds where when done.</param>
    /// <param name="clearance">The distance [mm].</param>
    /// <returns>Whether a balance was found.</returns>
    public bool LandOn(ref Touch landing, double clearance = 0) => Solve(ref landing, null, clearance);

    /// <summary>Solves with the sheet's end turned to a direction.</summary>
    /// <param name="heading">The direction [rad].</param>
    /// <returns>Whether a balance was found.</returns>
    public bool TurnTo(double heading)
    {
        Touch none = new() { Circle = 0, Element = 0 };
        return Solve(ref none, heading, 0);
    }

    private bool Solve(ref Touch landing, double? heading, double clearance)
    {
        var lands = heading is null;
        Find(ref landing, lands);
        if (lands && Touches.Count > 0)
            strip.ExpectUnloading(Touches[^1].Element - StillLoading);
        var miss = _system.Assemble(landing, heading, clearance);
        for (var i = 0; i < (IsCareful ? MostCarefulIterations : MostIterations); i++)
        {
            if (miss < Settled)
                return true;
            var isLast = miss < LastStep;
            if (IsCareful)
            {
                if (!StepCarefully(ref landing, heading, clearance, ref miss))
                    return false;
                continue;
            }

            if (!_system.Step(landing, heading, clearance, miss))
                return false;
            strip.Update();
            Find(ref landing, lands);
            if (isLast)
                return true;
            miss = _system.Assemble(landing, heading, clearance);
        }

        return IsCareful && miss < LastStep;
    }

    // Yielding and sliding change the slopes from one iteration to the next, so a whole step may lead further off.
    private bool StepCarefully(ref Touch landing, double? heading, double clearance, ref double miss)
    {
        cancellation.ThrowIfCancellationRequested();
        strip.Heading.CopyTo(_before, 0);
        _touchesBefore.Clear();
        _touchesBefore.AddRange(Touches);
        var forceBefore = Force;
        if (!_system.Step(landing, heading, clearance, miss))
            return false;
        for (var i = 0; i <= _nodes; i++)
            _moves[i] = strip.Heading[i] - _before[i];
        var (force, all) = (Force - forceBefore, Touches.ToArray());
        var from = landing;
        var (best, bestShare) = (double.PositiveInfinity, 1.0);
        CarefulSteps++;
        for (var share = 1.0; share >= LeastShare; share /= 2)
        {
            var now = MissAt(share, from, ref landing);
            if (now < best)
                (best, bestShare) = (now, share);
            if (now < (1 - (LeastGain * share)) * miss)
            {
                miss = now;
                return true;
            }
        }

        miss = MissAt(bestShare, from, ref landing);
        if (IsStiff)
        {
            strip.ExpectUnloading(_nodes);
            _system.Assemble(landing, heading, clearance);
        }

        return double.IsFinite(miss);

        double MissAt(double share, in Touch from, ref Touch landing)
        {
            for (var i = 0; i <= _nodes; i++)
                strip.Heading[i] = _before[i] + (share * _moves[i]);
            Force = forceBefore + (share * force);
            for (var j = 0; j < all.Length; j++)
                Touches[j] =
                    _touchesBefore[j] with { Force = _touchesBefore[j].Force + (share * (all[j].Force - _touchesBefore[j].Force)) };
            landing = from;
            CarefulSteps++;
            strip.Update();
            Find(ref landing, heading is null);
            return _system.Assemble(landing, heading, clearance);
        }
    }

    private void Find(ref Touch landing, bool lands)
    {
        circles.Bend(CollectionsMarshal.AsSpan(Touches));
        foreach (ref var touch in CollectionsMarshal.AsSpan(Touches))
            touch.Find(strip, circles.Centres[touch.Circle]);
        if (lands)
            landing.Find(strip, circles.Centres[landing.Circle]);
    }
}
