using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using MathNet.Numerics.Integration;

namespace Forming.Wrapping;

/// <summary>Length and registration marks of the flat panel blank.</summary>
/// <param name="LengthMm">Length of the blank [mm].</param>
/// <param name="Marks">Registration marks, in order.</param>
public sealed record PanelBlank(double LengthMm, IReadOnlyList<PanelMark> Marks)
{
    /// <summary>The published formula reaches half the thickness just past this radius over thickness.</summary>
    private const double ThinSheet = 5.02;

    private const int QuadratureOrder = 16;

    /// <summary>
    /// Lays the panel out flat: <c>trim + lead-in + s + lead-out + trim</c>, mirrored <c>2 (trim + lead-in + s) + lead-out</c>.
    /// </summary>
    /// <param name="finished">The finished curve on the mid surface.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="firstFoldMm">Where the form's first mold line lies past the first tangent line [mm].</param>
    /// <param name="leverMm">Hand to the end of the curve [mm].</param>
    public static PanelBlank Of(FinishedCurve finished, PanelSpec panel, double firstFoldMm, double leverMm)
    {
        var trim = panel.TrimMm;
        var curve = finished.LengthMm - Shortening(finished, panel.Sheet.ThicknessMm);
        var end = trim + panel.LeadInMm + curve;
        var firstTangent = trim + panel.LeadInMm + finished.LeadingFlatMm;
        List<PanelMark> half =
        [
            new("first tangent line", firstTangent),
            new("form's first fold", firstTangent + firstFoldMm),
            new("last tangent line", end - finished.TrailingFlatMm),
        ];
        // Past the sheet there is no place to mark: the check pull-line says so.
        if (leverMm <= panel.SheetPastCurveMm)
            half.Add(new("pull here", end + leverMm));
        if (trim > 0)
            half.Insert(0, new("trim line", trim));
        if (!panel.Mirrored)
        {
            var length = end + panel.LeadOutMm + trim;
            if (trim > 0)
                half.Add(new("far trim line", length - trim));
            return new(length, half);
        }

        var whole = (2 * end) + panel.LeadOutMm;
        var other = half.Select(mark => new PanelMark("second half: " + mark.Name, whole - mark.AtMm)).Reverse();
        return new(whole, [.. half, .. other]);
    }

    // Below about five thicknesses the neutral line moves in from the middle: K t in place of t/2.
    private static double Shortening(FinishedCurve finished, double thickness) => finished.Bends
        .Where(bend => bend.TightestRadiusMm - (thickness / 2) < ThinSheet * thickness)
        .Sum(bend => GaussLegendreRule.Integrate(
            u =>
            {
                var rates = bend.RatesAt(u);
                var inside = (1 / rates.Curvature) - (thickness / 2);
                return (0.5 - NeutralLine.Factor(inside, thickness)) * thickness * rates.Turn;
            },
            0,
            1,
            QuadratureOrder));
}

/// <summary>A registration mark on the flat panel blank.</summary>
/// <param name="Name">What it is.</param>
/// <param name="AtMm">From the lead-in edge of the blank; on a taper, where the line crosses the lower base line [mm].</param>
/// <param name="Near">Near end of the line in the panel's sheet frame, tapers only [mm].</param>
/// <param name="Far">Far end of the line, tapers only [mm].</param>
public sealed record PanelMark(string Name, double AtMm, Point? Near = null, Point? Far = null);
