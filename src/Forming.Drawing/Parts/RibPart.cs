using System.Globalization;

namespace Forming.Drawing.Parts;

/// <summary>The ribs that back a form: cut to its inside, with a notch at the end of each flat that a rib reaches.</summary>
internal static class RibPart
{
    /// <summary>How far a notch's far side runs on past the flat's edge [mm].</summary>
    private const double LipMm = 10;

    /// <summary>The far side of a notch stays so far below the contact face [mm].</summary>
    private const double BelowMm = 0.3;

    /// <summary>A rib is at least so deep at the end of the form [mm].</summary>
    private const double BackMm = 30;

    private const double TextMm = 3.2;

    /// <summary>Lays one rib out, and says how many to cut.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart Of(DrawingJob job)
    {
        if (job.Plan.Taper is not null)
            throw FlatParts.None($"a tapered form has no ribs here: their outline changes from end to end", $"ask for another part");
        if (job.Plan.Form.Ribs is not { } ribs)
            throw FlatParts.None($"this form has no ribs: it is planned to do without them", $"set form.backing to ribs, or ask for another part");
        if (ribs.Outline.Count == 0)
            throw FlatParts.None($"the form curls up too far for a rib of one piece", $"cut blocks to the folded form by hand");
        var outline = Notched(job, ribs.Outline);
        var count = ribs.AtMm.Count;
        return new(
            "RIB",
            "Rib under the form",
            string.Create(CultureInfo.InvariantCulture, $"Cut {count} alike and number them. Its edge fits the inside of the form from the clamp on; the notch takes the end of the lead flat."),
            [new(LineRole.Outline, outline, IsClosed: true)],
            [],
            [
                // Up along its back, above the numbers of the first folds.
                new(
                    ribs.Outline[0] + new Point(2.5 + TextMm, 16),
                    string.Create(CultureInfo.InvariantCulture, $"rib, {count} alike"),
                    TextMm,
                    TurnDegrees: 90),
                .. Numbers(job, outline),
            ],
            [.. ribs.AtMm.Select((at, i) => string.Create(CultureInfo.InvariantCulture, $"rib {i + 1} of {count}, {job.Readout.LengthWithUnit(at)} from one edge"))]);
    }

    // A fold's inside is an arc from one corner to the next.
    private static IEnumerable<PartNote> Numbers(DrawingJob job, Point[] outline)
    {
        var profile = job.Plan.Form.Section.InsideProfile;
        var kept = outline.ToHashSet();
        var last = new Point(double.NegativeInfinity, 0);
        for (var j = 0; j < job.Plan.Form.Stations.Count; j++)
        {
            Point from = profile[(2 * j) + 1], to = profile[(2 * j) + 2], middle = 0.5 * (from + to);
            var heading = Math.Atan2(to.Y - from.Y, to.X - from.X);
            var place = middle + (4.5 * Point.Along(heading).Left()) - new Point(0, 0.36 * TextMm);
            // Not on its neighbour, and not on the back of the rib.
            var isClear = (middle - last).Length >= 5 && place.X >= outline[0].X + TextMm;
            if (!isClear || !kept.Contains(from) || !kept.Contains(to))
                continue;
            yield return new(
                place,
                (j + 1).ToString(CultureInfo.InvariantCulture),
                TextMm,
                IsMiddle: true);
            last = middle;
        }
    }

    private static Point[] Notched(DrawingJob job, IReadOnlyList<Point> outline)
    {
        var profile = job.Plan.Form.Section.InsideProfile;
        var thickness = job.Form.Sheet.ThicknessMm;
        var deep = thickness - Math.Min(BelowMm, thickness / 4);
        List<Point> notched = [];
        // A clamp behind the lead-in's edge leaves that edge to the rib too.
        if (outline[0] == profile[0])
        {
            notched.Add(outline[0] - new Point(LipMm, 0));
            notched.Add(outline[0] - new Point(LipMm, deep));
            notched.Add(outline[0] - new Point(0, deep));
        }

        foreach (var corner in outline)
        {
            notched.Add(corner);
            if (corner != profile[^1])
                continue;
            var along = profile[^1] - profile[^2];
            along = 1 / along.Length * along;
            var (outward, lip) = (-deep * along.Left(), LipMm * along);
            notched.AddRange([corner + outward, corner + outward + lip, corner + lip]);
            var inward = along.Left();
            if (inward.Y <= 0)
                continue;
            // A form that ends before it is upright would leave the rib no more than an edge there.
            var most = inward.X < 0 ? 0.8 * (corner.X + lip.X - outline[0].X) / -inward.X : BackMm;
            var back = corner + lip + (Math.Min(BackMm, most) * inward);
            notched.AddRange([back, new(outline[0].X, back.Y)]);
            break;
        }

        return [.. notched];
    }
}
