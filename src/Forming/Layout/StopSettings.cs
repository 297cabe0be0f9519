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
        var sorted = stations.ToArray();
        Array.Sort(sorted, static (a, b) => (a.FoldAngle.Radians, a.Number).CompareTo((b.FoldAngle.Radians, b.Number)));
        var settings = new List<StopSetting>();
        for (var first = 0; first < sorted.Length;)
        {
            var last = first;
            while (last + 1 < sorted.Length && sorted[last + 1].FoldAngle - sorted[first].FoldAngle <= resolution)
                last++;
            settings.Add(Group(sorted.AsSpan(first, last + 1 - first)));
            first = last + 1;
        }

        return settings;
    }

    private static StopSetting Group(ReadOnlySpan<Station> group)
    {
        double fold = 0;
        double? stop = 0;
        var numbers = new int[group.Length];
        for (var i = 0; i < group.Length; i++)
        {
            fold += group[i].FoldAngle.Radians;
            stop += group[i].StopAngle?.Radians;
            numbers[i] = group[i].Number;
        }

        Array.Sort(numbers);
        return new(new(fold / group.Length), stop is { } sum ? new Angle(sum / group.Length) : null, numbers);
    }
}
