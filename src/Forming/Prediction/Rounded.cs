namespace Forming.Prediction;

/// <summary>Values of the wrap rounded to eight digits: what the solver's last step leaves beyond them is noise.</summary>
internal static class Rounded
{
    private const int Digits = 8;

    /// <summary>A value to its first eight digits.</summary>
    /// <param name="figure">The value, finite.</param>
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
