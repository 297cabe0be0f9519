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
    private const double MostCurl = 240 * Math.PI / 180;
    private const double MostTurn = 20 * Math.PI / 180;
    private const double LeastTurn = 0.02 * Math.PI / 180;
    private const double Penetration = 1e-3; // [mm]
    private const int MostChanges = 8;

    private readonly CancellationToken cancellation;
    private readonly PullWork work;
    private readonly Equilibrium equilibrium;
    private readonly Touch[] places; // where each circle was touched, or looked for, last
    private readonly double[] lastHeading;
    private readonly Start start; // where the step under way began
    private readonly bool[] isTouched;
    private readonly List<PullStep> steps = [];
    private readonly List<Touch> pressedBefore = []; // what pressed when the front was touched
    private double frontForce;
    private double turn = MostTurn;

    /// <summary>Lays the panel out, flat on the lead-in.</summary>
    /// <param name="circles">The folds.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <param name="elementsPerFacet">Elements of a usual facet.</param>
    /// <param name="work">What the pull may take.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public PullOver(FoldCircles circles, BendingLaw law, WrapSetup setup, int elementsPerFacet, PullWork work, CancellationToken cancellation)
    {
        (this.work, this.cancellation) = (work, cancellation);
        Circles = circles;
        ClampGapMm = setup.ClampGapMm;
        Strip = new(StripMesh.Lengths(circles, setup, elementsPerFacet), new(law, 1 / circles.RadiusMm), new(-setup.ClampGapMm, 0));
        equilibrium = new(Strip, circles, law.FirstYieldMoment, work, cancellation);
        lastHeading = new double[Strip.Heading.Length];
        places = new Touch[circles.Centres.Length];
        isTouched = new bool[places.Length];
        isTouched[0] = true; // the pull begins with the panel on the first fold
        start = new(Strip.Heading.Length, places.Length);
        var along = ClampGapMm;
        for (var j = 0; j < places.Length; j++)
        {
            var element = Array.BinarySearch(Strip.Along, along - 1e-9);
            places[j] = new() { Circle = j, Element = Math.Clamp(~element - 1, 0, Strip.Lengths.Length - 1) };
            along += j < circles.Spans.Length ? circles.Spans[j] : 0;
        }

        if (ClampGapMm > 0)
            equilibrium.Touches.Add(places[0]);
    }

    /// <summary>The folds.</summary>
    public FoldCircles Circles { get; }

    /// <summary>The panel.</summary>
    public Strip Strip { get; }

    /// <summary>Clamp behind the first fold's tangent point [mm].</summary>
    public double ClampGapMm { get; }

    /// <summary>The steps so far.</summary>
    public IReadOnlyList<PullStep> Steps => steps;

    /// <summary>How far along the panel a circle was touched last [mm].</summary>
    /// <param name="circle">The circle.</param>
    public double TouchedAt(int circle) =>
        circle == 0 ? ClampGapMm : Strip.Along[places[circle].Element] + places[circle].Inside;

    /// <summary>Folds that the panel came to lie on so far, the first among them.</summary>
    public int FoldsTouched => isTouched[..^1].Count(touched => touched);

    /// <summary>Pulls until the panel lies on the lead-out, or no further.</summary>
    public WrapEnd Run()
    {
        var exit = Circles.Centres.Length - 1;
        var front = 0;
        var isRepeating = false;
        while (front < exit)
        {
            cancellation.ThrowIfCancellationRequested();
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
                if (work.IsSpent)
                    return WrapEnd.WorkRanOut;
                if (IsTooShort(front))
                    return WrapEnd.HandComesDown;
                if (!Creep(front, out struck))
                    return work.IsSpent ? WrapEnd.WorkRanOut : IsAtHand(front + 1) ? WrapEnd.HandComesDown : WrapEnd.SolverGaveUp;
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
        isTouched[circle] = true;
        if (equilibrium.Touches.Count > 0)
            equilibrium.StillLoading = Math.Max(0, equilibrium.Touches[^1].Element - firstLoaded);
        var (moment, shear) = AtClamp();
        steps.Add(new(circle + 1, new(Told.Of(Strip.Heading[^1])), Told.Of(equilibrium.Force), Told.Of(moment), Told.Of(shear)));
        frontForce = 0;
        foreach (var touch in equilibrium.Touches)
            frontForce = Math.Max(frontForce, touch.Force);
        pressedBefore.Clear();
        pressedBefore.AddRange(equilibrium.Touches);
        equilibrium.Touches.Clear();
        equilibrium.Touches.Add(places[circle] with { Force = 0 });
        return circle;
    }

    // Between the clamp and the first fold nothing presses, so the moment runs straight there, and bends the sheet the other way at the clamp.
    private (double Moment, double Shear) AtClamp()
    {
        if (ClampGapMm == 0)
            return (Strip.Moment[0], 0);
        var shear = 2 * (Strip.Moment[1] - Strip.Moment[0]) / (Strip.Lengths[0] + Strip.Lengths[1]);
        return (Math.Abs(Strip.Moment[0] - (shear * Strip.Lengths[0] / 2)), Math.Abs(shear));
    }

    private int Keep()
    {
        foreach (var touch in equilibrium.Touches)
            isTouched[touch.Circle] = true;
        return Strip.Commit();
    }

    // The wrap repeats itself: from the new fold to the hand the moment runs down as it did from the fold before.
    private void Repeat(int front)
    {
        var (end, to) = (Strip.Along[^1], TouchedAt(front));
        var shrink = (end - to) / (end - TouchedAt(front - 1));
        Strip.Heading.CopyTo(lastHeading, 0);
        int first = places[front].Element + 1, at = 0;
        var heading = Strip.Heading[first];
        var turned = TurnedAt(Strip.Along[first]);
        for (var i = first + 1; i < lastHeading.Length; i++)
        {
            var next = TurnedAt(Strip.Along[i]);
            heading += shrink * (next - turned);
            turned = next;
            Strip.Heading[i] = heading;
        }

        Strip.Update();
        equilibrium.Force /= shrink;
        foreach (ref var touch in CollectionsMarshal.AsSpan(equilibrium.Touches))
            touch.Force = frontForce;

        double TurnedAt(double along)
        {
            var s = end - ((end - along) / shrink);
            while (at + 1 < Strip.Lengths.Length && Strip.Along[at + 1] < s)
                at++;
            return lastHeading[at] + ((lastHeading[at + 1] - lastHeading[at]) * (s - Strip.Along[at]) / Strip.Lengths[at]);
        }
    }

    private bool LandOn(int circle)
    {
        var landing = places[circle];
        landing.FindBeyond(Strip, Circles.Centres[circle], places[circle - 1]);
        for (var i = 0; i < MostChanges; i++)
        {
            if (!equilibrium.LandOn(ref landing) || Strip.Heading[^1] < start.Heading[^1])
                return false;
            places[circle] = landing;
            if (Settle())
                return Struck(circle + 1) is null;
        }

        return false;
    }

    private bool TurnHand(int next, out int? struck)
    {
        for (struck = null; turn > LeastTurn; turn /= 2)
        {
            cancellation.ThrowIfCancellationRequested();
            if (TurnTo(start.Heading[^1] + turn))
            {
                struck = Struck(next, 0);
                if (struck is null)
                {
                    Keep();
                    turn = Math.Min(turn * 1.5, MostTurn);
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
            if (!equilibrium.TurnTo(heading))
                return false;
            if (Settle())
                return true;
        }

        return false;
    }

    // Drops folds that would have to pull, and takes back earlier folds that the panel has run into; true when nothing changed.
    private bool Settle()
    {
        var touches = equilibrium.Touches;
        foreach (var touch in touches)
            places[touch.Circle] = touch;
        if (touches.RemoveAll(touch => touch.Force < 0) > 0)
            return false;
        var count = touches.Count;
        var front = count > 0 ? touches[^1].Circle : 0;
        for (var c = FirstToPress; c < front; c++)
        {
            if (IsPressing(c))
                continue;
            places[c].Find(Strip, Circles.Centres[c]);
            if (places[c].Distance < Circles.RadiusMm - Penetration)
                touches.Insert(0, places[c] with { Force = 0 });
        }

        return touches.Count == count;
    }

    private bool IsPressing(int circle)
    {
        foreach (var touch in equilibrium.Touches)
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
            places[c].FindBeyond(Strip, Circles.Centres[c], places[c - 1]);
            if (places[c].Distance < Circles.RadiusMm - penetration)
                return c;
        }

        return null;
    }

    private int FirstToPress => ClampGapMm > 0 ? 0 : 1;

    private void Save()
    {
        Strip.Heading.CopyTo(start.Heading, 0);
        places.CopyTo(start.Places, 0);
        start.Touches.Clear();
        start.Touches.AddRange(equilibrium.Touches);
        start.Force = equilibrium.Force;
    }

    private void Restore()
    {
        start.Heading.CopyTo(Strip.Heading, 0);
        start.Places.CopyTo(places, 0);
        equilibrium.Touches.Clear();
        equilibrium.Touches.AddRange(start.Touches);
        equilibrium.Force = start.Force;
        Strip.Update();
    }

    private sealed class Start(int nodes, int circles)
    {
        public double[] Heading { get; } = new double[nodes];

        public Touch[] Places { get; } = new Touch[circles];

        public List<Touch> Touches { get; } = [];

        public double Force { get; set; }
    }
}
