using Forming.Contact;
using Forming.Facets;
using Forming.Springback;

namespace Forming.Pulling;

/// <summary>How far the form itself gives under the pull.</summary>
/// <param name="Rotation">Largest rotation of the form's end.</param>
/// <param name="MomentPerWidth">Largest moment the form carries, per width of it [N·mm/mm].</param>
/// <param name="FirstYieldPerWidth">Moment at which the form's sheet begins to yield [N·mm/mm].</param>
/// <param name="ClampShare">Share of the rotation that comes from the stretch between clamp and first fold.</param>
public sealed record FormGive(Angle Rotation, double MomentPerWidth, double FirstYieldPerWidth, double ClampShare)
{
    /// <summary>Largest moment over the one at which the form's sheet begins to yield.</summary>
    public double ShareOfYield => MomentPerWidth / FirstYieldPerWidth;
}

/// <summary>One section of a form, with the panel lying on it.</summary>
/// <param name="MidMm">Place along the panel's mid surface [mm].</param>
/// <param name="Position">Place on the contact curve [mm].</param>
/// <param name="Onwards">Unit vector along the panel, towards the hand.</param>
/// <param name="Inwards">Unit vector square to the panel, towards the form.</param>
/// <param name="PanelMomentNmm">Moment that the panel itself carries there, whole width [N·mm].</param>
/// <param name="TurnPerLever">How far the free side turns from here to the hand, per lever, <c>k - W/M</c> [rad/mm].</param>
public readonly record struct GiveSection(
    double MidMm, Point3 Position, Point3 Onwards, Point3 Inwards, double PanelMomentNmm, double TurnPerLever);

/// <summary>How far the form gives: it carries what the panel does not.</summary>
public static class FormGiveEstimate
{
    private const int SamplesPerPiece = 8;

    /// <summary>
    /// The form as a cantilever clamped at its lead-in: moment <c>F h - M(panel)</c>, rotation <c>∫ max(0, F h - M)/(E'I) ds</c>.
    /// </summary>
    /// <param name="sections">Sections along the curve, in order.</param>
    /// <param name="leverMm">Hand to the end of the curve [mm], &gt; 0.</param>
    /// <param name="curveMidMm">Mid-surface length of the whole curve [mm].</param>
    /// <param name="form">Bending law of the form's sheet.</param>
    /// <param name="formWidthMm">The form's width [mm].</param>
    /// <param name="clampGapMm">From the first fold's tangent line back to the clamp [mm], at least 0.</param>
    /// <remarks>
    /// With the panel on a section, the hand's lever is <c>L</c>, its force <c>F = M/L</c>, square to the panel's end, which stands
    /// <c>D = L (k - W/M)</c> further round than that section; h is the arm of that force about each section before it. The largest over
    /// the pull is taken, on an arc that of the whole wrap. A clamp a distance d behind the first fold, which pushes it up by 1.5 M/d, adds
    /// <c>0.75 M d/(E'I)</c>: 1.27° in the one case that is known, where finite elements say 1.45° and the coupled beam 1.43°. D is never more than a wrap in order can have. Finite elements with
    /// both sheets meshed and a beam coupled into the strip come to 0.75 to 1.12 of this (0.89 to 1.03 in the five cases of the tests), to
    /// two thirds where the panel springs back by as much.
    /// </remarks>
    public static FormGive Compute(
        IReadOnlyList<GiveSection> sections, double leverMm, double curveMidMm, BendingLaw form, double formWidthMm, double clampGapMm)
    {
        // Between a clamp further back and the first fold, that fold's push bends the form.
        var push = clampGapMm > 0 ? Clamp.PushFactor * sections[0].PanelMomentNmm / formWidthMm : 0;
        var tilt = clampGapMm * push / 2;
        double rotation = 0, largest = push;
        for (var last = 0; last < sections.Count; last++)
        {
            var end = sections[last];
            var lever = leverMm + curveMidMm - end.MidMm;
            var force = end.PanelMomentNmm / lever;
            var (sin, cos) = Math.SinCos(Math.Min(lever * end.TurnPerLever, PrintThrough.LargestTurn));
            var heading = (cos * end.Onwards) + (sin * end.Inwards);
            double turned = 0, lastMid = sections[0].MidMm, lastMoment = 0;
            for (var i = 0; i <= last; i++)
            {
                var section = sections[i];
                var arm = lever + (end.Position - section.Position).Dot(heading);
                var moment = Math.Max(0, ((force * arm) - section.PanelMomentNmm) / formWidthMm);
                turned += (section.MidMm - lastMid) * (moment + lastMoment) / 2;
                largest = Math.Max(largest, moment);
                (lastMid, lastMoment) = (section.MidMm, moment);
            }

            rotation = Math.Max(rotation, turned);
        }

        rotation += tilt;
        return new(new(rotation / form.Stiffness), largest, form.FirstYieldMoment, rotation > 0 ? tilt / rotation : 0);
    }

    /// <summary>The sections of a straight form.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="panelWidthMm">The panel's width [mm].</param>
    public static IReadOnlyList<GiveSection> SectionsOf(ContactCurve curve, double panelWidthMm)
    {
        var sections = new List<GiveSection>(curve.Runs.Count * (SamplesPerPiece + 1));
        foreach (var run in curve.Runs)
        {
            foreach (var place in run.Sample(SamplesPerPiece))
            {
                var onwards = Point.Along(place.Turn);
                sections.Add(new(
                    place.MidMm,
                    InSection(place.Position),
                    InSection(onwards),
                    InSection(onwards.Left()),
                    place.State.MomentPerWidth * panelWidthMm,
                    place.State.MomentPerWidth > 0 ? place.State.Curvature - (place.State.WorkPerArea / place.State.MomentPerWidth) : 0));
            }
        }

        return sections;

        static Point3 InSection(Point point) => new(point.X, point.Y, 0);
    }
}
