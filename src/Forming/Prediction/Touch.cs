namespace Forming.Prediction;

/// <summary>The place of the strip that is nearest to a fold's centre, and the force with which the fold presses there.</summary>
internal struct Touch
{
    /// <summary>The slide of a touched place along the strip is not let grow beyond this where the strip lies on the fold.</summary>
    public const double LeastSlack = 0.02;

    /// <summary>Number of the circle.</summary>
    public required int Circle { get; init; }

    /// <summary>Element that holds the place.</summary>
    public required int Element { get; set; }

    /// <summary>Distance from the element's first node [mm].</summary>
    public double Inside { get; private set; }

    /// <summary>Distance from the centre, positive on the strip's left [mm].</summary>
    public double Distance { get; private set; }

    /// <summary>Direction of the strip there.</summary>
    public Point Tangent { get; private set; }

    /// <summary>Force of the fold on the strip [N/mm].</summary>
    public double Force { get; set; }

    /// <summary>Finds the place from where it was last.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="centre">The circle's centre.</param>
    public void Find(Strip strip, Point centre) => Find(strip, centre, 0);

    /// <summary>Finds the first such place beyond another one.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="centre">The circle's centre.</param>
    /// <param name="before">The other one.</param>
    public void FindBeyond(Strip strip, Point centre, in Touch before)
    {
        (Element, Inside) = (before.Element, before.Inside);
        Find(strip, centre, before.Element);
    }

    private void Find(Strip strip, Point centre, int least)
    {
        var e = Element;
        while (e + 1 < strip.Lengths.Length && IsAhead(strip, e + 1, centre))
            e++;
        while (e > least && !IsAhead(strip, e, centre))
            e--;
        var h = strip.Lengths[e];
        var inside = e == Element ? Inside : h / 2;
        for (var i = 0; i < 20; i++)
        {
            var place = strip.PlaceIn(e, inside, out var heading);
            (Tangent, var to) = (Point.Along(heading), centre - place);
            Distance = Tangent.Cross(to);
            var slack = Math.Max(1 - (strip.Curvature(e) * Distance), LeastSlack);
            var next = Math.Clamp(inside + (Tangent.Dot(to) / slack), 0, h);
            var step = Math.Abs(next - inside);
            inside = next;
            if (step < 1e-10 * h)
                break;
        }

        (Element, Inside) = (e, inside);
    }

    private static bool IsAhead(Strip strip, int node, Point centre)
    {
        var to = centre - strip.Position[node];
        return Point.Along(strip.Heading[node]).Dot(to) > 0;
    }
}
