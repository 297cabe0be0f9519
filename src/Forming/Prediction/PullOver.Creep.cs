namespace Forming.Prediction;

/// <summary>The pull where whole landings and turns of the hand find no balance: by small steps, each kept.</summary>
/// <remarks>
/// What pressed when the front was touched lets go little by little, not at once. The next fold's clearance is closed by shares, which
/// also follows a hand that has to come back a little; where that finds nothing, the hand is turned by a small angle.
/// </remarks>
internal sealed partial class PullOver
{
    private const int MostSteps = 1200; // of the solver over the whole pull, and as many again where it is stiff
    private const int MostCarefulChanges = 24;
    private const double LeastShare = 1.0 / 1024;
    private const double LeastShareAtHand = 1.0 / 16;
    private const double TurnOfShare = 0.1; // [rad] turn of the hand that is tried in place of a whole clearance

    private bool Creep(int front, out int? struck)
    {
        struck = null;
        _equilibrium.IsCareful = true;
        var touches = _equilibrium.Touches;
        if (touches.Count == 1 && touches[0] is { Force: 0 } only && only.Circle == front)
            touches.InsertRange(0, _pressedBefore);
        var share = 1.0;
        var mostSteps = MostSteps;
        while (share > LeastShare && _equilibrium.CarefulSteps < mostSteps && !_work.IsSpent)
        {
            _cancellation.ThrowIfCancellationRequested();
            Save();
            if (CloseUp(front, share, out struck) || Nudge(front, share, out struck))
            {
                Keep();
                if (struck is not null || IsCurledUp(front))
                    break;
                share = Math.Min(1, 2 * share);
                continue;
            }

            Restore();
            share /= 2;
            if (IsAtHand(front + 1) && Circles.BringExitNearer(front + 1))
                share = 1;
            else if (IsAtHand(front + 1) && share < LeastShareAtHand)
                break;
            if (share > LeastShare || _equilibrium.IsStiff)
                continue;
            _equilibrium.IsStiff = true;
            share = 1;
            mostSteps += MostSteps;
        }

        _equilibrium.IsCareful = _equilibrium.IsStiff = false;
        return struck is not null || IsCurledUp(front);
    }

    private bool CloseUp(int front, double share, out int? struck)
    {
        struck = null;
        var next = front + 1;
        _places[next].FindBeyond(Strip, Circles.Centres[next], _places[front]);
        var clearance = share < 1 ? (1 - share) * (_places[next].Distance - Circles.RadiusMm) : 0;
        return Approach(front, next, Math.Max(0, clearance)) && Accept(front, clearance > 0 ? null : next, out struck);
    }

    private bool Nudge(int front, double share, out int? struck)
    {
        struck = null;
        Restore();
        var heading = Strip.Heading[^1] + (TurnOfShare * share);
        for (var i = 0; i < MostCarefulChanges; i++)
        {
            if (!_equilibrium.TurnTo(heading))
                return false;
            if (SettleOne(front))
                return Accept(front, null, out struck);
        }

        return false;
    }

    // Where another fold got in the way, that one is touched first.
    private bool Accept(int front, int? landed, out int? struck)
    {
        struck = landed;
        if (Deepest(front, landed) is not { } inWay)
            return landed is not { } there || !IsAtHand(there);
        Restore();
        struck = inWay;
        return Approach(front, inWay, 0) && Deepest(front, inWay) is null && !IsAtHand(inWay);
    }

    private bool Approach(int front, int circle, double clearance)
    {
        var landing = _places[circle];
        landing.FindBeyond(Strip, Circles.Centres[circle], _places[front]);
        for (var i = 0; i < MostCarefulChanges; i++)
        {
            if (!_equilibrium.LandOn(ref landing, clearance))
                return false;
            _places[circle] = landing;
            if (SettleOne(front))
                return true;
        }

        return false;
    }

    // As Settle, but one change at a time, the largest: changes at once may undo each other for ever.
    private bool SettleOne(int front)
    {
        var touches = _equilibrium.Touches;
        var pulling = -1;
        for (var j = 0; j < touches.Count; j++)
        {
            _places[touches[j].Circle] = touches[j];
            if (touches[j].Force < 0 && (pulling < 0 || touches[j].Force < touches[pulling].Force))
                pulling = j;
        }

        if (pulling >= 0)
        {
            touches.RemoveAt(pulling);
            return false;
        }

        var (deepest, least) = (-1, Circles.RadiusMm - Penetration);
        for (var c = FirstToPress; c <= front; c++)
        {
            if (IsPressing(c))
                continue;
            _places[c].Find(Strip, Circles.Centres[c]);
            if (_places[c].Distance < least)
                (deepest, least) = (c, _places[c].Distance);
        }

        if (deepest < 0)
            return true;
        var at = touches.FindIndex(touch => touch.Circle > deepest);
        touches.Insert(at < 0 ? touches.Count : at, _places[deepest] with { Force = 0 });
        return false;
    }

    private int? Deepest(int front, int? landed)
    {
        int? deepest = null;
        var least = Circles.RadiusMm - Penetration;
        for (var c = front + 1; c < Circles.Centres.Length; c++)
        {
            if (c == landed)
                continue;
            _places[c].FindBeyond(Strip, Circles.Centres[c], _places[c - 1]);
            if (_places[c].Distance < least)
                (deepest, least) = (c, _places[c].Distance);
        }

        return deepest;
    }

    // The panel arches a little over the folds, and what it arches it takes from the sheet ahead.
    private bool IsTooShort(int front)
    {
        var ahead = Strip.Along[^1] - TouchedAt(front);
        for (var j = front; j < Circles.Form.Folds - 1; j++)
            ahead -= Circles.Spans[j];
        return !(ahead > 0) || IsAtHand(front);
    }

    // From there on the fold lies past the hand, and the sheet's end has no arm to press it down with.
    private bool IsAtHand(int circle) =>
        _places[circle].Element == Strip.Lengths.Length - 1 && _places[circle].Inside >= Strip.Lengths[^1] * (1 - 1e-9);

    private bool IsCurledUp(int front) => Strip.Heading[^1] - Strip.Heading[_places[front].Element] > MostCurl;
}
