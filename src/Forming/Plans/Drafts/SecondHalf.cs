using Forming.Contact;
using Forming.Curves;
using Forming.Jobs;
using Forming.Layout;
using Forming.Pulling;
using Forming.Results;

namespace Forming.Plans.Drafts;

/// <summary>What the finished half of a mirrored panel does while the second half is pulled: it swings with the free side.</summary>
/// <param name="MassKg">Mass of the finished half, its curve, lead-in and trim [kg].</param>
/// <param name="WeightMomentNmm">Largest moment of its weight about the fold that the panel lies on, against the pull [N·mm]; 0 where it
/// never hinders.</param>
/// <param name="ForceN">Largest hand force, its weight in it, whole width [N].</param>
/// <param name="ClearanceMm">Least distance from form, clamp and bench all the way round [mm]; 0 where it strikes them.</param>
/// <remarks>
/// Bench level, under the whole swing; the free side straight and tangent to the fold it lies on, which takes the weight's arm a
/// little too long. Statics and geometry; the weight of the flat in between is left out, as in the first pull.
/// </remarks>
internal sealed record SecondHalf(double MassKg, double WeightMomentNmm, double ForceN, double ClearanceMm)
{
    /// <summary>The swing is looked at this often [rad].</summary>
    private const double LargestStep = Math.PI / 36;

    /// <summary>Follows the finished half through the second pull.</summary>
    /// <param name="finished">The finished curve on the mid surface.</param>
    /// <param name="contact">The contact curve.</param>
    /// <param name="section">The form in section.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="pull">The first pull; the second has at most the flat between the curves as lever.</param>
    /// <param name="leastLeverMm">Shortest lever a force is reckoned with, one facet [mm], &gt; 0.</param>
    public static SecondHalf Of(
        FinishedCurve finished, ContactCurve contact, Section section, PanelSpec panel, Pull pull, double leastLeverMm)
    {
        var half = FinishedHalf.Of(finished, panel);
        var mass = half.LengthMm * panel.WidthMm * panel.Sheet.ThicknessMm * panel.Sheet.Material.DensityKgPerCubicMetre * 1e-9;
        var obstacles = Obstacles(section, panel.Clamp, pull.ClampGapMm);
        var lever = Math.Max(Math.Min(pull.LeverMm, panel.LeadOutMm), leastLeverMm);
        double largestMoment = 0, force = 0, clearance = double.PositiveInfinity;
        foreach (var place in contact.Runs.SelectMany(Stages))
        {
            var stillToWrap = contact.MidMm - place.MidMm;
            var heading = Point.Along(place.Turn);
            var start = place.Position + ((panel.LeadOutMm + stillToWrap) * heading);
            var moment = mass * WorkingLimits.Gravity * Math.Max(
                0, FinishedHalf.PlacedAt(half.Centre, start, heading).X - place.Position.X);
            largestMoment = Math.Max(largestMoment, moment);
            force = Math.Max(
                force, ((PullForces.ForceFactor * place.State.MomentPerWidth * panel.WidthMm) + moment) / (lever + stillToWrap));
            clearance = half.Clearance(start, place.Turn, obstacles, -panel.Sheet.ThicknessMm, clearance);
        }

        return new(mass, largestMoment, force, clearance);
    }

    /// <summary>Even steps of the turn along a stretch, both its ends among them.</summary>
    /// <param name="run">The stretch.</param>
    public static IEnumerable<ContactPoint> Stages(CurvedRun run)
    {
        var steps = (int)Math.Ceiling(run.Turn / LargestStep);
        return Enumerable.Range(0, steps + 1).Select(i => run.At(CurveMeasure.TurnedAngle, run.Turn * i / Math.Max(1, steps)));
    }

    // The form's inside face with the tips of its contact side, and the clamp on its lead-in.
    private static FinishedHalf.Obstacle[] Obstacles(Section section, Clamp clamp, double clampGapMm)
    {
        var inside = section.InsideProfile;
        Point[] form = [section.Vertices[0], .. inside, section.Vertices[^1]];
        double left = inside[0].X, right = inside[1].X - clampGapMm, bottom = inside[0].Y, top = bottom + clamp.HeightMm;
        Point[] block = right > left ? [new(right, bottom), new(right, top), new(left, top), new(left, bottom)] : [];
        return [.. FinishedHalf.Obstacle.Along(form), .. FinishedHalf.Obstacle.Along(block)];
    }
}
