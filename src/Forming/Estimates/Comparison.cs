namespace Forming.Estimates;

/// <summary>Another way to make the same panels, by its maker's own values.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FixedCost">Once, whatever the count [money], at least 0.</param>
/// <param name="CostPerPiece">For each panel, its sheet included [money], at least 0.</param>
/// <param name="MinutesPerPiece">Labour for each panel beside that, at the same rate [min], at least 0.</param>
public sealed record OtherMethod(string Name, double FixedCost, double CostPerPiece, double MinutesPerPiece = 0);

/// <summary>Rolling the panel, by the caller's own values.</summary>
/// <param name="SetUpMinutes">Setting up the rolls, once [min], at least 0.</param>
/// <param name="PanelMinutes">Rolling one panel, the first of the batch [min], at least 0.</param>
/// <param name="HourMoney">An hour of the rolls and who works them [money], at least 0.</param>
public sealed record Rolling(double SetUpMinutes, double PanelMinutes, double HourMoney);

/// <summary>The ways to make a panel that a form is compared with.</summary>
public enum OtherWay
{
    /// <summary>Bumping the panel itself in a press brake.</summary>
    Bumping,

    /// <summary>Rolling it.</summary>
    Rolling,

    /// <summary>Another method, by its maker's costs.</summary>
    Other,
}

/// <summary>A form held against another method.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Name">Its name.</param>
/// <param name="Hits">What bumping takes; null for other ways.</param>
/// <param name="Rows">Both ways at every count of panels that was asked for.</param>
/// <param name="Low">Break-even where all of the form's values are low.</param>
/// <param name="Likely">Break-even at the likely values.</param>
/// <param name="High">Break-even where all of the form's values are high.</param>
public sealed record Comparison(
    OtherWay Way, string Name, BumpHits? Hits, IReadOnlyList<ComparedCost> Rows, BreakEven Low, BreakEven Likely, BreakEven High);

/// <summary>A form held against another method at one count of panels.</summary>
/// <param name="Pieces">Good panels.</param>
/// <param name="Cost">What the other method costs, no minimum charge [money].</param>
/// <param name="Saving">What the form saves, cost against cost; below 0 it costs more [money]. Low is the saving where the form's values are
/// high.</param>
public sealed record ComparedCost(int Pieces, Band Cost, Band Saving);
