using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;

namespace Forming.Tapers;

/// <summary>A tapered form and its panel in space, for pictures and solids: matching points along both ends.</summary>
/// <param name="FormNear">[folds + 2] contact-side mold lines at the near end, leads at the ends [mm].</param>
/// <param name="FormFar">[folds + 2] the same at the far end [mm].</param>
/// <param name="PanelNear">[n] inside face of the panel on the form, near end [mm].</param>
/// <param name="PanelFar">[n] the same at the far end [mm].</param>
/// <param name="FinishedNear">[n] inside face of the finished panel, near end [mm].</param>
/// <param name="FinishedFar">[n] the same at the far end [mm].</param>
public sealed record TaperSolid(
    IReadOnlyList<Point3> FormNear,
    IReadOnlyList<Point3> FormFar,
    IReadOnlyList<Point3> PanelNear,
    IReadOnlyList<Point3> PanelFar,
    IReadOnlyList<Point3> FinishedNear,
    IReadOnlyList<Point3> FinishedFar)
{
    /// <summary>The form as plane facets hinged at its mold lines.</summary>
    /// <param name="stations">Its folds, from the lead-in.</param>
    public HingedForm Hinged(IReadOnlyList<Station> stations) =>
        HingedForm.Unfolded(FormNear, FormFar, [.. stations.Select(station => station.FoldAngle.Radians)]);
}

/// <summary>A tapered form and its panel in space.</summary>
internal static class TaperSolids
{
    private const int PanelSamples = 96;

    public static TaperSolid Of(FormedPanel formed, TaperFolds folds, FoldShape fold, PanelSpec panel, FormSpec form)
    {
        var (formNear, formFar) = MoldLines(folds, fold, form);
        var (panelNear, panelFar) = InsideFace(formed, panel);
        var (finishedNear, finishedFar) = InsideFace(FormedPanel.Solve(formed.Panel, _ => 1), panel);
        return new(formNear, formFar, panelNear, panelFar, finishedNear, finishedFar);
    }

    /// <summary>The near end seen along the folds.</summary>
    public static Section NearSection(TaperSolid solid, TaperFolds folds, FoldShape fold)
    {
        var inside = new List<Point>(2 * folds.Angles.Length + 2);
        var tf = fold.ThicknessMm;
        inside.Add(Flat(solid.FormNear[0] - (tf * folds.Planes[0].Normal)));
        for (var j = 0; j < folds.Angles.Length; j++)
        {
            inside.Add(Flat(folds.Near[j] + (fold.RadiusMm * folds.Planes[j].Normal)));
            inside.Add(Flat(folds.Near[j] + (fold.RadiusMm * folds.Planes[j + 1].Normal)));
        }

        inside.Add(Flat(solid.FormNear[^1] - (tf * folds.Planes[^1].Normal)));
        return new([.. solid.FormNear.Select(Flat)], [.. solid.PanelNear.Skip(1).SkipLast(1).Select(Flat)], inside);
    }

    public static bool RunsIntoItself(TaperSolid solid, CancellationToken cancellation) =>
        FormSection.CrossesItself([.. solid.FormNear.Select(Flat)], cancellation)
            || FormSection.CrossesItself([.. solid.FormFar.Select(Flat)], cancellation);

    private static Point Flat(Point3 point) => new(point.X, point.Y);

    // Contact-side mold lines are where neighbouring planes, moved out by a fold's outside radius, meet.
    private static (Point3[] Near, Point3[] Far) MoldLines(TaperFolds folds, FoldShape fold, FormSpec form)
    {
        var count = folds.Angles.Length;
        Point3[] near = new Point3[count + 2], far = new Point3[count + 2];
        for (var j = 0; j < count; j++)
        {
            var before = folds.Planes[j].MovedOut(fold.OuterRadiusMm);
            var after = folds.Planes[j + 1].MovedOut(fold.OuterRadiusMm);
            near[j + 1] = before.FootOnMeetingLine(after, folds.Near[j]);
            far[j + 1] = before.FootOnMeetingLine(after, folds.Far[j]);
        }

        var leadIn = Lead(folds.LeadIn, folds.Far[0] - folds.Near[0], form.LeadInMm);
        var leadOut = Lead(folds.LeadOut, folds.Far[^1] - folds.Near[^1], form.LeadOutMm);
        (near[0], far[0]) = (near[1] - leadIn, far[1] - leadIn);
        (near[^1], far[^1]) = (near[^2] + leadOut, far[^2] + leadOut);
        return (near, far);
    }

    private static (Point3[] Near, Point3[] Far) InsideFace(FormedPanel formed, PanelSpec panel)
    {
        Point3[] near = new Point3[PanelSamples + 3], far = new Point3[PanelSamples + 3];
        for (var i = 0; i <= PanelSamples; i++)
        {
            var turn = formed.Panel.Sweep * i / PanelSamples;
            var triad = formed.TriadAt(turn);
            near[i + 1] = formed.NearAt(turn) - (panel.Sheet.ThicknessMm / 2 * triad.N);
            far[i + 1] = near[i + 1] + (formed.Panel.At(turn).Length * triad.E);
        }

        var leadIn = Lead(TaperFolds.EdgeTangent(formed, 0), far[1] - near[1], panel.LeadInMm);
        var leadOut = Lead(TaperFolds.EdgeTangent(formed, formed.Panel.Sweep), far[^2] - near[^2], panel.LeadOutMm);
        (near[0], far[0]) = (near[1] - leadIn, far[1] - leadIn);
        (near[^1], far[^1]) = (near[^2] + leadOut, far[^2] + leadOut);
        return (near, far);
    }

    // A lead's width is square to its end line; its ends run on along the edge.
    private static Point3 Lead(Point3 tangent, Point3 line, double width)
    {
        var along = tangent.Dot(line.Unit());
        return width / Math.Sqrt(1 - (along * along)) * tangent;
    }
}
