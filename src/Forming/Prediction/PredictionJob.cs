using Forming.Facets;
using Forming.Jobs;

namespace Forming.Prediction;

/// <summary>A panel and the form it is to be pulled over.</summary>
public sealed record PredictionJob
{
    /// <summary>The panel that is wanted, and how it will be pulled.</summary>
    public required PanelSpec Panel { get; init; }

    /// <summary>The form.</summary>
    public required StandingForm Form { get; init; }

    /// <summary>Half or full folds at the ends of the form: where the clamp stands.</summary>
    public required SteppingEnds Ends { get; init; }

    /// <summary>Hand to the end of the curve [mm], at least 0.</summary>
    public required double LeverMm { get; init; }

    /// <summary>Whether the curve's end is the form's and not the wanted one's: a form that stands already need not be made for it.</summary>
    public bool IsStanding { get; init; }

    /// <summary>The units that the caller states it in.</summary>
    public CallerUnits Units { get; init; } = CallerUnits.Mm;

    /// <summary>Longest lever that keeps the wrap in order [mm]; 0 where none does, null where any does.</summary>
    public required double? LongestLeverMm { get; init; }
}

/// <summary>Figures of the wrap as they are told: eight digits, for what the solver's last step leaves beyond them is noise.</summary>
internal static class Told
{
    private const int Digits = 8;

    /// <summary>A figure to its first eight digits.</summary>
    /// <param name="figure">The figure, finite.</param>
    public static double Of(double figure)
    {
        if (figure == 0)
            return 0;
        var decimals = Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(figure)));
        return decimals is >= 0 and <= 15 ? Math.Round(figure, decimals) : decimals < 0 ? figure : 0;
    }

    /// <summary>A place, to a millionth of a millimetre.</summary>
    /// <param name="place">The place [mm].</param>
    public static Point Of(Point place) => new(Math.Round(place.X, 6), Math.Round(place.Y, 6));
}
