namespace Forming.Curves.Points;

/// <summary>A first guess at the arc: the straight line of chord directions over arc length, longer chords counting more.</summary>
internal static class ChordTurn
{
    /// <summary>Direction at the first point [rad] and curvature.</summary>
    /// <param name="pattern">The points.</param>
    public static (double Angle, double Curvature) Of(Pattern pattern)
    {
        double weight = 0, place = 0, turn = 0, placePlace = 0, placeTurn = 0, direction = 0;
        Point last = default;
        for (var j = 1; j < pattern.Points.Length; j++)
        {
            var chord = pattern.Points[j] - pattern.Points[j - 1];
            direction += j == 1 ? Math.Atan2(chord.Y, chord.X) : Math.Atan2(last.Cross(chord), last.Dot(chord));
            var (w, s) = (chord.Length, (pattern.Chords[j] + pattern.Chords[j - 1]) / 2);
            (weight, place, turn) = (weight + w, place + (w * s), turn + (w * direction));
            (placePlace, placeTurn) = (placePlace + (w * s * s), placeTurn + (w * s * direction));
            last = chord;
        }

        var curvature = ((weight * placeTurn) - (place * turn)) / ((weight * placePlace) - (place * place));
        return ((turn - (curvature * place)) / weight, curvature);
    }
}
