using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;

namespace Forming.Programs.Brakes;

/// <summary>The flat of a tapered form: where its fold lines and its edges lie, in the plan's sheet frame.</summary>
/// <param name="Lines">[n] the folds.</param>
/// <param name="LeadIn">Near and far corner of the lead-in's edge [mm].</param>
/// <param name="LeadOut">Near and far corner of the lead-out's edge [mm].</param>
/// <param name="LengthMm">Length of the straight-edged sheet that holds it, along its long edges [mm].</param>
/// <param name="HeightMm">Distance of its long edges, the near one and the far one [mm].</param>
/// <param name="Marks">How it is marked.</param>
public sealed record TaperFlat(
    IReadOnlyList<FoldLine> Lines,
    (Point Near, Point Far) LeadIn,
    (Point Near, Point Far) LeadOut,
    double LengthMm,
    double HeightMm,
    MarkSpec Marks)
{
    internal static TaperFlat Of(PlannedForm form, MarkSpec marks)
    {
        // The outline runs along the near edge to the lead-out and back along the far one.
        var (lines, outline) = (form.Stations.Select(station => station.Line!).ToArray(), form.Blank.Outline);
        var leadOut = (2 * lines.Length) + 1;
        return new(
            lines, (outline[0], outline[^2]), (outline[leadOut], outline[leadOut + 1]), form.Blank.LengthMm, form.Blank.WidthMm, marks);
    }

    /// <summary>The side of a fold's strip that lies towards an edge of the part.</summary>
    internal (Point Near, Point Far) Side(int fold, PartEdge towards)
    {
        var line = Lines[fold];
        return towards == PartEdge.End ? (line.SecondTangentNear, line.SecondTangentFar) : (line.FirstTangentNear, line.FirstTangentFar);
    }

    /// <summary>An edge of the part.</summary>
    internal (Point Near, Point Far) Edge(PartEdge edge) => edge == PartEdge.End ? LeadOut : LeadIn;

    /// <summary>
    /// How far the part is swung level from one fold's line to another's, facet by facet: above 0 anticlockwise, seen from above, the
    /// inside face up.
    /// </summary>
    /// <param name="from">The one, from 0.</param>
    /// <param name="to">The other, from 0.</param>
    internal Angle Swing(int from, int to)
    {
        // The flat is seen from the contact face, which lies below at the brake.
        Point one = Lines[from].Far - Lines[from].Near, other = Lines[to].Far - Lines[to].Near;
        return new(Math.Atan2(one.Cross(other), one.Dot(other)));
    }

    /// <summary>Where the line set under the nose, or under the punch tip, crosses the sheet's long edges, from the datum.</summary>
    /// <param name="fold">The fold.</param>
    /// <param name="clamped">The edge that is clamped behind the nose; null for a punch, which meets the fold in its middle.</param>
    /// <param name="sightMm">From the tangent line under the nose to the sight line [mm].</param>
    internal LineMarks MarksOf(int fold, PartEdge? clamped, double sightMm)
    {
        var (near, far) = LineSet(fold, clamped, sightMm);
        return new(At(0), At(HeightMm));

        TapeMark At(double height)
        {
            var place = Marks.FromDatum(near.X + ((far.X - near.X) * (height - near.Y) / (far.Y - near.Y)), LengthMm);
            return new(place, TapeReading.Of(place, Marks.Tape).Text);
        }
    }

    /// <summary>From the middle of that line, square to it, to the middle of an edge, on the flat [mm].</summary>
    /// <param name="fold">The fold.</param>
    /// <param name="edge">The edge.</param>
    /// <param name="clamped">The edge that is clamped behind the nose; null for a punch.</param>
    /// <param name="sightMm">From the tangent line under the nose to the sight line [mm].</param>
    internal double ToEdgeMm(int fold, PartEdge edge, PartEdge? clamped, double sightMm)
    {
        var (near, far) = LineSet(fold, clamped, sightMm);
        var (edgeNear, edgeFar) = Edge(edge);
        return Math.Abs((far - near).Cross(0.5 * (edgeNear + edgeFar - near - far))) / (far - near).Length;
    }

    private (Point Near, Point Far) LineSet(int fold, PartEdge? clamped, double sightMm)
    {
        if (clamped is not { } behind)
            return (Lines[fold].Near, Lines[fold].Far);
        var (near, far) = Side(fold, behind);
        var forward = (behind == PartEdge.Start ? -sightMm : sightMm) / (far - near).Length * (far - near).Left();
        return (near + forward, far + forward);
    }
}

/// <summary>Where a line is marked on the long edges of the straight-edged sheet, from the plan's datum.</summary>
/// <param name="Near">On the near edge.</param>
/// <param name="Far">On the far edge.</param>
public sealed record LineMarks(TapeMark Near, TapeMark Far);

/// <summary>A place on an edge.</summary>
/// <param name="Mm">From the datum [mm].</param>
/// <param name="Text">The same as it reads on the tape.</param>
public readonly record struct TapeMark(double Mm, string Text);
