using System.Globalization;
using FluentValidation;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Numerics;

namespace FormApi.Features.Programs;

/// <summary>What the outline of a tool must satisfy: a polygon that can be cut out of paper.</summary>
internal static class OutlineRules
{
    /// <summary>Adds the faults of an outline.</summary>
    /// <typeparam name="T">The record that holds it.</typeparam>
    /// <param name="context">The check; the rule must be on the record itself.</param>
    /// <param name="field">Contract name of the outline.</param>
    /// <param name="outline">The outline, or null.</param>
    /// <param name="units">The caller's units.</param>
    /// <returns>Whether there is an outline without a fault.</returns>
    public static bool Check<T>(ValidationContext<T> context, string field, IReadOnlyList<Pair>? outline, UnitSystem units)
    {
        if (outline is null || outline.Count < Ranges.OutlineCount.Min || outline.Count > Ranges.OutlineCount.Max)
            return false;
        var isInRange = true;
        var (range, limit) = (Ranges.OutlineCoordinate.Text(units), Ranges.OutlineCoordinate.MaxIn(units));
        for (var i = 0; i < outline.Count; i++)
        {
            CheckCoordinate(outline[i].First, At(i) + "[0]");
            CheckCoordinate(outline[i].Second, At(i) + "[1]");
        }

        return isInRange && IsSimple();

        string At(int corner) => string.Create(CultureInfo.InvariantCulture, $"{field}[{corner}]");

        void CheckCoordinate(double coordinate, string at)
        {
            if (!double.IsFinite(coordinate))
                context.FaultAt(at, "not-finite", "The number is too large (over about 1.8e308).", range);
            else if (Math.Abs(coordinate) > limit)
                context.FaultAt(at, "out-of-range", "The value is outside its range.", range);
            else
                return;
            isInRange = false;
        }

        bool IsSimple()
        {
            Point[] corners = [.. outline.Select(corner => new Point(corner.First, corner.Second))];
            if (SimplePolygon.FirstRepeated(corners) is { } repeated)
            {
                context.FaultAt(At(repeated), "outline.repeated-corner", "The corner repeats the one before it; an outline closes without it.", "each corner once");
                return false;
            }

            if (SimplePolygon.FirstCrossing(corners) is not { } crossing)
                return true;
            context.FaultAt(
                At(crossing.Second),
                "outline.crosses-itself",
                string.Create(CultureInfo.InvariantCulture, $"The edge from corner {crossing.Second} meets the edge from corner {crossing.First}; corners are counted from 0."),
                "corners in order round the tool, so that no two edges meet but at the corner they share");
            return false;
        }
    }
}
