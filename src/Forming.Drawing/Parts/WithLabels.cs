using Forming.Drawing.Sheets;

namespace Forming.Drawing.Parts;

/// <summary>Puts the words of a blank's lines past the blank, one beside the other, each led to its line.</summary>
internal static class WithLabels
{
    private const double TextMm = 3;
    private const double Pitch = 1.35 * TextMm;
    private const double LeaderMm = 8;
    private const double EdgeMm = 3;

    /// <summary>The part with the words of its lines and edges as notes.</summary>
    /// <param name="part">The part.</param>
    public static FlatPart Of(FlatPart part)
    {
        var labelled = part.Lines.Where(line => line.Label is not null).OrderBy(line => line.Points[^1].X).ToArray();
        if (labelled.Length == 0)
            return part;
        // Baselines run up the page, so each lies half its height to the right of its line.
        var places = LabelSpacing.Apart(
            [.. labelled.Select(line => line.Points[^1].X)], Pitch, double.NegativeInfinity, double.PositiveInfinity);
        List<PartLine> lines = [.. part.Lines];
        List<PartNote> notes = [.. part.Notes];
        for (var i = 0; i < labelled.Length; i++)
        {
            var (end, label) = (labelled[i].Points[^1], labelled[i].Label!);
            var foot = new Point(places[i], part.Most.Y + LeaderMm);
            lines.Add(new(LineRole.Leader, [end, foot]));
            notes.Add(new(foot + new Point(0.36 * TextMm, 1.5), label.Whole, TextMm, TurnDegrees: 90));
        }

        foreach (var edge in part.Edges)
            notes.Add(NoteOf(edge, 0.5 * (part.Least + part.Most), labelled[0].Points[^1].X));
        return part with { Lines = lines, Notes = notes, Edges = [] };
    }

    // Outside the blank: along the middle of the edge, or before the first line where lines are led out across it.
    private static PartNote NoteOf(NamedEdge edge, Point middle, double firstLine)
    {
        Point from = edge.Points[0], to = edge.Points[^1];
        var along = to - from;
        var turn = Math.Atan2(along.Y, along.X);
        var at = edge.Points[edge.Points.Count / 2];
        at = edge.Points.Count == 2 ? 0.5 * (from + to) : at;
        var lead = edge.Points[1] - from;
        if (Math.Abs(lead.X) > Math.Abs(lead.Y) && firstLine > from.X)
            at = from + (Math.Min(1, (firstLine - from.X) / lead.X) / 2 * lead);
        var outward = (1 / along.Length * along).Left();
        if (outward.Dot(at - middle) < 0)
            outward = -1 * outward;
        // Letters stand on their baseline, to the left of the way they run.
        var isUp = outward.Dot(Point.Along(turn).Left()) > 0;
        return new(at + ((isUp ? EdgeMm : EdgeMm + TextMm) * outward), edge.Name, TextMm, new Angle(turn).Degrees, IsMiddle: true);
    }
}
