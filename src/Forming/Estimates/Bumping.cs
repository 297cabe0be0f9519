using Forming.Curves;
using Forming.Jobs;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>Bumping the panel itself in a press brake: many small hits in place of a form.</summary>
public sealed record Bumping
{
    /// <summary>Turn of a hit where a caller says nothing: trade articles, common practice; from memory.</summary>
    public static Angle StandardAngle { get; } = Angle.FromDegrees(2);

    /// <summary>From hit to hit at least [mm], 1/8 in: trade articles, common practice; from memory.</summary>
    public const double StandardPitchMm = UnitFactors.InchMm / 8;

    /// <summary>Opening of the die over the pitch: trade articles, common practice; from memory.</summary>
    public const double OpeningOverPitch = 2;

    /// <summary>Turn of a hit, &gt; 0; null where the pitch alone counts.</summary>
    public Angle? HitAngle { get; init; } = StandardAngle;

    /// <summary>From hit to hit [mm], &gt; 0; null where the angle alone counts.</summary>
    public double? PitchMm { get; init; } = StandardPitchMm;

    /// <summary>Setting up punch, die and gauge, once for a batch [min]: an assumption.</summary>
    public double SetUpMinutes { get; init; } = 30;

    /// <summary>Each hit, for each person who supports the panel [min]: an assumption.</summary>
    public double HitMinutes { get; init; } = 0.25;

    /// <summary>Checking a bend by template and hitting it again [min]: an assumption.</summary>
    public double CorrectingMinutes { get; init; } = 5;

    /// <summary>An hour of the brake and who works it [money], at least 0; null takes the labour of one person.</summary>
    public double? HourMoney { get; init; }

    /// <summary>
    /// The pitch of a sheet where a caller says nothing: so wide that the die is no narrower than the sheet can be bent in.
    /// </summary>
    /// <param name="thicknessMm">Thickness of the panel [mm].</param>
    /// <returns>Pitch [mm].</returns>
    public static double PitchFor(double thicknessMm) =>
        Math.Max(StandardPitchMm, WorkingLimits.LeastOpeningOverThickness / OpeningOverPitch * thicknessMm);

    /// <summary>The hits of a panel: as many as the angle asks, or as the pitch has room for, whichever are fewer.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="crew">Who supports it.</param>
    public BumpHits HitsOf(PanelSpec panel, Crew crew)
    {
        var curve = FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm);
        int hits = 0, bends = 0;
        double sweep = 0, length = 0;
        foreach (var span in curve.Spans.Append(new FlatSpan(1)))
        {
            if (span is BendSpan bend)
            {
                sweep += bend.Sweep.Radians;
                length += bend.LengthMm;
            }
            else if (sweep > 0)
            {
                hits += HitsOf(sweep, length);
                bends++;
                (sweep, length) = (0, 0);
            }
        }

        var halves = panel.Mirrored ? 2 : 1;
        var pitch = curve.Bends.Sum(bend => bend.LengthMm) / hits;
        return new(halves * hits, halves * bends, new(curve.Sweep.Radians / hits), pitch, OpeningOverPitch * pitch, crew.Holders);
    }

    /// <summary>Time of one panel beside what any method takes.</summary>
    /// <param name="hits">Its hits.</param>
    /// <returns>Minutes of one person.</returns>
    public double PanelMinutes(BumpHits hits) => (hits.People * hits.Count * HitMinutes) + (hits.Bends * CorrectingMinutes);

    private int HitsOf(double sweep, double lengthMm)
    {
        var byAngle = HitAngle is { } angle ? sweep / angle.Radians : double.PositiveInfinity;
        var byPitch = PitchMm is { } pitch ? lengthMm / pitch : double.PositiveInfinity;
        return Math.Max(1, (int)Math.Ceiling(Math.Min(byAngle, byPitch) - 1e-9));
    }
}

/// <summary>What bumping a panel takes.</summary>
/// <param name="Count">Hits of one panel.</param>
/// <param name="Bends">Its curved stretches with flats between, each corrected alone.</param>
/// <param name="Angle">Turn of each.</param>
/// <param name="PitchMm">From hit to hit [mm].</param>
/// <param name="DieOpeningMm">Opening of the die [mm].</param>
/// <param name="People">People who support the panel at the brake.</param>
public sealed record BumpHits(int Count, int Bends, Angle Angle, double PitchMm, double DieOpeningMm, int People);
