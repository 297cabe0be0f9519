using Forming.Checks;
using Forming.Jobs;
using Forming.Plans;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>Who and what a panel needs at the bench.</summary>
/// <param name="People">People who lay up, clamp and pull.</param>
/// <param name="Holders">People whom the panel's width and mass alone need.</param>
/// <param name="UsesWinch">Whether a winch or press pulls, which is rigged for every pull.</param>
/// <param name="Clamps">Clamps of each pull.</param>
/// <param name="ForceN">Largest pull [N].</param>
public sealed record Crew(int People, int Holders, bool UsesWinch, int Clamps, double ForceN)
{
    /// <summary>What one clamp holds down [N]: a good screw clamp; from memory.</summary>
    public const double ClampHoldsN = 5000;

    /// <summary>Clamps are no further apart along the width [mm]: an assumption.</summary>
    public const double ClampSpacingMm = 600;

    // A pull of exactly three people's strength needs three, whatever the last digit says.
    private const double Slack = 1e-9;

    /// <summary>Counts the crew of a panel.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="counts">What the caller knows better.</param>
    public static Crew Of(FormPlan plan, PanelSpec panel, WorkCounts counts)
    {
        var (blank, pull) = (plan.Panel.Blank, plan.Panel.Pull);
        var second = plan.Checks.FirstOrDefault(check => check.Kind == CheckIds.SecondHalfPull)?.Value ?? 0;
        var force = Math.Max(pull.ForceN, second);
        var byPull = CountOf(force / WorkingLimits.HandForceN);
        var byWidth = CountOf(blank.WidthMm / WorkingLimits.OnePersonWidthMm);
        var byMass = Math.Min(WorkingLimits.MostLifters, CountOf(blank.MassKg / WorkingLimits.LiftKg));
        var winch = panel.PullBy.RatedN is not null || (counts.People is null && Math.Max(byPull, byWidth) > PullBy.MostPeople);
        var holders = Math.Min(PullBy.MostPeople, Math.Max(byWidth, byMass));
        return new(
            counts.People ?? (winch ? byMass : Math.Max(Math.Max(panel.PullBy.People, byPull), holders)),
            holders,
            winch,
            counts.Clamps ?? Math.Max(CountOf(pull.ClampLoadN / ClampHoldsN), 1 + CountOf(blank.WidthMm / ClampSpacingMm)),
            force);
    }

    private static int CountOf(double share) => Math.Max(1, (int)Math.Ceiling(Math.Min(share, 1e6) - Slack));
}
