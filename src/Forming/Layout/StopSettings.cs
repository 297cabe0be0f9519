namespace Forming.Layout;

/// <summary>Groups folds that one setting of the stop serves.</summary>
public static class StopSettings
{
    /// <summary>Groups stations whose fold angles agree within the stop's resolution, the smallest angles first.</summary>
    /// <param name="stations">The stations.</param>
    /// <param name="resolution">The stop's smallest step.</param>
    /// <returns>Each group with the mean of its angles, so that the angles still add up.</returns>
    public static IReadOnlyList<StopSetting> Of(IReadOnlyList<Station> stations, Angle resolution)
    {
        var sorted = stations.OrderBy(station => station.FoldAngle.Radians).ThenBy(station => station.Number).ToArray();
        var settings = new List<StopSetting>();
        for (var first = 0; first < sorted.Length;)
        {
            var last = first;
            while (last + 1 < sorted.Length && sorted[last + 1].FoldAngle - sorted[first].FoldAngle <= resolution)
                last++;
            var group = sorted[first..(last + 1)];
            settings.Add(new(
                new(group.Average(station => station.FoldAngle.Radians)),
                group[0].StopAngle is null ? null : new Angle(group.Average(station => station.StopAngle!.Value.Radians)),
                [.. group.Select(station => station.Number).Order()]));
            first = last + 1;
        }

        return settings;
    }
}
