using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Parts;

/// <summary>Templates to hold against the form and the panel.</summary>
internal static class GaugeParts
{
    /// <summary>So much of a flat is enough to hold a template by [mm].</summary>
    private const double LeadMm = 100;

    private const double GapMm = 15;
    private const double TextMm = 3.2;
    private const double LineMm = 4.6;
    private const double LeastRoomMm = 30;

    /// <summary>The template for the folded form: its corners are the mold lines, so it touches the flats and clears the folds.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart CheckTemplate(DrawingJob job)
    {
        RefuseTaper(job, "a template for a tapered form is not drawn: its ends are not plane");
        var corners = ShortLeads(job.Plan.Form.Section.Vertices);
        return Of(
            job,
            "TEMPLATE",
            "Check template for the form",
            string.Create(CultureInfo.InvariantCulture, $"Hold it against the contact face, square to the folds, numbers in order from the lead-in; it touches the flats and clears the folds. {job.Plan.Form.Stations.Count} folds, sweep {Readout.Degrees(job.Plan.Form.Sweep)}."),
            isInside: false,
            [("", corners)],
            FoldNumbers(corners));
    }

    /// <summary>The gauge for the inside of the finished panel.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart Inside(DrawingJob job) => Of(
        job,
        "GAUGE",
        "Gauge for the inside of the finished panel",
        "Hold it in the bend, square across, when the panel is let go." + Half(job),
        isInside: true,
        [.. EndShapes.Finished(job).Select(end => (end.Name, ShortLeads(end.Section.Inner)))],
        []);

    /// <summary>The gauge for the outside of the finished panel.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart Outside(DrawingJob job) => Of(
        job,
        "GAUGE",
        "Gauge for the outside of the finished panel",
        "Hold it over the bend, square across, when the panel is let go." + Half(job),
        isInside: false,
        [.. EndShapes.Finished(job).Select(end => (end.Name, ShortLeads(end.Section.Outer)))],
        []);

    /// <summary>The gauge for the outside of the panel while it is pulled.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart Pulled(DrawingJob job)
    {
        RefuseTaper(job, "a gauge for a tapered panel as pulled is not drawn: its ends are not plane on the form");
        return Of(
            job,
            "GAUGE",
            "Gauge for the panel as pulled",
            "Hold it over the panel while it is pulled onto the form and not let go yet." + Half(job),
            isInside: false,
            [("", ShortLeads(PanelShape.Pulled(job).Outer))],
            []);
    }

    private static FlatPart Of(
        DrawingJob job,
        string kind,
        string name,
        string about,
        bool isInside,
        IReadOnlyList<(string End, Point[] Edge)> ends,
        IEnumerable<PartNote> numbers)
    {
        List<PartLine> lines = [];
        List<PartNote> notes = [.. numbers];
        var top = double.NaN;
        foreach (var (end, edge) in ends)
        {
            if (TemplateBody.Of(edge, isInside) is not { } body)
                throw FlatParts.None($"the bend curls up too far for a template of one piece", $"ask for the gauge of the other face");
            // One end below the other.
            var shift = double.IsNaN(top) ? Point.Origin : new Point(0, top - GapMm - body.Outline.Max(point => point.Y));
            lines.Add(new(LineRole.Outline, [.. body.Outline.Select(point => point + shift)], IsClosed: true));
            string[] words = [end.Length == 0 ? name : $"{name}, {end}", job.About, Short(job.Fingerprint)];
            var placed = body.DepthMm is { } depth ? AlongLeadIn(words, edge, depth, isInside) : AlongChord(words, edge);
            notes.AddRange(placed.Select(note => note with { At = note.At + shift }));
            top = lines[^1].Points.Min(point => point.Y);
        }

        return new(kind, name, about, lines, [], notes, []);
    }

    // On the flat of the lead-in, where there is room for words.
    private static IEnumerable<PartNote> AlongLeadIn(string[] words, Point[] edge, double depthMm, bool isInside)
    {
        var room = edge[1].X - edge[0].X - 6;
        if (room < LeastRoomMm)
            return [];
        var lines = words.SelectMany(text => Paragraph.Lines(text, room, TextMm)).Take((int)((depthMm - 4) / LineMm)).ToArray();
        var first = edge[0] + new Point(3, isInside ? 3 + ((lines.Length - 1) * LineMm) : -3 - TextMm);
        return lines.Select((text, i) => new PartNote(first - new Point(0, i * LineMm), text, TextMm));
    }

    // Half-way between the chord and the place of the edge that is furthest from it: there half the chord is clear.
    private static IEnumerable<PartNote> AlongChord(string[] words, Point[] edge)
    {
        var chord = edge[^1] - edge[0];
        var along = Unit(chord);
        var room = 0.45 * chord.Length;
        if (room < LeastRoomMm)
            return [];
        var furthest = edge.MaxBy(point => (point - edge[0]).Cross(along));
        var off = furthest - edge[0];
        var middle = furthest - (0.5 * off.Dot(along.Left()) * along.Left());
        var lines = words.SelectMany(text => Paragraph.Lines(text, room, TextMm)).Take(4).ToArray();
        var turn = new Angle(Math.Atan2(along.Y, along.X)).Degrees;
        return lines.Select((text, i) => new PartNote(
            middle + ((((lines.Length / 2.0) - 1 - i) * LineMm) * along.Left()), text, TextMm, turn, IsMiddle: true));
    }

    private static string Short(string fingerprint) => fingerprint[..Math.Min(fingerprint.Length, 19)];

    private static IEnumerable<PartNote> FoldNumbers(Point[] corners)
    {
        var count = corners.Length - 2;
        var closest = double.PositiveInfinity;
        for (var i = 2; i <= count; i++)
            closest = Math.Min(closest, (corners[i] - corners[i - 1]).Length);
        var every = count < 2 || closest >= 5 ? 1 : (int)Math.Ceiling(5 / closest);
        for (var i = 1; i <= count; i++)
        {
            if (i != 1 && i != count && i % every != 0)
                continue;
            Point before = Unit(corners[i] - corners[i - 1]), after = Unit(corners[i + 1] - corners[i]);
            var outward = -1 * Unit(before + after).Left();
            yield return new(
                corners[i] + (4.5 * outward) - new Point(0, 0.36 * TextMm),
                i.ToString(CultureInfo.InvariantCulture),
                TextMm,
                IsMiddle: true);
        }
    }

    private static Point Unit(Point vector) => 1 / vector.Length * vector;

    private static Point[] ShortLeads(IReadOnlyList<Point> edge)
    {
        Point[] cut = [.. edge];
        Point first = edge[0] - edge[1], last = edge[^1] - edge[^2];
        if (first.Length > LeadMm)
            cut[0] = edge[1] + (LeadMm * Unit(first));
        if (last.Length > LeadMm)
            cut[^1] = edge[^2] + (LeadMm * Unit(last));
        return cut;
    }

    private static string Half(DrawingJob job) => job.Panel.Mirrored ? " One half; the other is alike, turned round." : "";

    private static void RefuseTaper(DrawingJob job, string why)
    {
        if (job.Plan.Taper is not null)
            throw FlatParts.None($"{why}", $"part=gauge-inside or part=gauge-outside, which are drawn for both ends of the finished panel");
    }
}
