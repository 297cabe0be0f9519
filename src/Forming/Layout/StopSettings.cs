using Forming.Folds;

namespace Forming.Layout;

/// <summary>One setting of the angle stop and the stations it serves.</summary>
/// <param name="FoldAngle">Mean fold angle of the group.</param>
/// <param name="StopAngle">Exact angle under load for it, or null where the fold would stay elastic.</param>
/// <param name="Setting">What the stop is set to, a whole number of its steps; null where there is no stop angle.</param>
/// <param name="Stations">Station numbers.</param>
public sealed record StopSetting(Angle FoldAngle, Angle? StopAngle, Angle? Setting, IReadOnlyList<int> Stations);

/// <summary>Groups folds that one setting of the stop serves, and rounds to the stop's steps.</summary>
public static class StopSettings
{
    // Half a step goes up, also where the last digits of a sum fall short of it.
    private const double Half = 0.5 + 1e-9;

    /// <summary>
    /// Groups stations whose fold angles agree within the stop's resolution, the smallest angles first, and gives each its setting.
    /// </summary>
    /// <param name="stations">The stations.</param>
    /// <param name="resolution">The stop's smallest step.</param>
    /// <param name="rounding">How stop angles are rounded.</param>
    /// <returns>The stations with their settings, and each group with the mean of its angles, so that the angles still add up.</returns>
    public static (IReadOnlyList<Station> Stations, IReadOnlyList<StopSetting> Settings) Of(
        IReadOnlyList<Station> stations, Angle resolution, StopRounding rounding)
    {
        double[] folds = new double[stations.Count], stops = new double[stations.Count];
        var areKnown = true;
        for (var i = 0; i < folds.Length; i++)
        {
            folds[i] = stations[i].FoldAngle.Radians;
            stops[i] = stations[i].StopAngle?.Radians ?? 0;
            areKnown &= stations[i].StopAngle is not null;
        }

        var groups = Groups(folds, resolution.Radians);
        if (!areKnown)
            return (stations, groups.ConvertAll(group => GroupOf(stations, group, null)));

        var steps = Steps(groups, stops, resolution.Radians, rounding);
        var set = new Station[stations.Count];
        for (var i = 0; i < set.Length; i++)
            set[i] = stations[i] with { StopSetting = steps[i] * resolution };
        var settings = new List<StopSetting>(groups.Count);
        foreach (var group in groups)
            AddSettings(settings, set, group, steps, resolution);
        return (set, settings);
    }

    // Rounded one by one, folds of one group may need settings that differ; the smallest comes first.
    private static void AddSettings(List<StopSetting> settings, Station[] set, int[] group, long[] steps, Angle resolution)
    {
        if (Array.TrueForAll(group, index => steps[index] == steps[group[0]]))
        {
            settings.Add(GroupOf(set, group, steps[group[0]] * resolution));
            return;
        }

        foreach (var same in group.GroupBy(index => steps[index]).OrderBy(same => same.Key))
            settings.Add(GroupOf(set, [.. same], same.Key * resolution));
    }

    /// <summary>How many steps of the stop each fold is set to; at least one, or it would not be folded.</summary>
    /// <param name="folds">[n] fold angles [rad].</param>
    /// <param name="stops">[n] stop angles [rad].</param>
    /// <param name="step">The stop's smallest step [rad].</param>
    /// <param name="rounding">How they are rounded.</param>
    /// <returns>[n] whole steps.</returns>
    public static long[] Steps(double[] folds, double[] stops, double step, StopRounding rounding)
    {
        ArgumentNullException.ThrowIfNull(folds);
        ArgumentNullException.ThrowIfNull(stops);
        return Steps(Groups(folds, step), stops, step, rounding);
    }

    /// <summary>What rounding adds to the whole form: above 0 it closes too far.</summary>
    /// <param name="stops">[n] stop angles [rad].</param>
    /// <param name="settings">[n] what the stop is set to [rad].</param>
    /// <param name="slope">Growth of the stop angle with the fold angle.</param>
    public static Angle Closing(IEnumerable<double> stops, IEnumerable<double> settings, double slope) =>
        new(settings.Zip(stops).Sum(pair => pair.First - pair.Second) / slope);

    private static long[] Steps(List<int[]> groups, double[] stops, double step, StopRounding rounding)
    {
        var steps = new long[stops.Length];
        if (rounding == StopRounding.Sum)
        {
            double left = 0;
            for (var i = 0; i < stops.Length; i++)
            {
                steps[i] = Nearest(stops[i] + left, step);
                left += stops[i] - (steps[i] * step);
            }

            return steps;
        }

        foreach (var group in groups)
        {
            var nearest = Nearest(group.Sum(index => stops[index]) / group.Length, step);
            foreach (var index in group)
                steps[index] = nearest;
        }

        return steps;
    }

    private static long Nearest(double angle, double step) => Math.Max(1, (long)Math.Floor((angle / step) + Half));

    private static List<int[]> Groups(double[] folds, double step)
    {
        var keys = new (double Fold, int Index)[folds.Length];
        for (var i = 0; i < keys.Length; i++)
            keys[i] = (folds[i], i);
        Array.Sort(keys);
        var sorted = Array.ConvertAll(keys, key => key.Index);
        var groups = new List<int[]>();
        for (var first = 0; first < sorted.Length;)
        {
            var last = first;
            while (last + 1 < sorted.Length && folds[sorted[last + 1]] - folds[sorted[first]] <= step)
                last++;
            groups.Add(sorted[first..(last + 1)]);
            first = last + 1;
        }

        return groups;
    }

    private static StopSetting GroupOf(IReadOnlyList<Station> stations, int[] group, Angle? setting)
    {
        double fold = 0;
        double? stop = 0;
        var numbers = new int[group.Length];
        for (var i = 0; i < group.Length; i++)
        {
            var station = stations[group[i]];
            fold += station.FoldAngle.Radians;
            stop += station.StopAngle?.Radians;
            numbers[i] = station.Number;
        }

        Array.Sort(numbers);
        return new(new(fold / group.Length), stop is { } sum ? new Angle(sum / group.Length) : null, setting, numbers);
    }
}
