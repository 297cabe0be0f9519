using Forming.Learning;

namespace Forming.Corrections;

/// <summary>The effective yield stress that explains a panel, and how sure that is.</summary>
public sealed record LearntYield
{
    /// <summary>Yield stress of the grade [MPa].</summary>
    public required double GradeMpa { get; init; }

    /// <summary>Yield stress that the panel was planned with: the grade's, or one that strips measured [MPa].</summary>
    public required double UsedMpa { get; init; }

    /// <summary>
    /// Yield stress with which the simulated pull explains the readings, at the thickness and modulus that were asked with, joined with
    /// what is known of the grade [MPa].
    /// </summary>
    public required Interval EffectiveMpa { get; init; }

    /// <summary>What that leaves open of the metal's own yield stress, for thickness and modulus may differ too [MPa].</summary>
    public required Interval MetalMpa { get; init; }

    /// <summary>What the thickness would be if it alone were different [mm].</summary>
    public required double ThicknessInsteadMm { get; init; }

    /// <summary>The same from the readings alone, without the grade [MPa].</summary>
    public required Interval ByReadingsMpa { get; init; }

    /// <summary>Share of the answer that comes from what was known before, 0 to 1.</summary>
    public required double PriorWeight { get; init; }

    /// <summary>Why it should not be used before something is cleared up; empty where nothing is in the way.</summary>
    public required IReadOnlyList<PanelDoubt> Doubts { get; init; }

    /// <summary>Learnt over used yield stress.</summary>
    public double Factor => EffectiveMpa.Value / UsedMpa;
}

/// <summary>A reason not to trust what the panel says.</summary>
/// <param name="Id">Stable id such as <c>yield-implausible</c>.</param>
/// <param name="Text">What is doubtful, and which measurement would tell; its arguments are <see cref="Results.Figure"/>s.</param>
public sealed record PanelDoubt(string Id, FormattableString Text);
