using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Parts;

/// <summary>A flat thing at 1:1, for every writer. Frame: mm, y up, as seen from the face that is named.</summary>
/// <param name="Kind">Which part it is, in capitals: the first word of its layers.</param>
/// <param name="Name">Its name, for headings.</param>
/// <param name="About">How it is seen and used, in a sentence or two.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Edges">Edges that are named on paper.</param>
/// <param name="Notes">Words on it.</param>
/// <param name="Copies">What each copy is called; one copy without a name where empty.</param>
/// <param name="RunsDown">Whether x runs down a page, as on a blank, and not to the right.</param>
/// <param name="LabelsBeside">Whether labels of lines lie beside it, at greater y, and not on it.</param>
internal sealed record FlatPart(
    string Kind,
    string Name,
    string About,
    IReadOnlyList<PartLine> Lines,
    IReadOnlyList<NamedEdge> Edges,
    IReadOnlyList<PartNote> Notes,
    IReadOnlyList<string> Copies,
    bool RunsDown = false,
    bool LabelsBeside = false)
{
    /// <summary>Corner of least x and y of what is drawn [mm].</summary>
    public Point Least => new(Drawn.Min(point => point.X), Drawn.Min(point => point.Y));

    /// <summary>Corner of greatest x and y of what is drawn [mm].</summary>
    public Point Most => new(Drawn.Max(point => point.X), Drawn.Max(point => point.Y));

    /// <summary>Points of all that is drawn [mm].</summary>
    public IEnumerable<Point> Drawn => Lines.SelectMany(line => line.Points).Concat(Notes.SelectMany(note => note.Corners()));
}

/// <summary>What a line of a part is for.</summary>
internal enum LineRole
{
    /// <summary>Edge to cut.</summary>
    Outline,

    /// <summary>Fold centre line.</summary>
    Fold,

    /// <summary>Bend tangent line.</summary>
    Tangent,

    /// <summary>Line set under the nose.</summary>
    Sight,

    /// <summary>Registration mark.</summary>
    Mark,

    /// <summary>Straight-edged sheet that a blank is cut from, on which its marks are.</summary>
    Stock,

    /// <summary>Leads from a line to its words.</summary>
    Leader,
}

/// <summary>A line of a part.</summary>
/// <param name="Role">What it is for.</param>
/// <param name="Points">[n] points, n ≥ 2 [mm].</param>
/// <param name="IsClosed">Whether the last point joins the first.</param>
/// <param name="Label">What it is called and set by, or null.</param>
internal sealed record PartLine(LineRole Role, IReadOnlyList<Point> Points, bool IsClosed = false, LineLabel? Label = null)
{
    /// <summary>A straight line.</summary>
    /// <param name="role">What it is for.</param>
    /// <param name="line">The line.</param>
    /// <param name="label">What it is called, or null.</param>
    public static PartLine Of(LineRole role, Segment line, LineLabel? label = null) => new(role, [line.Start, line.End], Label: label);

    /// <summary>The straight pieces of the line.</summary>
    public IEnumerable<Segment> Pieces()
    {
        for (var i = 1; i < Points.Count; i++)
            yield return new(Points[i - 1], Points[i]);
        if (IsClosed)
            yield return new(Points[^1], Points[0]);
    }
}

/// <summary>What a line is called and what it is set by.</summary>
/// <param name="Number">Number or short name.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Settings">What the brake is set to there, or nothing.</param>
/// <param name="Station">Number of its station, or null.</param>
internal sealed record LineLabel(string Number, string Place, string Settings = "", int? Station = null)
{
    /// <summary>All of it in a line.</summary>
    public string Whole => string.Join("   ", new[] { Number, string.Join(", ", new[] { Place, Settings }.Where(Has)) }.Where(Has));

    private static bool Has(string text) => text.Length > 0;
}

/// <summary>A named edge of a blank.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Points">[n] points [mm].</param>
internal sealed record NamedEdge(string Name, IReadOnlyList<Point> Points);

/// <summary>Words on a part.</summary>
/// <param name="At">Left end of the baseline, or its middle [mm].</param>
/// <param name="Text">The words.</param>
/// <param name="SizeMm">Size of the type [mm].</param>
/// <param name="TurnDegrees">Turned counter-clockwise [°].</param>
/// <param name="IsMiddle">Whether the place is the middle of the words.</param>
internal sealed record PartNote(Point At, string Text, double SizeMm, double TurnDegrees = 0, bool IsMiddle = false)
{
    /// <summary>Left end of the baseline [mm].</summary>
    public Point Start() =>
        IsMiddle ? At - (0.5 * Typeface.Regular.Width(Text, SizeMm) * Point.Along(Angle.FromDegrees(TurnDegrees).Radians)) : At;

    /// <summary>Corners of the box around the words [mm].</summary>
    public IEnumerable<Point> Corners()
    {
        var along = Point.Along(Angle.FromDegrees(TurnDegrees).Radians);
        var width = Typeface.Regular.Width(Text, SizeMm) * along;
        Point from = Start(), up = 0.75 * SizeMm * along.Left(), down = -0.22 * SizeMm * along.Left();
        return [from + up, from + down, from + width + up, from + width + down];
    }
}
